package org.cresthaul.plan;

/**
 * Told how far a plan has come, by whichever thread has come so far: must not wait, and be safe to share. A question is
 * what the engines are asked anew about one place: how far a raise may go, what is left when things are off, what would
 * open a place that blocks.
 */
public interface PlanFollower {
    /** Follows nothing. */
    PlanFollower NONE = new PlanFollower() {
        @Override
        public void asks(int more) {}

        @Override
        public void answered(String hazard) {}
    };

    /** So many questions more. */
    void asks(int more);

    /** One of them is answered. */
    void answered(String hazard);
}
