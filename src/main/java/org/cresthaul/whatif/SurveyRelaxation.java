package org.cresthaul.whatif;

import java.util.List;
import java.util.Optional;
import org.cresthaul.check.PlaceCheck;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Alterations;
import org.cresthaul.plan.Plan.Relaxation;
import org.cresthaul.plan.RelaxationKind;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.ReportCell;

/** Whether a closer survey may open a place: it does when the place is clear as surveyed, were that exact. */
final class SurveyRelaxation {
    private final PlaceCheck exact;

    SurveyRelaxation(Haul haul) {
        exact = new PlaceCheck(haul.over(Alterations.surveyed(haul.route(), 0)));
    }

    /** @param cells that may be used */
    Optional<Relaxation> at(HazardFindings hazard, List<ReportCell> cells) {
        return cells.stream()
                .map(ReportCell::configuration)
                .filter(c -> exact.isClear(hazard.id(), c))
                .findFirst()
                .map(c -> new Relaxation(RelaxationKind.SURVEY, c, null, false, Sentence.of(Code.OPEN_CLOSER)));
    }
}
