package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.clearance.BendProof.Kept;
import org.cresthaul.clearance.UnitSearch.Look;
import org.cresthaul.geometry.Range;

/**
 * The looks at all ways of one setting that tell where units come nearest. One way is searched; of each other it is
 * tried to show that units come no nearer there, and that no demand is left with less, or with less than nothing: then
 * there is nothing to tell of it, and it is not searched. What can be shown is a range of bends at every coupling
 * ({@link BendProof}) at all of which the gap, in closed form, is no less. So the least gap, the worst of the demands
 * that are missed and the least that is left of it are those of searching all.
 */
public final class UnitLooks {
    /** Far more than rounding, and far less than anything told, radians. */
    private static final double HAIR_RAD = 1e-9;

    private final List<UnitSearch> searches;
    private final List<Demand> demands;
    private final List<Optional<Look>> looks;
    /** The way with the least gap of those searched, and what is to be shown of ways told before it and after. */
    private int least;

    private Optional<List<Untold>> before = Optional.empty();
    private Optional<List<Untold>> after = Optional.empty();

    private UnitLooks(List<UnitSearch> searches, List<Demand> demands) {
        this.searches = searches;
        this.demands = demands;
        looks = new ArrayList<>(Collections.nCopies(searches.size(), Optional.empty()));
    }

    /**
     * Looks at each way; empty for one that nothing is to be told of. Of ways that leave the same the first has its
     * look.
     *
     * @param searches of one setting, at least one
     * @param first the way to begin with: the nearer units come there, the less is to be searched
     */
    public static List<Optional<Look>> of(List<UnitSearch> searches, List<Demand> demands, int first) {
        UnitLooks all = new UnitLooks(searches, demands);
        all.search(first);
        for (int i = 0; i < searches.size(); i++) {
            if (i != first && !all.leavesNoLess(i)) {
                all.search(i);
            }
        }
        return all.looks;
    }

    private void search(int way) {
        Look look = searches.get(way).look(demands);
        looks.set(way, Optional.of(look));
        if (look.undecided().isPresent() || look.least().isEmpty()) {
            return;
        }
        Optional<UnitGap> known = looks.get(least).flatMap(Look::least);
        if (way == least
                || known.isEmpty()
                || look.least().get().valueM() < known.get().valueM()) {
            least = way;
            before = way > 0 ? untold(look, true) : Optional.empty();
            after = way + 1 < searches.size() ? untold(look, false) : Optional.empty();
        }
    }

    /** Whether a way is shown to leave no less than the one that leaves least of those searched. */
    private boolean leavesNoLess(int way) {
        Optional<List<Untold>> untold = way < least ? before : after;
        return untold.isPresent()
                && untold.get().stream().allMatch(u -> searches.get(way).keepsTo(u.at, u.plain, u.kept));
    }

    /** Of all ways. */
    private Range firstBends(Coupling coupling, Demand demand) {
        return searches.stream()
                .map(s -> s.firstBends(coupling, demand))
                .reduce(Range::hull)
                .orElseThrow();
    }

    /** Bends at one coupling at which nothing is to be told, as the road is surveyed and for each demand. */
    private record Untold(CoupledGaps at, Range plain, List<Kept> kept) {}

    /**
     * At every coupling; empty where there are none to be had cheaply.
     *
     * @param more for a way ahead of the one that was searched, which would have its look if it left the same
     */
    private Optional<List<Untold>> untold(Look than, boolean more) {
        List<Untold> all = new ArrayList<>();
        for (CoupledGaps at : searches.get(0).couplings()) {
            UnitGap least = than.least().orElseThrow();
            Optional<Range> plain = candidates(at.coupling(), null, least, more)
                    .filter(r -> isNoLess(at.least(r.lo(), r.hi()), least.valueM(), more))
                    .findFirst();
            List<Kept> kept = new ArrayList<>();
            for (int i = 0; plain.isPresent() && i < demands.size(); i++) {
                Demand demand = demands.get(i);
                UnitGap spare = than.spares().get(i);
                double floorM = Math.min(0, spare.valueM());
                candidates(at.coupling(), demand, spare, more)
                        .map(r -> new Kept(demand, r))
                        .filter(k -> isNoLess(searches.get(0).leastSpare(at, k), floorM, more && floorM < 0))
                        .findFirst()
                        .ifPresent(kept::add);
            }
            if (plain.isEmpty() || kept.size() < demands.size()) {
                return Optional.empty();
            }
            all.add(new Untold(at, plain.get(), kept));
        }
        return Optional.of(all);
    }

    /** Only of outlines that stay apart: how deep they overlap is told of some bends, so that fewer may tell less. */
    private static boolean isNoLess(UnitGaps.Nearest least, double thanM, boolean more) {
        return least.gapM() > 0 && (more ? least.valueM() > thanM : least.valueM() >= thanM);
    }

    /** Around all first bends, and the same up to the bend at which the least was found, from either side. */
    private Stream<Range> candidates(Coupling coupling, Demand demand, UnitGap least, boolean more) {
        Stream<Range> rooms = searches.get(0).roomsAround(coupling, firstBends(coupling, demand));
        if (!least.coupling().equals(coupling)) {
            return rooms;
        }
        double off = more ? HAIR_RAD : 0;
        double bend = least.bendRad();
        return rooms.flatMap(r -> Stream.of(r, new Range(r.lo(), bend - off), new Range(bend + off, r.hi())))
                .filter(r -> r.lo() <= r.hi());
    }
}
