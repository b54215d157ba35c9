package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.clearance.bound.Floors;
import org.cresthaul.clearance.bound.GapBounds;
import org.cresthaul.clearance.bound.OutlineGaps;
import org.cresthaul.clearance.bound.PlacedOutlines;
import org.cresthaul.clearance.bound.UnitWay;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.rig.UnitName;

/** The tractor's own part of a search: the same for every setting, so it is done once and remembered. */
final class TractorSearch {
    private final Passage passage;
    private final Map<OutlineGaps, Run> least = new HashMap<>();
    private final Map<OutlineGaps, Map<Demand, Run>> spare = new HashMap<>();

    TractorSearch(Passage passage) {
        this.passage = passage;
    }

    /** The search for the least gap of the tractor alone. */
    SpanSearch<?> least(OutlineGaps gaps, Leverage leverage) {
        return least.computeIfAbsent(gaps, g -> run(g, SpanSearch.Seeks.GAP, List.of(), leverage));
    }

    /** The search for the least gap less need of the tractor alone. */
    SpanSearch<?> leastSpare(OutlineGaps gaps, Demand demand, Leverage leverage) {
        return spare.computeIfAbsent(gaps, g -> new HashMap<>())
                .computeIfAbsent(demand, d -> run(gaps, SpanSearch.Seeks.SPARE, List.of(d), leverage));
    }

    /** Whether the tractor alone meets a demand at every position. */
    boolean meets(OutlineGaps gaps, Demand demand, Leverage leverage) {
        SpanSearch<?> found = leastSpare(gaps, demand, leverage);
        return found.proven()
                && found.nearest.gapM >= 0
                && (found.nearest.gapM >= SpanSearch.WITHIN_M
                        || run(gaps, SpanSearch.Seeks.NOTHING, List.of(demand), leverage)
                                        .firstMet()
                                == 0);
    }

    private Run run(OutlineGaps gaps, SpanSearch.Seeks seeks, List<Demand> demands, Leverage leverage) {
        Run run = new Run(gaps, seeks, demands, leverage);
        List<PlacedOutlines> places = new ArrayList<>();
        places.add(gaps.place(passage.spans().get(0).start.pose));
        passage.spans().forEach(span -> places.add(gaps.place(span.end.pose)));
        run.search(passage.spans(), places);
        return run;
    }

    private final class Run extends SpanSearch<PlacedOutlines> {
        private final OutlineGaps gaps;
        private final OutlineMeasure measured;
        private final UnitNeed need;

        Run(OutlineGaps gaps, Seeks seeks, List<Demand> demands, Leverage leverage) {
            super(seeks, Double.POSITIVE_INFINITY, demands, passage.ownLimit(), gaps.points());
            this.gaps = gaps;
            measured = new OutlineMeasure(gaps, UnitName.TRACTOR);
            need = demands.isEmpty() ? null : passage.need(gaps, UnitName.TRACTOR, demands.get(0), leverage);
        }

        @Override
        PlacedOutlines place(Passage.Span span, PlacedUnit tractor, PlacedOutlines before, PlacedOutlines after) {
            return gaps.place(tractor.pose);
        }

        @Override
        void measure(
                double steerM,
                PlacedUnit tractor,
                PlacedOutlines placed,
                Demand demand,
                Nearest gap,
                Nearest tightest) {
            setStray(demand, steerM, steerM, tractor, tractor);
            measured.at(placed, steerM, demand == null ? null : need, gap, tightest);
        }

        @Override
        boolean staysAbove(Passage.Span span, PlacedOutlines a, PlacedOutlines b, Demand demand, Floors above) {
            setStray(demand, span.startM, span.endM, span.start, span.end);
            return new GapBounds(gaps, a, b, new UnitWay(span.motion, span.bow), demand == null ? null : need, 0)
                    .staysAbove(above);
        }

        @Override
        Undecided.Cause obstacle(Passage.Span span, PlacedOutlines a, PlacedOutlines b) {
            return GapBounds.bounds(span.motion, a.pose, b.pose) ? Undecided.Cause.ROUGH : Undecided.Cause.STEEP;
        }

        private void setStray(Demand demand, double fromM, double toM, PlacedUnit from, PlacedUnit to) {
            if (demand != null) {
                need.setStray(Stray.ofTractor(passage, demand, fromM, toM, from, to));
            }
        }
    }
}
