package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.LeastSetting;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;

/**
 * What a route is meant to show, as a table: per hazard and state the verdict at notches 1 to 7 (C clear, t tight, X
 * contact, ? not surveyed), the raise that clears (. not needed, f front, r rear, b both, - none) and the lowest notch
 * that clears. "any" is every state. Lines that start with # say why.
 */
final class RouteStory {
    private static final String[] NOTCHES = {"1", "2", "3", "4", "5", "6", "7"};

    private RouteStory() {}

    static void assertTells(String story, Report report, List<String> boosters) {
        Set<String> expected = rows(story, boosters);
        Set<String> found = rows(report, boosters);
        assertEquals(2 * boosters.size() * judgedByGaps(report).size(), found.size());
        // Only the rows that differ, to be readable.
        assertEquals(without(expected, found), without(found, expected));
    }

    /** That a booster state judges every place as no booster does. */
    static void assertSameAsWithout(Report report, String booster) {
        Set<String> other = rows(report, List.of(booster));
        assertEquals(2 * judgedByGaps(report).size(), other.size());
        assertEquals(
                rows(report, List.of("none")),
                other.stream()
                        .map(r -> r.replace("/" + booster, "/none"))
                        .collect(Collectors.toCollection(TreeSet::new)));
    }

    private static Set<String> without(Set<String> rows, Set<String> others) {
        Set<String> left = new TreeSet<>(rows);
        left.removeAll(others);
        return left;
    }

    /** Rows of a story, "any" spelled out. */
    private static Set<String> rows(String story, List<String> boosters) {
        Set<String> rows = new TreeSet<>();
        story.lines().filter(line -> !line.startsWith("#")).forEach(line -> {
            String[] field = line.split(" +");
            List<String> states = new ArrayList<>();
            if (field[1].equals("any")) {
                boosters.forEach(b -> states.addAll(List.of("down/" + b, "up/" + b)));
            } else {
                states.add(field[1]);
            }
            for (String state : states) {
                String row = String.join(" ", field[0], state, field[2], field[3], field[4]);
                assertTrue(rows.add(row), "row twice: " + line);
            }
        });
        return rows;
    }

    /** The hazards judged in the side view; corners and loads have no notch and no raise. */
    static List<HazardFindings> judgedByGaps(Report report) {
        return report.hazards().stream()
                .filter(h -> !Set.of("posted-bridge", "stretch", "corner")
                        .contains(h.kind().word()))
                .toList();
    }

    /** The same rows of a report. */
    static Set<String> rows(Report report, List<String> boosters) {
        Set<String> rows = new TreeSet<>();
        for (HazardFindings hazard : judgedByGaps(report)) {
            for (LeastSetting least : hazard.least()) {
                if (boosters.contains(least.booster().word())) {
                    StringBuilder verdicts = new StringBuilder();
                    StringBuilder raises = new StringBuilder();
                    for (String notch : NOTCHES) {
                        ReportCell cell = cell(hazard, least.lift() + "/" + least.booster() + "/" + notch);
                        verdicts.append(letter(cell.verdict()));
                        raises.append(cell.verdict() == Verdict.CLEAR ? '.' : letter(cell.raise()));
                    }
                    rows.add(String.join(
                            " ",
                            hazard.id(),
                            least.lift() + "/" + least.booster(),
                            verdicts,
                            raises,
                            least.notch() == null ? "-" : least.notch()));
                }
            }
        }
        return rows;
    }

    static char letter(Verdict verdict) {
        return Map.of("clear", 'C', "tight", 't', "contact", 'X', "not surveyed", '?', "outside limits", '%')
                .get(verdict.word());
    }

    private static char letter(RaiseFinding raise) {
        if (raise == null) {
            return '-';
        }
        return raise.rearM() == 0 ? 'f' : raise.frontM() == 0 ? 'r' : 'b';
    }

    static HazardFindings finding(Report report, String hazard) {
        return report.hazards().stream()
                .filter(h -> h.id().equals(hazard))
                .findFirst()
                .orElseThrow();
    }

    static ReportCell cell(Report report, String hazard, String configuration) {
        return cell(finding(report, hazard), configuration);
    }

    static ReportCell cell(HazardFindings hazard, String configuration) {
        return hazard.cells().stream()
                .filter(c -> c.configuration().equals(configuration))
                .findFirst()
                .orElseThrow();
    }
}
