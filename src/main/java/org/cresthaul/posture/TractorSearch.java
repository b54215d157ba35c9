package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The tractor's own part of a search: the same for every setting, so it is done once and remembered. */
final class TractorSearch {
    private final Passage passage;
    private final OutlineGaps.Scratch scratch = new OutlineGaps.Scratch();
    private final Map<OutlineGaps, Run> least = new HashMap<>();
    private final Map<OutlineGaps, Map<Demand, Run>> spare = new HashMap<>();
    private final Map<OutlineGaps, Map<Demand, Boolean>> met = new HashMap<>();

    TractorSearch(Passage passage) {
        this.passage = passage;
    }

    /** The least gap of the tractor alone. */
    Nearest least(OutlineGaps gaps) {
        return leastRun(gaps).nearest;
    }

    boolean proven(OutlineGaps gaps) {
        return leastRun(gaps).proven();
    }

    private Run leastRun(OutlineGaps gaps) {
        return least.computeIfAbsent(gaps, g -> run(g, null, null, false));
    }

    /** The least gap less need of the tractor alone. */
    Nearest leastSpare(OutlineGaps gaps, Demand demand, Leverage leverage) {
        return spareRun(gaps, demand, leverage).nearest;
    }

    boolean spareProven(OutlineGaps gaps, Demand demand, Leverage leverage) {
        return spareRun(gaps, demand, leverage).proven();
    }

    private Run spareRun(OutlineGaps gaps, Demand demand, Leverage leverage) {
        return spare.computeIfAbsent(gaps, g -> new HashMap<>())
                .computeIfAbsent(demand, d -> run(gaps, d, leverage, false));
    }

    boolean meets(OutlineGaps gaps, Demand demand, Leverage leverage) {
        return met.computeIfAbsent(gaps, g -> new HashMap<>())
                .computeIfAbsent(demand, d -> run(gaps, d, leverage, true).met());
    }

    private Run run(OutlineGaps gaps, Demand demand, Leverage leverage, boolean onlyWhetherMet) {
        Run run = new Run(gaps, demand, leverage, onlyWhetherMet);
        List<PlacedOutlines> places = new ArrayList<>();
        places.add(gaps.place(passage.spans().get(0).start.pose));
        passage.spans().forEach(span -> places.add(gaps.place(span.end.pose)));
        run.search(passage.spans(), places);
        return run;
    }

    private final class Run extends SpanSearch<PlacedOutlines> {
        private final OutlineGaps gaps;
        private final Demand demand;
        private final Need need;

        Run(OutlineGaps gaps, Demand demand, Leverage leverage, boolean onlyWhetherMet) {
            super(onlyWhetherMet);
            this.gaps = gaps;
            this.demand = demand;
            need = demand == null ? null : new Need(demand, passage.line(), leverage, UnitName.TRACTOR, gaps);
        }

        @Override
        PlacedOutlines place(PlacedUnit tractor, PlacedOutlines before, PlacedOutlines after) {
            return gaps.place(tractor.pose);
        }

        @Override
        void measure(double steerM, PlacedUnit tractor, PlacedOutlines placed) {
            setStray(steerM, steerM, tractor, tractor);
            gaps.measure(placed, UnitName.TRACTOR, steerM, need, nearest);
        }

        @Override
        double lowerBound(Passage.Span span, PlacedOutlines a, PlacedOutlines b, double enough) {
            setStray(span.startM, span.endM, span.start, span.end);
            return gaps.lowerBound(a, b, span.motion, null, span.bow, need, enough, scratch);
        }

        private void setStray(double fromM, double toM, PlacedUnit from, PlacedUnit to) {
            if (need != null) {
                need.setStray(Stray.of(passage.line(), demand, fromM, toM, from, to));
            }
        }
    }
}
