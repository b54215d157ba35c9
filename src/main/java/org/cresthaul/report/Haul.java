package org.cresthaul.report;

import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;

/**
 * What is judged: a combination that stands so, over a route with its limits.
 *
 * @param stance one of the rig's, or that with one thing otherwise
 * @param margins the spare gaps that are wanted
 */
public record Haul(Route route, Rig rig, LevelStance stance, Margins margins) {
    /** The same over another route. */
    public Haul over(Route other) {
        return new Haul(other, rig, stance, margins);
    }

    /** The same standing otherwise. */
    public Haul standing(LevelStance other) {
        return new Haul(route, rig, other, margins);
    }
}
