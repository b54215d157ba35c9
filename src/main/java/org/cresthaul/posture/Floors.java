package org.cresthaul.posture;

/** What a search asks of a stretch before it may be dropped. Mutable; lives inside one search. */
final class Floors {
    /** No gap below this, meters; negative infinity when gaps are not asked for. */
    double gapM;
    /** No gap less its need below this, meters; likewise. */
    double spareM;
    /** What a roll that is not even may take away between two positions, meters. */
    double padM;

    /** The least gap allowed where so much is needed. */
    double under(double neededM) {
        return Math.max(gapM, spareM + neededM) + padM;
    }
}
