package org.cresthaul.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.report.HumpLadder;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Notch;
import org.cresthaul.rig.Rig;
import org.cresthaul.road.StandardHump;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RailCrossing;

/** Finds by trying how high a standard hump every configuration clears. */
final class HumpLadders {
    /** Falls that are tried are whole steps: a quarter inch, meters. */
    static final double STEP_M = 0.25 * 0.0254;
    /** Two feet of fall over 28: a road is hardly steeper. */
    static final int MOST_STEPS = 96;
    /** Every so many steps a fall below the one that was found is tried as well. */
    private static final int LOOK_BACK_STEPS = 8;

    private HumpLadders() {}

    /** Everything that a ladder depends on. */
    private record Asked(
            int tracks,
            Uncertainty measurement,
            Uncertainty ride,
            List<Notch> notches,
            LevelStance stance,
            Margins margins) {}

    private static final int MOST_KEPT = 64;

    private static final Map<Asked, HumpLadder> KEPT = new LinkedHashMap<>(16, 0.75f, true);

    /**
     * Judged by the engine that judges surveyed crossings, as if the hump had been surveyed without an error. Those
     * asked for last are kept: a rig is checked many times.
     */
    static HumpLadder of(int tracks, Rig rig, LevelStance stance, Margins margins) {
        // How it stands does not hang on what it weighs.
        LevelStance bare = stance.withoutWeights();
        Asked asked = new Asked(tracks, rig.measurement(), rig.ride(), rig.notches(), bare, margins);
        synchronized (KEPT) {
            HumpLadder known = KEPT.get(asked);
            if (known != null) {
                return known;
            }
        }
        HumpLadder made = new Climb(tracks, rig, bare, margins).ladder();
        synchronized (KEPT) {
            KEPT.put(asked, made);
            if (KEPT.size() > MOST_KEPT) {
                KEPT.remove(KEPT.keySet().iterator().next());
            }
        }
        return made;
    }

    private static final class Climb {
        private final int tracks;
        private final Rig rig;
        private final LevelStance stance;
        private final Margins margins;
        private final LevelUnits level;
        private final Map<Integer, HazardCheck> humps = new HashMap<>();
        private int guessedClear = MOST_STEPS / 6;
        private int guessedFree = MOST_STEPS / 3;

        Climb(int tracks, Rig rig, LevelStance stance, Margins margins) {
            this.tracks = tracks;
            this.rig = rig;
            this.stance = stance;
            this.margins = margins;
            level = new LevelUnits(rig, stance, margins);
        }

        HumpLadder ladder() {
            List<HumpLadder.Rung> rungs = new ArrayList<>();
            for (CheckedConfiguration configuration : CheckedConfiguration.listOf(rig, stance)) {
                rungs.add(rung(configuration));
            }
            return new HumpLadder(
                    tracks, new StandardHump(tracks, 0).planeM(), StandardHump.FALL_LENGTH_M, List.copyOf(rungs));
        }

        private HumpLadder.Rung rung(CheckedConfiguration configuration) {
            int clear = lastBefore(configuration, Verdict.TIGHT, -1, guessedClear);
            int free = lastBefore(configuration, Verdict.CONTACT, clear, guessedFree);
            guessedClear = clear + 2;
            guessedFree = free + 2;
            return new HumpLadder.Rung(
                    configuration.key(),
                    clear < 0 ? null : (Double) (clear * STEP_M),
                    free == MOST_STEPS ? null : (Double) ((free + 1) * STEP_M));
        }

        /**
         * The last step at which the verdict is milder than {@code bad}: halved between one that is and one that is
         * not, then every few steps below looked at as well, since nothing proves that a lower hump is never worse.
         */
        private int lastBefore(CheckedConfiguration configuration, Verdict bad, int good, int guess) {
            int low = good;
            int high = MOST_STEPS + 1;
            // Neighboring notches differ by little: from what the one before came to, in growing steps.
            for (int stride = 2, at = guess; at > low && at < high; stride *= 2) {
                if (isMilder(configuration, at, bad)) {
                    low = at;
                    at += stride;
                } else {
                    high = at;
                    at -= stride;
                }
            }
            low = between(configuration, bad, low, high);
            int milder = good;
            for (int step = Math.max(0, good); step < low; step += LOOK_BACK_STEPS) {
                if (!isMilder(configuration, step, bad)) {
                    return between(configuration, bad, milder, step);
                }
                milder = step;
            }
            return low;
        }

        /** A step at which it is milder, and the next is not: from one that is and one that is not. */
        private int between(CheckedConfiguration configuration, Verdict bad, int milder, int not) {
            int low = milder;
            int high = not;
            while (high - low > 1) {
                int middle = (low + high) / 2;
                if (isMilder(configuration, middle, bad)) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return low;
        }

        private boolean isMilder(CheckedConfiguration configuration, int step, Verdict bad) {
            return verdict(configuration, step).compareTo(bad) < 0;
        }

        private Verdict verdict(CheckedConfiguration configuration, int step) {
            HazardCheck.Judgment judgment = humps.computeIfAbsent(
                            step, s -> new HazardCheck(hump(s * STEP_M), rig, stance, margins))
                    .judge(configuration.transport());
            return level.verdict(configuration).orWorse(judgment.verdict());
        }

        private RailCrossing hump(double fallM) {
            return new RailCrossing(
                    new HazardPlace("hump", "standard hump", Optional.empty(), new LonLat(0, 0), 0, 0),
                    Optional.empty(),
                    List.of(new StandardHump(tracks, fallM).profile()),
                    Optional.of(new Uncertainty(0, "drawn, not surveyed")),
                    List.of(),
                    List.of());
        }
    }
}
