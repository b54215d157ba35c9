package org.cresthaul.check;

import org.cresthaul.report.HazardFindings;
import org.cresthaul.route.Hazard;

/** Told how far a check has come, by whichever thread has come so far: must not wait, and be safe to share. */
public interface CheckFollower {
    /** Follows nothing. */
    CheckFollower NONE = new CheckFollower() {
        @Override
        public void begins(int places, int configurations) {}

        @Override
        public void judges(String hazard) {}

        @Override
        public void judged(HazardFindings place) {}
    };

    /** How much there is to judge: every place in every configuration. */
    void begins(int places, int configurations);

    /** A place was judged in one configuration more. Not told of places that need not be judged anew. */
    void judges(String hazard);

    /**
     * No configuration passes a place, in transport or on a raise of its own: told as soon as that is shown, before the
     * place is judged. Of a place that this is not told of nothing is said.
     */
    default void refused(Hazard place) {}

    /** All of a place's findings are there. */
    void judged(HazardFindings place);

    /** Nothing is judged for this follower as long as another's check of the very same question runs. */
    default void waitsFor(CheckFollower other) {}
}
