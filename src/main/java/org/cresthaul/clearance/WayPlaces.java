package org.cresthaul.clearance;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.WheelPaths;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;

/**
 * Where the units behind the tractor stand on one way, found once for all places across the road, over the ground and
 * under a structure and between units. Only the settings asked about last are kept: both levelings of one, of some
 * hundred kB each on four kilometers. Not safe to share between threads.
 */
final class WayPlaces {
    private static final int KEPT = Leveling.values().length;

    private record Asked(Setting setting, Leveling leveling) {}

    private final LevelStance stance;
    private final WheelPaths ground;
    private final List<Passage.Span> spans;
    private final Map<String, CombinationShape> shapes = new HashMap<>();
    private final Map<Asked, UnitPlaces> recent = new LinkedHashMap<>();

    WayPlaces(LevelStance stance, WheelPaths ground, List<Passage.Span> spans) {
        this.stance = stance;
        this.ground = ground;
        this.spans = spans;
    }

    CombinationShape shape(LiftState lift, BoosterState booster) {
        return shapes.computeIfAbsent(
                lift.word() + "/" + booster.word(), k -> new CombinationShape(stance, lift, booster));
    }

    UnitPlaces of(Setting setting, Leveling leveling) {
        Asked asked = new Asked(setting, leveling);
        UnitPlaces known = recent.remove(asked);
        UnitPlaces places = known == null
                ? new UnitPlaces(shape(setting.lift(), setting.booster()), setting, leveling, ground, spans)
                : known;
        if (recent.size() >= KEPT) {
            recent.remove(recent.keySet().iterator().next());
        }
        recent.put(asked, places);
        return places;
    }
}
