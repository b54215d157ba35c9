package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.posture.CombinationPosture;
import org.cresthaul.posture.Pose;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.RaisedAxles;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.posture.WheelPosture;
import org.cresthaul.posture.WheelState;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.SurveyedPoint;
import org.junit.jupiter.api.Test;

/**
 * The least of gap less need over every position, and the need told there, against docs/model.md section 10 written out
 * a second time: points of the undersides every few centimeters, at positions every few centimeters.
 */
class LeastSpareTest {
    private static final int CASES = Integer.getInteger("cresthaul.cases", 240) / 4;
    private static final Demand DEMAND = new Demand(0.05, 0.01, 0.02, true);
    private static final double POINT_STEP_M = 0.05;
    private static final double STEER_STEP_M = 0.1;
    /** What the search leaves open, and the drawing of a sagging deck. */
    private static final double OPEN_M = 0.0005 + 0.0001 + 1e-7;

    @Test
    void isLessThanNothingThatIsThere() {
        int compared = 0;
        int beyond = 0;
        double worstNeed = 0;
        for (int i = 0; i < CASES; i++) {
            RandomCase c = RandomCase.of(RandomCase.SEED + 5_000_000 + i);
            Passage passage = new Passage(c.stance(), c.profile());
            PassageSearch search = new PassageSearch(passage, c.setting(), c.leveling());
            Clearance spare = search.leastSpareBelow(Optional.empty(), DEMAND, Double.POSITIVE_INFINITY)
                    .orElseThrow();
            if (!spare.proven()) {
                continue;
            }
            Footing footing = search.footingOf(spare, DEMAND);
            double toldNeedM = DEMAND.marginM() + footing.uncertaintyM();
            PostureSolver solver = new PostureSolver(c.stance(), c.setting(), c.leveling(), c.profile());
            CombinationPosture there = solver.at(spare.steerM());
            double needM = needM(c, there, spare.unit(), spare.point().xM(), spare.distanceM());
            worstNeed = Math.max(worstNeed, Math.abs(needM - toldNeedM));
            double gapM =
                    search.at(Optional.empty(), spare.steerM()).orElseThrow().valueM();
            assertTrue(spare.valueM() + toldNeedM >= gapM - 1e-9, c + ": a gap below the least at its position");
            if (!spare.point().part().equals("raised tire")) {
                // It is attained, at its own place and no other.
                Pose pose = there.of(spare.unit());
                double own = pose.worldZM(spare.point()) - c.profile().heightAt(pose.worldXM(spare.point())) - needM;
                assertEquals(spare.valueM(), own, 1e-6, c + ": " + spare);
            }
            double lowest = Double.POSITIVE_INFINITY;
            for (double s = passage.firstSteerM(); s <= passage.lastSteerM(); s += STEER_STEP_M) {
                lowest = Math.min(lowest, lowestSpareM(c, solver.at(s)));
            }
            lowest = Math.min(lowest, lowestSpareM(c, there));
            assertTrue(lowest >= spare.valueM() - OPEN_M, c + ": " + lowest + " is there, told " + spare);
            beyond += footing.beyondSurveyM() > 0 ? 1 : 0;
            compared++;
        }
        System.out.printf(
                "least spare: %d compared, %d beyond the survey, need off by at most %.4f mm%n",
                compared, beyond, worstNeed * 1000);
        assertTrue(compared >= 0.98 * CASES && beyond > CASES / 20);
        assertEquals(0, worstNeed, 1e-4);
    }

    private static double lowestSpareM(RandomCase c, CombinationPosture posture) {
        double lowest = lowestSpareM(
                c,
                posture,
                UnitName.TRACTOR,
                posture.tractor(),
                c.stance().tractor().underside());
        lowest = Math.min(
                lowest,
                lowestSpareM(
                        c,
                        posture,
                        UnitName.TRAILER,
                        posture.trailer(),
                        c.stance().trailer().underside()));
        if (posture.booster().isPresent()) {
            lowest = Math.min(
                    lowest,
                    lowestSpareM(
                            c,
                            posture,
                            UnitName.BOOSTER,
                            posture.booster().get(),
                            c.stance().booster().orElseThrow().underside()));
        }
        return lowest;
    }

    private static double lowestSpareM(
            RandomCase c, CombinationPosture posture, UnitName unit, Pose pose, Outline underside) {
        double lowest = Double.POSITIVE_INFINITY;
        List<FramePoint> points = underside.points();
        for (int i = 1; i < points.size(); i++) {
            FramePoint a = points.get(i - 1);
            FramePoint b = points.get(i);
            int n = 1 + (int) (Math.abs(b.xM() - a.xM()) / POINT_STEP_M);
            for (int k = 0; k <= n; k++) {
                FramePoint p = a.toward(b, (double) k / n);
                double x = pose.worldXM(p);
                // The sag, where there is one, only lowers: what is left out here is left out on the safe side.
                double gapM = pose.worldZM(p) - c.profile().heightAt(x);
                lowest = Math.min(lowest, gapM - needM(c, posture, unit, p.xM(), x));
            }
        }
        return lowest;
    }

    /** Section 10: margin + sqrt((survey sqrt(1 + sum w^2))^2 + rig^2 + ride^2) + sum w stray + stray at the point. */
    private static double needM(RandomCase c, CombinationPosture posture, UnitName unit, double xM, double distanceM) {
        double[] w = weights(c.stance(), c.setting(), unit, xM);
        double[] stray = new double[4];
        stray[0] = strayM(c.profile(), posture.steerM());
        boolean steer = true;
        for (WheelPosture wheel : posture.wheels()) {
            if (steer) {
                steer = false;
            } else if (wheel.state() != WheelState.LIFTED) {
                int group = 1 + posture.units().indexOf(wheel.unit());
                stray[group] = Math.max(stray[group], strayM(c.profile(), wheel.xM()));
            }
        }
        double squares = 1;
        double strays = strayM(c.profile(), distanceM);
        for (int k = 0; k < 4; k++) {
            squares += w[k] * w[k];
            strays += w[k] * stray[k];
        }
        return 0.05 + Math.sqrt(0.01 * 0.01 * squares + 0.02 * 0.02) + strays;
    }

    private static double strayM(RoadProfile line, double x) {
        List<SurveyedPoint> points = line.points();
        double first = points.get(0).distanceM();
        double last = points.get(points.size() - 1).distanceM();
        return x < first
                ? (first - x) * line.before().gradeAccuracy()
                : x > last ? (x - last) * line.after().gradeAccuracy() : 0;
    }

    /** Steer axle, drive group, trailer group, booster: the lever rule, each group at its heavier axle. */
    private static double[] weights(LevelStance stance, Setting setting, UnitName unit, double xM) {
        double[] w = new double[4];
        if (unit.equals(UnitName.TRACTOR)) {
            addLever(
                    w,
                    0,
                    1,
                    stance.tractor().steer().xM(),
                    xs(stance.tractor().drive().axles()),
                    xM,
                    1);
            return w;
        }
        List<Double> group = xs(RaisedAxles.down(stance.trailer(), setting.lift()));
        if (setting.booster() == BoosterState.CLOSE_COUPLED) {
            group.add(stance.booster().orElseThrow().closeCoupledAxleXM().orElseThrow());
        }
        double share = 1;
        double ofTrailer = xM;
        if (unit.equals(UnitName.BOOSTER)) {
            double hinge = stance.booster().orElseThrow().hingeXM();
            double axle = stance.booster().orElseThrow().onlyAxle().xM();
            w[3] = Math.abs((xM - hinge) / (axle - hinge));
            share = Math.abs((xM - axle) / (hinge - axle));
            ofTrailer = stance.trailer().boosterHinge().orElseThrow().xM();
        }
        double[] lever = new double[2];
        addLever(lever, 0, 1, stance.trailer().kingpinXM(), group, ofTrailer, share);
        w[2] += lever[1];
        addLever(
                w,
                0,
                1,
                stance.tractor().steer().xM(),
                xs(stance.tractor().drive().axles()),
                stance.tractor().fifthWheel().xM(),
                lever[0]);
        return w;
    }

    private static List<Double> xs(List<Axle> axles) {
        return new ArrayList<>(axles.stream().map(Axle::xM).toList());
    }

    private static void addLever(
            double[] w, int front, int rear, double at, List<Double> group, double xM, double share) {
        double most = 0;
        double other = 0;
        for (double axle : group) {
            most = Math.max(most, Math.abs((xM - axle) / (at - axle)));
            other = Math.max(other, Math.abs((xM - at) / (axle - at)));
        }
        w[front] += share * most;
        w[rear] += share * other;
    }
}
