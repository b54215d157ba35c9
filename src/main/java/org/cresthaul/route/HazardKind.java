package org.cresthaul.route;

import org.cresthaul.units.Worded;

/** What may be in the way, with what follows for every place of its kind. Switches over it are exhaustive. */
public enum HazardKind implements Worded {
    RAIL_CROSSING("rail-crossing", JudgedBy.GAPS, Pace.CRAWL),
    LOW_STRUCTURE("low-structure", JudgedBy.GAPS, Pace.BOUNCE),
    OVERHEAD_WIRE("overhead-wire", JudgedBy.GAPS, Pace.BOUNCE),
    DIP("dip", JudgedBy.GAPS, Pace.BOUNCE),
    CREST("crest", JudgedBy.GAPS, Pace.BOUNCE),
    CORNER("corner", JudgedBy.ROOM, Pace.CRAWL),
    POSTED_BRIDGE("posted-bridge", JudgedBy.LOADS, Pace.ROAD),
    STRETCH("stretch", JudgedBy.LOADS, Pace.ROAD),
    /** The limits of the whole route, which a plan tells beside its places. No file marks them as a hazard. */
    LIMITS("limits", JudgedBy.LOADS, Pace.ROAD);

    /** Which engine judges it. */
    public enum JudgedBy {
        GAPS,
        ROOM,
        LOADS
    }

    /** How fast a place that is clear may be passed. */
    private enum Pace {
        CRAWL,
        BOUNCE,
        ROAD
    }

    private final String word;
    private final JudgedBy judged;
    private final Pace pace;

    HazardKind(String word, JudgedBy judged, Pace pace) {
        this.word = word;
        this.judged = judged;
        this.pace = pace;
    }

    /** As the route file has it. */
    @Override
    public String word() {
        return word;
    }

    /** As people say it. */
    public String spoken() {
        return word.replace('-', ' ');
    }

    public JudgedBy judged() {
        return judged;
    }

    /** Whether a raise of the deck changes the verdict. */
    public boolean isRaisable() {
        return judged == JudgedBy.GAPS;
    }

    /** Whether it is passed at crawling speed even when it is clear. */
    public boolean isCrawled() {
        return pace == Pace.CRAWL;
    }

    /** Whether the speed for which a clear answer stands is told: that of what a bounce may use up. */
    public boolean isSped() {
        return pace == Pace.BOUNCE;
    }

    /** Whether it is passed under. */
    public boolean isOverhead() {
        return this == LOW_STRUCTURE || this == OVERHEAD_WIRE;
    }

    /** Whether what counts there is the ground below alone: an elevation raster can sketch that. */
    public boolean isOverGround() {
        return judged == JudgedBy.GAPS && !isOverhead();
    }

    /** Whether trains cross there. */
    public boolean isCrossedByRails() {
        return this == RAIL_CROSSING;
    }

    /** What one passes under there, as people say it. */
    public String over() {
        return this == OVERHEAD_WIRE ? "the wire" : "the structure";
    }

    /** Whether it is a place at a point, and not limits along the road. */
    public boolean standsAtPoint() {
        return this != STRETCH && this != LIMITS;
    }

    /** Whether a route file may have it. */
    public boolean isMarked() {
        return this != LIMITS;
    }

    @Override
    public String toString() {
        return word;
    }
}
