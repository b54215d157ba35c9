package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntToDoubleFunction;
import java.util.function.LongFunction;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.cresthaul.clearance.UnitSearch.Look;
import org.cresthaul.geometry.Range;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.posture.RandomProfiles;
import org.cresthaul.road.RoadProfile;
import org.junit.jupiter.api.Test;

/**
 * What is left unsearched between units, against searching all and against bends at many positions: {@code mvn test
 * -Dtest=UnitLooksTest -Dunits.cases=5000} asks as many.
 */
class UnitLooksTest {
    private static final int CASES = Integer.getInteger("units.cases", 12);
    private static final int POSITIONS = 400;
    private static final List<Demand> DEMANDS =
            List.of(new Demand(0.0254, 0.006, 0.009, true), new Demand(0, 0.006, 0.009, false));

    @Test
    void whatIsToldIsThatOfSearchingEveryWay() {
        toldAsSearched(RandomCouplings::caseOf, 11_000_000);
    }

    @Test
    void whatIsToldOfChainsIsThatOfSearchingEveryWay() {
        toldAsSearched(RandomCouplings::withJeeps, 12_000_000);
        toldAsSearched(RandomCouplings::withBoosters, 13_000_000);
    }

    private static void toldAsSearched(LongFunction<RandomCase> draw, long from) {
        AtomicInteger left = new AtomicInteger();
        AtomicInteger all = new AtomicInteger();
        LongStream.range(0, CASES).parallel().forEach(i -> {
            RandomCase c = draw.apply(RandomCase.SEED + from + i);
            // One line twice: of ways that leave the same the first is told.
            List<Passage> ways = new ArrayList<>(List.of(
                    new Passage(c.stance(), c.profile()),
                    new Passage(c.stance(), RoadProfile.level()),
                    new Passage(c.stance(), RandomProfiles.profile(c.random())),
                    new Passage(c.stance(), c.profile())));
            List<Look> full = UnitSearch.onAll(ways, c.setting()).stream()
                    .map(s -> s.look(DEMANDS))
                    .toList();
            if (full.stream()
                    .anyMatch(l -> l.undecided().isPresent() || l.least().isEmpty())) {
                return;
            }
            for (int first = 0; first < full.size(); first++) {
                List<Optional<Look>> looks = UnitLooks.of(UnitSearch.onAll(ways, c.setting()), DEMANDS, first);
                assertTold(c + ", first " + first, full, looks);
                left.addAndGet((int) looks.stream().filter(Optional::isEmpty).count());
                all.addAndGet(looks.size());
            }
        });
        System.out.printf("between units: %d of %d ways not searched%n", left.get(), all.get());
        assertTrue(left.get() > 0, "some must be left unsearched");
    }

    private static void assertTold(String what, List<Look> full, List<Optional<Look>> looks) {
        for (int i = 0; i < full.size(); i++) {
            if (looks.get(i).isPresent()) {
                assertEquals(full.get(i).spares(), looks.get(i).get().spares(), what);
                assertEquals(full.get(i).least(), looks.get(i).get().least(), what);
            }
        }
        assertEquals(
                first(full.size(), i -> full.get(i).least().get().valueM()),
                first(
                        full.size(),
                        i -> looks.get(i).map(l -> l.least().get().valueM()).orElse(Double.POSITIVE_INFINITY)),
                what + ": the way that is told");
        for (int k = 0; k < DEMANDS.size(); k++) {
            int demand = k;
            int lacks = first(full.size(), i -> full.get(i).spares().get(demand).valueM());
            if (full.get(lacks).spares().get(demand).valueM() < 0) {
                assertEquals(
                        lacks,
                        first(
                                full.size(),
                                i -> looks.get(i)
                                        .map(l -> l.spares().get(demand).valueM())
                                        .orElse(Double.POSITIVE_INFINITY)),
                        what + ": the way that lacks most");
            }
        }
        assertEquals(
                full.stream().mapToInt(l -> l.firstMet(2)).max(),
                looks.stream()
                        .flatMap(Optional::stream)
                        .mapToInt(l -> l.firstMet(2))
                        .max(),
                what + ": the worst that is met");
    }

    /** The first of those with the least value. */
    private static int first(int size, IntToDoubleFunction value) {
        return IntStream.range(0, size)
                .reduce((a, b) -> value.applyAsDouble(b) < value.applyAsDouble(a) ? b : a)
                .orElseThrow();
    }

    @Test
    void bendsThatAreShownToKeepToARangeDo() {
        AtomicInteger shown = new AtomicInteger();
        AtomicInteger left = new AtomicInteger();
        LongStream.range(0, CASES).parallel().forEach(i -> {
            RandomCase c = i % 2 == 0
                    ? RandomCouplings.caseOf(RandomCase.SEED + 14_000_000 + i)
                    : RandomCouplings.withBoosters(RandomCase.SEED + 14_000_000 + i);
            Passage passage = new Passage(c.stance(), c.profile());
            UnitSearch search = new UnitSearch(passage, c.setting(), c.leveling());
            for (CoupledGaps at : search.couplings()) {
                Range met = met(search, passage, at.coupling());
                for (double room : new double[] {-1e-4, 1e-3, 1e-2}) {
                    for (Range range : List.of(
                            new Range(met.lo() - room, met.hi() + 1), new Range(met.lo() - 1, met.hi() + room))) {
                        boolean kept = search.keepsTo(at, range, List.of());
                        assertTrue(
                                !kept || met.lo() >= range.lo() && met.hi() <= range.hi(),
                                () -> c + ", " + at.coupling() + ": not in " + range + " but " + met);
                        (kept ? shown : left).incrementAndGet();
                    }
                }
                for (double leftM : new double[] {-0.05, 0.0, 0.05}) {
                    Demand demand = DEMANDS.get(0);
                    double least = search.lookAtSpares(List.of(demand)).spares().stream()
                            .mapToDouble(UnitGap::valueM)
                            .min()
                            .orElse(Double.NEGATIVE_INFINITY);
                    assertTrue(
                            !search.leaves(demand, leftM) || least >= leftM,
                            () -> c + ": leaves " + least + " m, not " + leftM + " m");
                }
            }
        });
        assertTrue(shown.get() > CASES && left.get() > CASES, shown + " shown, " + left + " not");
    }

    private static Range met(UnitSearch search, Passage passage, Coupling coupling) {
        double[] bends = IntStream.rangeClosed(0, POSITIONS)
                .mapToDouble(k -> search.bendRadAt(
                        coupling,
                        passage.firstSteerM() + (passage.lastSteerM() - passage.firstSteerM()) * k / POSITIONS))
                .sorted()
                .toArray();
        return new Range(bends[0], bends[POSITIONS]);
    }
}
