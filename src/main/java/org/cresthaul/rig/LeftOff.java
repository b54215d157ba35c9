package org.cresthaul.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The combinations a stance runs as: as it was measured, and without the units that may be left off. Jeeps and boosters
 * behind a booster come off from the rear, so that what stays keeps its number and its place in the chain.
 *
 * <p>Heights are those that were measured with every unit coupled. That the fifth wheels of a jeep that is left off and
 * of the unit ahead are equally high is required, so that the next kingpin stands where it stood.
 */
public final class LeftOff {
    /**
     * How far apart the heights of two fifth wheels may be to count as the same, meters: what a file can round away.
     */
    public static final double SAME_HEIGHT_M = 1e-4;

    private LeftOff() {}

    /** As measured first, then with fewer boosters behind, then with fewer jeeps. */
    public static List<LevelStance> combinationsOf(LevelStance measured) {
        List<LevelStance> all = new ArrayList<>();
        int fewestJeeps =
                staying(measured.jeeps().stream().map(Jeep::mayBeLeftOff).toList());
        int fewestBehind = staying(measured.boostersBehind().stream()
                .map(b -> b.states().contains(BoosterState.NONE))
                .toList());
        for (int jeeps = measured.jeeps().size(); jeeps >= fewestJeeps; jeeps--) {
            for (int behind = measured.boostersBehind().size(); behind >= fewestBehind; behind--) {
                all.add(with(measured, jeeps, behind));
            }
        }
        return List.copyOf(all);
    }

    /** How many of a row stay at least, where they come off from the rear. */
    private static int staying(List<Boolean> mayBeLeftOff) {
        return mayBeLeftOff.lastIndexOf(false) + 1;
    }

    private static LevelStance with(LevelStance measured, int jeeps, int behind) {
        if (jeeps == measured.jeeps().size()
                && behind == measured.boostersBehind().size()) {
            return measured;
        }
        return new LevelStance(
                name(measured, jeeps, behind),
                measured.tractor(),
                measured.jeeps().subList(0, jeeps),
                measured.trailer(),
                measured.booster().map(b -> behind == 0 ? b.last() : b),
                behind(measured, behind),
                measured.weights().map(w -> w.ofFirst(jeeps, behind)),
                measured.plan().map(p -> jeeps == 0 ? p.withoutJeep() : p));
    }

    /** Nothing hangs on the last of them. */
    private static List<Booster> behind(LevelStance measured, int count) {
        List<Booster> staying = new ArrayList<>(measured.boostersBehind().subList(0, count));
        if (count > 0) {
            staying.set(count - 1, staying.get(count - 1).last());
        }
        return staying;
    }

    /** What a stance of a rig runs without, that was there when it was measured: from the front. */
    public static List<UnitName> unitsOf(Rig rig, LevelStance stance) {
        return rig.stances().stream()
                .filter(measured ->
                        combinationsOf(measured).stream().anyMatch(c -> c.name().equals(stance.name())))
                .findFirst()
                .map(measured -> off(
                        measured, stance.jeeps().size(), stance.boostersBehind().size()))
                .orElse(List.of());
    }

    /** "loaded, without jeep 2 and booster 3" */
    private static String name(LevelStance measured, int jeeps, int behind) {
        return measured.name() + ", without "
                + off(measured, jeeps, behind).stream().map(UnitName::word).collect(Collectors.joining(" and "));
    }

    private static List<UnitName> off(LevelStance measured, int jeeps, int behind) {
        List<UnitName> off = new ArrayList<>();
        for (int i = jeeps; i < measured.jeeps().size(); i++) {
            off.add(UnitName.jeep(i + 1));
        }
        for (int i = behind; i < measured.boostersBehind().size(); i++) {
            off.add(UnitName.booster(i + 2));
        }
        return off;
    }
}
