package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.ReversingReport;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.turning.Reversing;
import org.cresthaul.turning.TurningCombination;

/**
 * Asks how far every axle and booster state goes straight back. Depends on the rig alone; the notch does not matter.
 */
final class ReversingCheck {
    /** Bend at every coupling at the start. */
    private static final double BEND_RAD = Math.toRadians(1);
    /** 300 ft: farther nobody backs without steering. */
    private static final double MOST_M = 91.44;

    private ReversingCheck() {}

    static ReversingReport of(Rig rig, LevelStance stance) {
        List<ReversingReport.State> states = new ArrayList<>();
        CheckedConfiguration last = null;
        for (CheckedConfiguration c : CheckedConfiguration.listOf(rig, stance)) {
            // Notches of one state follow one another.
            if (last == null || !c.lift().equals(last.lift()) || c.booster() != last.booster()) {
                states.add(state(c, stance));
            }
            last = c;
        }
        return new ReversingReport(BEND_RAD, MOST_M, List.copyOf(states), Cautions.reversing());
    }

    private static ReversingReport.State state(CheckedConfiguration c, LevelStance stance) {
        return TurningCombination.backing(stance, c.lift(), c.booster())
                .map(combination -> {
                    Reversing reversing = Reversing.of(combination, BEND_RAD, MOST_M);
                    return state(
                            c,
                            null,
                            way(reversing.free(), combination),
                            reversing.locked().map(r -> way(r, combination)).orElse(null),
                            reversing
                                    .lockedLight()
                                    .map(r -> way(r, combination))
                                    .orElse(null));
                })
                .orElseGet(() -> state(c, Sentence.of(Code.BACKING_NO_PLAN), null, null, null));
    }

    private static ReversingReport.State state(
            CheckedConfiguration c,
            Sentence unknown,
            ReversingReport.StraightBack free,
            ReversingReport.StraightBack locked,
            ReversingReport.StraightBack lockedLight) {
        return new ReversingReport.State(
                c.lift(), c.booster(), c.axles(), c.stateLabel().toString(), unknown, free, locked, lockedLight);
    }

    private static ReversingReport.StraightBack way(Reversing.Reach reach, TurningCombination combination) {
        if (reach.coupling().isEmpty()) {
            return new ReversingReport.StraightBack(null, null, null);
        }
        int coupling = reach.coupling().getAsInt();
        return new ReversingReport.StraightBack(
                reach.wayM(),
                combination.couplingWord(coupling),
                combination.articulationLimitRad().get(coupling));
    }
}
