package org.cresthaul.exchange.track;

import org.cresthaul.route.LonLat;

/** A place somebody marked beside a track: a waypoint. */
public record MarkedPlace(String name, LonLat at, String file, int line) {}
