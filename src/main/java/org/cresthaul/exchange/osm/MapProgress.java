package org.cresthaul.exchange.osm;

/** Is told how far the reading of map extracts has come. */
public interface MapProgress {
    /** Somebody who does not want to know. */
    MapProgress UNTOLD = (extract, time, share) -> {};

    /**
     * Called often, on the thread that reads.
     *
     * @param extract its name
     * @param time the first, second or third that it is gone through
     * @param share of it that was read, 0 to 1
     */
    void at(String extract, int time, double share);
}
