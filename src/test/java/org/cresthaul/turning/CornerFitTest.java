package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.Ground;
import org.cresthaul.road.Corner.RoadEnd;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * The way round a corner: a whole passage, everything under the combination, limits kept, and clear about what does not
 * go.
 */
class CornerFitTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final CornerFit.Wanted EXACTLY = new CornerFit.Wanted(0.3, 0.05, 0);

    private static CornerFit fit(
            Corner corner, boolean escorts, TurningCombination combination, CornerFit.Wanted wanted) {
        return CornerFit.of(new CornerSpace(corner, escorts), combination, List.of(), wanted);
    }

    /** A straight road along x, driven from -200 to 200 m, with what stands in it. */
    private static Corner straight(double rightM, double leftM, Geometry island, Geometry obstacles, Ground ground) {
        Geometry road = GEOMETRY.toGeometry(new Envelope(-600, 600, -rightM, leftM));
        RoadEnd in = new RoadEnd(-30, 0, 0, leftM, rightM, leftM, rightM);
        RoadEnd out = new RoadEnd(30, 0, 0, leftM, rightM, leftM, rightM);
        return new Corner(
                Areas.without(road, island),
                Optional.empty(),
                Areas.none(),
                obstacles,
                in,
                out,
                0,
                ground,
                Optional.of(
                        GEOMETRY.createLineString(new Coordinate[] {new Coordinate(-100, 0), new Coordinate(100, 0)})));
    }

    private static Geometry box(double fromX, double toX, double fromY, double toY) {
        return GEOMETRY.toGeometry(new Envelope(fromX, toX, fromY, toY));
    }

    @Test
    void aPassageEndsWhenEverythingIsStraightOnTheExit() {
        for (double degrees : new double[] {-90, 60, 120}) {
            CornerFit fit =
                    fit(CornerCases.junction(degrees, 4, 4, 25, true), true, CornerCases.lowbed(12, 2.4), EXACTLY);
            int last = fit.track().size() - 1;
            double exit = Math.toRadians(degrees);
            double off = 0;
            for (int k = 0; k < 3; k++) {
                // What a bend can still move is its sine times all that hangs behind it.
                off += Math.abs(Math.sin(fit.track().headingRad(last, k) - exit))
                        * fit.combination().lengthM();
                assertEquals(0, fit.track().headingRad(0, k), 1e-12);
            }
            assertTrue(off < 0.001, degrees + ": " + off);
        }
    }

    @Test
    void anIslandBetweenTheWheelsIsSeen() {
        // Inner faces of the drive duals: 1.22 - 0.66 = 0.56 m from the middle; an island 0.5 m to either side leaves
        // 0.06 m,
        // and only to a driver who straddles it exactly.
        Geometry island = box(-2, 2, -0.5, 0.5);
        CornerFit fit = fit(
                straight(1.6, 1.6, island, Areas.none(), Ground.unknown()), false, CornerCases.lowbed(10, 0), EXACTLY);
        assertEquals(0.06, fit.tightest().valueM(), 0.003);
        assertTrue(fit.tightest().part().isTires());
        // Outer faces alone, as tires were once taken, would have 1.6 - 1.28 = 0.32 m.
        CornerFit without = fit(
                straight(1.6, 1.6, Areas.none(), Areas.none(), Ground.unknown()),
                false,
                CornerCases.lowbed(10, 0),
                new CornerFit.Wanted(0.31, 0, 0));
        assertEquals(0.32, without.tightest().valueM(), 0.011);
    }

    @Test
    void aPoleBesideTheRoadTakesItsRoomToTheBodyExactly() {
        // The widest body is 1.3 m to either side; two poles of no size 1.5 m from the middle leave 0.2 m on both
        // sides.
        Geometry poles = Areas.union(box(4.9, 4.9005, 1.5, 1.5005), box(-9.3, -9.2995, -1.5005, -1.5));
        CornerFit fit = fit(
                straight(5, 5, Areas.none(), poles, Ground.unknown()),
                false,
                CornerCases.lowbed(12, 0),
                new CornerFit.Wanted(1, 0, 0));
        Corner free = straight(5, 5, Areas.none(), Areas.none(), Ground.unknown());
        assertEquals(Against.OBSTACLE, fit.tightest().against());
        // A line between the poles that leans a little has more room than the straight one: two poles 14 m apart.
        assertTrue(fit.tightest().valueM() >= 0.2 - 0.003, fit.tightest().toString());
        assertTrue(
                fit(free, false, CornerCases.lowbed(12, 0), EXACTLY).tightest().valueM() >= 0.3);
    }

    @Test
    void wheelsAndCouplingsKeepTheirLimitsAllTheWay() {
        for (double degrees : new double[] {-120, -90, 90}) {
            TurningCombination combination = CornerCases.lowbed(11, 2.4);
            CornerFit fit = fit(CornerCases.junction(degrees, 4, 4, 12, true), true, combination, EXACTLY);
            assertTrue(fit.withinLimits(), degrees + ": " + fit.tightest());
            Track fine = Following.along(combination.chain(), fit.path(), 0.05);
            assertTrue(fine.mostSteerRad() <= combination.steerLimitRad() + 1e-6, "steer " + fine.mostSteerRad());
            for (int i = 1; i < fine.size(); i++) {
                double way = fine.stationM(i) - fine.stationM(i - 1);
                double rate = way < 1e-6 ? 0 : Math.abs(fine.steerRad(i) - fine.steerRad(i - 1)) / way;
                assertTrue(
                        rate <= combination.steerLimitRad() / combination.lockDistanceM() * 1.01,
                        degrees + ": " + rate + " at " + fine.stationM(i));
            }
            for (int k = 0; k < 2; k++) {
                assertTrue(fine.mostArticulationRad(k)
                        <= combination.articulationLimitRad().get(k) + 1e-6);
            }
        }
    }

    @Test
    void couplingsThatCannotBendAreSaidSo() {
        TurningCombination stiff = CornerCases.lowbed(12, 2.4);
        stiff = new TurningCombination(
                stiff.chain(),
                stiff.units(),
                stiff.steerLimitRad(),
                stiff.lockDistanceM(),
                List.of(Math.toRadians(8), Math.toRadians(5)));
        CornerFit fit = fit(CornerCases.junction(-90, 4, 4, 25, true), true, stiff, EXACTLY);
        // 90 degrees on lanes of 8 m, at most 8 degrees of bend: 10 m / sin 8 deg is a radius of 72 m.
        assertFalse(fit.canBeDriven() && fit.tightest().valueM() > 0);
    }

    @Test
    void aRoundaboutIsDrivenRoundItsIslandAndNeverTheShortWay() {
        for (double degrees : new double[] {-90, 0, 90}) {
            CornerFit fit =
                    fit(CornerCases.roundabout(degrees, 25, 12, 3), false, CornerCases.lowbed(12, 2.4), EXACTLY);
            assertTrue(fit.keepsSides(), degrees + "");
            assertTrue(fit.tightest().valueM() > 0.2, degrees + ": " + fit.tightest());
            double round = 0;
            for (int i = 1; i < fit.track().size(); i++) {
                round += Math.IEEEremainder(
                        Math.atan2(fit.track().leadYM(i), fit.track().leadXM(i))
                                - Math.atan2(
                                        fit.track().leadYM(i - 1), fit.track().leadXM(i - 1)),
                        2 * Math.PI);
            }
            // Driven on the right, the island is on the left: counter-clockwise, by the half turn of a straight line
            // and the turn.
            assertEquals(180 + degrees, Math.toDegrees(round), 3);
        }
    }

    @Test
    void lowPartsStayOffRaisedGround() {
        // A deck 3.8 m wide on tires 2.56 m apart: on this corner its side hangs over the return.
        Corner corner = CornerCases.junction(-90, 6, 6, 16, true);
        TurningCombination narrow = CornerCases.lowbed(12, 0);
        TurningCombination.PlanUnit trailer = narrow.units().get(1);
        TurningCombination combination = new TurningCombination(
                narrow.chain(),
                List.of(
                        narrow.units().get(0),
                        new TurningCombination.PlanUnit(
                                UnitName.TRAILER,
                                trailer.tires(),
                                List.of(new TurningCombination.Body(
                                        UnitPart.BODY.of(UnitName.TRAILER), -2.1, 12.5, 1.9)))),
                narrow.steerLimitRad(),
                narrow.lockDistanceM(),
                narrow.articulationLimitRad());
        CornerSpace space = new CornerSpace(corner, true);
        CornerFit over = CornerFit.of(space, combination, List.of(), EXACTLY);
        LowPart deck = new LowPart(1, UnitPart.BODY.of(UnitName.TRAILER), 0, 10, 1.9, LowPart.BEYOND_EDGE);
        CornerFit kept = CornerFit.of(space, combination, List.of(deck), EXACTLY);
        assertTrue(
                new Overhangs(space, over).find(List.of(deck)).get(0).isPresent(), "the free line cuts over the curb");
        double room = kept.gaps().stream()
                .filter(g -> g.against() == Against.CURB)
                .findFirst()
                .orElseThrow()
                .valueM();
        assertEquals(
                room <= 0,
                new Overhangs(space, kept).find(List.of(deck)).get(0).isPresent(),
                kept.gaps().toString());
        assertTrue(room > 0, "a line that stays off the curb exists: " + kept.gaps());
    }

    @Test
    void aDriverWhoIsLateHasNoMoreRoomThanOneWhoIsNot() {
        for (double late : new double[] {0.2, 0.6}) {
            CornerFit fit = fit(
                    CornerCases.junction(-90, 4, 4, 20, true),
                    true,
                    CornerCases.lowbed(11, 0),
                    new CornerFit.Wanted(0.35, 0.05, late));
            assertTrue(fit.roomM() <= fit.tightest().valueM());
            assertTrue(fit.lateM() == 0 || Math.abs(fit.lateM()) == late);
        }
    }

    @Test
    void aLateLineComesBackOntoItsExit() {
        TurningCombination combination = CornerCases.lowbed(11, 0);
        CornerFit fit = fit(CornerCases.junction(-90, 4, 4, 25, true), true, combination, EXACTLY);
        SteeredLine late = fit.line()
                .begun(0.6, combination.steeringLimitRad(), combination.steeringRatePerM())
                .orElseThrow();
        // Exit straight down: the same x.
        assertEquals(fit.line().end()[0], late.end()[0], 0.011);
        assertEquals(fit.line().turnRad(), late.turnRad(), 1e-9);
    }

    @Test
    void givesTheSameAnswerTwice() {
        CornerFit a = fit(CornerCases.junction(-90, 4, 4, 20, true), false, CornerCases.lowbed(12, 2.4), EXACTLY);
        CornerFit b = fit(CornerCases.junction(-90, 4, 4, 20, true), false, CornerCases.lowbed(12, 2.4), EXACTLY);
        assertEquals(a.gaps(), b.gaps());
        assertEquals(a.roomM(), b.roomM());
    }

    @Test
    void aMirroredCornerHasTheMirroredAnswerWhereLanesAreBorrowed() {
        TurningCombination combination = CornerCases.lowbed(12, 0);
        CornerFit.Wanted most = new CornerFit.Wanted(2, 0, 0);
        double left = fit(CornerCases.junction(90, 4, 4, 18, true), true, combination, most)
                .tightest()
                .valueM();
        double right = fit(CornerCases.junction(-90, 4, 4, 18, true), true, combination, most)
                .tightest()
                .valueM();
        // Both are the most that a search finds in the same area, mirrored.
        assertEquals(left, right, 0.05);
    }

    @Test
    void moreRoomIsNeverLess() {
        double last = -10;
        for (double radius : new double[] {10, 20, 30, 40}) {
            CornerFit fit = fit(
                    CornerCases.junction(-90, 4, 4, radius, false),
                    false,
                    CornerCases.lowbed(12.5, 0),
                    new CornerFit.Wanted(2, 0, 0));
            assertTrue(fit.tightest().valueM() >= last - 0.03, "radius " + radius);
            last = fit.tightest().valueM();
        }
    }
}
