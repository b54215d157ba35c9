package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.route.Route;
import org.junit.jupiter.api.Test;

/** A rig 2.6 m wide, driven half a foot off its line, needs 1.4524 m of survey to either side. */
class SurveyedBandTest {
    private static Route road(String... offsets) {
        StringBuilder lines = new StringBuilder();
        for (String offset : offsets) {
            lines.append(lines.isEmpty() ? "" : ", ")
                    .append("{\"line\": \"at " + offset + "\", ")
                    .append(offset.equals("unknown") ? "" : "\"offset\": \"" + offset + "\", ")
                    .append("\"points\": [" + CheckCase.LEVEL_POINTS + "]}");
        }
        return CheckCase.route("\"hazard\": \"dip\", \"survey\": {\"accuracy\": \"5 mm\", \"source\": \"level\"},"
                + "\"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + "\"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + "\"profile\": [" + lines + "]");
    }

    @Test
    void whatReachesBeyondTheOutermostLinesIsAtBestTight() {
        assertEquals(List.of("clear"), verdicts("-1.453 m", "0 m", "1.453 m"));
        assertEquals(List.of("tight"), verdicts("-1.452 m", "0 m", "1.453 m"));
        assertEquals(List.of("tight"), verdicts("-1.453 m", "1.452 m"));
        assertEquals(List.of("tight"), verdicts("0 m"));
    }

    @Test
    void linesThatDoNotSayWhereTheyRunAreJudgedAsBefore() {
        assertEquals(List.of("clear"), verdicts("unknown"));
    }

    @Test
    void theReasonStandsWithThePlaceAndNoRaiseIsOffered() {
        Report report = CheckCase.check(road("-1 m", "1 m"), Margins.defaults());
        assertTrue(report.hazards().get(0).limits().stream()
                .anyMatch(l -> l.toString().contains("beyond the outermost")));
        assertTrue(report.hazards().get(0).cells().stream().allMatch(c -> c.raise() == null));
    }

    private static List<String> verdicts(String... offsets) {
        return CheckCase.verdicts(CheckCase.check(road(offsets), Margins.defaults()));
    }
}
