package org.cresthaul.whatif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.cresthaul.plan.Outcome;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoadCase;
import org.cresthaul.plan.SpareKind;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The comparison says what the plans that keep one configuration say, and what the report says of it. */
class ComparisonTest {
    private static RoadCase sample;
    private static Comparison comparison;

    @BeforeAll
    static void compare() throws Exception {
        sample = RoadCase.sample();
        comparison = ConfigurationComparison.of(
                sample.whole(),
                sample.report(),
                new PlanOptions(
                        sample.rig().times(), List.of("up/none/3"), "down/none/3", false, List.of(), List.of()));
    }

    @Test
    void hasEveryConfigurationAndEveryPlace() {
        assertEquals(
                sample.report().configurations().stream()
                        .map(ConfigurationVerdict::key)
                        .toList(),
                comparison.configurations().stream()
                        .map(Comparison.Compared::configuration)
                        .toList());
        Set<String> places = new HashSet<>(
                sample.report().hazards().stream().map(HazardFindings::id).toList());
        places.add(Plan.WHOLE_ROUTE);
        for (Comparison.Compared c : comparison.configurations()) {
            assertEquals(
                    places,
                    new HashSet<>(
                            c.along().stream().map(Comparison.Along::hazard).toList()));
        }
    }

    /**
     * With one configuration kept, what blocks is what is neither clear nor clear when raised: counted in the report.
     */
    @Test
    void blockedAreThePlacesThatTheReportDoesNotCallClear() {
        for (Comparison.Compared c : comparison.configurations()) {
            List<String> expected = new ArrayList<>();
            for (HazardFindings h : sample.report().hazards()) {
                ReportCell cell = h.cells().stream()
                        .filter(x -> x.configuration().equals(c.configuration()))
                        .findFirst()
                        .orElseThrow();
                if (cell.verdict() != Verdict.CLEAR && cell.raise() == null) {
                    expected.add(h.id());
                }
            }
            ConfigurationVerdict whole = sample.report().configurations().stream()
                    .filter(x -> x.key().equals(c.configuration()))
                    .findFirst()
                    .orElseThrow();
            if (whole.loads() != Verdict.CLEAR) {
                expected.add(Plan.WHOLE_ROUTE);
            }
            // Neighbors that are passed raised together may block although each alone would not.
            assertTrue(new HashSet<>(c.blocking()).containsAll(expected), c.configuration() + c.blocking() + expected);
            assertEquals(c.blocking().isEmpty(), c.outcome() != Outcome.BLOCKED);
        }
    }

    @Test
    void theBestIsNoneOfThoseThatMoreBlockOrThatTakeLonger() {
        Comparison.Compared best = comparison.configurations().stream()
                .filter(c -> c.configuration().equals(comparison.best()))
                .findFirst()
                .orElseThrow();
        for (Comparison.Compared c : comparison.configurations()) {
            assertTrue(
                    best.blocking().size() < c.blocking().size()
                            || best.blocking().size() == c.blocking().size() && best.seconds() <= c.seconds(),
                    c.configuration());
        }
    }

    @Test
    void axlesAddUpToTheGrossWeight() {
        for (Comparison.Compared c : comparison.configurations()) {
            double sum = c.groups().stream()
                    .mapToDouble(Comparison.GroupLoad::loadKg)
                    .sum();
            assertEquals(c.grossKg(), sum, 0.5, c.configuration());
        }
    }

    @Test
    void theWorstOfAKindIsTheLeastForItsSize() {
        for (Comparison.Compared c : comparison.configurations()) {
            for (Comparison.Worst w : c.worst()) {
                double share = w.spare().left() / w.spare().required();
                c.along().stream()
                        .map(Comparison.Along::spare)
                        .filter(Objects::nonNull)
                        .filter(s -> s.kind().equals(w.spare().kind()))
                        .forEach(s -> assertTrue(share <= s.left() / s.required() + 1e-12, c.configuration() + w + s));
            }
            assertTrue(c.worst().stream()
                    .map(w -> w.spare().kind())
                    .toList()
                    .containsAll(List.of(SpareKind.GROUND, SpareKind.OVERHEAD, SpareKind.CORNER, SpareKind.LOAD)));
        }
    }

    @Test
    void differencesAreWhereTheyFareDifferently() {
        assertEquals(List.of(), comparison.difference("down/none/3", "down/none/3"));
        List<Comparison.Difference> d = comparison.difference("down/none/3", "up/none/3");
        // The ford: the raised tire meets the rim with two axles, with three it does not.
        Comparison.Difference ford =
                d.stream().filter(x -> x.hazard().equals("H05")).findFirst().orElseThrow();
        assertEquals(Verdict.CLEAR, ford.first().verdict());
        assertEquals(null, ford.first().raise());
        assertTrue(ford.second().raise() != null && ford.second().raise().rearM() > 0);
        // Nobody surveyed the spur: neither has anything to differ in.
        assertTrue(d.stream().noneMatch(x -> x.hazard().equals("H06")));
        assertEquals(
                d.stream().map(Comparison.Difference::hazard).toList(),
                d.stream()
                        .sorted(Comparator.comparingInt(x -> order(x.hazard())))
                        .map(Comparison.Difference::hazard)
                        .toList());
        assertThrows(IllegalArgumentException.class, () -> comparison.difference("down/none/3", "down/none/9"));
    }

    private static int order(String hazard) {
        return comparison.configurations().get(2).along().stream()
                .map(Comparison.Along::hazard)
                .toList()
                .indexOf(hazard);
    }
}
