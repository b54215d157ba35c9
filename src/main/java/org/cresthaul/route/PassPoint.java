package org.cresthaul.route;

/**
 * Where a route passes a place.
 *
 * @param chainageM of the nearest point of the line, meters
 * @param offsetM distance of the place from that point, meters, positive to the right of the direction of travel
 */
public record PassPoint(double chainageM, double offsetM) {}
