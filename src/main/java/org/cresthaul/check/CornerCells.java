package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ForkJoinTask;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.Margins;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Rig;
import org.cresthaul.turning.CornerSpace;

/**
 * Every configuration's cell at one corner. Axle and booster states are judged side by side, since one may take longer
 * than all others together; they share the corner's spaces and nothing else. Not safe to share between threads.
 */
final class CornerCells {
    private final JoinedCorners.Judging judging;
    private final Rig rig;
    private final LevelStance stance;
    private final Margins margins;
    private final Map<Boolean, CornerSpace> spaces = new ConcurrentHashMap<>();
    private final Map<State, CornerCheck> checks = new HashMap<>();

    private record State(LiftState lift, BoosterState booster) {
        static State of(CheckedConfiguration c) {
            return new State(c.lift(), c.booster());
        }
    }

    CornerCells(JoinedCorners.Judging judging, Rig rig, LevelStance stance, Margins margins) {
        this.judging = judging;
        this.rig = rig;
        this.stance = stance;
        this.margins = margins;
    }

    /** Cells in the order of the configurations, those of one axle and booster state alike. */
    List<ReportCell> cells(List<CheckedConfiguration> configurations) {
        Map<State, List<CheckedConfiguration>> states = new LinkedHashMap<>();
        for (CheckedConfiguration c : configurations) {
            states.computeIfAbsent(State.of(c), s -> new ArrayList<>()).add(c);
            check(c);
        }
        List<ForkJoinTask<?>> tasks = new ArrayList<>();
        for (State state : longestOutermost(states.keySet())) {
            CornerCheck check = checks.get(state);
            tasks.add(ForkJoinTask.adapt(() -> states.get(state).forEach(check::prepare)));
        }
        ForkJoinTask.invokeAll(tasks);
        List<Sentence> would = new ArrayList<>();
        for (CheckedConfiguration c : configurations) {
            check(c).judge(c)
                    .filter(j -> j.verdict() == Verdict.CLEAR || j.verdict() == Verdict.TIGHT)
                    .map(j -> j.escorts()
                            ? Sentence.of(Code.CORNER_WOULD_ESCORTED).with("state", c.stateLabel())
                            : c.stateLabel())
                    .filter(label -> !would.contains(label))
                    .ifPresent(would::add);
        }
        return configurations.stream().map(c -> check(c).cell(c, would)).toList();
    }

    /**
     * One thread takes tasks from the front, another from the back: what is likely to take long is not left for last.
     */
    private List<State> longestOutermost(Collection<State> states) {
        LinkedList<State> order = new LinkedList<>();
        states.stream().sorted(Comparator.comparingDouble(this::lengthM)).forEach(state -> {
            if (order.size() % 2 == 0) {
                order.addFirst(state);
            } else {
                order.addLast(state);
            }
        });
        return order;
    }

    private double lengthM(State state) {
        return CombinationLength.meters(stance, state.booster());
    }

    private CornerCheck check(CheckedConfiguration c) {
        return checks.computeIfAbsent(State.of(c), s -> new CornerCheck(judging, rig, stance, margins, spaces));
    }
}
