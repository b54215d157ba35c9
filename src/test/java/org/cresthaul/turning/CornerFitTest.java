package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.cresthaul.road.Corner;
import org.cresthaul.road.CornerTemplate;
import org.cresthaul.road.CornerTemplate.KerbReturn;
import org.cresthaul.road.CornerTemplate.Obstacle;
import org.cresthaul.road.CornerTemplate.PlanPoint;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.junit.jupiter.api.Test;

/** The search for the way round: complete in its family, deterministic, and clear about what does not go. */
class CornerFitTest {
    /** A search may stop short of the best line by this, metres: it works on states a metre apart. */
    private static final double SEARCH_M = 0.03;

    private static final double HOPELESS_M = 0.15;

    /**
     * The family scanned densely, each line judged by the same exact measure as the answer: no line of it leaves more room
     * than the one found, so that a feasible one is found whenever there is one.
     */
    @Test
    void findsAFeasibleLineWheneverADenseScanDoes() {
        int corners = 0;
        int feasible = 0;
        for (double degrees : new double[] {-90, 60, 120}) {
            for (double radius : new double[] {18, 27}) {
                for (TurningCombination combination :
                        List.of(CornerCases.tractorAlone(), CornerCases.lowbed(10, 0), CornerCases.lowbed(11, 2.4))) {
                    boolean escorts = corners % 2 == 1;
                    Corner corner = CornerCases.junction(degrees, 4, 4, radius, true);
                    CornerFit fit = CornerFit.of(corner, combination, escorts, 10);
                    double scanned = scan(new CornerSpace(corner, escorts), combination);
                    // What cannot be taken is told within a hand's breadth of the least encroachment.
                    double slack = scanned > 0 ? SEARCH_M : HOPELESS_M;
                    assertTrue(fit.tightest().valueM() >= scanned - slack,
                            degrees + " r" + radius + " found " + fit.tightest().valueM() + ", scan " + scanned);
                    feasible += scanned > 0 ? 1 : 0;
                    corners++;
                }
            }
        }
        assertEquals(18, corners);
        assertTrue(feasible >= 6 && feasible < 18, "both kinds are among them: " + feasible);
    }

    private static double scan(CornerSpace space, TurningCombination combination) {
        double best = Double.NEGATIVE_INFINITY;
        double tightest = 1.02 / combination.tightestPerM();
        double half = combination.units().get(0).tyres().get(0).halfWidthM();
        Corner corner = space.corner;
        double sine = Math.sin(corner.exit().headingRad() - corner.approach().headingRad());
        for (int r = 0; r < 9; r++) {
            double radius = tightest * Math.pow(45 / tightest, r / 8.0);
            for (int in = 0; in < 6; in++) {
                for (int out = 0; out < 6; out++) {
                    CornerLine shape =
                            new CornerLine(radius, Math.toRadians(5 * in), Math.toRadians(5 * out), 0, 0);
                    LineTrial trial = new LineTrial(space, combination, shape);
                    for (int a = 0; a <= 8; a++) {
                        double offset = between(-space.rightM(corner.approach()) + half,
                                space.leftM(corner.approach()) - half, a / 8.0);
                        for (int b = 0; b <= 12; b++) {
                            double exit = between(-space.rightM(corner.exit()) + half,
                                    space.leftM(corner.exit()) - half, b / 12.0);
                            double x = -offset * Math.sin(corner.approach().headingRad());
                            double y = offset * Math.cos(corner.approach().headingRad());
                            double at = CornerLine.offsetOutM(corner, x + trial.endXM, y + trial.endYM);
                            double start = (at - exit) / sine;
                            best = Math.max(best, trial.clearanceM(x + start, y, best));
                        }
                    }
                }
            }
        }
        return best;
    }

    private static double between(double lo, double hi, double t) {
        return lo + t * (hi - lo);
    }

    @Test
    void givesTheSameAnswerTwice() {
        Corner corner = CornerCases.junction(-90, 4, 4, 20, true);
        CornerFit a = CornerFit.of(corner, CornerCases.lowbed(12, 2.4), false, 0.3);
        CornerFit b = CornerFit.of(CornerCases.junction(-90, 4, 4, 20, true), CornerCases.lowbed(12, 2.4), false, 0.3);
        assertEquals(a.line(), b.line());
        assertEquals(a.gaps(), b.gaps());
    }

    @Test
    void aMirroredCornerHasTheMirroredAnswerWhereLanesAreBorrowed() {
        CornerFit left = CornerFit.of(CornerCases.junction(90, 4, 4, 25, true), CornerCases.lowbed(12, 0), true, 0.3);
        CornerFit right = CornerFit.of(CornerCases.junction(-90, 4, 4, 25, true), CornerCases.lowbed(12, 0), true, 0.3);
        assertEquals(left.tightest().valueM() > 0, right.tightest().valueM() > 0);
    }

    @Test
    void moreRoomIsNeverLess() {
        double last = -10;
        for (double radius : new double[] {10, 20, 30, 40}) {
            CornerFit fit = CornerFit.of(CornerCases.junction(-90, 4, 4, radius, false), CornerCases.lowbed(12.5, 0), false, 5);
            assertTrue(fit.tightest().valueM() >= last - SEARCH_M, "radius " + radius);
            last = fit.tightest().valueM();
        }
    }

    @Test
    void aCornerTighterThanTheSteeringIsAnsweredWithWhatEncroaches() {
        CornerFit fit = CornerFit.of(CornerCases.junction(-150, 3, 0, 2, false), CornerCases.lowbed(14, 2.4), false, 0.3);
        assertTrue(fit.tightest().valueM() < -1);
        assertTrue(fit.line().radiusM() >= 1 / CornerCases.lowbed(14, 2.4).tightestPerM());
        assertTrue(fit.track().mostSteerRad() <= Math.toRadians(38) + 1e-9 || !fit.withinLimits());
    }

    @Test
    void couplingsThatCannotBendAreSaidSo() {
        TurningCombination stiff = CornerCases.lowbed(12, 2.4);
        stiff = new TurningCombination(stiff.chain(), stiff.units(), stiff.steerLimitRad(), stiff.lockDistanceM(),
                List.of(Math.toRadians(8), Math.toRadians(5)));
        CornerFit fit = CornerFit.of(CornerCases.junction(-90, 4, 4, 25, true), stiff, true, 0.3);
        assertFalse(fit.withinLimits());
    }

    @Test
    void aPoleInTheWayTakesTheRoomOfTheBodies() {
        RoadWidths road = new RoadWidths(4, 4, 0, true);
        List<Obstacle> pole = List.of(new Obstacle(List.of(new PlanPoint(6.5, 5.5)), 0.2));
        Corner with = new CornerTemplate(Math.toRadians(-90), road, road, KerbReturn.single(25), 0, Optional.empty(),
                List.of(), pole).corner();
        CornerSpace space = new CornerSpace(with, true);
        CornerFit free = CornerFit.of(CornerCases.junction(-90, 4, 4, 25, true), CornerCases.lowbed(12, 0), true, 0.6);
        CornerFit judged = CornerFit.judge(space, CornerCases.lowbed(12, 0), free.line());
        assertTrue(judged.gaps().stream().anyMatch(g -> g.against() == CornerFit.Against.OBSTACLE));
    }

    @Test
    void goesRoundARoundabout() {
        for (double degrees : new double[] {-90, 0, 90}) {
            CornerFit fit =
                    CornerFit.of(CornerCases.roundabout(degrees, 25, 12, 3), CornerCases.lowbed(12.5, 2.4), false, 0.3);
            assertTrue(fit.tightest().valueM() > 0.2, degrees + ": " + fit.tightest());
        }
    }

    @Test
    void threeCentredReturnsLieBetweenTheirRadii() {
        RoadWidths road = new RoadWidths(4, 4, 0, false);
        double tight = new CornerTemplate(-Math.PI / 2, road, road, KerbReturn.single(15), 0, Optional.empty(),
                List.of(), List.of()).corner().pavement().getArea();
        double three = new CornerTemplate(-Math.PI / 2, road, road, new KerbReturn(50, 15, 50, 1), 0, Optional.empty(),
                List.of(), List.of()).corner().pavement().getArea();
        double wide = new CornerTemplate(-Math.PI / 2, road, road, KerbReturn.single(50), 0, Optional.empty(),
                List.of(), List.of()).corner().pavement().getArea();
        assertTrue(tight < three && three < wide, tight + " " + three + " " + wide);
        // A single return of radius r cuts (1 − π/4) r² off the corner.
        double sharp = new CornerTemplate(-Math.PI / 2, road, road, KerbReturn.single(0), 0, Optional.empty(),
                List.of(), List.of()).corner().pavement().getArea();
        assertEquals((1 - Math.PI / 4) * 15 * 15, tight - sharp, 0.15);
    }
}
