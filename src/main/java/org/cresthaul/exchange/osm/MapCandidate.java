package org.cresthaul.exchange.osm;

import java.util.OptionalDouble;
import org.cresthaul.units.Worded;

/**
 * Something a map has along the route that may be a hazard. Nobody has been there.
 *
 * @param id the same each time the same object is found
 * @param chainageM of the place that stands for it, meters
 * @param fromM where it begins, meters
 * @param toM where it ends; the same for a point
 * @param object what it is in the map: "way 55547421"
 * @param timeS when that was last changed, seconds since 1970; 0 where the extract does not say
 * @param key of the tag that limits; empty where none does
 * @param raw the tags, word for word
 * @param value what the tag says, meters or kilograms; empty where it says nothing that can be used
 * @param tracks of a rail crossing; else 0
 * @param crossedAtRad between road and rails, at most a right angle; empty where that is not known
 */
public record MapCandidate(
        Kind kind,
        String id,
        String name,
        double chainageM,
        double fromM,
        double toM,
        String object,
        long timeS,
        String key,
        String raw,
        OptionalDouble value,
        int tracks,
        OptionalDouble crossedAtRad) {
    /** Anything but a rail crossing. */
    public MapCandidate(
            Kind kind,
            String id,
            String name,
            double chainageM,
            double fromM,
            double toM,
            String object,
            long timeS,
            String key,
            String raw,
            OptionalDouble value,
            int tracks) {
        this(kind, id, name, chainageM, fromM, toM, object, timeS, key, raw, value, tracks, OptionalDouble.empty());
    }

    /** What it may be. */
    public enum Kind implements Worded {
        RAIL_CROSSING("rail-crossing"),
        /** Road and railway cross on the same level, and the map has no crossing there. */
        MAP_INCOMPLETE("map-incomplete"),
        TRAM_CROSSING("tram-crossing"),
        FORMER_RAIL("former-rail"),
        STRUCTURE_OVER("structure-over"),
        TUNNEL("tunnel"),
        OVERHEAD_WIRE("overhead-wire"),
        ON_BRIDGE("on-bridge"),
        LIMIT("limit"),
        BAN("ban"),
        HUMP("hump"),
        DIP("dip"),
        FORD("ford"),
        MINI_ROUNDABOUT("mini-roundabout"),
        LOW_GROUND_CLEARANCE("low-ground-clearance"),
        BARRIER("barrier"),
        TURN("turn"),
        /** The extract has no road where the line runs: what is there nobody has looked up. */
        OFF_MAP("off-map");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        @Override
        public String word() {
            return word;
        }
    }

    static MapCandidate point(
            Kind kind, String id, String name, double chainageM, String object, long timeS, String raw) {
        return new MapCandidate(
                kind, id, name, chainageM, chainageM, chainageM, object, timeS, "", raw, OptionalDouble.empty(), 0);
    }

    MapCandidate withId(String other) {
        return new MapCandidate(
                kind, other, name, chainageM, fromM, toM, object, timeS, key, raw, value, tracks, crossedAtRad);
    }
}
