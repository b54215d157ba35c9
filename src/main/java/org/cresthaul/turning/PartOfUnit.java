package org.cresthaul.turning;

import org.cresthaul.rig.UnitName;
import org.cresthaul.units.Worded;

/**
 * A part of a unit: "trailer" for the trailer itself, "load", "tires".
 *
 * @param unit whose it is, which turns with another one where nothing bends between them
 */
public record PartOfUnit(UnitName unit, UnitPart part) implements Worded {
    /** Whether it is all there is to say of it that it is that unit. */
    public boolean isBodyOf(UnitName turning) {
        return part == UnitPart.BODY && unit.equals(turning);
    }

    public boolean isTires() {
        return part == UnitPart.TIRES;
    }

    @Override
    public String word() {
        return part.wordOn(unit);
    }

    @Override
    public String toString() {
        return word();
    }
}
