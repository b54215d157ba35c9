package org.cresthaul.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.cresthaul.language.English;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoadCase;
import org.cresthaul.plan.StepKind;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.Comparison;
import org.cresthaul.whatif.ConfigurationComparison;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Comparison, plan and run sheet caution about what happens on them, and about nothing that does not: raising where the
 * deck is raised, escorts where an oncoming lane is taken, tracks where there are tracks.
 */
class CautionsOfPlansTest {
    /** What somebody does at a place, as far as cautions go. */
    private record Deed(String kind, boolean raised, boolean escorted) {}

    private record Rule(String words, Predicate<Deed> belongs) {}

    private static final List<Rule> RULES = List.of(
            new Rule("Raised stance: crawling speed only", Deed::raised),
            new Rule("Nobody goes under a deck that is raised", Deed::raised),
            new Rule("Nobody enters an oncoming lane before they hold it", Deed::escorted),
            new Rule("392.11", d -> d.kind.equals("rail-crossing")),
            new Rule("blue sign", d -> d.kind.equals("rail-crossing")),
            new Rule("Heights change with every overlay", d -> d.kind.equals("low-structure")),
            new Rule("Watch the tail", d -> d.kind.equals("corner")),
            new Rule(
                    "The scales and the sign at the place decide",
                    d -> Set.of("posted-bridge", "stretch").contains(d.kind)));

    private static ReportCell cell(Report report, String hazard, String configuration) {
        return report.hazards().stream()
                .filter(h -> h.id().equals(hazard))
                .flatMap(h -> h.cells().stream())
                .filter(c -> c.configuration().equals(configuration))
                .findFirst()
                .orElse(null);
    }

    private static Deed deed(Report report, Plan.HazardPassage p) {
        ReportCell cell = cell(report, p.hazard(), p.set().configuration());
        return new Deed(
                p.kind().word(),
                p.raise() != null,
                cell != null && cell.corner() != null && cell.corner().escorts());
    }

    private static void assertCautions(String what, List<Deed> deeds, List<String> cautions) {
        String told = String.join("\n", cautions);
        for (Rule rule : RULES) {
            assertEquals(
                    deeds.stream().anyMatch(rule.belongs),
                    told.contains(rule.words),
                    what + ": " + rule.words + "\n" + deeds);
        }
    }

    private static List<Plan.HazardPassage> passages(Plan plan) {
        return plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(Objects::nonNull)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({"alder-county, false", "alder-county, true", "sorrel-valley, false", "sorrel-valley, true"})
    void everyPassageAndEveryEntryOfTheSheetCautionsAboutItself(String route, boolean avoidRaising) {
        RoadCase c = RoadCase.sample(route, "lowbed-loaded");
        Plan plan = c.plan(new PlanOptions(c.rig().times(), List.of(), null, avoidRaising, List.of(), List.of()));
        Set<String> kinds = new TreeSet<>();
        for (Plan.HazardPassage p : passages(plan)) {
            assertCautions(p.hazard(), List.of(deed(c.report(), p)), English.of(p.cautions()));
            kinds.add(p.kind().word());
        }
        assertTrue(kinds.size() >= 4, kinds.toString());
        List<RunSheet.Entry> entries =
                RunSheet.of(plan, c.report(), c.route(), c.stance(), UnitSystem.US_CUSTOMARY).legs().stream()
                        .flatMap(l -> l.entries().stream())
                        .toList();
        List<RunSheet.Entry> places =
                entries.stream().filter(e -> e.step() == StepKind.PASSAGE).toList();
        assertEquals(passages(plan).size(), places.size());
        for (int i = 0; i < places.size(); i++) {
            assertCautions(
                    "sheet " + places.get(i).id(),
                    List.of(deed(c.report(), passages(plan).get(i))),
                    places.get(i).cautions());
        }
        entries.stream()
                .filter(e -> e.step() != StepKind.PASSAGE && e.step() != StepKind.RAISE)
                .forEach(e -> assertEquals(List.of(), e.cautions(), e.step().word()));
    }

    /** Only what the compared plans do: each configuration kept all the way, with the same options. */
    @ParameterizedTest
    @CsvSource({"alder-county, false", "sorrel-valley, true"})
    void theComparisonCarriesTheCautionsOfWhatItShows(String route, boolean avoidRaising) {
        RoadCase c = RoadCase.sample(route, "lowbed-loaded");
        PlanOptions asked = new PlanOptions(c.rig().times(), List.of(), null, avoidRaising, List.of(), List.of());
        Comparison comparison = ConfigurationComparison.of(c.whole(), c.report(), asked);
        List<Deed> deeds = new ArrayList<>();
        for (Comparison.Compared compared : comparison.configurations()) {
            // Kept all the way, it passes every place, and so many of them raised.
            for (HazardFindings h : c.report().hazards()) {
                ReportCell cell = cell(c.report(), h.id(), compared.configuration());
                deeds.add(new Deed(
                        h.kind().word(),
                        false,
                        cell.corner() != null && cell.corner().escorts()));
            }
            if (compared.raised() > 0) {
                deeds.add(new Deed("place", true, false));
            }
        }
        assertCautions(route, deeds, English.of(comparison.cautions()));
        assertEquals(
                !avoidRaising, deeds.stream().anyMatch(Deed::raised), "both samples have places to be passed raised");
        assertTrue(comparison.cautions().containsAll(c.report().cautions()));
        assertEquals(
                comparison.cautions().size(), new TreeSet<>(English.of(comparison.cautions())).size(), "none twice");
    }

    /** A road with a crest and a bridge has no tracks, no lane to take, no structure: nothing is said of them. */
    @Test
    void whatIsNotOnTheRoadIsNotCautionedAbout() {
        RoadCase c = RoadCase.of(
                RoadCase.road(RoadCase.crest("5 mm", x -> 0), RoadCase.bridge("300,000 lb")), WeightsTexts.RIG);
        Comparison comparison = ConfigurationComparison.of(c.whole(), c.report(), PlanOptions.defaults());
        assertCautions(
                "crest and bridge",
                List.of(new Deed("crest", false, false), new Deed("posted-bridge", false, false)),
                English.of(comparison.cautions()));
    }
}
