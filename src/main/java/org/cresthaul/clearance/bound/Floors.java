package org.cresthaul.clearance.bound;

/**
 * What is asked of a stretch before it may be dropped.
 *
 * @param gapM no gap below this, meters; negative infinity when gaps are not asked for
 * @param spareM no gap less its need below this, meters; likewise
 * @param padM besides, what a roll that is not even may take away between two positions, meters
 */
public record Floors(double gapM, double spareM, double padM) {
    public Floors(double gapM, double spareM) {
        this(gapM, spareM, 0);
    }

    Floors padded(double moreM) {
        return new Floors(gapM, spareM, padM + moreM);
    }

    /** The least gap allowed where so much is needed. */
    double under(double neededM) {
        return Math.max(gapM, spareM + neededM) + padM;
    }
}
