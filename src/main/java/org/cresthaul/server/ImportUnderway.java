package org.cresthaul.server;

import org.cresthaul.exchange.osm.MapProgress;

/** How far one import has come, and whether somebody stopped it. Told by the thread that works, asked by others. */
final class ImportUnderway implements MapProgress {
    private volatile State state = new State("receiving", null, 0, 0);
    private volatile boolean stopped;

    /**
     * How far.
     *
     * @param state receiving, waiting, tracks, map, base-map; or none where nothing is under way
     * @param file the map extract that is read, else null
     * @param time for which it is gone through, from 1; 0 where none is read
     * @param share of what is received or read, 0 to 1
     */
    record State(String state, String file, int time, double share) {
        static final State NONE = new State("none", null, 0, 0);
    }

    State state() {
        return state;
    }

    void stop() {
        stopped = true;
    }

    void received(long bytes, long of) {
        requireWanted();
        state = new State("receiving", null, 0, of > 0 ? Math.min(1, (double) bytes / of) : 0);
    }

    void waits() {
        state = new State("waiting", null, 0, 0);
    }

    void readsTracks() {
        state = new State("tracks", null, 0, 0);
    }

    @Override
    public void at(String extract, int time, double share) {
        state = new State("map", extract, time, share);
    }

    void cutsBaseMap(String extract, int time, double share) {
        state = new State("base-map", extract, time, share);
    }

    private void requireWanted() {
        if (stopped) {
            throw new Refusal(ProblemKind.BUSY, "The import was stopped.");
        }
    }

    /** The one who waits for the answer, as long as nobody stops it. */
    Asker asker(Asker connection) {
        return () -> stopped || connection.isGone();
    }
}
