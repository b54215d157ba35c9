package org.cresthaul.exchange.osm;

/** Thrown by a {@link MapSink} that wants nothing more of an extract: its reading ends there, soundly. */
final class EnoughRead extends RuntimeException {
    EnoughRead() {
        super("enough", null, false, false);
    }
}
