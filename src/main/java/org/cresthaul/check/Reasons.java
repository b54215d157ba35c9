package org.cresthaul.check;

import org.cresthaul.clearance.Demand;
import org.cresthaul.clearance.Footing;
import org.cresthaul.clearance.Undecided;

/** Says in words why a gap is not clear. Numbers stay out: they stand beside it, in the reader's units. */
final class Reasons {
    private Reasons() {}

    /**
     * The reason for a verdict other than clear.
     *
     * @param low the least gap less what its search leaves open, meters: the figure the verdict was made with
     * @param excluded the uncertainty of that gap, meters, without ground that nobody declared
     */
    static String of(Verdict verdict, double low, Footing footing, double excluded, Demand demand, double sagM) {
        if (low < 0) {
            return "it touches";
        }
        if (verdict == Verdict.CONTACT) {
            if (low >= excluded) {
                return "contact cannot be ruled out at another position, where survey or approach grade is less certain";
            }
            return demand.surveyM() > demand.otherM() && demand.surveyM() > low / 2
                    ? "the survey is too coarse to rule out contact"
                    : "the gap is smaller than its uncertainty: cannot rule out contact";
        }
        if (low < demand.marginM() - sagM + footing.uncertaintyM()) {
            return "no contact, but less than the required margin";
        }
        if (low < demand.marginM() + footing.uncertaintyM()) {
            return "no contact on a straight road, but the road profile is unknown and a sag could use up the gap";
        }
        return "the tightest point has its margin; another point does not, because survey or approach grade is less certain there";
    }

    /**
     * The reason between units.
     *
     * @param low the least gap less what its search leaves open, meters
     * @param footing of that gap
     * @param excluded the uncertainty of that gap, meters, without ground that nobody declared
     */
    static String ofUnits(Verdict verdict, double low, Footing footing, double excluded, Demand demand, boolean level) {
        if (low < 0) {
            return level
                    ? "they touch standing level, as they are drawn: correct the outlines, or how far the coupling reaches"
                    : "they touch";
        }
        if (verdict == Verdict.CONTACT) {
            return low >= excluded
                    ? "contact cannot be ruled out at another position, where survey or approach grade is less certain"
                    : "the gap is smaller than its uncertainty: cannot rule out contact";
        }
        return low < demand.marginM() + footing.uncertaintyM()
                ? "no contact, but less than the required margin"
                : "the tightest point has its margin; another position does not, because survey or approach grade is less"
                        + " certain there";
    }

    /** The reason where the search ended without an answer, and what to change. */
    static String ofUndecided(Undecided undecided, String line) {
        String what = "could not be decided on line " + line
                + (undecided.spent() ? " within the work allowed for files of this size: " : ": ");
        return what
                + switch (undecided.cause()) {
                    case STEEP ->
                        "a unit pitches too steeply or too fast to be followed. Check the grades, the heights of"
                                + " fifth wheel and hinge, and the axles' places in the files";
                    case ROUGH ->
                        "the road is too rough here, or the outlines too finely drawn. Survey points where the"
                                + " slope changes, leave out points closer together than a hand's width, and draw outlines"
                                + " with fewer points";
                };
    }
}
