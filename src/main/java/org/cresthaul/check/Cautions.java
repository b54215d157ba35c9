package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.Caution;
import org.cresthaul.report.Caution.When;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.OverheadWire;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCandidate;
import org.cresthaul.route.RouteCorner;

/** The usual cautions, each where it belongs. They defer to the permit, local codes and the person at the wheel. */
public final class Cautions {
    private Cautions() {}

    static List<Sentence> general() {
        return Stream.of(Code.CAUTION_SUPPORT, Code.CAUTION_DECLARED, Code.CAUTION_ESCORTS)
                .map(Sentence::of)
                .toList();
    }

    /** Those of every route, what is known of this one only by hearsay, and whom to thank for that. */
    static List<Sentence> of(Route route) {
        List<Sentence> all = new ArrayList<>(general());
        List<RouteCandidate> open = route.candidates().stream()
                .filter(c -> c.candidate().state() == Candidate.State.OPEN)
                .toList();
        if (!open.isEmpty()) {
            all.add((open.size() == 1
                            ? Sentence.of(Code.CAUTION_HEARSAY_ONE)
                            : Sentence.of(Code.CAUTION_HEARSAY).with("count", open.size()))
                    .with("places", open.stream().map(c -> c.place().id()).collect(Collectors.joining(", "))));
        }
        route.candidates().stream()
                .filter(c -> c.candidate().state() == Candidate.State.DISMISSED)
                .forEach(c -> all.add(Sentence.of(Code.CAUTION_DISMISSED)
                        .with("name", c.place().name())
                        .with("id", c.place().id())
                        .with("told", c.candidate().told())
                        .with("by", c.candidate().by().orElseThrow())
                        .with("why", c.candidate().why().orElseThrow())));
        String licenses = route.candidates().stream()
                .flatMap(c -> c.candidate().license().stream())
                .distinct()
                .sorted()
                .collect(Collectors.joining("; "));
        if (!licenses.isEmpty()) {
            all.add(Sentence.of(Code.CAUTION_LICENSES).with("licenses", licenses));
        }
        return List.copyOf(all);
    }

    /** What corners take of the wheels that turn behind the tractor. */
    static List<Sentence> of(LevelStance stance) {
        TurningWheels wheels = TurningWheels.of(stance);
        return Stream.concat(
                        wheels.castering().stream()
                                .map(axles ->
                                        Sentence.of(Code.CAUTION_CASTERING).with("axles", axles)),
                        wheels.commanded().stream()
                                .map(axles ->
                                        Sentence.of(Code.CAUTION_COMMANDED).with("axles", axles)))
                .toList();
    }

    /** That a unit is left off which was there when the heights were measured. */
    static List<Sentence> leftOff(Haul haul) {
        return haul.rig().isMeasured(haul.stance()) ? List.of() : List.of(Sentence.of(Code.CAUTION_LEFT_OFF));
    }

    static List<Sentence> reversing() {
        return List.of(Sentence.of(Code.BACKING_CAUTION_HELD), Sentence.of(Code.BACKING_CAUTION_PIVOT));
    }

    /**
     * Those of a hazard's cautions that bear on one of its cells: a raise and escorts are cautioned about only where
     * that cell has them.
     */
    public static List<Sentence> of(HazardFindings hazard, ReportCell cell) {
        return IntStream.range(0, hazard.cautions().size())
                .filter(i -> hazard.cautionsWhen().get(i).happensIn(cell))
                .mapToObj(hazard.cautions()::get)
                .toList();
    }

    static List<Caution> at(Hazard hazard, List<ReportCell> cells) {
        List<Caution> cautions = new ArrayList<>();
        if (hazard instanceof RailCrossing crossing) {
            cautions.add(Caution.always(StuckOnTracks.caution(crossing.crossingNumber())));
            cautions.add(always(Code.CAUTION_RULES));
        }
        if (hazard instanceof LowStructure) {
            cautions.add(always(Code.CAUTION_HEIGHTS));
        }
        if (hazard instanceof OverheadWire) {
            cautions.add(always(Code.CAUTION_WIRE));
        }
        if (hazard instanceof RouteCorner) {
            cautions.add(always(Code.CAUTION_CORNER));
        }
        if (cells.stream().anyMatch(c -> c.corner() != null && c.corner().escorts())) {
            cautions.add(new Caution(Sentence.of(Code.CAUTION_ESCORTED), When.ESCORTED));
        }
        if (hazard instanceof LimitedPlace) {
            cautions.add(always(Code.CAUTION_SCALES));
        }
        if (cells.stream().anyMatch(c -> c.raise() != null)) {
            cautions.add(new Caution(Sentence.of(Code.CAUTION_RAISED), When.RAISED));
            cautions.add(new Caution(Sentence.of(Code.NOBODY_UNDER), When.RAISED));
        }
        return List.copyOf(cautions);
    }

    private static Caution always(Code code) {
        return Caution.always(Sentence.of(code));
    }
}
