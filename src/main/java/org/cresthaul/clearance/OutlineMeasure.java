package org.cresthaul.clearance;

import org.cresthaul.clearance.bound.FrameOutline;
import org.cresthaul.clearance.bound.FrameOutline.Straight;
import org.cresthaul.clearance.bound.Need;
import org.cresthaul.clearance.bound.OutlineGaps;
import org.cresthaul.clearance.bound.PlacedOutlines;
import org.cresthaul.clearance.bound.RaisedTire;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.UnitName;

/** The least gap of one unit's outlines where they stand, and the least gap less what is needed there. */
final class OutlineMeasure {
    private final OutlineGaps gaps;
    private final FrameOutline frame;
    private final UnitName unit;
    private final double[] kinkS;

    OutlineMeasure(OutlineGaps gaps, UnitName unit) {
        this.gaps = gaps;
        this.unit = unit;
        frame = gaps.frame;
        kinkS = gaps.kinkS;
    }

    /**
     * Lowers {@code nearest} to the least gap at one pose, with its place, and {@code tightest} to the least gap less
     * the need; without a need the latter is left alone.
     */
    void at(PlacedOutlines at, double steerM, Need need, Nearest nearest, Nearest tightest) {
        for (int i : frame.loneVertices) {
            measureVertex(at, i, steerM, need, nearest, tightest);
        }
        for (int k : frame.loneFaces) {
            measureFace(at, k, steerM, need, nearest, tightest);
        }
        for (int j = 0; j < frame.straights.length; j++) {
            if (!keepsOff(at, j, need, nearest, tightest)) {
                gaps.placeWhole(at, j);
                Straight s = frame.straights[j];
                for (int i = s.rear() + 1; i < s.front(); i++) {
                    measureVertex(at, i, steerM, need, nearest, tightest);
                }
                for (int k = s.firstFace(); k < s.endFace(); k++) {
                    measureFace(at, k, steerM, need, nearest, tightest);
                }
            }
        }
        for (RaisedTire tire : gaps.tires) {
            double x = at.tireXM(tire);
            double gap = at.tireZM(tire) - tire.path().heightAt(x);
            if (gap < nearest.gapM || need != null) {
                FramePoint foot = tire.foot();
                nearest.offerTire(gap, steerM, unit, foot, x);
                if (need != null) {
                    tightest.offerTire(gap - need.atTire(x, x), steerM, unit, foot, x);
                }
            }
        }
    }

    private void measureVertex(PlacedOutlines at, int i, double steerM, Need need, Nearest nearest, Nearest tightest) {
        if (gaps.endless || at.x[i] >= gaps.line.startM() && at.x[i] <= gaps.line.endM()) {
            nearest.offer(at.gap[i], steerM, unit, frame.vertex[i], at.x[i]);
            if (need != null) {
                tightest.offer(at.gap[i] - need.atVertex(i, at.x[i], at.x[i]), steerM, unit, frame.vertex[i], at.x[i]);
            }
        }
    }

    private void measureFace(PlacedOutlines at, int k, double steerM, Need need, Nearest nearest, Nearest tightest) {
        double needed = need == null ? 0 : need.alongSegment(k);
        for (int j = at.firstKink[k]; j < kinkS.length && kinkS[j] < at.frontX[k]; j++) {
            double gap = gaps.gapOver(at, k, j);
            // What the whole segment may need rules most vertices out; what its own place needs counts.
            boolean tight = need != null && gap - needed - gaps.beyondSurvey(need, j) < tightest.gapM;
            if (gap < nearest.gapM || tight) {
                double t = (kinkS[j] - at.rearX[k]) / (at.frontX[k] - at.rearX[k]);
                FramePoint point = frame.face[k][0].toward(frame.face[k][1], t);
                nearest.offer(gap, steerM, unit, point, kinkS[j]);
                if (tight) {
                    double spare = gap - need.onSegment(k, t) - gaps.beyondSurvey(need, j);
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
            if (gaps.gapOver(at, k, j) < floor) {
                return false;
            }
        }
        return true;
    }
}
