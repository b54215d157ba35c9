package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.route.Route;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Wires over the road: how far they are kept away from, and what must be known before one is clear. */
class OverheadWireTest {
    private static final String REFERENCE = "down/none/3";

    private static Route wire(String properties) {
        return CheckCase.route("\"hazard\": \"overhead-wire\", " + properties);
    }

    private static String declared(String height, String carried) {
        return "\"measured\": \"declared\", \"clearance\": \"" + height + "\", \"extent\": [\"-1 m\", \"1 m\"], "
                + carried;
    }

    private static String power(String voltage) {
        return "\"carries\": \"power\", \"voltage\": \"" + voltage + "\"";
    }

    private static String verdict(String properties) {
        return CheckCase.cell(CheckCase.check(wire(properties), Margins.defaults()), REFERENCE)
                .verdict()
                .word();
    }

    /**
     * The load stands 4.1 m high, over a road that is not surveyed (0.30 m), and a declared height carries 3 in: clear
     * from 4.1 + 0.30 + √(76.2² + 10² + 15²) mm = 4.4783 m and the distance of 29 CFR 1926.1411, Table T: 4, 6, 10, 16
     * and 20 ft up to 750 V, 50, 345, 750 and 1,000 kV.
     */
    @ParameterizedTest
    @CsvSource({
        "480 V, 5.70 m, clear",
        "750 V, 5.69 m, tight",
        "0.751 kV, 6.30 m, tight",
        "12.5 kV, 6.31 m, clear",
        "50 kV, 6.31 m, clear",
        "69 kV, 7.52 m, tight",
        "345 kV, 7.53 m, clear",
        "500 kV, 9.35 m, tight",
        "750 kV, 9.36 m, clear",
        "765 kV, 10.57 m, tight",
        "1000 kV, 10.58 m, clear",
        "1001 kV, 30 m, tight",
        "12.5 kV, 4.15 m, contact",
        "12.5 kV, 4.05 m, contact",
    })
    void theVoltageSaysHowFar(String voltage, String height, String verdict) {
        assertEquals(verdict, verdict(declared(height, power(voltage))));
    }

    /** 4.4783 m and 3 ft, as the owner asks; 4.4783 m and the usual margin of 3 in for a telephone cable. */
    @ParameterizedTest
    @CsvSource({
        "'\"carries\": \"power\", \"voltage\": \"12.5 kV\", \"keepAway\": \"3 ft\"', 5.39 m, tight",
        "'\"carries\": \"power\", \"voltage\": \"12.5 kV\", \"keepAway\": \"3 ft\"', 5.40 m, clear",
        "'\"carries\": \"power\", \"keepAway\": \"3 ft\"', 5.40 m, clear",
        "'\"carries\": \"unknown\", \"keepAway\": \"0 ft\"', 4.56 m, clear",
        "'\"carries\": \"communication\"', 4.56 m, clear",
        "'\"carries\": \"communication\"', 4.55 m, tight",
    })
    void theOwnerDecides(String carried, String height, String verdict) {
        assertEquals(verdict, verdict(declared(height, carried)));
    }

    /**
     * Surveyed to 5 mm, 0.5 m lower in heat: clear from 4.1 + 0.30 + 6 ft + 0.5 m + √(5² + 10² + 15²) mm = 6.7475 m.
     */
    @ParameterizedTest
    @CsvSource({"6.74 m, tight", "6.75 m, clear"})
    void heatTakesOffItsHeight(String height, String verdict) {
        assertEquals(
                verdict,
                verdict("\"measured\": \"surveyed\", \"survey\": {\"accuracy\": \"5 mm\", \"source\": \"rod\"},"
                        + " \"lowering\": \"0.5 m\", \"extent\": [\"-1 m\", \"1 m\"], \"clearance\": \"" + height
                        + "\", "
                        + power("12.5 kV")));
    }

    /** 20 m over the road, and still something about it is not known. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"measured\": \"declared\", \"carries\": \"power\"",
                "\"measured\": \"declared\", \"carries\": \"unknown\"",
                "\"measured\": \"unknown\", \"carries\": \"communication\"",
                "\"measured\": \"surveyed\", \"carries\": \"communication\","
                        + " \"survey\": {\"accuracy\": \"5 mm\", \"source\": \"rod\"}",
            })
    void whatIsNotKnownIsNeverClear(String properties) {
        Report report = CheckCase.check(
                wire(properties + ", \"clearance\": \"20 m\", \"extent\": [\"-1 m\", \"1 m\"]"), Margins.defaults());
        assertEquals(List.of("tight"), CheckCase.verdicts(report));
        assertFalse(CheckCase.cell(report, REFERENCE).reasons().isEmpty());
    }

    @Test
    void aWireOfUnknownHeightIsNotSurveyed() {
        Report report = CheckCase.check(
                wire("\"measured\": \"unknown\", " + power("480 V") + ", \"lowering\": \"1 m\""), Margins.defaults());
        assertEquals(List.of("not surveyed"), CheckCase.verdicts(report));
    }

    /**
     * Along the road for 40 m of a span of 60 m, 9 m at both supports, 7 m in the middle and 0.3 m lower in heat. Sag
     * 2.3 m: 0.55 · 2.3² · 9.2 / 60² = 7.4 mm lower for a catenary, 2.3 / 256 = 9.0 mm more between tangents; 4 · 2.3 /
     * 40 = 0.23 steep, so 6 ft in every direction are 6 ft · √(1 + 0.23²) = 1.8765 m straight down. The load's top is
     * level, 4.1 m over the level road; the uncertainty is some millimeters.
     */
    @Test
    void aWireAlongTheRoadHangsAsItHangs() {
        GapFinding gap = CheckCase.cell(
                        CheckCase.check(
                                wire("\"measured\": \"surveyed\", \"survey\": {\"accuracy\": \"1 mm\", \"source\":"
                                        + " \"level\"}, \"lowering\": \"0.3 m\", " + power("12.5 kV")
                                        + ", \"profile\": [{\"line\": \"center\", \"points\": ["
                                        + CheckCase.LEVEL_POINTS + "]}],"
                                        + " \"wire\": {\"supports\": [[\"-20 m\", \"9 m\"], [\"20 m\", \"9 m\"]],"
                                        + " \"midSpan\": \"7 m\", \"span\": \"60 m\"}"),
                                Margins.defaults()),
                        REFERENCE)
                .overhead();
        double hangsM = 9 - 2.3 - 4.1;
        assertTrue(gap.valueM() <= hangsM - 0.0074 + 0.0005, gap.toString());
        assertTrue(gap.valueM() >= hangsM - 0.0074 - 0.0090 - 0.0005, gap.toString());
        assertTrue(gap.requiredM() >= 1.8765, gap.toString());
        assertTrue(gap.requiredM() <= 1.8765 + 0.025, gap.toString());
    }
}
