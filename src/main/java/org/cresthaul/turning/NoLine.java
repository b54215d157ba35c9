package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.TurnBound.Led;
import org.cresthaul.turning.TurnBound.Stage;
import org.cresthaul.turning.TurnBound.Stand;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.PlanUnit;

/**
 * Proofs that there is no line at all: docs/model.md, section 13, "Where no line can exist". Where none is given a line
 * may exist or not.
 */
public final class NoLine {
    private NoLine() {}

    /** Why no line can exist, in words; empty where that is not shown. */
    public static Optional<Sentence> find(CornerSpace space, TurningCombination combination) {
        return straightRoads(space, combination)
                .or(() -> turnedBack(space, combination))
                .or(() -> TurnBound.of(space).flatMap(bound -> inside(bound, combination)));
    }

    /** It stands on approach and exit as wide as its widest axle. */
    private static Optional<Sentence> straightRoads(CornerSpace space, TurningCombination combination) {
        double tires = 2 * combination.halfTiresM();
        RoadEnd in = space.corner().approach();
        RoadEnd out = space.corner().exit();
        if (tires > space.leftM(in) + space.rightM(in)) {
            return Optional.of(Sentence.of(Code.NO_LINE_APPROACH));
        }
        if (tires > space.leftM(out) + space.rightM(out)) {
            return Optional.of(Sentence.of(Code.NO_LINE_EXIT));
        }
        return Optional.empty();
    }

    /** Turned by θ it has come at least R (1 − cos θ) to a side, and stands on both roads as wide as it is. */
    private static Optional<Sentence> turnedBack(CornerSpace space, TurningCombination combination) {
        double turn = Math.min(Math.abs(space.turnRad), Math.PI);
        double acrossM = acrossM(space);
        for (Unit unit : unitsOf(combination)) {
            double asideM = unit.tightestM * (1 - Math.cos(turn)) + unit.halfM() * (1 + Math.abs(Math.cos(turn)));
            if (asideM > acrossM + TurnBound.SLACK_M) {
                return Optional.of(Sentence.of(Code.NO_LINE_WIDER)
                        .with("unit", Names.of(unit.name))
                        .with("limit", unit.limit));
            }
        }
        return Optional.empty();
    }

    /** How far all pavement reaches square to the approach, meters. */
    private static double acrossM(CornerSpace space) {
        double heading = space.corner().approach().headingRad();
        DoubleSummaryStatistics left = Arrays.stream(space.pavement.getCoordinates())
                .mapToDouble(c -> c.y * Math.cos(heading) - c.x * Math.sin(heading))
                .summaryStatistics();
        return left.getMax() - left.getMin();
    }

    private static Optional<Sentence> inside(TurnBound bound, TurningCombination combination) {
        List<Unit> units = unitsOf(combination);
        for (Stage stage : Stage.values()) {
            for (Unit unit : units) {
                if (unit.stands.stream().anyMatch(s -> bound.excludes(s, stage))) {
                    Sentence name = Names.of(unit.name);
                    return Optional.of(
                            switch (stage) {
                                case GAP -> Sentence.of(Code.NO_LINE_NARROW).with("unit", name);
                                case LIMIT ->
                                    Sentence.of(Code.NO_LINE_WIDE)
                                            .with("unit", name)
                                            .with("limit", unit.limit);
                                case LED -> Sentence.of(Code.NO_LINE_LED).with("unit", name);
                            });
                }
            }
        }
        return Optional.empty();
    }

    /**
     * A unit and how tight it can turn.
     *
     * @param tightestM least radius of its effective axle's path; 0 where it may turn on the spot
     * @param limit what holds it to that, in words
     */
    private record Unit(String name, double tightestM, Sentence limit, List<Stand> stands) {
        double halfM() {
            return stands.stream().mapToDouble(Stand::halfM).max().orElse(0);
        }
    }

    /**
     * The hitch of a unit moves at most so far off the unit's own direction as the coupling bends, and as the coupling
     * itself moves off the direction of the unit ahead: tan of that over the unit's length is the tightest curvature of
     * its effective axle. Where wheels are steered, or castering ones may be at their stops, neither holds: such a unit
     * and those behind it may turn on the spot, and are led by nothing.
     */
    private static List<Unit> unitsOf(TurningCombination c) {
        List<Unit> units = new ArrayList<>();
        double tightest = radius(c.chain().get(0), Math.min(c.steerLimitRad(), Math.PI / 2));
        for (int i = 0; i < c.chain().size(); i++) {
            TurningUnit unit = c.chain().get(i);
            Optional<Led> led = Optional.empty();
            if (i > 0) {
                double behindM = c.chain().get(i - 1).couplingBehindM();
                double aside = tightest > 0 ? Math.atan(Math.abs(behindM) / tightest) : Math.PI / 2;
                tightest = unit.steered().isPresent()
                        ? 0
                        : radius(unit, c.articulationLimitRad().get(i - 1) + aside);
                led = i == 1 && unit.steered().isEmpty()
                        ? Optional.of(led(unit.hitchToAxleM(), c.units().get(0), behindM))
                        : led;
            }
            units.add(unit(c, i, tightest, led));
        }
        return units;
    }

    private static Unit unit(TurningCombination c, int place, double tightestM, Optional<Led> led) {
        PlanUnit plan = c.units().get(place);
        Sentence limit = place == 0
                ? Sentence.of(Code.LIMIT_STEER)
                : c.isPivot(place - 1)
                        ? Sentence.of(Code.LIMIT_PIVOT)
                        : Sentence.of(Code.LIMIT_KINGPIN).with("coupling", c.couplingWord(place - 1));
        List<Stand> stands = new ArrayList<>();
        for (AxleLine axle : plan.tires()) {
            // The wheels of the steer axle do not stand square to their unit.
            if (place > 0 || axle.aheadM() < c.chain().get(0).hitchToAxleM() - 0.1) {
                // Of wheels that turn only the middle is sure to stand where it does when they are straight.
                double halfM = axle.turns() ? axle.halfWidthM() - 0.5 * axle.treadM() : axle.halfWidthM();
                stands.add(new Stand(axle.aheadM(), halfM, tightestM, led));
            }
        }
        return new Unit(plan.name().word(), tightestM, limit, stands);
    }

    private static double radius(TurningUnit unit, double offRad) {
        return offRad < Math.PI / 2 ? unit.hitchToAxleM() / Math.tan(offRad) : 0;
    }

    private static Led led(double hitchM, PlanUnit tractor, double behindM) {
        AxleLine nearest = tractor.tires().stream()
                .min(Comparator.comparingDouble(t -> Math.abs(t.aheadM() + behindM)))
                .orElseThrow();
        return new Led(hitchM, Math.abs(nearest.aheadM() + behindM), nearest.halfWidthM());
    }
}
