package org.cresthaul.plan;

import java.util.List;
import java.util.Optional;
import org.cresthaul.check.Margins;
import org.cresthaul.check.PlaceCheck;
import org.cresthaul.check.Report;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Plan.Relaxation;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;

/** Whether a closer survey may open a place: it does when the place is clear as surveyed, were that exact. */
final class SurveyRelaxation {
    private final PlaceCheck exact;

    SurveyRelaxation(Route route, Rig rig, LevelStance stance, Margins margins) {
        exact = new PlaceCheck(Alterations.surveyed(route, 0), rig, stance, margins);
    }

    /** @param cells that may be used */
    Optional<Relaxation> at(Report.HazardFindings hazard, List<Report.Cell> cells) {
        return cells.stream()
                .map(Report.Cell::configuration)
                .filter(c -> exact.isClear(hazard.id(), c))
                .findFirst()
                .map(c -> new Relaxation(RelaxationKind.SURVEY, c, null, false, Sentence.of(Code.OPEN_CLOSER)));
    }
}
