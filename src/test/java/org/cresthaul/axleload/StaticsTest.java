package org.cresthaul.axleload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.cresthaul.posture.RandomBoosters;
import org.cresthaul.posture.RandomJeeps;
import org.cresthaul.posture.RandomLifts;
import org.cresthaul.posture.RandomRigs;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Weights;
import org.cresthaul.rig.Weights.MassPoint;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/** Axle loads against the laws they must obey, and against a general linear solver that knows nothing of levers. */
class StaticsTest {
    private static final double G = 9.80665;
    /** Sum of forces or, over a meter, of moments that is left: newtons. */
    private static final double MOST_RESIDUAL_N = 1;

    /** A random stance in one of its configurations, on a grade. */
    private record Situation(
            LevelStance stance, Weights weights, LiftState lift, BoosterState booster, double boosterKg, double grade) {
        static List<Situation> allOf(SplittableRandom random) {
            LevelStance drawn = RandomRigs.stance(random);
            LevelStance base = random.nextInt(3) == 0 ? RandomLifts.several(drawn, random) : drawn;
            LevelStance onJeeps = random.nextInt(3) == 0 ? RandomJeeps.under(base, random) : base;
            LevelStance stance = base.booster().isPresent() && random.nextInt(3) == 0
                    ? RandomBoosters.behind(onJeeps, random)
                    : onJeeps;
            Weights weights = RandomWeights.of(stance, random);
            List<Situation> all = new ArrayList<>();
            for (BoosterState booster : stance.boosterStates()) {
                for (LiftState lift : stance.liftStates()) {
                    all.add(new Situation(
                            stance,
                            weights,
                            lift,
                            booster,
                            random.nextDouble() * 12_000,
                            random.nextBoolean() ? 0 : random.nextDouble() * 0.3 - 0.15));
                }
            }
            return all;
        }

        AxleLoads loads() {
            return new Statics(stance, weights, lift, booster, boosterKg).onGrade(grade);
        }

        /** Everything behind the kingpin but a trailing booster, in the tractor's frame. */
        List<MassPoint> trailerBodies() {
            double shiftM =
                    fifthWheel(stance.jeeps().size()).xM() - stance.trailer().kingpinXM();
            List<MassPoint> bodies = new ArrayList<>();
            bodies.add(weights.trailer().shiftedBy(shiftM));
            bodies.add(weights.gooseneck().shiftedBy(shiftM));
            weights.pieces().forEach(p -> bodies.add(p.at().shiftedBy(shiftM)));
            if (booster == BoosterState.CLOSE_COUPLED) {
                Booster b = stance.booster().orElseThrow();
                bodies.add(weights.booster()
                        .orElseThrow()
                        .standing()
                        .shiftedBy(b.closeCoupledAxleXM().orElseThrow()
                                - b.onlyAxle().xM()
                                + shiftM));
            } else if (booster == BoosterState.CARRIED) {
                bodies.add(
                        weights.booster().orElseThrow().carried().orElseThrow().shiftedBy(shiftM));
            }
            return bodies;
        }

        double hingeXM() {
            return stance.trailer().boosterHinge().orElseThrow().xM()
                    - stance.trailer().kingpinXM()
                    + fifthWheel(stance.jeeps().size()).xM();
        }

        /** The fifth wheel behind so many jeeps, in the tractor's frame. */
        FramePoint fifthWheel(int jeeps) {
            double xM = stance.tractor().fifthWheel().xM();
            double hM = stance.tractor().fifthWheel().hM();
            for (int j = 0; j < jeeps; j++) {
                Jeep jeep = stance.jeeps().get(j);
                xM = xM - jeep.kingpinXM() + jeep.fifthWheel().xM();
                hM = jeep.fifthWheel().hM();
            }
            return new FramePoint(xM, hM);
        }

        MassPoint jeepBody(int j) {
            return weights.jeeps()
                    .get(j)
                    .shiftedBy(fifthWheel(j).xM() - stance.jeeps().get(j).kingpinXM());
        }

        /** The hinge ahead of a booster, in the tractor's frame. */
        FramePoint hinge(int booster) {
            double xM = hingeXM();
            double hM = stance.trailer().boosterHinge().orElseThrow().hM();
            for (Booster ahead : stance.boosters().subList(0, booster)) {
                FramePoint next = ahead.nextHinge().orElseThrow().at();
                xM = xM - ahead.hingeXM() + next.xM();
                hM = next.hM();
            }
            return new FramePoint(xM, hM);
        }

        MassPoint boosterBody(int i) {
            MassPoint own = i == 0
                    ? weights.booster().orElseThrow().standing()
                    : weights.boostersBehind().get(i - 1).standing();
            return own.shiftedBy(hinge(i).xM() - stance.boosters().get(i).hingeXM());
        }

        double boostersKg() {
            double sum = weights.booster().orElseThrow().standing().massKg();
            for (Weights.BoosterBehind behind : weights.boostersBehind()) {
                sum += behind.standing().massKg();
            }
            return sum;
        }

        /** What the regulator sets on each axle; the chart of those behind is a straight line. */
        double setKg(int i) {
            return i == 0 ? boosterKg : weights.boostersBehind().get(i - 1).setPa() * RandomWeights.KG_PER_PA;
        }
    }

    @Test
    void forcesAndMomentsSumToNothing() {
        long seed = 20261125;
        System.out.println("axle loads in equilibrium, seed " + seed);
        SplittableRandom random = new SplittableRandom(seed);
        double worst = 0;
        int cases = 0;
        for (int rig = 0; rig < 2_000; rig++) {
            for (Situation s : Situation.allOf(random)) {
                worst = Math.max(worst, residualN(s));
                cases++;
            }
        }
        System.out.printf("worst residual %.3g N in %d cases%n", worst, cases);
        assertTrue(worst <= MOST_RESIDUAL_N && cases > 2_000, worst + " N in " + cases);
    }

    /** The whole combination: forces, pitching moments about two points, rolling moments. */
    private static double residualN(Situation s) {
        AxleLoads loads = s.loads();
        double cos = 1 / Math.hypot(1, s.grade);
        double sin = s.grade * cos;
        List<MassPoint> bodies = new ArrayList<>(s.trailerBodies());
        bodies.add(s.weights.tractor());
        for (int j = 0; j < s.weights.jeeps().size(); j++) {
            bodies.add(s.jeepBody(j));
        }
        if (s.booster == BoosterState.TRAILING) {
            for (int i = 0; i < s.stance.boosters().size(); i++) {
                bodies.add(s.boosterBody(i));
            }
        }
        double forceKg = 0;
        double rollKgM = 0;
        double pitchKgM = 0;
        double otherPitchKgM = 0;
        for (MassPoint m : bodies) {
            forceKg -= m.massKg() * cos;
            rollKgM -= m.massKg() * cos * m.offsetM();
            pitchKgM -= m.massKg() * (cos * m.xM() - sin * m.hM());
            otherPitchKgM -= m.massKg() * (cos * (m.xM() + 20) - sin * m.hM());
        }
        for (AxleLoads.AxleLoad axle : loads.axles()) {
            double trackM = s.weights.tracks().get(axle.place().kind());
            forceKg += axle.loadKg();
            rollKgM += (axle.rightKg().orElseThrow() - axle.loadKg() / 2) * trackM;
            pitchKgM += axle.loadKg() * axle.place().xM();
            otherPitchKgM += axle.loadKg() * (axle.place().xM() + 20);
        }
        return G
                * Math.max(
                        Math.max(Math.abs(forceKg), Math.abs(rollKgM)),
                        Math.max(Math.abs(pitchKgM), Math.abs(otherPitchKgM)));
    }

    @Test
    void agreesWithAGeneralLinearSolver() {
        long seed = 4_000_004;
        System.out.println("axle loads against a linear solver, seed " + seed);
        SplittableRandom random = new SplittableRandom(seed);
        double worstKg = 0;
        Map<BoosterState, Integer> seen = new EnumMap<>(BoosterState.class);
        for (int rig = 0; rig < 1_500; rig++) {
            for (Situation s : Situation.allOf(random)) {
                worstKg = Math.max(worstKg, differenceKg(s));
                seen.merge(s.booster, 1, Integer::sum);
            }
        }
        System.out.printf("largest difference %.3g kg; cases %s%n", worstKg, seen);
        assertTrue(worstKg * G <= MOST_RESIDUAL_N, worstKg + " kg");
        assertEquals(BoosterState.values().length, seen.size(), seen.toString());
        assertTrue(seen.values().stream().allMatch(n -> n >= 200), seen.toString());
    }

    /**
     * Every body on its own, with every force between bodies an unknown: axle loads, drive force, every kingpin's down
     * and back, and shear, pull and moment of a trailing booster's joint. Air that is shared makes loads equal; a
     * regulator sets one.
     */
    private static double differenceKg(Situation s) {
        AxleLoads loads = s.loads();
        int axles = loads.axles().size();
        boolean trailing = s.booster == BoosterState.TRAILING;
        int jeeps = s.stance.jeeps().size();
        int drive = axles;
        // Of each fifth wheel the kingpin's load and, behind it, the pull.
        int kingpins = axles + 1;
        int kingpin = kingpins + 2 * jeeps;
        int pull = kingpin + 1;
        int joint = kingpin + 2;
        int boosters = trailing ? s.stance.boosters().size() : 0;
        int unknowns = joint + 3 * boosters;
        double[][] rows = new double[unknowns][unknowns];
        double[] right = new double[unknowns];
        int r = 0;
        // Moments are taken about a point that is nobody's own.
        double aboutXM = 3.7;
        double aboutHM = -1.9;
        double cos = 1 / Math.hypot(1, s.grade);
        double sin = s.grade * cos;
        body(rows, right, r, List.of(s.weights.tractor()), cos, sin, aboutXM, aboutHM);
        for (int i = 0; i < axles; i++) {
            AxleKind group = loads.axles().get(i).place().group().kind();
            if (group == AxleKind.STEER || group == AxleKind.DRIVE) {
                up(rows, r, i, 1, loads.axles().get(i).place().xM(), aboutXM);
            }
        }
        up(rows, r, kingpins, -1, s.fifthWheel(0).xM(), aboutXM);
        ahead(rows, r, kingpins + 1, -1, s.fifthWheel(0).hM(), aboutHM);
        ahead(rows, r, drive, 1, 0, aboutHM);
        r += 3;

        for (int j = 0; j < jeeps; j++) {
            body(rows, right, r, List.of(s.jeepBody(j)), cos, sin, aboutXM, aboutHM);
            for (int i = 0; i < axles; i++) {
                if (loads.axles().get(i).place().group().equals(new LoadGroup(AxleKind.JEEP, j + 1))) {
                    up(rows, r, i, 1, loads.axles().get(i).place().xM(), aboutXM);
                }
            }
            FramePoint held = s.fifthWheel(j);
            FramePoint carries = s.fifthWheel(j + 1);
            up(rows, r, kingpins + 2 * j, 1, held.xM(), aboutXM);
            ahead(rows, r, kingpins + 2 * j + 1, 1, held.hM(), aboutHM);
            up(rows, r, kingpins + 2 * j + 2, -1, carries.xM(), aboutXM);
            ahead(rows, r, kingpins + 2 * j + 3, -1, carries.hM(), aboutHM);
            r += 3;
        }

        double fifthXM = s.fifthWheel(jeeps).xM();
        double fifthHM = s.fifthWheel(jeeps).hM();
        body(rows, right, r, s.trailerBodies(), cos, sin, aboutXM, aboutHM);
        for (int i = 0; i < axles; i++) {
            if (loads.axles().get(i).place().group().kind() == AxleKind.TRAILER) {
                up(rows, r, i, 1, loads.axles().get(i).place().xM(), aboutXM);
            }
        }
        up(rows, r, kingpin, 1, fifthXM, aboutXM);
        ahead(rows, r, pull, 1, fifthHM, aboutHM);
        if (trailing) {
            joint(rows, r, joint, -1, s.hinge(0), aboutXM, aboutHM);
        }
        r += 3;
        for (int j = 0; j < boosters; j++) {
            body(rows, right, r, List.of(s.boosterBody(j)), cos, sin, aboutXM, aboutHM);
            joint(rows, r, joint + 3 * j, 1, s.hinge(j), aboutXM, aboutHM);
            if (j + 1 < boosters) {
                joint(rows, r, joint + 3 * (j + 1), -1, s.hinge(j + 1), aboutXM, aboutHM);
            }
            int first = -1;
            for (int i = 0; i < axles; i++) {
                if (loads.axles().get(i).place().group().equals(new LoadGroup(AxleKind.BOOSTER, j + 1))) {
                    up(rows, r, i, 1, loads.axles().get(i).place().xM(), aboutXM);
                    first = first < 0 ? i : first;
                }
            }
            r += 3;
            rows[r][first] = 1;
            right[r++] = s.setKg(j);
        }
        for (int i = 1; i < axles; i++) {
            if (loads.axles()
                    .get(i)
                    .place()
                    .group()
                    .equals(loads.axles().get(i - 1).place().group())) {
                rows[r][i] = 1;
                rows[r++][i - 1] = -1;
            }
        }
        assertEquals(unknowns, r);
        RealVector solved =
                new LUDecomposition(new Array2DRowRealMatrix(rows)).getSolver().solve(new ArrayRealVector(right));
        double worst = Math.abs(solved.getEntry(kingpin) - loads.kingpinKg());
        for (int w = 0; w <= jeeps; w++) {
            worst = Math.max(
                    worst,
                    Math.abs(solved.getEntry(kingpins + 2 * w)
                            - loads.fifthWheelsKg().get(w)));
        }
        for (int i = 0; i < axles; i++) {
            worst = Math.max(
                    worst, Math.abs(solved.getEntry(i) - loads.axles().get(i).loadKg()));
        }
        if (trailing) {
            worst = Math.max(
                    worst,
                    Math.abs(
                            solved.getEntry(joint) - loads.joint().orElseThrow().shearKg()));
            worst = Math.max(
                    worst,
                    Math.abs(solved.getEntry(joint + 2)
                            - loads.joint().orElseThrow().momentKgM()));
        }
        return worst;
    }

    /** Sum of forces up, forward, and moments nose down, of a body; its weights on the right side. */
    private static void body(
            double[][] rows,
            double[] right,
            int r,
            List<MassPoint> bodies,
            double cos,
            double sin,
            double aboutXM,
            double aboutHM) {
        for (MassPoint m : bodies) {
            right[r] += m.massKg() * cos;
            right[r + 1] += m.massKg() * sin;
            right[r + 2] += m.massKg() * (cos * (aboutXM - m.xM()) + sin * (m.hM() - aboutHM));
        }
    }

    /** Shear, pull and moment of a booster's joint; its air turns the booster tail down, which is nose up. */
    private static void joint(
            double[][] rows, int r, int unknown, double sign, FramePoint hinge, double aboutXM, double aboutHM) {
        up(rows, r, unknown, sign, hinge.xM(), aboutXM);
        ahead(rows, r, unknown + 1, sign, hinge.hM(), aboutHM);
        rows[r + 2][unknown + 2] = -sign;
    }

    private static void up(double[][] rows, int r, int unknown, double sign, double xM, double aboutXM) {
        rows[r][unknown] += sign;
        rows[r + 2][unknown] += sign * (aboutXM - xM);
    }

    private static void ahead(double[][] rows, int r, int unknown, double sign, double hM, double aboutHM) {
        rows[r + 1][unknown] += sign;
        rows[r + 2][unknown] += sign * (hM - aboutHM);
    }

    @Test
    void doesNotDependOnWhereTheFramesStart() {
        SplittableRandom random = new SplittableRandom(77);
        for (Situation s : Situation.allOf(random)) {
            double grossKg = s.loads().grossKg();
            double weightKg = s.trailerBodies().stream()
                            .mapToDouble(MassPoint::massKg)
                            .sum()
                    + s.weights.tractor().massKg()
                    + s.weights.jeeps().stream().mapToDouble(MassPoint::massKg).sum()
                    + (s.booster == BoosterState.TRAILING ? s.boostersKg() : 0);
            assertEquals(weightKg / Math.hypot(1, s.grade), grossKg, 1e-6);
        }
    }

    @Test
    void climbingMovesLoadToTheRear() {
        SplittableRandom random = new SplittableRandom(78);
        int compared = 0;
        for (int rig = 0; rig < 200; rig++) {
            LevelStance drawn = RandomRigs.stance(random);
            LevelStance base = random.nextInt(3) == 0 ? RandomLifts.several(drawn, random) : drawn;
            LevelStance onJeeps = random.nextInt(3) == 0 ? RandomJeeps.under(base, random) : base;
            LevelStance stance = base.booster().isPresent() && random.nextInt(3) == 0
                    ? RandomBoosters.behind(onJeeps, random)
                    : onJeeps;
            Weights weights = RandomWeights.of(stance, random);
            Statics statics = new Statics(stance, weights, LiftState.DOWN, BoosterState.NONE, 0);
            AxleLoads level = statics.level();
            AxleLoads up = statics.onGrade(0.06);
            AxleLoads down = statics.onGrade(-0.06);
            assertTrue(up.axles().get(0).loadKg() < level.axles().get(0).loadKg());
            assertTrue(down.axles().get(0).loadKg() > level.axles().get(0).loadKg());
            assertEquals(up.grossKg(), down.grossKg(), 1e-6);
            compared++;
        }
        assertEquals(200, compared);
    }
}
