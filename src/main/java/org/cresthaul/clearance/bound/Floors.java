package org.cresthaul.clearance.bound;

/** What a search asks of a stretch before it may be dropped. Mutable; lives inside one search. */
public final class Floors {
    /** No gap below this, meters; negative infinity when gaps are not asked for. */
    public double gapM;
    /** No gap less its need below this, meters; likewise. */
    public double spareM;
    /** What a roll that is not even may take away between two positions, meters. */
    double padM;

    /** The least gap allowed where so much is needed. */
    double under(double neededM) {
        return Math.max(gapM, spareM + neededM) + padM;
    }
}
