package org.cresthaul.route;

import java.util.Optional;
import org.cresthaul.geometry.Finite;

/**
 * Which hazard, and where.
 *
 * @param id short, distinct on the route: "H03"
 * @param name what people call it
 * @param landmark what a driver sees before it, when the file says so
 * @param position where it was surveyed
 * @param chainageM of the nearest point of the route, meters
 * @param offsetM of the position from that point, meters, positive to the right of the direction of travel
 */
public record HazardPlace(
        String id, String name, Optional<String> landmark, LonLat position, double chainageM, double offsetM) {
    public HazardPlace {
        if (id.isBlank() || name.isBlank()) {
            throw new IllegalArgumentException("a hazard needs an id and a name");
        }
        Finite.requireAtLeast("chainageM", 0, chainageM);
        Finite.require("offsetM", offsetM);
    }
}
