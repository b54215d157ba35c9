package org.cresthaul.clearance.bound;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.clearance.bound.FrameOutline.Straight;
import org.cresthaul.posture.Pose;
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
public final class OutlineGaps {
    public final PiecewiseLine line;
    public final FrameOutline frame;
    /** Whether the line goes on beyond its ends, as ground does. */
    public final boolean endless;

    /** Whether every vertex of the ground is surveyed; where lines of a road end apart some are not. */
    private final boolean surveyedThroughout;

    public final double[] kinkS;
    final double[] kinkZ;
    final double steepest;
    /** One raised tire, over each path that it is looked at over. */
    public final RaisedTire[] tires;
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
    public static OutlineGaps over(PiecewiseLine ground, List<Outline> undersides, List<RaisedTire> tires) {
        return new OutlineGaps(undersides, ground, 1, tires);
    }

    /** Topside under a soffit. */
    public static OutlineGaps under(Soffit soffit, List<Outline> topsides) {
        return new OutlineGaps(topsides, soffit, -1, List.of());
    }

    public FramePoint tireFoot() {
        return tires[0].foot();
    }

    public int points() {
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

    public boolean hasTire() {
        return tires.length > 0;
    }

    /** The outlines at one pose; of nearly straight stretches only the chord, until {@link #placeWhole}. */
    public PlacedOutlines place(Pose pose) {
        return place(pose, 0, 0);
    }

    /** The same of a unit that rolls up by an angle at so much beside its middle. */
    public PlacedOutlines place(Pose pose, double rollRad, double armM) {
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
    public void placeWhole(PlacedOutlines at, int straight) {
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

    /** Gap between a face or chord, extended as far as need be, and a vertex of the line. */
    public double gapOver(PlacedOutlines at, int segment, int kink) {
        return frame.side * (at.rearZ[segment] + at.slope[segment] * (kinkS[kink] - at.rearX[segment]) - kinkZ[kink]);
    }

    /** The ground's own vertices are mostly surveyed; those of a soffit may stand over ground that is not. */
    public double beyondSurvey(Need need, int kink) {
        return need == null || endless && surveyedThroughout ? 0 : need.beyondSurvey(kinkS[kink], kinkS[kink]);
    }
}
