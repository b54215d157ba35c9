package org.cresthaul.report;

import org.cresthaul.units.Worded;

/** What keeps a deck that is raised from going farther up. */
public enum RaiseEnd implements Worded {
    HYDRAULICS("hydraulics"),
    /** Something behind the valve axle comes down. */
    GROUND("ground"),
    STRUCTURE("structure"),
    /** The gap between two of them closes. */
    UNITS("units"),
    /** Nothing: more may be clear, and is not shown to be. */
    NOT_SHOWN("not shown");

    private final String word;

    RaiseEnd(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }

    @Override
    public String toString() {
        return word;
    }
}
