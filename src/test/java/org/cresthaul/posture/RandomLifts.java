package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftAxle;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.Trailer;

/** Invented lift axles, any but the one the height valves read, with states of one, two or more up at once. */
public final class RandomLifts {
    private RandomLifts() {}

    /** Every fifth stance with lift axles of its own kind in place of its one, where it has axles enough. */
    public static LevelStance forEveryFifth(long seed, LevelStance stance) {
        return Math.floorMod(seed, 5) == 4 ? several(stance, new SplittableRandom(seed)) : stance;
    }

    /**
     * The stance with several lift axles, where its trailer has three axles or more; with another one where it has two.
     */
    public static LevelStance several(LevelStance stance, SplittableRandom random) {
        Trailer t = stance.trailer();
        int count = t.axles().axles().size();
        if (count < 2) {
            return stance;
        }
        int valve = random.nextInt(count);
        List<LiftAxle> axles = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            if (i != valve && (random.nextInt(4) > 0 || i + 1 == count && axles.isEmpty())) {
                axles.add(new LiftAxle(i, random.nextDouble(0.05, 0.12)));
            }
        }
        if (axles.isEmpty()) {
            axles.add(new LiftAxle(valve == 0 ? 1 : 0, 0.07));
        }
        Set<List<Integer>> states = new LinkedHashSet<>();
        for (int k = 0; k < 3; k++) {
            List<Integer> up = axles.stream()
                    .map(LiftAxle::index)
                    .filter(i -> random.nextBoolean())
                    .toList();
            if (!up.isEmpty()) {
                states.add(up);
            }
        }
        Set<Integer> never = new TreeSet<>(axles.stream().map(LiftAxle::index).toList());
        states.forEach(never::removeAll);
        if (!never.isEmpty()) {
            states.add(List.copyOf(never));
        }
        List<LiftAxles.Raised> raised = states.stream()
                .map(up -> new LiftAxles.Raised(
                        // A valve cannot set a height its axles cannot reach down from.
                        up, Math.min(t.axles().reboundM(), random.nextDouble(-0.03, 0.06)), Optional.empty()))
                .toList();
        return stance.withTrailer(new Trailer(
                t.kingpinXM(),
                t.deckFront(),
                t.deckRear(),
                t.axles(),
                valve,
                new LiftAxles(axles, raised),
                t.hydraulicRaiseLimitM(),
                t.manualRaiseLimitM(),
                t.deckSagM(),
                t.underside(),
                t.topside(),
                t.load(),
                t.boosterHinge(),
                t.hingeReachM()));
    }
}
