package org.cresthaul.rig;

import org.cresthaul.geometry.Finite;

/**
 * An air spring at a trailing arm, from which a gauge chart can be made where the maker gives none: force is pressure
 * times effective area, and the arm multiplies it at the axle (air-spring engineering manual, p. 56).
 *
 * @param areaKgPerPa load carried for each pascal, kilograms
 */
public record AirSpring(double areaKgPerPa) {
    public AirSpring {
        Finite.requireAtLeast("areaKgPerPa", 0, areaKgPerPa);
    }

    /** From one line of the maker's table: the load at one pressure, at ride height. */
    public static AirSpring of(double loadKg, double pressurePa) {
        return new AirSpring(loadKg / Finite.requireAtLeast("pressurePa", 1, pressurePa));
    }

    public double loadKg(double pressurePa) {
        return areaKgPerPa * pressurePa;
    }

    /**
     * Load of an axle on two such springs.
     *
     * @param armRatio pivot to spring over pivot to axle
     * @param unsprungKg axle, wheels and brakes, which the springs do not carry
     */
    public double axleKg(double pressurePa, double armRatio, double unsprungKg) {
        return 2 * loadKg(pressurePa) * armRatio + unsprungKg;
    }

    /** Arm ratio that an axle load needs at a pressure. */
    public double armRatio(double axleKg, double unsprungKg, double pressurePa) {
        return (axleKg - unsprungKg) / 2 / loadKg(pressurePa);
    }
}
