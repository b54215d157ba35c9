package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.posture.FrameOutline.Straight;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;
import org.cresthaul.road.PiecewiseLine;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;

/**
 * The vertical gaps between one unit's outlines and one line: the underside over the ground, or the topside under a
 * soffit.
 *
 * <p>The gap between two polylines is least at a vertex of one of them: an outline vertex that bulges toward the line,
 * an outline end, or a vertex of the line that bulges toward the outline. A raised tire counts as a circle.
 */
final class OutlineGaps {
    final PiecewiseLine line;
    final FrameOutline frame;
    /** Whether the line goes on beyond its ends, as ground does. */
    final boolean endless;

    /** Whether every vertex of the ground is surveyed; where lines of a road end apart some are not. */
    private final boolean surveyedThroughout;

    final double[] kinkS;
    final double[] kinkZ;
    final double steepest;
    /** One raised tire, over each path that it is looked at over. */
    final RaisedTire[] tires;
    /** First kink at or after each vertex of the line. */
    private final int[] kinkFrom;

    private OutlineGaps(List<Outline> outlines, PiecewiseLine line, int side, List<RaisedTire> tires) {
        this.line = line;
        this.endless = !(line instanceof Soffit);
        this.tires = tires.toArray(new RaisedTire[0]);
        surveyedThroughout = !(line instanceof RoadProfile road) || road.isSurveyedThroughout();
        steepest = line.steepest();
        frame = new FrameOutline(outlines, side, steepest);
        List<Integer> kinks = new ArrayList<>();
        for (int i = 0; i < line.size(); i++) {
            boolean end = !endless && (i == 0 || i == line.size() - 1);
            if (end || side * (line.slopeBefore(i) - line.slopeBefore(i + 1)) > 0) {
                kinks.add(i);
            }
        }
        kinkFrom = new int[line.size() + 1];
        for (int i = 0, k = 0; i <= line.size(); i++) {
            while (k < kinks.size() && kinks.get(k) < i) {
                k++;
            }
            kinkFrom[i] = k;
        }
        kinkS = kinks.stream().mapToDouble(line::distanceM).toArray();
        kinkZ = kinks.stream().mapToDouble(line::elevationM).toArray();
    }

    /** Underside and raised tires over the ground. */
    static OutlineGaps over(PiecewiseLine ground, List<Outline> undersides, List<RaisedTire> tires) {
        return new OutlineGaps(undersides, ground, 1, tires);
    }

    /** Topside under a soffit. */
    static OutlineGaps under(Soffit soffit, List<Outline> topsides) {
        return new OutlineGaps(topsides, soffit, -1, List.of());
    }

    FramePoint tireFoot() {
        return tires[0].foot();
    }

    int points() {
        return frame.vertex.length + frame.rx.length;
    }

    /** The farthest beside the unit's middle that anything is looked at, meters. */
    double mostArmM(double armM) {
        double most = armM;
        for (RaisedTire tire : tires) {
            most = Math.max(most, tire.armM());
        }
        return most;
    }

    boolean hasTire() {
        return tires.length > 0;
    }

    /** The outlines at one pose; of nearly straight stretches only the chord, until {@link #placeWhole}. */
    PlacedOutlines place(Pose pose) {
        return place(pose, 0, 0);
    }

    /** The same of a unit that rolls up by an angle at so much beside its middle. */
    PlacedOutlines place(Pose pose, double rollRad, double armM) {
        PlacedOutlines at =
                new PlacedOutlines(pose, rollRad, armM, frame.vertex.length, frame.rx.length, frame.straights.length);
        for (int i : frame.loneVertices) {
            placeVertex(at, i);
        }
        for (int k : frame.loneFaces) {
            placeSegment(at, k);
        }
        for (int k = frame.face.length; k < frame.rx.length; k++) {
            placeSegment(at, k);
        }
        return at;
    }

    /** Places all of a nearly straight stretch. */
    void placeWhole(PlacedOutlines at, int straight) {
        if (!at.whole[straight]) {
            at.whole[straight] = true;
            Straight s = frame.straights[straight];
            for (int i = s.rear() + 1; i < s.front(); i++) {
                placeVertex(at, i);
            }
            for (int k = s.firstFace(); k < s.endFace(); k++) {
                placeSegment(at, k);
            }
        }
    }

    private void placeVertex(PlacedOutlines at, int i) {
        at.x[i] = at.pose.worldXM(frame.vx[i], frame.vh[i]);
        at.z[i] = at.pose.worldZM(frame.vx[i], frame.vh[i]);
        at.gap[i] = frame.side * (at.z[i] - line.heightAt(at.x[i]));
    }

    private void placeSegment(PlacedOutlines at, int k) {
        at.rearX[k] = at.pose.worldXM(frame.rx[k], frame.rh[k]);
        at.rearZ[k] = at.pose.worldZM(frame.rx[k], frame.rh[k]);
        at.frontX[k] = at.pose.worldXM(frame.fx[k], frame.fh[k]);
        at.slope[k] = (at.pose.worldZM(frame.fx[k], frame.fh[k]) - at.rearZ[k]) / (at.frontX[k] - at.rearX[k]);
        at.firstKink[k] = kinkFrom[line.segmentAt(at.rearX[k])];
    }

    /**
     * Lowers {@code nearest} to the least gap at one pose, with its place, and {@code tightest} to the least gap less
     * the need; without a need the latter is left alone.
     */
    void measure(PlacedOutlines at, UnitName unit, double steerM, Need need, Nearest nearest, Nearest tightest) {
        for (int i : frame.loneVertices) {
            measureVertex(at, i, unit, steerM, need, nearest, tightest);
        }
        for (int k : frame.loneFaces) {
            measureFace(at, k, unit, steerM, need, nearest, tightest);
        }
        for (int j = 0; j < frame.straights.length; j++) {
            if (!keepsOff(at, j, need, nearest, tightest)) {
                placeWhole(at, j);
                Straight s = frame.straights[j];
                for (int i = s.rear() + 1; i < s.front(); i++) {
                    measureVertex(at, i, unit, steerM, need, nearest, tightest);
                }
                for (int k = s.firstFace(); k < s.endFace(); k++) {
                    measureFace(at, k, unit, steerM, need, nearest, tightest);
                }
            }
        }
        for (RaisedTire tire : tires) {
            double x = at.tireXM(tire);
            double gap = at.tireZM(tire) - tire.path().heightAt(x);
            if (gap < nearest.gapM || need != null) {
                FramePoint foot = tire.foot();
                nearest.offer(gap, steerM, unit, foot, x);
                if (need != null) {
                    tightest.offer(gap - need.atTire(x, x), steerM, unit, foot, x);
                }
            }
        }
    }

    private void measureVertex(
            PlacedOutlines at, int i, UnitName unit, double steerM, Need need, Nearest nearest, Nearest tightest) {
        if (endless || at.x[i] >= line.startM() && at.x[i] <= line.endM()) {
            nearest.offer(at.gap[i], steerM, unit, frame.vertex[i], at.x[i]);
            if (need != null) {
                tightest.offer(at.gap[i] - need.atVertex(i, at.x[i], at.x[i]), steerM, unit, frame.vertex[i], at.x[i]);
            }
        }
    }

    private void measureFace(
            PlacedOutlines at, int k, UnitName unit, double steerM, Need need, Nearest nearest, Nearest tightest) {
        double needed = need == null ? 0 : need.alongSegment(k);
        for (int j = at.firstKink[k]; j < kinkS.length && kinkS[j] < at.frontX[k]; j++) {
            double gap = gapOver(at, k, j);
            // What the whole segment may need rules most vertices out; what its own place needs counts.
            boolean tight = need != null && gap - needed - beyondSurvey(need, j) < tightest.gapM;
            if (gap < nearest.gapM || tight) {
                double t = (kinkS[j] - at.rearX[k]) / (at.frontX[k] - at.rearX[k]);
                FramePoint point = frame.face[k][0].toward(frame.face[k][1], t);
                nearest.offer(gap, steerM, unit, point, kinkS[j]);
                if (tight) {
                    double spare = gap - need.onSegment(k, t) - beyondSurvey(need, j);
                    tightest.offer(spare, steerM, unit, point, kinkS[j]);
                }
            }
        }
    }

    /** Whether no part of a nearly straight stretch can be nearer than what was found, by its chord. */
    private boolean keepsOff(PlacedOutlines at, int straight, Need need, Nearest nearest, Nearest tightest) {
        if (Math.abs(at.pose.pitchRad()) > FrameOutline.MOST_PITCH) {
            return false;
        }
        Straight s = frame.straights[straight];
        int k = frame.chordOf(straight);
        double frontX = at.frontX[k];
        double floor = nearest.gapM + s.offM();
        if (need != null) {
            // What is needed bulges downward along a unit, so that its ends bound it.
            double needed = need.alongSegment(k) + need.beyondSurvey(at.rearX[k], frontX);
            floor = Math.max(floor, tightest.gapM + needed + s.offM());
        }
        if (at.gap[s.rear()] < floor || at.gap[s.front()] < floor) {
            return false;
        }
        for (int j = at.firstKink[k]; j < kinkS.length && kinkS[j] < frontX; j++) {
            if (gapOver(at, k, j) < floor) {
                return false;
            }
        }
        return true;
    }

    /** Gap between a face or chord, extended as far as need be, and a vertex of the line. */
    double gapOver(PlacedOutlines at, int segment, int kink) {
        return frame.side * (at.rearZ[segment] + at.slope[segment] * (kinkS[kink] - at.rearX[segment]) - kinkZ[kink]);
    }

    /** The ground's own vertices are mostly surveyed; those of a soffit may stand over ground that is not. */
    double beyondSurvey(Need need, int kink) {
        return need == null || endless && surveyedThroughout ? 0 : need.beyondSurvey(kinkS[kink], kinkS[kink]);
    }
}
