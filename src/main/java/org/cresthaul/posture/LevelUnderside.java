package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;

/**
 * How high the undersides of a setting stand over level ground, slice by slice: what passes over a curb or an island
 * beside the road. With leveling in auto the lower of held and settled counts.
 */
public final class LevelUnderside {
    /** Slices are no longer than this, meters. */
    private static final double SLICE_M = 0.5;

    private LevelUnderside() {}

    /**
     * @param unit whose underside it is, from the front: 0 the tractor; the trailer's has what is fixed to it
     * @param rearXM frontXM in that unit's own frame
     * @param heightM of its lowest point over level ground
     */
    public record Slice(int unit, double rearXM, double frontXM, double heightM) {}

    /** Every slice, unit by unit, from the rear. */
    public static List<Slice> listOf(LevelStance stance, Setting setting) {
        CombinationShape shape = new CombinationShape(stance, setting.lift(), setting.booster());
        List<CombinationPosture> postures = new ArrayList<>();
        for (Leveling leveling : setting.levelings()) {
            postures.add(new PostureSolver(stance, setting, leveling, RoadProfile.level()).at(0));
        }
        List<Slice> slices = new ArrayList<>();
        for (int k = 0; k < shape.units().size(); k++) {
            int unit = k;
            add(
                    slices,
                    unit,
                    shape.units().get(unit).outlines().undersides(),
                    postures.stream().map(p -> p.poses().get(unit)).toList());
        }
        return List.copyOf(slices);
    }

    private static void add(List<Slice> slices, int unit, List<Outline> outlines, List<Pose> poses) {
        for (Outline outline : outlines) {
            for (int i = 1; i < outline.points().size(); i++) {
                FramePoint rear = outline.points().get(i - 1);
                FramePoint front = outline.points().get(i);
                int parts = (int) Math.max(1, Math.ceil((front.xM() - rear.xM()) / SLICE_M));
                for (int p = 0; p < parts; p++) {
                    FramePoint a = between(rear, front, (double) p / parts);
                    FramePoint b = between(rear, front, (p + 1.0) / parts);
                    double lowest = Double.POSITIVE_INFINITY;
                    for (Pose pose : poses) {
                        lowest = Math.min(lowest, Math.min(pose.worldZM(a), pose.worldZM(b)));
                    }
                    slices.add(new Slice(unit, a.xM(), b.xM(), lowest));
                }
            }
        }
    }

    private static FramePoint between(FramePoint a, FramePoint b, double t) {
        return new FramePoint(a.xM() + t * (b.xM() - a.xM()), a.hM() + t * (b.hM() - a.hM()));
    }
}
