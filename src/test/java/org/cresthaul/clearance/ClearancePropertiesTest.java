package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.random.RandomGenerator;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.cresthaul.posture.CombinationPosture;
import org.cresthaul.posture.PlainGround;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.posture.RandomRigs;
import org.cresthaul.posture.Redrawn;
import org.cresthaul.posture.WheelPosture;
import org.cresthaul.posture.WheelState;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;
import org.junit.jupiter.api.Test;

/**
 * What must hold for every combination on every road, whatever the numbers are. Two answers for one passage need not be
 * the same double: each promises that the truth lies between its value less {@code provenWithinM} and its value, so two
 * that mean the same passage must overlap.
 */
class ClearancePropertiesTest {
    private static final int CASES = 200;
    /** Rounding of heights at datums up to a few kilometers. */
    private static final double ROUNDING_M = 1e-8;
    /** Of the engine against the independent solver. */
    private static final double PROMISED_M = 0.001;

    private static Stream<RandomCase> cases() {
        System.out.println("properties, seed " + RandomCase.SEED);
        return LongStream.range(0, CASES).mapToObj(i -> RandomCase.of(RandomCase.SEED + 1_000_000 + i));
    }

    private static Clearance ground(RandomCase c, LevelStance stance, RoadProfile profile) {
        return GroundClearance.least(stance, c.setting(), c.leveling(), profile);
    }

    private static Optional<Clearance> overhead(RandomCase c, LevelStance stance, RoadProfile profile, Soffit soffit) {
        return OverheadClearance.least(stance, c.setting(), c.leveling(), profile, soffit);
    }

    private static void assertSameTruth(String what, Clearance a, Clearance b) {
        assertTrue(
                lowestM(a) <= b.valueM() + ROUNDING_M && lowestM(b) <= a.valueM() + ROUNDING_M,
                () -> what + ": " + a + " and " + b);
    }

    private static void assertSameTruth(String what, Optional<Clearance> a, Optional<Clearance> b) {
        assertEquals(a.isPresent(), b.isPresent(), what);
        a.ifPresent(clearance -> assertSameTruth(what, clearance, b.orElseThrow()));
    }

    private static void assertNotLower(String what, Clearance before, Clearance after) {
        assertTrue(after.valueM() >= lowestM(before) - ROUNDING_M, () -> what + ": " + before + ", then " + after);
    }

    private static double lowestM(Clearance clearance) {
        return clearance.proven() ? clearance.valueM() - clearance.provenWithinM() : Double.NEGATIVE_INFINITY;
    }

    // ------------------------------------------------------------ the road's description

    @Test
    void movingTheDatumChangesNothing() {
        cases().forEach(c -> {
            double byM = c.random().nextDouble(-500, 3000);
            UnaryOperator<SurveyedPoint> move = p -> new SurveyedPoint(p.distanceM(), p.elevationM() + byM);
            RoadProfile moved = Redrawn.mapped(c.profile(), move);
            assertSameTruth(c + " ground", ground(c, c.stance(), c.profile()), ground(c, c.stance(), moved));
            assertSameTruth(
                    c + " overhead",
                    overhead(c, c.stance(), c.profile(), c.soffit()),
                    overhead(c, c.stance(), moved, Redrawn.mapped(c.soffit(), move)));
            assertSamePosture(c, c.stance(), c.profile(), moved, 0, byM);
        });
    }

    @Test
    void movingTheChainageOriginChangesNothing() {
        cases().forEach(c -> {
            double byM = c.random().nextDouble(-2000, 60_000);
            UnaryOperator<SurveyedPoint> move = p -> new SurveyedPoint(p.distanceM() + byM, p.elevationM());
            RoadProfile moved = Redrawn.mapped(c.profile(), move);
            assertSameTruth(c + " ground", ground(c, c.stance(), c.profile()), ground(c, c.stance(), moved));
            assertSameTruth(
                    c + " overhead",
                    overhead(c, c.stance(), c.profile(), c.soffit()),
                    overhead(c, c.stance(), moved, Redrawn.mapped(c.soffit(), move)));
            assertSamePosture(c, c.stance(), c.profile(), moved, byM, 0);
        });
    }

    @Test
    void splittingSegmentsChangesNothing() {
        cases().forEach(c -> {
            RoadProfile split =
                    Redrawn.withPoints(c.profile(), Redrawn.split(c.profile().points(), c.random(), 3));
            Soffit splitSoffit = Soffit.of(Redrawn.split(Redrawn.points(c.soffit()), c.random(), 3));
            assertTrue(split.points().size() > c.profile().points().size());
            assertSameTruth(c + " ground", ground(c, c.stance(), c.profile()), ground(c, c.stance(), split));
            assertSameTruth(
                    c + " overhead",
                    overhead(c, c.stance(), c.profile(), c.soffit()),
                    overhead(c, c.stance(), split, splitSoffit));
            assertSamePosture(c, c.stance(), c.profile(), split, 0, 0);
        });
    }

    private static void assertSamePosture(
            RandomCase c, LevelStance stance, RoadProfile before, RoadProfile after, double byX, double byZ) {
        PostureSolver one = new PostureSolver(stance, c.setting(), c.leveling(), before);
        PostureSolver other = new PostureSolver(stance, c.setting(), c.leveling(), after);
        for (int k = 0; k < 5; k++) {
            double steerM = c.random().nextDouble(before.startM() - 5, before.endM() + 25);
            List<WheelPosture> a = one.at(steerM).wheels();
            List<WheelPosture> b = other.at(steerM + byX).wheels();
            for (int i = 0; i < a.size(); i++) {
                assertEquals(a.get(i).xM() + byX, b.get(i).xM(), 1e-7, c.toString());
                assertEquals(a.get(i).zM() + byZ, b.get(i).zM(), 1e-7, c.toString());
            }
        }
    }

    // ------------------------------------------------------------ the rig's description

    @Test
    void movingAUnitsOriginChangesNothing() {
        cases().forEach(c -> {
            LevelStance moved = Redrawn.shifted(
                    c.stance(),
                    c.random().nextDouble(-30, 30),
                    c.random().nextDouble(-30, 30),
                    c.random().nextDouble(-30, 30));
            assertSameTruth(c + " ground", ground(c, c.stance(), c.profile()), ground(c, moved, c.profile()));
            assertSameTruth(
                    c + " overhead",
                    overhead(c, c.stance(), c.profile(), c.soffit()),
                    overhead(c, moved, c.profile(), c.soffit()));
            PostureSolver one = new PostureSolver(c.stance(), c.setting(), c.leveling(), c.profile());
            PostureSolver other = new PostureSolver(moved, c.setting(), c.leveling(), c.profile());
            double steerM =
                    c.random().nextDouble(c.profile().startM(), c.profile().endM() + 20);
            assertEquals(
                    one.at(steerM).trailer().pitchRad(),
                    other.at(steerM).trailer().pitchRad(),
                    1e-8);
        });
    }

    /** What can be mirrored is a rigid body on two equal axles: it does not know which end leads. */
    @Test
    void aMirroredBodyOnAMirroredRoadClearsTheSame() {
        cases().forEach(c -> {
            RandomGenerator random = c.random();
            double wheelbaseM = random.nextDouble(4, 14);
            List<FramePoint> rearToFront = new ArrayList<>();
            double x = -wheelbaseM - 1;
            while (x < 1) {
                rearToFront.add(new FramePoint(x, random.nextDouble(0.15, 0.6)));
                if (random.nextInt(3) == 0) {
                    rearToFront.add(new FramePoint(x, random.nextDouble(0.15, 0.6)));
                }
                x += random.nextDouble(0.3, 3);
            }
            rearToFront.add(new FramePoint(1, 0.5));
            List<FramePoint> frontToRear = new ArrayList<>();
            for (FramePoint p : rearToFront) {
                frontToRear.add(0, new FramePoint(-wheelbaseM - p.xM(), p.hM()));
            }
            Outline top = TwoWheelBody.line(-wheelbaseM - 1, 1, 3);
            RoadProfile there = c.profile();
            RoadProfile back = Redrawn.mirrored(there);
            Clearance one = GroundClearance.least(
                    TwoWheelBody.of(wheelbaseM, new Outline(rearToFront), top).stance(),
                    TwoWheelBody.SETTING,
                    c.leveling(),
                    there);
            Clearance other = GroundClearance.least(
                    TwoWheelBody.of(wheelbaseM, new Outline(frontToRear), top).stance(),
                    TwoWheelBody.SETTING,
                    c.leveling(),
                    back);
            assertEquals(UnitName.TRACTOR, one.unit());
            assertSameTruth(c + " mirrored", one, other);
        });
    }

    /** Settings share the ground, the positions and the tractor; none may see what another left behind. */
    @Test
    void sharingAPassageBetweenSettingsChangesNothing() {
        cases().limit(60).forEach(c -> {
            RoadProfile road = c.profile();
            Passage shared = new Passage(
                    c.stance(),
                    road,
                    Math.min(road.startM(), c.soffit().startM()),
                    Math.max(road.endM(), c.soffit().endM()));
            for (int k = 0; k < 6; k++) {
                Setting setting = RandomRigs.setting(c.random(), c.stance());
                Leveling leveling = RandomRigs.leveling(c.random(), setting);
                assertSameTruth(
                        c + " ground",
                        GroundClearance.least(c.stance(), setting, leveling, road),
                        GroundClearance.least(shared, setting, leveling));
                assertSameTruth(
                        c + " overhead",
                        OverheadClearance.least(c.stance(), setting, leveling, road, c.soffit()),
                        OverheadClearance.least(shared, setting, leveling, c.soffit()));
            }
        });
    }

    // ------------------------------------------------------------ more room, less room

    @Test
    void loweringTheRoadBetweenTheWheelsMovesNothingAndNeverLowersTheClearance() {
        int[] lowered = {0};
        int[] opened = {0};
        cases().forEach(c -> {
            RoadProfile road =
                    Redrawn.withPoints(c.profile(), Redrawn.split(c.profile().points(), c.random(), 12));
            double steerM = c.random().nextDouble(road.startM(), road.endM() + 20);
            CombinationPosture before = new PostureSolver(c.stance(), c.setting(), c.leveling(), road).at(steerM);
            List<SurveyedPoint> points = new ArrayList<>(road.points());
            boolean any = false;
            // The end segments stay: undeclared ground goes on at their slopes.
            for (int i = 2; i + 2 < points.size(); i++) {
                double from = points.get(i - 1).distanceM();
                double to = points.get(i + 1).distanceM();
                boolean underAWheel = before.wheels().stream()
                        .anyMatch(w -> w.xM() + w.radiusM() + 0.05 > from && w.xM() - w.radiusM() - 0.05 < to);
                SurveyedPoint p = points.get(i);
                double least = Math.min(p.distanceM() - from, to - p.distanceM());
                // Never so much that the road would be steeper than a profile may be.
                double byM = 0.02 * least;
                boolean flat =
                        Math.abs(slope(points.get(i - 1), p)) < 0.4 && Math.abs(slope(p, points.get(i + 1))) < 0.4;
                if (!underAWheel && flat) {
                    points.set(i, new SurveyedPoint(p.distanceM(), p.elevationM() - byM));
                    any = true;
                }
            }
            if (any) {
                RoadProfile lower = Redrawn.withPoints(road, points);
                CombinationPosture after = new PostureSolver(c.stance(), c.setting(), c.leveling(), lower).at(steerM);
                assertEquals(before.trailer().pitchRad(), after.trailer().pitchRad(), 1e-9, c.toString());
                assertEquals(before.tractor().pitchRad(), after.tractor().pitchRad(), 1e-9, c.toString());
                double was = gapAt(c, road, steerM);
                double is = gapAt(c, lower, steerM);
                assertTrue(is >= was - ROUNDING_M, c + ": " + was + ", lower road " + is);
                double byHand = BruteForceClearance.overGround(c.stance(), c.setting(), c.leveling(), lower)
                        .at(steerM);
                assertEquals(byHand, is, PROMISED_M, c + ": over the lower road");
                opened[0] += is > was + ROUNDING_M ? 1 : 0;
                lowered[0]++;
            }
        });
        assertTrue(lowered[0] > CASES / 2, "only " + lowered[0] + " roads could be lowered");
        assertTrue(opened[0] > CASES / 10, "only " + opened[0] + " gaps opened");
    }

    /** The engine's least gap over the ground with the steer axle there, meters. */
    private static double gapAt(RandomCase c, RoadProfile road, double steerM) {
        return new PassageSearch(new Passage(c.stance(), road), c.setting(), c.leveling())
                .at(Optional.empty(), steerM)
                .orElseThrow()
                .valueM();
    }

    @Test
    void raisingTheSoffitNeverLowersTheClearance() {
        cases().forEach(c -> {
            Soffit higher = Redrawn.mapped(
                    c.soffit(),
                    p -> new SurveyedPoint(
                            p.distanceM(), p.elevationM() + (c.random().nextInt(3) == 0 ? 0.002 : 0.001)));
            Optional<Clearance> before = overhead(c, c.stance(), c.profile(), c.soffit());
            Optional<Clearance> after = overhead(c, c.stance(), c.profile(), higher);
            assertEquals(before.isPresent(), after.isPresent());
            before.ifPresent(b -> assertNotLower(c.toString(), b, after.orElseThrow()));
        });
    }

    @Test
    void takingMetalOffTheUndersideNeverLowersTheClearance() {
        cases().forEach(c -> {
            Trailer t = c.stance().trailer();
            Outline higher = new Outline(t.underside().points().stream()
                    .map(p -> new FramePoint(p.xM(), p.hM() + c.random().nextDouble(0, 0.1)))
                    .toList());
            LevelStance lighter = new LevelStance(
                    "lighter",
                    c.stance().tractor(),
                    Redrawn.withUnderside(t, higher),
                    c.stance().booster());
            assertNotLower(c.toString(), ground(c, c.stance(), c.profile()), ground(c, lighter, c.profile()));
        });
    }

    @Test
    void addingALoadNeverRaisesTheOverheadClearance() {
        cases().forEach(c -> {
            Trailer t = c.stance().trailer();
            List<Outline> more = new ArrayList<>(t.load());
            more.add(TwoWheelBody.line(
                    t.deckRear().xM(), t.deckFront().xM(), c.random().nextDouble(1, 4)));
            LevelStance loaded = new LevelStance(
                    "loaded",
                    c.stance().tractor(),
                    Redrawn.withLoad(t, more),
                    c.stance().booster());
            Optional<Clearance> before = overhead(c, c.stance(), c.profile(), c.soffit());
            Optional<Clearance> after = overhead(c, loaded, c.profile(), c.soffit());
            assertTrue(after.isPresent() || before.isEmpty());
            before.ifPresent(b -> assertNotLower(c.toString(), after.orElseThrow(), b));
        });
    }

    @Test
    void aHigherNotchNeverLowersTheDeckFrontOnLevelGround() {
        cases().forEach(c -> {
            double lastM = Double.NEGATIVE_INFINITY;
            for (int notch = -3; notch <= 8; notch++) {
                Setting s = c.setting();
                Setting setting = new Setting(s.lift(), s.booster(), 0.016 * notch, 0, s.rearRaiseM());
                double frontM = new PostureSolver(c.stance(), setting, c.leveling(), RoadProfile.level())
                        .at(0)
                        .trailer()
                        .worldZM(c.stance().trailer().deckFront());
                assertTrue(frontM >= lastM - ROUNDING_M, c + " at notch " + notch);
                lastM = frontM;
            }
        });
    }

    // ------------------------------------------------------------ steady grades

    @Test
    void aSteadyGradeOnlyTurnsTheLevelPosture() {
        cases().forEach(c -> {
            double grade = c.random().nextDouble(-0.12, 0.12);
            Clearance level = ground(c, c.stance(), RoadProfile.level());
            Clearance onGrade = ground(c, c.stance(), RoadProfile.straight(grade));
            // Everything turns with the road, so heights square to it stay; a vertical gap is longer by 1 / cos.
            assertEquals(level.valueM() * Math.sqrt(1 + grade * grade), onGrade.valueM(), 1e-7, c.toString());
        });
    }

    @Test
    void onASteadyGradeInTransportNoWheelIsInTheAir() {
        int[] seen = {0};
        cases().forEach(c -> {
            AxleGroup drive = c.stance().tractor().drive();
            AxleGroup group = c.stance().trailer().axles();
            boolean hinges = c.stance()
                    .booster()
                    .map(b -> b.hingeUpRad() > 1e-6 && b.hingeDownRad() > 1e-6)
                    .orElse(true);
            double least =
                    Math.min(Math.min(drive.jounceM(), drive.reboundM()), Math.min(group.jounceM(), group.reboundM()));
            if (least < 1e-6 || !hinges) {
                return;
            }
            for (BoosterState booster : c.stance().boosterStates()) {
                Setting reference = new Setting(LiftState.DOWN, booster, 0, 0, 0);
                PostureSolver solver = new PostureSolver(
                        c.stance(),
                        reference,
                        c.leveling(),
                        RoadProfile.straight(c.random().nextDouble(-0.1, 0.1)));
                List<WheelPosture> wheels =
                        solver.at(c.random().nextDouble(-50, 50)).wheels();
                for (WheelPosture wheel : wheels) {
                    assertEquals(WheelState.RIDING, wheel.state(), c + ": " + wheel);
                    // A close-coupled booster's tire has its own radius, and its axle no travel of its own making.
                    assertEquals(0, wheel.travelM(), 1e-7, c + ": " + wheel);
                    seen[0]++;
                }
            }
        });
        assertTrue(seen[0] > 1000, "only " + seen[0] + " wheels looked at");
    }

    // ------------------------------------------------------------ standing at all

    @Test
    void theTrailerNeverFloats() {
        cases().forEach(c -> {
            double rebound = c.stance().trailer().axles().reboundM();
            // Raised further at the rear than the axles can reach down, and by every smaller amount.
            double raise = c.random().nextDouble(0, 2 * rebound + 0.05);
            Setting s = c.setting();
            Setting setting = new Setting(s.lift(), s.booster(), s.notchOffsetM(), s.frontRaiseM(), raise);
            for (Leveling leveling : Leveling.values()) {
                PostureSolver solver = new PostureSolver(c.stance(), setting, leveling, c.profile());
                for (int k = 0; k < 20; k++) {
                    double steerM = c.random()
                            .nextDouble(c.profile().startM() - 5, c.profile().endM() + 25);
                    List<WheelPosture> wheels = solver.at(steerM).wheels();
                    boolean trailerStands = wheels.stream()
                            .filter(w -> w.unit().equals(UnitName.TRAILER))
                            .anyMatch(w -> w.state() == WheelState.RIDING || w.state() == WheelState.SOLID);
                    boolean boosterCarries = wheels.stream()
                            .anyMatch(w -> w.unit().equals(UnitName.BOOSTER) && w.state() == WheelState.SOLID);
                    assertTrue(
                            trailerStands || boosterCarries, c + ", raised " + raise + " at " + steerM + ": " + wheels);
                }
            }
        });
    }

    @Test
    void noWheelIsEverInTheGround() {
        cases().forEach(c -> {
            PlainGround ground = PlainGround.of(c.profile());
            PostureSolver solver = new PostureSolver(c.stance(), c.setting(), c.leveling(), c.profile());
            for (int k = 0; k < 20; k++) {
                double steerM = c.random()
                        .nextDouble(c.profile().startM() - 5, c.profile().endM() + 25);
                for (WheelPosture wheel : solver.at(steerM).wheels()) {
                    double free = wheel.zM() - ground.wheelCenterM(wheel.xM(), wheel.radiusM());
                    if (wheel.state() == WheelState.HANGING) {
                        assertTrue(free > -1e-9, c + ": " + wheel);
                    } else if (wheel.state() != WheelState.LIFTED) {
                        assertEquals(0, free, 1e-8, c + ": " + wheel);
                    }
                }
            }
        });
    }

    private static double slope(SurveyedPoint a, SurveyedPoint b) {
        return (b.elevationM() - a.elevationM()) / (b.distanceM() - a.distanceM());
    }
}
