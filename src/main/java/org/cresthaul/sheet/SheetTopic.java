package org.cresthaul.sheet;

import org.cresthaul.plan.SpareKind;
import org.cresthaul.units.Worded;

/** What a line of a paper is about, where something depends on it. */
public enum SheetTopic implements Worded {
    /** How long, high and heavy a set-up is. */
    MEASURE("set-up measure"),
    LIFT_AXLE("lift axle"),
    NOTCH("notch"),
    LEVELING("leveling"),
    BOOSTER("booster"),
    BOOSTER_LINES("booster air and light lines"),
    PIVOT_LOCK("pivot lock"),
    REGULATOR("booster regulator"),
    PLATE("plate at the booster joint"),
    POWER_TAKE_OFF("power take-off"),
    CHAINS("chains"),
    STUCK_PEOPLE("stuck: people"),
    STUCK_CALL("stuck: call"),
    CROSSING_STOP("crossing stop"),
    CROSSING_LOOK("crossing look"),
    CROSSING_SIGHT("crossing sight"),
    CROSSING_SECOND_TRACK("crossing second track"),
    CROSSING_ROOM("crossing room"),
    CROSSING_GO("crossing go"),
    /** How far the deck is still raised at a place. */
    STILL_RAISED("still raised"),
    STAYS_RAISED("stays raised"),
    DO_NOT_STOP("do not stop"),
    /** A structure's height beside the combination's. */
    HEIGHTS("structure heights"),
    /** Why a place blocks. */
    BLOCKED("blocked"),
    SPEED("speed"),
    /** How far a deck is raised for a place, as the clerk reads it. */
    RAISED("raised"),
    GAP_GROUND("gap ground"),
    GAP_OVERHEAD("gap overhead"),
    GAP_UNITS("gap units"),
    GAP_CORNER("gap corner"),
    GAP_LOAD("gap load"),
    GAP_RAISED("gap raised");

    private final String word;

    SheetTopic(String word) {
        this.word = word;
    }

    /** What is left of a gap. */
    static SheetTopic gap(SpareKind kind) {
        return switch (kind) {
            case GROUND -> GAP_GROUND;
            case OVERHEAD -> GAP_OVERHEAD;
            case UNITS -> GAP_UNITS;
            case CORNER -> GAP_CORNER;
            case LOAD -> GAP_LOAD;
            case RAISED -> GAP_RAISED;
        };
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
