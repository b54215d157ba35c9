package org.cresthaul.rig;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.cresthaul.geometry.Uncertainty;

/**
 * A combination and the settings it has.
 *
 * @param name what people call it
 * @param note free text; says so when the rig is invented
 * @param measurement uncertainty of the tape: heights and lengths of the rig (95 %)
 * @param ride uncertainty of tire and ride height on the day (95 %)
 * @param notches lowest first, at least one, names and offsets distinct; one has offset zero, the reference notch
 * @param stances at least one, each as it was measured; names distinct, also those of the combinations they run as
 * @param times what changes and slow passages take
 * @param identity which vehicles and load they are
 */
public record Rig(
        String name,
        String note,
        Uncertainty measurement,
        Uncertainty ride,
        List<Notch> notches,
        List<LevelStance> stances,
        PlanTimes times,
        Identity identity) {
    /** A rig of which nobody says which vehicles it is. */
    public Rig(
            String name,
            String note,
            Uncertainty measurement,
            Uncertainty ride,
            List<Notch> notches,
            List<LevelStance> stances,
            PlanTimes times) {
        this(name, note, measurement, ride, notches, stances, times, Identity.UNKNOWN);
    }

    /** A rig whose file says nothing of times. */
    public Rig(
            String name,
            String note,
            Uncertainty measurement,
            Uncertainty ride,
            List<Notch> notches,
            List<LevelStance> stances) {
        this(name, note, measurement, ride, notches, stances, PlanTimes.defaults());
    }

    public Rig {
        notches = List.copyOf(notches);
        stances = List.copyOf(stances);
        if (notches.isEmpty() || stances.isEmpty()) {
            throw new IllegalArgumentException("a rig needs at least one notch and one stance");
        }
        Set<String> names = new HashSet<>();
        boolean reference = false;
        for (int i = 0; i < notches.size(); i++) {
            reference |= notches.get(i).offsetM() == 0;
            if (!names.add(notches.get(i).name())
                    || i > 0 && notches.get(i).offsetM() <= notches.get(i - 1).offsetM()) {
                throw new IllegalArgumentException("notches run from lowest to highest, each once: " + notches);
            }
        }
        if (!reference) {
            throw new IllegalArgumentException("one notch must be the reference, at offset zero");
        }
        List<LevelStance> all = combinationsOf(stances);
        if (all.stream().map(LevelStance::name).distinct().count() != all.size()) {
            throw new IllegalArgumentException("stance names must differ");
        }
    }

    /** Every stance in every combination it runs as: see {@link LeftOff}. */
    public List<LevelStance> combinations() {
        return combinationsOf(stances);
    }

    private static List<LevelStance> combinationsOf(List<LevelStance> stances) {
        return stances.stream().flatMap(s -> LeftOff.combinationsOf(s).stream()).toList();
    }

    /** Whether a stance stands as somebody measured it, or has a unit left off. */
    public boolean isMeasured(LevelStance one) {
        return stances.stream().anyMatch(s -> s.name().equals(one.name()));
    }

    /** The combinations of the stance that one of them belongs to, as measured first. */
    public List<LevelStance> combinationsWith(LevelStance one) {
        return stances.stream()
                .map(LeftOff::combinationsOf)
                .filter(all -> all.stream().anyMatch(c -> c.name().equals(one.name())))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the rig has no stance " + one.name()));
    }

    /** The same rig with other notches, lowest first. */
    public Rig withNotches(List<Notch> others) {
        return new Rig(name, note, measurement, ride, others, stances, times, identity);
    }
}
