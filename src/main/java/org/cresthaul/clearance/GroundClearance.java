package org.cresthaul.clearance;

import java.util.Optional;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;

/** Clearance of the undersides, and of a raised tire, over one line of ground. */
public final class GroundClearance {
    private GroundClearance() {}

    /** The least clearance over every position of a whole passage over the surveyed line. */
    public static Clearance least(LevelStance stance, Setting setting, Leveling leveling, RoadProfile line) {
        return least(new Passage(stance, line), setting, leveling);
    }

    /** The same on a passage that several settings share. */
    public static Clearance least(Passage passage, Setting setting, Leveling leveling) {
        return new PassageSearch(passage, setting, leveling).least(Optional.empty());
    }
}
