package org.cresthaul.exchange.osm;

import java.util.Map;
import org.cresthaul.units.InputRejected;

/** Takes the objects of a map extract as they come. */
interface MapSink {
    /** An area that the extract says it covers; longitudes run east from the first, all in degrees. */
    default void bounds(double west, double south, double east, double north) {}

    /**
     * Asked of every node in its turn: whether it is to be told. One that is not costs neither its tags nor its time.
     */
    default boolean wantsNode(long id, double lonDeg, double latDeg) {
        return true;
    }

    /** @param timeS when it was last changed, seconds since 1970; 0 where the extract does not say */
    default void node(long id, double lonDeg, double latDeg, Map<String, String> tags, long timeS)
            throws InputRejected {}

    default void way(long id, long[] nodes, Map<String, String> tags, long timeS) throws InputRejected {}

    /**
     * An object that is put together from others.
     *
     * @param ways of its members those that are ways, in their order
     * @param roles what each of them is in it; as many
     */
    default void relation(long id, long[] ways, String[] roles, Map<String, String> tags) throws InputRejected {}
}
