package org.cresthaul.plan;

import org.cresthaul.report.Finding;
import org.cresthaul.units.Rounding;
import org.cresthaul.units.Worded;

/** What is left of what: a gap or room in meters, or load in kilograms. */
public enum SpareKind implements Worded {
    GROUND("ground", "over the ground"),
    OVERHEAD("overhead", "under the structure"),
    UNITS("units", "between the units"),
    CORNER("corner", "beside"),
    LOAD("load", "load"),
    /** A gap of either kind at the least raise that will do. */
    RAISED("raised", "raised as little as will do");

    private final String word;
    private final String where;

    SpareKind(String word, String where) {
        this.word = word;
        this.where = where;
    }

    @Override
    public String word() {
        return word;
    }

    /** Where it is left. */
    String where() {
        return where;
    }

    /** Whether figures of this kind are kilograms; the others are meters. */
    public boolean isWeight() {
        return this == LOAD;
    }

    /** What is left as a share of what is required or allowed. */
    public double share(double left, double required) {
        return isWeight() ? Finding.shareOfLoad(left, required) : Finding.shareOfLength(left, required);
    }

    /** What is left, rounded to the side that does not look safer. */
    double leftAsWritten(double left) {
        return (isWeight() ? Rounding.MASS_DOWN : Rounding.LENGTH_DOWN).of(left);
    }

    @Override
    public String toString() {
        return word;
    }
}
