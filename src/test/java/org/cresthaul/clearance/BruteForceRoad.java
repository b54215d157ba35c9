package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import org.cresthaul.posture.BruteForcePosture;
import org.cresthaul.posture.BruteForcePosture.Frame;
import org.cresthaul.posture.BruteForcePosture.Standing;
import org.cresthaul.posture.BruteForcePosture.Wheel;
import org.cresthaul.posture.PlainGround;
import org.cresthaul.posture.RaisedAxles;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.SurveyedPoint;

/**
 * Gaps across a road from the definitions, for checking the engine: ground straight between neighboring lines and level
 * outside of them, left and right wheels of every axle {@code halfTrackM} beside the middle, every unit rolled by any
 * angle between the least and the greatest that an axle stands at. Shares with the engine only the values of rig and
 * survey.
 */
final class BruteForceRoad {
    private final LevelStance stance;
    private final Setting setting;
    private final List<PlainGround> lines;
    private final double[] offsetM;
    private final double slopeBefore;
    private final double slopeAfter;
    private final double halfTrackM;
    private final double drivenRightM;
    private final PlainGround left;
    private final PlainGround right;
    private final BruteForcePosture posture;
    private final List<List<BruteForceClearance.Line>> undersides;
    private final List<List<BruteForceClearance.Line>> topsides;

    BruteForceRoad(
            LevelStance stance,
            Setting setting,
            Leveling leveling,
            List<RoadProfile> profiles,
            double halfTrackM,
            double drivenRightM) {
        this.stance = stance;
        this.setting = setting;
        this.halfTrackM = halfTrackM;
        this.drivenRightM = drivenRightM;
        List<RoadProfile> sorted = new ArrayList<>(profiles);
        sorted.sort(
                (a, b) -> Double.compare(a.offsetM().orElseThrow(), b.offsetM().orElseThrow()));
        offsetM = sorted.stream().mapToDouble(l -> l.offsetM().orElseThrow()).toArray();
        slopeBefore = sorted.stream()
                .mapToDouble(l -> PlainGround.of(l).slopeBefore())
                .average()
                .orElseThrow();
        slopeAfter = sorted.stream()
                .mapToDouble(l -> PlainGround.of(l).slopeAfter())
                .average()
                .orElseThrow();
        lines = sorted.stream()
                .map(l -> new PlainGround(l.points(), slopeBefore, slopeAfter))
                .toList();
        left = lineAt(drivenRightM - halfTrackM);
        right = lineAt(drivenRightM + halfTrackM);
        posture = new BruteForcePosture(
                stance, setting, leveling, (x, r) -> (left.wheelCenterM(x, r) + right.wheelCenterM(x, r)) / 2);
        undersides = BruteForceClearance.undersides(stance, setting);
        topsides = BruteForceClearance.topsides(stance, setting);
    }

    /** The ground so far right of the road's own line. */
    PlainGround lineAt(double rightM) {
        TreeSet<Double> at = new TreeSet<>();
        for (PlainGround line : lines) {
            for (int i = 0; i < line.size(); i++) {
                at.add(line.distanceM(i));
            }
        }
        List<SurveyedPoint> points = new ArrayList<>();
        double last = Double.NEGATIVE_INFINITY;
        for (double s : at) {
            if (s > last + 1e-7) {
                points.add(new SurveyedPoint(s, heightM(s, rightM)));
                last = s;
            }
        }
        return new PlainGround(points, slopeBefore, slopeAfter);
    }

    private double heightM(double s, double rightM) {
        int n = offsetM.length;
        if (rightM <= offsetM[0]) {
            return lines.get(0).heightAt(s);
        }
        for (int i = 1; i < n; i++) {
            if (rightM <= offsetM[i]) {
                double a = lines.get(i - 1).heightAt(s);
                double b = lines.get(i).heightAt(s);
                return a + (b - a) * (rightM - offsetM[i - 1]) / (offsetM[i] - offsetM[i - 1]);
            }
        }
        return lines.get(n - 1).heightAt(s);
    }

    /** One position: where all stands, and the rolls of its axles, right side up. */
    private record Stand(Standing standing, double leastRollRad, double mostRollRad) {
        /** How much a part so far right of the middle rises at least. */
        double riseM(double rightM) {
            return Math.min(rightM * leastRollRad, rightM * mostRollRad);
        }
    }

    /** The smallest gap under a structure so far right of the middle, at one position. */
    double underM(PlainGround soffit, double rightM, double steerM) {
        Stand stand = standAt(steerM);
        Frame[] frames = frames(stand);
        double least = Double.POSITIVE_INFINITY;
        for (int unit = 0; unit < frames.length; unit++) {
            for (BruteForceClearance.Line line :
                    frames[unit] == null ? List.<BruteForceClearance.Line>of() : topsides.get(unit)) {
                least = Math.min(least, BruteForceClearance.gapUnderM(soffit, frames[unit], line));
            }
        }
        return least - Math.max(rightM * stand.leastRollRad, rightM * stand.mostRollRad);
    }

    /** In the order of the outlines: tractor, trailer, booster or null, jeeps. */
    private static Frame[] frames(Stand stand) {
        List<Frame> frames = new ArrayList<>(
                Arrays.asList(stand.standing.tractor(), stand.standing.trailer(), stand.standing.booster()));
        frames.addAll(stand.standing.jeeps());
        frames.addAll(stand.standing.boostersBehind());
        return frames.toArray(Frame[]::new);
    }

    private Stand standAt(double steerM) {
        Standing standing = posture.at(steerM);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Wheel wheel : posture.wheels(standing)) {
            if (wheel.stand() != BruteForcePosture.Stand.LIFTED) {
                double roll = (right.wheelCenterM(wheel.xM(), wheel.radiusM())
                                - left.wheelCenterM(wheel.xM(), wheel.radiusM()))
                        / (2 * halfTrackM);
                least = Math.min(least, roll);
                most = Math.max(most, roll);
            }
        }
        return new Stand(standing, least, most);
    }

    /** Places to the right of the middle, by unit, over ground that is kept. */
    final class Place {
        private final double[] rightM;
        private final List<PlainGround> ground;
        private final double[] tiresRightM;
        private final List<PlainGround> tireGround;

        Place(double[] rightM, double[] tiresRightM) {
            this.rightM = rightM;
            this.tiresRightM = tiresRightM;
            ground = Arrays.stream(rightM)
                    .mapToObj(y -> lineAt(drivenRightM + y))
                    .toList();
            tireGround = Arrays.stream(tiresRightM)
                    .mapToObj(y -> lineAt(drivenRightM + y))
                    .toList();
        }

        /** The smallest gap there at one position. */
        double at(double steerM) {
            Stand stand = standAt(steerM);
            Frame[] frames = frames(stand);
            double least = Double.POSITIVE_INFINITY;
            for (int unit = 0; unit < frames.length; unit++) {
                for (BruteForceClearance.Line line :
                        frames[unit] == null ? List.<BruteForceClearance.Line>of() : undersides.get(unit)) {
                    least = Math.min(
                            least,
                            BruteForceClearance.gapOverM(ground.get(unit), frames[unit], line)
                                    + stand.riseM(rightM[unit]));
                }
            }
            List<RaisedAxles.Tire> raised = RaisedAxles.tires(stance.trailer(), setting.lift());
            for (int k = 0; k < raised.size(); k++) {
                Axle tire = raised.get(k).axle();
                double h = tire.radiusM() + raised.get(k).gapM();
                double x = frames[1].worldXM(tire.xM(), h);
                for (int i = 0; i < tiresRightM.length; i++) {
                    least = Math.min(
                            least,
                            frames[1].worldZM(tire.xM(), h)
                                    + stand.riseM(tiresRightM[i])
                                    - tireGround.get(i).wheelCenterM(x, tire.radiusM()));
                }
            }
            return least;
        }

        /** The smallest of many positions, those about the lowest ones looked at closely. */
        double least(double fromM, double toM, double stepM) {
            int n = (int) Math.ceil((toM - fromM) / stepM);
            double[] gap = new double[n + 1];
            for (int i = 0; i <= n; i++) {
                gap[i] = at(fromM + (toM - fromM) * i / n);
            }
            double least = Arrays.stream(gap).min().orElseThrow();
            double step = (toM - fromM) / n;
            for (int i = 0; i <= n; i++) {
                boolean low = (i == 0 || gap[i] <= gap[i - 1]) && (i == n || gap[i] <= gap[i + 1]);
                if (low && gap[i] < least + 0.01) {
                    least = Math.min(least, around(fromM + step * i, step));
                }
            }
            return least;
        }

        private double around(double middleM, double reachM) {
            double least = Double.POSITIVE_INFINITY;
            double where = middleM;
            double reach = reachM;
            while (reach > 1e-4) {
                for (int i = -4; i <= 4; i++) {
                    double gap = at(where + reach * i / 4);
                    if (gap < least) {
                        least = gap;
                        where += reach * i / 4;
                    }
                }
                reach /= 4;
            }
            return least;
        }
    }
}
