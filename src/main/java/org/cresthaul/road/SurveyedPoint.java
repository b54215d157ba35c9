package org.cresthaul.road;

import org.cresthaul.geometry.Finite;

/**
 * A surveyed point of a line along the road.
 *
 * @param distanceM along the road in the direction of travel, meters
 * @param elevationM height, meters, above any datum common to the hazard
 */
public record SurveyedPoint(double distanceM, double elevationM) {
    public SurveyedPoint {
        Finite.require("distanceM", distanceM);
        Finite.require("elevationM", elevationM);
    }
}
