package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.cresthaul.language.English;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.Route;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A level road is clear only where it was surveyed closely enough to know that it is level. The same points on the same
 * truth: only how many of them were taken changes.
 */
class SurveySpacingTest {
    private static final Margins MARGINS = Margins.defaults();

    private static Route level(String kind, String more, double... atM) {
        String points = DoubleStream.of(atM)
                .mapToObj(x -> "[\"" + Math.round(x * 1000) + " mm\", \"0 m\"]")
                .collect(Collectors.joining(", "));
        return CheckCase.route(
                "\"hazard\": \"" + kind + "\", \"survey\": {\"accuracy\": \"2 mm\", \"source\": \"level\"},"
                        + " \"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                        + " \"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"}" + more
                        + ", \"profile\": [{\"line\": \"center\", \"points\": [" + points + "]}]");
    }

    private static double[] every(double stepM, double fromM, double toM) {
        return DoubleStream.iterate(fromM, x -> x <= toM + 1e-9, x -> x + stepM).toArray();
    }

    private static void requireClear(boolean clear, Route route) {
        Report report = CheckCase.check(route, MARGINS);
        boolean some = CheckCase.verdicts(report).contains(Verdict.CLEAR.word());
        assertEquals(clear, some, CheckCase.verdicts(report).toString());
        List<String> limits = English.of(report.hazards().get(0).limits());
        assertEquals(clear, limits.isEmpty(), limits.toString());
        assertTrue(clear || limits.get(0).contains("unseen"), limits.toString());
        assertFalse(report.hazards().get(0).cells().isEmpty());
    }

    @ParameterizedTest
    @ValueSource(strings = {"dip", "crest"})
    void twoEndPointsEightyMetersApartClearNothing(String kind) {
        requireClear(false, level(kind, "", -40, 40));
        requireClear(false, level(kind, "", -40, 0, 40));
    }

    @ParameterizedTest
    @CsvSource({"3.048, 15.24, true", "3.1, 15.5, false", "1, 16, true", "1, 14, false"})
    void aDipWantsTenFeetWithinFifty(double stepM, double reachM, boolean clear) {
        requireClear(clear, level("dip", "", every(stepM, -reachM, reachM)));
    }

    @ParameterizedTest
    @CsvSource({"10, true", "10.5, false"})
    void farFromItsPointACrestMayBeCoarser(double stepM, boolean clear) {
        double[] near = every(1, -15, 15);
        double[] far = every(stepM, 15 + stepM, 80);
        requireClear(
                clear,
                level(
                        "crest",
                        "",
                        DoubleStream.concat(DoubleStream.of(near), DoubleStream.of(far))
                                .toArray()));
    }

    @ParameterizedTest
    @CsvSource({"10, true", "80, false"})
    void theRoadUnderAStructureWantsPointsToo(double stepM, boolean clear) {
        String over = ", \"measured\": \"surveyed\", \"clearance\": \"6 m\", \"extent\": [\"-3 m\", \"3 m\"]";
        requireClear(clear, level("low-structure", over, every(stepM, -40, 40)));
    }
}
