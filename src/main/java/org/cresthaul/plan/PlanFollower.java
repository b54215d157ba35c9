package org.cresthaul.plan;

import java.util.List;

/**
 * Told how far a plan has come, by whichever thread has come so far: must not wait, and be safe to share. A question is
 * what the engines are asked anew about one place: how far a raise may go, what is left when things are off, what would
 * open a place that blocks.
 */
public interface PlanFollower {
    /** Follows nothing. */
    PlanFollower NONE = new PlanFollower() {
        @Override
        public void decided(List<Plan.Block> blocking) {}

        @Override
        public void asks(int more) {}

        @Override
        public void answered(String hazard) {}
    };

    /**
     * Whether there is a way is settled; its steps, conditions and margins are not known yet.
     *
     * @param blocking the fewest places that stand in every way; none where there is one
     */
    void decided(List<Plan.Block> blocking);

    /** So many questions more. */
    void asks(int more);

    /** One of them is answered. */
    void answered(String hazard);
}
