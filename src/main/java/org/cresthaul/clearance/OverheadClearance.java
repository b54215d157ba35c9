package org.cresthaul.clearance;

import java.util.Optional;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;

/** Clearance of the topsides, load included, under a soffit. */
public final class OverheadClearance {
    private OverheadClearance() {}

    /** The least clearance over every position from before to past line and soffit. */
    public static Optional<Clearance> least(
            LevelStance stance, Setting setting, Leveling leveling, RoadProfile line, Soffit soffit) {
        double from = Math.min(line.startM(), soffit.startM());
        double to = Math.max(line.endM(), soffit.endM());
        return least(new Passage(stance, line, from, to), setting, leveling, soffit);
    }

    /** The same on a passage that several settings share; it must reach past the soffit on both sides. */
    public static Optional<Clearance> least(Passage passage, Setting setting, Leveling leveling, Soffit soffit) {
        return new PassageSearch(passage, setting, leveling).leastBelow(Optional.of(soffit), Double.POSITIVE_INFINITY);
    }
}
