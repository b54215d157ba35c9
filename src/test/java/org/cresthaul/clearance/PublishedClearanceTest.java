package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.cresthaul.posture.CombinationPosture;
import org.cresthaul.posture.Pose;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.WheelPosture;
import org.cresthaul.posture.WheelState;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.Approach;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Ground and overhead clearance against published values and rules. Beside each check stands its source, and whether
 * the number was read there, is from memory, or was computed from the published formula independently of this program.
 *
 * <p>Published rules put the ends of the wheelbase on the ground. Our wheels have a radius r: on a grade of slope m a
 * wheel's center is r √(1 + m²) above the ground below it instead of r. Each test allows for that in the open.
 *
 * <p>The search answers within {@code provenWithinM}, coarser than some tolerances here. So the tests take the position
 * the search found, walk from there to the very lowest point of the gap with the engine's own postures, hold that value
 * to the published one, and hold the search to its promise against it.
 */
class PublishedClearanceTest {
    private static final double INCH = 0.0254;
    private static final double FOOT = 0.3048;
    private static final double R = TwoWheelBody.RADIUS_M;

    // ---------------------------------------------------------------- ground

    /**
     * G1. Eck and Kang, Transportation Research Record 1356 (1992): wheelbase 36 ft, 5 in clearance, 2.3 % each side,
     * just passes (read there). Hump under mid-wheelbase A L / 4 = 4.968 in (computed from the formula).
     */
    @Test
    void g1PeakOfTwoGradesUnderMidWheelbase() {
        double m = 0.023;
        Tightest tightest = Tightest.of(TwoWheelBody.of(36 * FOOT, 5 * INCH, 2), peak(m));
        double lossIn = (5 * INCH - tightest.gapM() + standingOnGradeM(m)) / INCH;
        assertEquals(4.968, lossIn, 0.005);
        assertTrue(tightest.gapM() > 0, "just passes");
        assertEquals(18 * FOOT, tightest.steerM(), 0.001, "wheels astride the peak");
        assertTrue(
                Tightest.of(TwoWheelBody.of(36 * FOOT, 5 * INCH, 2), peak(0.0462 / 2))
                                .gapM()
                        > 0,
                "A below 4.63 %");
        assertTrue(
                Tightest.of(TwoWheelBody.of(36 * FOOT, 5 * INCH, 2), peak(0.0464 / 2))
                                .gapM()
                        < 0,
                "A above 4.63 %");
    }

    /** G2. A_max = 4 h / L (published formula, value computed from it): 40 ft, 6 in clearance, 5.000 %. */
    @Test
    void g2LargestChangeOfGrade() {
        double largest = crossing(0.045, 0.055, a -> {
            double m = a / 2;
            return Tightest.of(TwoWheelBody.of(40 * FOOT, 6 * INCH - standingOnGradeM(m), 2), peak(m))
                    .gapM();
        });
        assertEquals(5.000, 100 * largest, 0.001);
    }

    /**
     * G3. A crossing at the handbook limit: plane 9.167 ft wide (gauge 56.5 in, two 2.75 in heads, 2 ft each side),
     * then 3 in fall over the next 28 ft. Profile rule: AASHTO, read in TxDOT Roadway Design Manual 13.11.2 and
     * Highway-Rail Crossing Handbook, 3rd edition, chapter 2. Worst loss g (2L − p)² / (8L) (computed from the
     * geometry); centered the loss for 36 ft is only 1.438 in.
     */
    @ParameterizedTest
    @CsvSource({"36, 1.469", "50, 2.210"})
    void g3WorstPositionOnACrossingAtTheHandbookLimit(double wheelbaseFt, double worstLossIn) {
        double halfPlaneM = 9.167 * FOOT / 2;
        double fallToM = halfPlaneM + 28 * FOOT;
        double slope = 3 * INCH / (28 * FOOT);
        RoadProfile crossing = profile(
                List.of(
                        new SurveyedPoint(-fallToM, -3 * INCH),
                        new SurveyedPoint(-halfPlaneM, 0),
                        new SurveyedPoint(halfPlaneM, 0),
                        new SurveyedPoint(fallToM, -3 * INCH)),
                slope,
                -slope);
        double wheelbaseM = wheelbaseFt * FOOT;
        TwoWheelBody body = TwoWheelBody.of(wheelbaseM, 5 * INCH, 2);
        Tightest tightest = Tightest.of(body, crossing);
        double lossIn = (5 * INCH - tightest.gapM() + standingOnGradeM(slope)) / INCH;
        assertEquals(worstLossIn, lossIn, 0.01);
        // A quarter of the plane off the middle, on one side or the other.
        double offMiddleM = Math.abs(tightest.steerM() - wheelbaseM / 2);
        assertEquals(halfPlaneM / 2, offMiddleM, 0.005);
        assertTrue(tightest.gapM() > 0, "36 ft and 50 ft pass with 5 in");
        if (wheelbaseFt == 36) {
            double centeredIn =
                    (5 * INCH - Tightest.gapM(body, crossing, wheelbaseM / 2) + standingOnGradeM(slope)) / INCH;
            assertEquals(1.438, centeredIn, 0.01);
            assertTrue(lossIn > centeredIn + 0.02, "centering the truck would hide the worst");
        }
    }

    /**
     * G4. 9 in fall at 30 ft both sides as straight 2.5 %, no plane. Limit: a US Army railway maintenance text (read
     * there); 5.40 and 6.00 in computed from A L / 4.
     */
    @ParameterizedTest
    @CsvSource({"36, 5.40", "40, 6.00"})
    void g4StraightFallsWithoutAPlane(double wheelbaseFt, double expectedLossIn) {
        double m = 9 * INCH / (30 * FOOT);
        Tightest tightest = Tightest.of(TwoWheelBody.of(wheelbaseFt * FOOT, 5 * INCH, 2), peak(m));
        assertEquals(expectedLossIn, (5 * INCH - tightest.gapM() + standingOnGradeM(m)) / INCH, 0.01);
        assertTrue(tightest.gapM() < 0, "5 in drags");
    }

    /** G5. Crest curve, the wheelbase wholly on it: loss L² / (800 K) (vertical-curve geometry, computed): 6.000 in. */
    @Test
    void g5LossOnACrestCurve() {
        assertEquals(6.000, crestLossM(40, 4, 10) / INCH, 0.001);
    }

    /** G5. The same geometry solved for K: 36 ft with 5 in needs K = 3.888 (computed). */
    @Test
    void g5LeastCurveForAClearance() {
        double least = crossing(3.5, 4.5, k -> 5 * INCH - crestLossM(36, k, 5));
        assertEquals(3.888, least, 0.001);
    }

    /**
     * How much of the clearance a crest takes, with the wheels touching the ground {@code wheelbaseFt} apart: on a
     * slope of angle α the center stands r sin α further out than where the wheel touches and r cos α higher than
     * there, so the axles are drawn 2 r sin α further apart and the level height r (1 − cos α) is given back.
     */
    private static double crestLossM(double wheelbaseFt, double kFeetPerPercent, double clearanceIn) {
        double halfM = wheelbaseFt * FOOT / 2;
        double perM = 1 / (200 * kFeetPerPercent * FOOT);
        double angle = Math.atan(2 * perM * halfM);
        List<SurveyedPoint> points = new ArrayList<>();
        // 0.1 ft steps: the chords lie within 0.00005 in of the curve.
        int steps = (int) Math.round((wheelbaseFt / 2 + 5) / 0.1);
        for (int i = -steps; i <= steps; i++) {
            double s = i * 0.1 * FOOT;
            points.add(new SurveyedPoint(s, -perM * s * s));
        }
        double endSlope = 2 * perM * steps * 0.1 * FOOT;
        TwoWheelBody body = TwoWheelBody.of(2 * (halfM + R * Math.sin(angle)), clearanceIn * INCH, 2);
        Tightest tightest = Tightest.of(body, profile(points, endSlope, -endSlope));
        return clearanceIn * INCH - tightest.gapM() - R * (1 - Math.cos(angle));
    }

    /**
     * G7. Three independent elevations, hump at mid-span: σ_h = 1.2247 σ_z (error propagation, computed), so 10 cm give
     * 12.2 cm. (10 cm is the vertical accuracy of QL2 lidar in USGS 3DEP, from memory.) Here the clearance itself is
     * differenced with each elevation moved; and the factor the verdict is built on is held to the same number.
     */
    @Test
    void g7ThreeElevationsCarryIntoTheClearance() {
        double halfM = 18 * FOOT;
        TwoWheelBody body = TwoWheelBody.of(2 * halfM, 5 * INCH, 2);
        double sumOfSquares = 0;
        for (int moved = 0; moved < 3; moved++) {
            double raisedM = Tightest.gapM(body, hump(halfM, moved, 0.05), halfM);
            double loweredM = Tightest.gapM(body, hump(halfM, moved, -0.05), halfM);
            double rate = (raisedM - loweredM) / 0.1;
            sumOfSquares += rate * rate;
        }
        assertEquals(12.2, 10 * Math.sqrt(sumOfSquares), 0.1);
        double factor = new Leverage(body.stance(), TwoWheelBody.SETTING).surveyFactor(UnitName.TRACTOR, -halfM);
        assertEquals(12.2, 10 * factor, 0.1);
        assertEquals(1.2247, factor, 0.0001);
    }

    private static RoadProfile hump(double halfM, int moved, double byM) {
        return profile(
                List.of(
                        new SurveyedPoint(-halfM, moved == 0 ? byM : 0),
                        new SurveyedPoint(0, 0.1 + (moved == 1 ? byM : 0)),
                        new SurveyedPoint(halfM, moved == 2 ? byM : 0)),
                0,
                0);
    }

    // -------------------------------------------------------------- overhead

    /**
     * G6. UK Traffic Signs Manual chapter 4, §7.10: headroom on a sag is measured from a 25 m chord (read there); chord
     * rise computed from the radius. The truck is the chord, its load line as long as the wheelbase; the structure is a
     * meter wide, at the bottom of the sag, parallel to the road. (Higher up the sag the truck stands on a grade, where
     * its top is h / cos θ instead of h above the road: 0.8 mm at R = 1000 m, not part of the published rule.)
     */
    @ParameterizedTest
    @CsvSource({"1000, 78.1", "2000, 39.1", "6000, 13.0"})
    void g6ChordRiseOnASag(double radiusM, double riseMm) {
        double halfM = 12.5;
        double heightM = 4;
        double headroomM = 4.5;
        List<SurveyedPoint> road = new ArrayList<>();
        List<SurveyedPoint> over = new ArrayList<>();
        for (int i = -160; i <= 160; i++) {
            double s = i * 0.25;
            double z = s * s / (2 * radiusM);
            road.add(new SurveyedPoint(s, z));
            if (Math.abs(s) <= 0.5) {
                over.add(new SurveyedPoint(s, z + headroomM));
            }
        }
        double endSlope = 40 / radiusM;
        // The wheels touch 25 m apart: on the slope of angle α a center stands r sin α further in and r cos α higher.
        double angle = Math.atan(halfM / radiusM);
        TwoWheelBody body = TwoWheelBody.of(2 * (halfM - R * Math.sin(angle)), 1, heightM);
        Tightest tightest = Tightest.of(body, profile(road, -endSlope, endSlope), Soffit.of(over));
        double rise = headroomM - heightM - tightest.gapM() + R * (1 - Math.cos(angle));
        assertEquals(riseMm, 1000 * rise, 0.1);
    }

    /**
     * O1. A worked example published at csr.engine.ac.nz/encuentra/15343711 (read there): sag −2 % / +2 %, K = 79,
     * sight distance 360 ft; curve 316 ft, offset at the intersection point 1.58 ft, so 16 ft of clearance puts the
     * soffit 17.58 ft above that point (printed 1.6 and 17.6), ±0.02 ft.
     */
    @Test
    void o1SixteenFeetUnderASoffitOnASag() {
        // A body too short for the curve to matter, 16 ft high, under a soffit a foot long.
        TwoWheelBody body = TwoWheelBody.of(2 * FOOT, 1, 16 * FOOT);
        Soffit soffit = Soffit.of(
                List.of(new SurveyedPoint(-0.5 * FOOT, 17.58 * FOOT), new SurveyedPoint(0.5 * FOOT, 17.58 * FOOT)));
        assertEquals(0, Tightest.of(body, sag316()).gapM() / FOOT - 1 / FOOT, 0.02, "stands on the road");
        assertEquals(0, Tightest.of(body, sag316(), soffit).gapM() / FOOT, 0.02);
        assertEquals(1.58, sag316().heightAt(0) / FOOT, 0.02);
    }

    /**
     * O1, sight line: the same example prints a sight clearance of 7.02 ft above the road (read there as 7). The sight
     * line is a chord of 360 ft, 5 ft above the road at mid-length: the mean of an eye at 8 ft and an object at 2 ft
     * (AASHTO, A Policy on Geometric Design of Highways and Streets, sag curves at undercrossings, from memory). Its
     * formula where the sight distance S is more than the curve's length L, L = 2 S - 800 (C - 5) / A, solved for the
     * clearance C, gives the same. A 5 ft high body on a 360 ft wheelbase is that chord.
     */
    @Test
    void o1SightLineAcrossASag() {
        assertEquals(7.02, 5 + (2 * 360 - 316) * 4 / 800.0, 0.02, "the design policy's formula");
        TwoWheelBody body = TwoWheelBody.of(360 * FOOT, 1, 5 * FOOT);
        double soffitM = (1.58 + 7.02) * FOOT;
        Soffit soffit =
                Soffit.of(List.of(new SurveyedPoint(-0.5 * FOOT, soffitM), new SurveyedPoint(0.5 * FOOT, soffitM)));
        assertEquals(0, Tightest.of(body, sag316(), soffit).gapM() / FOOT, 0.02);
    }

    /** Heights above the intersection point of two 2 % grades joined by a 316 ft curve (79 ft per percent times 4). */
    private static RoadProfile sag316() {
        double lengthM = 316 * FOOT;
        List<SurveyedPoint> points = new ArrayList<>();
        int steps = 316;
        for (int i = 0; i <= steps; i++) {
            double s = lengthM * (i - steps / 2.0) / steps;
            points.add(new SurveyedPoint(s, 0.04 * lengthM / 8 + 0.04 * s * s / (2 * lengthM)));
        }
        return profile(points, -0.02, 0.02);
    }

    // -------------------------------------------------- notches and lift axle

    /**
     * W10 (common practice, no source): a notch step is about 3/4 in, five notches; the secondary valve, empty with the
     * lift axle up, about 1.5 in higher; the lifted tire 3.5 to 4 in above the ground. An invented empty lowbed,
     * standing level: what is set is what a tape would find.
     */
    @Test
    void w10NotchesAndLiftAxleShowAsATapeFindsThem() {
        LevelStance stance = emptyLowbed();
        Trailer trailer = stance.trailer();
        double lastFrontM = Double.NaN;
        for (int notch = -2; notch <= 2; notch++) {
            Setting setting = new Setting(LiftState.DOWN, BoosterState.NONE, 0.75 * INCH * notch, 0, 0);
            for (Leveling leveling : Leveling.values()) {
                Pose pose = new PostureSolver(stance, setting, leveling, RoadProfile.level())
                        .at(0)
                        .trailer();
                double frontM = pose.worldZM(trailer.deckFront());
                assertEquals(0.75 * notch, (frontM - trailer.deckFront().hM()) / INCH, 0.01, "notch " + notch);
                if (leveling == Leveling.SETTLED) {
                    if (notch > -2) {
                        assertEquals(0.75, (frontM - lastFrontM) / INCH, 0.01);
                    }
                    lastFrontM = frontM;
                }
            }
        }
        Setting twoAxles = new Setting(LiftState.UP, BoosterState.NONE, 0, 0, 0);
        for (Leveling leveling : Leveling.values()) {
            CombinationPosture standing = new PostureSolver(stance, twoAxles, leveling, RoadProfile.level()).at(0);
            Axle valve = trailer.axles().axles().get(trailer.valveAxle());
            double frameM = standing.trailer().worldZM(valve.xM(), 1);
            assertEquals(1.5, (frameM - 1) / INCH, 0.01, "rear height over the valve axle");
            WheelPosture lifted = standing.wheels().stream()
                    .filter(w -> w.state() == WheelState.LIFTED)
                    .findFirst()
                    .orElseThrow();
            double gapIn = (lifted.zM() - lifted.radiusM()) / INCH;
            assertTrue(gapIn >= 3.5 && gapIn <= 4, "lifted tire " + gapIn + " in above the ground");
        }
    }

    /** Invented: three trailer axles, the last of them a lift axle, raised tire 2 in clear before the rear goes up. */
    private static LevelStance emptyLowbed() {
        Tractor tractor = new Tractor(
                new Axle(0, 0.5),
                new AxleGroup(List.of(new Axle(-5, 0.5), new Axle(-6.35, 0.5)), 0.08, 0.1),
                new FramePoint(-5.5, 1.2),
                TwoWheelBody.line(-7, 1, 0.3),
                TwoWheelBody.line(-7, 1, 3));
        Trailer trailer = new Trailer(
                0,
                new FramePoint(-3, 0.6),
                new FramePoint(-10.5, 0.6),
                new AxleGroup(List.of(new Axle(-11.8, 0.42), new Axle(-13.2, 0.42), new Axle(-14.6, 0.42)), 0.1, 0.12),
                0,
                LiftAxles.one(2, 2 * INCH, 1.5 * INCH),
                0.25,
                0.08,
                0,
                TwoWheelBody.line(-15.2, 0.4, 0.3),
                TwoWheelBody.line(-15.2, 0.4, 1),
                List.of(),
                Optional.empty());
        return new LevelStance("empty", tractor, trailer, Optional.empty());
    }

    // ---------------------------------------------------------------- tools

    /** How much higher than on the level a wheel's center stands over the ground below it on a grade of slope m. */
    private static double standingOnGradeM(double m) {
        return R * (Math.sqrt(1 + m * m) - 1);
    }

    private static RoadProfile profile(List<SurveyedPoint> points, double gradeBefore, double gradeAfter) {
        return RoadProfile.of("line", points, Approach.declared(gradeBefore, 0), Approach.declared(gradeAfter, 0));
    }

    private static RoadProfile peak(double m) {
        return profile(
                List.of(new SurveyedPoint(-30, -30 * m), new SurveyedPoint(0, 0), new SurveyedPoint(30, -30 * m)),
                m,
                -m);
    }

    /** Where a steadily rising or falling function crosses zero. */
    private static double crossing(double from, double to, DoubleUnaryOperator f) {
        boolean rising = f.applyAsDouble(to) > 0;
        assertTrue(rising != f.applyAsDouble(from) > 0, "no crossing between " + from + " and " + to);
        double lo = from;
        double hi = to;
        for (int i = 0; i < 30; i++) {
            double middle = (lo + hi) / 2;
            if (f.applyAsDouble(middle) > 0 == rising) {
                hi = middle;
            } else {
                lo = middle;
            }
        }
        return (lo + hi) / 2;
    }
}
