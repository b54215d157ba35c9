package org.cresthaul.rig;

import java.util.List;
import java.util.stream.Collectors;
import org.cresthaul.units.Worded;

/**
 * Which of the trailer's lift axles are up.
 *
 * @param word the word used in files and on screens: "down"; "up" for the only lift axle; "up-3-4" for some of several
 * @param named numbers of the axles that are up, the trailer's first is 1, where there are several lift axles and they
 *     must be told apart; else empty
 */
public record LiftState(String word, List<Integer> named) implements Worded {
    public static final LiftState DOWN = new LiftState("down", List.of());
    /** The only lift axle is up. */
    public static final LiftState UP = new LiftState("up", List.of());

    public LiftState {
        named = List.copyOf(named);
    }

    /** Some of several lift axles up, by their numbers in the trailer's group, the first is 1. */
    static LiftState up(List<Integer> numbers) {
        return new LiftState(
                numbers.stream().map(String::valueOf).collect(Collectors.joining("-", "up-", "")), numbers);
    }

    /** Whether any is up. */
    public boolean isUp() {
        return !equals(DOWN);
    }

    @Override
    public String toString() {
        return word;
    }
}
