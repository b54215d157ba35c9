package org.cresthaul.route;

import org.cresthaul.units.Worded;

/** How a corner's shape is known. */
public enum CornerSource implements Worded {
    SURVEYED("surveyed"),
    /** Measured as a form asks for it. */
    TEMPLATE("template"),
    /** Only that there is one. */
    NOT_SURVEYED("not surveyed"),
    /** Only the bend of the route's line is known. */
    ROUTE_LINE("route line");

    private final String word;

    CornerSource(String word) {
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
