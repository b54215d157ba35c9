package org.cresthaul.plan;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.units.Worded;

/** What kind of thing must be settled before a plan holds. */
public enum ConditionKind implements Worded {
    /** A tight place that the planner accepts: with a spotter, or escorts where the opposing lane is needed. */
    TIGHT("tight, accepted"),
    /** A place the planner set aside: nothing is decided there, and the plan does not hold until it is. */
    SET_ASIDE("set aside"),
    /** A rail crossing that is not cleared within the warning, or nobody knows whether. */
    IN_TIME("not shown to be cleared in time"),
    /** A rail crossing beyond which there is no room, or nobody knows. */
    ROOM("no room shown beyond"),
    /** Nothing shows a place where the deck may go up. */
    UP("no place shown to raise"),
    /** Nothing shows a place where the deck may go down: the stop blocks something, or does not exist. */
    DOWN("no place shown to lower"),
    /** A set of limits that may be used until a day, or at some hours. */
    PERMIT("permit's day and hours"),
    /** What a permit asks of the way a bridge is driven over: alone, centered, at a crawl. */
    BRIDGE("permit's terms at a bridge");

    private final String word;

    ConditionKind(String word) {
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

    /** The one with that word, of which there must be one. */
    public static ConditionKind of(String word) {
        return Stream.of(values())
                .filter(k -> k.word.equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(word));
    }

    /** Every word, in the order in which they are told. */
    public static List<String> words() {
        return Stream.of(values()).map(ConditionKind::word).toList();
    }
}
