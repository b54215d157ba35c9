package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.posture.CombinationShape.ChainUnit;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;

/** How high a combination reaches above level ground in one setting. */
public final class StandingHeight {
    private StandingHeight() {}

    /** The highest point of all units and the load, meters; the sag of the deck is not taken off. */
    public static double meters(LevelStance stance, Setting setting) {
        List<ChainUnit> units = new CombinationShape(stance, setting.lift(), setting.booster()).units();
        double highest = Double.NEGATIVE_INFINITY;
        for (CombinationPosture standing : standing(stance, setting)) {
            for (int k = 0; k < units.size(); k++) {
                highest = Math.max(
                        highest,
                        top(standing.poses().get(k), units.get(k).outlines().topsides()));
            }
        }
        return highest;
    }

    /** The highest point of what stands on the deck, meters; without a load, of the trailer. */
    public static double ofLoadMeters(LevelStance stance, Setting setting) {
        List<Outline> load = new ArrayList<>(stance.trailer().load());
        if (setting.booster() == BoosterState.CARRIED) {
            stance.booster().flatMap(Booster::carried).ifPresent(load::add);
        }
        if (load.isEmpty()) {
            load.add(stance.trailer().topside());
        }
        return standing(stance, setting).stream()
                .mapToDouble(s -> top(s.trailer(), load))
                .max()
                .orElseThrow();
    }

    private static List<CombinationPosture> standing(LevelStance stance, Setting setting) {
        List<CombinationPosture> all = new ArrayList<>();
        for (Leveling leveling : setting.levelings()) {
            all.add(new PostureSolver(stance, setting, leveling, RoadProfile.level()).at(0));
        }
        return all;
    }

    private static double top(Pose pose, List<Outline> outlines) {
        return outlines.stream()
                .flatMap(o -> o.points().stream())
                .mapToDouble(pose::worldZM)
                .max()
                .orElseThrow();
    }
}
