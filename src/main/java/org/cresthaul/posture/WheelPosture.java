package org.cresthaul.posture;

import org.cresthaul.rig.UnitName;

/**
 * Where one wheel stands.
 *
 * @param unit the unit it belongs to; a close-coupled booster's axle belongs to the trailer
 * @param xM distance of its center along the road, meters
 * @param zM height of its center, meters, above the profile's datum
 * @param radiusM loaded radius, meters
 * @param travelM upward travel in its unit's frame from the level stance, meters
 */
public record WheelPosture(UnitName unit, double xM, double zM, double radiusM, double travelM, WheelState state) {}
