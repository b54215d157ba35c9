package org.cresthaul.check;

import org.cresthaul.clearance.Demand;
import org.cresthaul.clearance.Footing;
import org.cresthaul.clearance.Undecided;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.Verdict;

/** Says why a gap is not clear. Numbers stay out: they stand beside it, in the reader's units. */
final class Reasons {
    private Reasons() {}

    /**
     * The reason for a verdict other than clear.
     *
     * @param low the least gap less what its search leaves open, meters: the figure the verdict was made with
     * @param excluded the uncertainty of that gap, meters, without ground that nobody declared
     */
    static Sentence of(Verdict verdict, double low, Footing footing, double excluded, Demand demand, double sagM) {
        if (low < 0) {
            return Sentence.of(Code.WHY_TOUCHES);
        }
        if (verdict == Verdict.CONTACT) {
            if (low >= excluded) {
                return Sentence.of(Code.WHY_OTHER_POSITION);
            }
            return Sentence.of(
                    demand.surveyM() > demand.otherM() && demand.surveyM() > low / 2
                            ? Code.WHY_COARSE
                            : Code.WHY_UNCERTAIN);
        }
        if (low < demand.marginM() - sagM + footing.uncertaintyM()) {
            return Sentence.of(Code.WHY_MARGIN);
        }
        if (low < demand.marginM() + footing.uncertaintyM()) {
            return Sentence.of(Code.WHY_SAG);
        }
        return Sentence.of(Code.WHY_ELSEWHERE);
    }

    /**
     * The reason between units.
     *
     * @param low the least gap less what its search leaves open, meters
     * @param footing of that gap
     * @param excluded the uncertainty of that gap, meters, without ground that nobody declared
     */
    static Sentence ofUnits(
            Verdict verdict, double low, Footing footing, double excluded, Demand demand, boolean level) {
        if (low < 0) {
            return Sentence.of(level ? Code.WHY_TOUCH_LEVEL : Code.WHY_THEY_TOUCH);
        }
        if (verdict == Verdict.CONTACT) {
            return Sentence.of(low >= excluded ? Code.WHY_OTHER_POSITION : Code.WHY_UNCERTAIN);
        }
        return Sentence.of(
                low < demand.marginM() + footing.uncertaintyM() ? Code.WHY_MARGIN : Code.WHY_ELSEWHERE_UNITS);
    }

    /** The reason where the search ended without an answer, and what to change. */
    static Sentence ofUndecided(Undecided undecided, String line) {
        return Sentence.of(undecided.spent() ? Code.WHY_UNDECIDED_SPENT : Code.WHY_UNDECIDED)
                .with("line", Names.of(line))
                .with(
                        "cause",
                        Sentence.of(
                                switch (undecided.cause()) {
                                    case STEEP -> Code.CAUSE_STEEP;
                                    case ROUGH -> Code.CAUSE_ROUGH;
                                }));
    }
}
