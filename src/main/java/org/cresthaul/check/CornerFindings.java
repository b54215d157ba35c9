package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.LeastSetting;
import org.cresthaul.report.Margins;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.UncertaintyTerm;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.CornerSource;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.RouteCorner;

/** One corner for every configuration, as the report has it. */
final class CornerFindings {
    private CornerFindings() {}

    static HazardFindings of(
            JoinedCorners.Judging judging,
            Rig rig,
            LevelStance stance,
            Margins margins,
            List<CheckedConfiguration> configurations,
            LevelUnits level) {
        RouteCorner corner = judging.corner();
        List<ReportCell> cells =
                level.under(new CornerCells(judging, rig, stance, margins).cells(configurations), configurations);
        HazardPlace place = corner.place();
        return new HazardFindings(
                place.id(),
                corner.kind(),
                place.name(),
                place.landmark().orElse(null),
                place.chainageM(),
                place.offsetM(),
                List.of(place.position().lonDeg(), place.position().latDeg()),
                corner.isSurveyed(),
                List.of(),
                List.of(),
                corner.survey()
                        .map(s -> List.of(new UncertaintyTerm("survey", s.valueM(), s.source())))
                        .orElse(List.of()),
                List.of(),
                notes(judging),
                Cautions.at(corner, cells),
                cells,
                least(configurations, cells));
    }

    private static List<String> notes(JoinedCorners.Judging judging) {
        RouteCorner corner = judging.corner();
        List<String> notes = new ArrayList<>();
        if (!judging.with().isEmpty()) {
            notes.add("closer than the combination is long to " + String.join(", ", judging.with())
                    + ": judged as one passage, one line through all");
        }
        judging.unknown()
                .ifPresent(u -> notes.add("the next corner, " + u + ", is closer than the combination is long and"
                        + " not surveyed: nothing here is called clear"));
        corner.radiusM()
                .ifPresent(r -> notes.add("not surveyed: the route line bends here at a radius of about "
                        + Math.round(r) + " m (" + Math.round(r / 0.3048) + " ft)"));
        corner.shape().ifPresent(shape -> {
            notes.add("geometry: " + corner.source());
            notes.add("turns " + Math.round(Math.toDegrees(Math.abs(shape.turnRad()))) + " degrees to the "
                    + (shape.turnRad() > 0 ? "left" : "right"));
            notes.add(
                    shape.escorted().isPresent()
                            ? "opposing lanes may be borrowed with escorts"
                            : "no opposing lane may be borrowed");
            if (shape.onLeft()) {
                notes.add("driven on the left: the opposing lanes are on the right");
            }
            if (corner.source() == CornerSource.SURVEYED) {
                notes.add("beyond the survey the road is taken to go on straight at its width");
            }
        });
        return notes;
    }

    private static List<LeastSetting> least(List<CheckedConfiguration> configurations, List<ReportCell> cells) {
        List<LeastSetting> least = new ArrayList<>();
        for (int i = 0; i < configurations.size(); i++) {
            CheckedConfiguration c = configurations.get(i);
            boolean first = i == 0
                    || !configurations.get(i - 1).lift().equals(c.lift())
                    || configurations.get(i - 1).booster() != c.booster();
            if (first) {
                ReportCell cell = cells.get(i);
                boolean clear = cell.verdict() == Verdict.CLEAR;
                String text = clear
                        ? "makes the turn on its own lanes at any notch"
                        : cell.verdict() == Verdict.NOT_SURVEYED
                                ? "unknown"
                                : cell.verdict() == Verdict.CONTACT
                                        ? "does not make the turn at any notch"
                                        : cell.corner().escorts()
                                                ? "makes the turn only by using the oncoming lane, with escorts, at any notch"
                                                : "makes the turn with less than the required margin at any notch";
                least.add(new LeastSetting(
                        c.lift(), c.booster(), clear ? c.notch().name() : null, text));
            }
        }
        return least;
    }
}
