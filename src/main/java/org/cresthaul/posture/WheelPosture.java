package org.cresthaul.posture;

/**
 * Where one wheel stands.
 *
 * @param unit the unit it belongs to; a close-coupled booster's axle belongs to the trailer
 * @param xM distance of its centre along the road, metres
 * @param zM height of its centre, metres, above the profile's datum
 * @param radiusM loaded radius, metres
 * @param travelM upward travel in its unit's frame from the level stance, metres
 */
public record WheelPosture(
        UnitName unit, double xM, double zM, double radiusM, double travelM, WheelState state) {}
