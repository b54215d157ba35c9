package org.cresthaul.turning;

import org.cresthaul.rig.UnitName;

/** What of a unit, seen from above, has something to keep off. */
public enum UnitPart {
    TIRES("tires"),
    /** The unit itself, its frame or deck, which is called as the unit is. */
    BODY(""),
    LOAD("load"),
    CARRIED_BOOSTER("carried booster");

    private final String word;

    UnitPart(String word) {
        this.word = word;
    }

    /** The part of that unit. */
    public PartOfUnit of(UnitName unit) {
        return new PartOfUnit(unit, this);
    }

    String wordOn(UnitName unit) {
        return this == BODY ? unit.word() : word;
    }
}
