package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.cresthaul.posture.AxleTracks;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CoupledCombination;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.WheelPaths;
import org.cresthaul.posture.WheelPosture;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.rig.PlanDimensions.Tires;
import org.cresthaul.rig.PlanDimensions.Widths;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.Approach;
import org.cresthaul.road.CrossSection;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.SurveyedPoint;
import org.junit.jupiter.api.Test;

/**
 * Roads whose gaps follow by hand. A lowbed with a level deck {@value #DECK_M} m over the road and {@value #WIDTH_M} m
 * wide; the tractor's underside is 0.5 m high, every wheel stands {@value #HALF_TRACK_M} m beside the middle.
 */
class AcrossRoadHandTest {
    private static final double DECK_M = 0.3;
    private static final double WIDTH_M = 2.6;
    private static final double HALF_TRACK_M = 0.95;
    private static final double EXACT_M = 1e-9;

    private static final Setting SETTING = new Setting(LiftState.DOWN, BoosterState.NONE, 0, 0, 0);

    private record Told(RoadPlace place, Clearance clearance) {
        double gapM() {
            return clearance.valueM();
        }
    }

    @Test
    void aCrossfallTakesNothing() {
        for (Told told : all((s, y) -> -0.02 * y, -1.6, 0, 1.6)) {
            assertEquals(DECK_M, told.gapM(), EXACT_M, told.place.label());
        }
    }

    @Test
    void anEdgeOnACrossfallIsAsHighAsTheMiddleOfALevelRoad() {
        // A surface 5 % up to the right over lines that are not evenly spread.
        assertEquals(
                DECK_M, least(all((s, y) -> 0.05 * y, -1.5, -0.2, 0.9, 1.7)).gapM(), EXACT_M);
    }

    @Test
    void aRailBetweenTheWheelsTakesItsHeight() {
        // 4 in high, within 0.4 m of the middle: every wheel runs on the level.
        DoubleBinaryOperator rail = (s, y) -> Math.abs(y) < 0.1 ? Math.max(0, 0.1016 - 0.25 * Math.abs(s)) : 0;
        Told told = least(all(rail, -1.6, -0.4, 0, 0.4, 1.6));
        assertEquals(DECK_M - 0.1016, told.gapM(), EXACT_M);
        assertEquals("at 0.0", told.place.name());
        assertEquals(UnitName.TRAILER, told.clearance.unit());
    }

    @Test
    void aCrownTakesWhatItStandsOverTheWheels() {
        // Wheels at 0.95 m stand 2 % of that below the crown; half a foot to a side the frame rolls, and the crown
        // comes nearer
        // to the side that rolls up.
        Told told = least(all((s, y) -> -0.02 * Math.abs(y), -2, 0, 2));
        assertEquals(DECK_M - 0.02 * HALF_TRACK_M, told.gapM(), EXACT_M);
        assertEquals(0, told.place.drivenRightM());
    }

    @Test
    void aLineThatLiesBelowItsNeighborsIsNotLookedAt() {
        List<Told> all = all((s, y) -> 0.02 * Math.abs(y), -2, 0, 2);
        assertTrue(all.stream().allMatch(t -> t.place.name().endsWith("edge")), all.toString());
        // Half a foot to the right both wheels stand as high together as on the line, and the frame rolls up to the
        // right. So the
        // left edge comes down by its arm times that, over ground that is 2 % of half a foot lower than on the line.
        double driven = AcrossRoad.DRIVEN_OFF_M;
        double ground = 0.02 * (0.5 * WIDTH_M - driven);
        double edge = DECK_M + 0.02 * HALF_TRACK_M - 0.5 * WIDTH_M * 0.02 * driven / HALF_TRACK_M;
        assertEquals(edge - ground, least(all).gapM(), EXACT_M);
    }

    @Test
    void whereACrossfallBeginsTheFrameMayRollOrNot() {
        // Level at first, then 2 % down to the right, the middle as high as before: posture along the road is level all
        // the way.
        // With some axle on the slope a frame may roll 2 %: its right edge comes down by 2 % of half its width over
        // ground that
        // is level still. Or it may not: then the left ground comes up as much.
        DoubleBinaryOperator warp = (s, y) -> -0.02 * y * Math.min(1, Math.max(0, s / 3));
        List<Told> onLine = all(warp, -1.6, 0, 1.6).stream()
                .filter(t -> t.place.drivenRightM() == 0)
                .toList();
        double hand = DECK_M - 0.02 * 0.5 * WIDTH_M;
        assertEquals(hand, at(onLine, "right edge"), EXACT_M);
        assertEquals(hand, at(onLine, "left edge"), EXACT_M);
    }

    @Test
    void whatLiesOutsideOfTheLinesIsTakenAsHighAsThey() {
        // Lines 1 m to either side: beyond them nobody looked, and the search goes on level. The right one is a curb's
        // top.
        DoubleBinaryOperator curb =
                (s, y) -> y > 0.99 && Math.abs(s) < 0.5 ? 0.1 * Math.max(0, 1 - 2 * Math.abs(s)) : 0;
        List<Told> onLine = all(curb, -1.1, -1, 0.97, 1.1).stream()
                .filter(t -> t.place.drivenRightM() == 0)
                .toList();
        assertEquals(DECK_M - 0.1, at(onLine, "right edge"), 1e-6);
    }

    @Test
    void everyAxleStandsOnItsOwnTrack() {
        // 10 % down to both sides from the middle, level along: each axle's middle is 10 % of its half track below its
        // radius.
        Tires steer = new Tires(0.4, 0.3);
        Tires dual = new Tires(0.6, 0.3);
        LevelStance stance = stance(new Widths(2.5, 2.4, dual), steer, new Widths(WIDTH_M, 2.6, dual));
        AxleTracks tracks = AxleTracks.of(stance.plan().orElseThrow());
        assertEquals(1.0, tracks.steerM(), EXACT_M);
        assertEquals(0.9, tracks.driveM(), EXACT_M);
        assertEquals(1.0, tracks.trailerM(), EXACT_M);
        CrossSection road = road((s, y) -> -0.1 * Math.abs(y), -2, 0, 2);
        CombinationShape shape = new CombinationShape(stance, LiftState.DOWN, BoosterState.NONE);
        PostureSolver solver = new PostureSolver(
                new CoupledCombination(shape, SETTING, Leveling.HELD), new WheelPaths(road, tracks, 0));
        List<WheelPosture> wheels = solver.at(0).wheels();
        assertEquals(0.5 - 0.1, wheels.get(0).zM(), 1e-9);
        assertEquals(0.5 - 0.09, wheels.get(1).zM(), 1e-4);
        assertEquals(0.4 - 0.1, wheels.get(3).zM(), 1e-4);
    }

    @Test
    void morePlacesAreLookedAtWhereTheRoadIsUnevenAcross() {
        assertEquals(3, ways((s, y) -> -0.02 * y, -1.6, 0, 1.6));
        // 8 % across on the left strip at one place only: 0.305 m / 4 · 8 % / 8 = 0.8 mm left between two of nine ways.
        assertEquals(9, ways((s, y) -> y < -1 && Math.abs(s) < 1 ? 0.128 : 0, -1.6, 0, 1.6));
    }

    @Test
    void manyLinesAtAnEdgeAreLookedAtFromBothSidesOfIt() {
        // Ribs 2 cm apart about the right edge, each 5 cm high at one place: more crossings than are driven one by one.
        // The wheels,
        // 0.95 m beside the middle, are on the level still half a foot off.
        double[] offsets = DoubleStream.concat(
                        DoubleStream.of(-1.6, 0), IntStream.rangeClosed(0, 28).mapToDouble(k -> 1.16 + 0.01 * k))
                .toArray();
        DoubleBinaryOperator ribs = (s, y) -> s == 0 && y > 1 && Math.round(100 * y) % 2 == 1 ? 0.05 : 0;
        List<Told> all = all(ribs, offsets);
        assertEquals(
                3,
                all.stream().mapToDouble(t -> t.place.drivenRightM()).distinct().count());
        assertEquals(DECK_M - 0.05, least(all).gapM(), EXACT_M);
        // Half a foot farther right the edge comes over ribs that are outside of it now.
        double farthest = all.stream()
                .filter(t -> t.place.drivenRightM() == 0)
                .mapToDouble(t -> t.place.rightM(UnitName.TRAILER))
                .max()
                .orElseThrow();
        assertEquals(1.43, farthest, EXACT_M);
        // Few of them, and every way at which the edge crosses one is driven; none counts that is outside.
        List<Told> few = all(ribs, -1.6, 0, 1.16, 1.29, 1.3, 1.35, 1.44);
        assertTrue(few.stream().anyMatch(t -> Math.abs(t.place.drivenRightM() - (1.35 - 0.5 * WIDTH_M)) < EXACT_M));
        assertTrue(few.stream().allMatch(t -> t.place.rightM(UnitName.TRAILER) <= 0.5 * WIDTH_M + EXACT_M));
    }

    private static long ways(DoubleBinaryOperator surface, double... offsets) {
        return all(surface, offsets).stream()
                .mapToDouble(t -> t.place.drivenRightM())
                .distinct()
                .count();
    }

    private static double at(List<Told> all, String name) {
        return all.stream()
                .filter(t -> t.place.name().equals(name))
                .mapToDouble(Told::gapM)
                .min()
                .orElseThrow();
    }

    private static Told least(List<Told> all) {
        return all.stream().min(Comparator.comparingDouble(Told::gapM)).orElseThrow();
    }

    private static List<Told> all(DoubleBinaryOperator surface, double... offsets) {
        Tires tires = new Tires(0.5, 0.3);
        Widths body = new Widths(WIDTH_M, 2 * HALF_TRACK_M + 0.5, tires);
        LevelStance stance = stance(body, tires, body);
        List<Told> told = new ArrayList<>();
        for (RoadPlace place : new AcrossRoad(road(surface, offsets), stance).underUnits()) {
            Clearance least = new PassageSearch(new Passage(stance, place, -25, 25), SETTING, Leveling.HELD)
                    .least(Optional.empty());
            assertTrue(least.proven(), place.label());
            told.add(new Told(place, least));
        }
        return told;
    }

    private static CrossSection road(DoubleBinaryOperator surface, double... offsets) {
        List<RoadProfile> lines = new ArrayList<>();
        for (double y : offsets) {
            List<SurveyedPoint> points = new ArrayList<>();
            for (int i = -50; i <= 50; i++) {
                points.add(new SurveyedPoint(0.5 * i, surface.applyAsDouble(0.5 * i, y)));
            }
            lines.add(RoadProfile.of(
                    "at " + y, OptionalDouble.of(y), points, Approach.declared(0, 0), Approach.declared(0, 0)));
        }
        return CrossSection.of(lines).orElseThrow();
    }

    private static LevelStance stance(Widths tractor, Tires steerTires, Widths trailer) {
        PlanDimensions plan = new PlanDimensions(
                tractor,
                0.6,
                3,
                steerTires,
                Optional.empty(),
                OptionalDouble.empty(),
                trailer,
                OptionalDouble.empty(),
                1,
                Optional.empty(),
                OptionalDouble.empty());
        Tractor in = new Tractor(
                new Axle(0, 0.5),
                new AxleGroup(List.of(new Axle(-4.5, 0.5), new Axle(-5.8, 0.5)), 0.1, 0.1),
                new FramePoint(-5, 1.2),
                outline(-6.6, 0.5, 1.2, 0.5),
                outline(-6.6, 1.1, 1.2, 3));
        Trailer behind = new Trailer(
                0,
                new FramePoint(-3, 0.6, "deck front"),
                new FramePoint(-10, 0.6, "deck rear"),
                new AxleGroup(List.of(new Axle(-11.5, 0.4), new Axle(-12.8, 0.4)), 0.1, 0.1),
                0,
                LiftAxles.NONE,
                0.2,
                0.1,
                0,
                outline(-13.5, 0.5, -10.2, 0.5, -10.1, DECK_M, -3.1, DECK_M, -3, 1.1, 0.5, 1.2),
                outline(-13.5, 1, 0.5, 1.5),
                List.of(),
                Optional.empty());
        return new LevelStance("by hand", in, behind, Optional.empty()).withPlan(plan);
    }

    private static Outline outline(double... xh) {
        List<FramePoint> points = new ArrayList<>();
        for (int i = 0; i < xh.length; i += 2) {
            points.add(new FramePoint(xh[i], xh[i + 1]));
        }
        return new Outline(points);
    }
}
