package org.cresthaul.check;

import org.cresthaul.posture.Clearance;
import org.cresthaul.posture.Demand;
import org.cresthaul.posture.Footing;

/** Says in words why a gap is not clear. Numbers stay out: they stand beside it, in the reader's units. */
final class Reasons {
    private Reasons() {}

    static String of(
            Verdict verdict, Clearance least, Footing footing, double excluded, Demand demand, double sagM) {
        if (least.valueM() < 0) {
            return "it touches";
        }
        if (verdict == Verdict.CONTACT) {
            if (least.valueM() >= excluded) {
                return "contact cannot be excluded at another position, where the approach grade is less certain";
            }
            return demand.surveyM() > demand.otherM() && demand.surveyM() > least.valueM() / 2
                    ? "the survey is too coarse to exclude contact"
                    : "the gap is smaller than its uncertainty: contact cannot be excluded";
        }
        if (least.valueM() < demand.marginM() - sagM + footing.uncertaintyM()) {
            return "free, but the margin is not kept";
        }
        if (least.valueM() < demand.marginM() + footing.uncertaintyM()) {
            return "free on a straight road, but the road profile is not known and a sag could use up the gap";
        }
        return "free at its tightest, but elsewhere the margin rests on approach ground that is not known well enough";
    }
}
