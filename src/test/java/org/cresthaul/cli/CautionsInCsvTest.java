package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.cresthaul.check.SampleHaul;
import org.cresthaul.report.Report;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A row of the table cautions about what its own columns say happens there, and about nothing else. */
class CautionsInCsvTest {
    private record Row(String kind, boolean raised, boolean escorted) {}

    private record Rule(String words, Predicate<Row> belongs) {}

    private static final List<Rule> RULES = List.of(
            new Rule("Raised stance: crawling speed only", Row::raised),
            new Rule("Nobody goes under a deck that is raised", Row::raised),
            new Rule("Nobody enters an oncoming lane before they hold it", Row::escorted),
            new Rule("392.11", r -> r.kind.equals("rail-crossing")),
            new Rule("then call 911", r -> r.kind.equals("rail-crossing")),
            new Rule("Heights change with every overlay", r -> r.kind.equals("low-structure")),
            new Rule("Watch the tail", r -> r.kind.equals("corner")));

    @ParameterizedTest
    @ValueSource(strings = {"alder-county", "sorrel-valley"})
    void everyRowCautionsAboutItself(String route) {
        Report report = SampleHaul.of(route, "lowbed-loaded").report();
        List<List<String>> rows = CsvRows.of(new ReportCsv(UnitSystem.US_CUSTOMARY).of(report));
        List<String> head = rows.get(0);
        TreeMap<String, Integer> seen = new TreeMap<>();
        for (List<String> row : rows.subList(1, rows.size())) {
            assertEquals(head.size(), row.size(), row.toString());
            Row does = new Row(
                    row.get(head.indexOf("kind")),
                    !row.get(head.indexOf("raise_front_in")).isEmpty(),
                    row.get(head.indexOf("corner_escorts")).equals("needed"));
            String told = row.get(head.indexOf("cautions"));
            for (Rule rule : RULES) {
                assertEquals(rule.belongs.test(does), told.contains(rule.words), row + ": " + rule.words);
                seen.merge(rule.words + " " + rule.belongs.test(does), 1, Integer::sum);
            }
        }
        assertEquals(report.hazards().stream().mapToLong(h -> h.cells().size()).sum(), rows.size() - 1);
        assertTrue(seen.size() >= 2 * RULES.size() - 1, seen.toString());
    }
}
