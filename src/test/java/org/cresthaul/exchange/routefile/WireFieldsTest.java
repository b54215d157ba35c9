package org.cresthaul.exchange.routefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.OverheadWire;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A wire over the road, as a file writes it. */
class WireFieldsTest {
    private static final String AT = "/features/4/properties";

    private static String file(String fields) {
        return JsonEdit.edit(
                RouteTexts.ROUTE,
                AT,
                "{\"hazard\": \"overhead-wire\", \"id\": \"H03\", \"name\": \"Feeder\", " + fields + "}");
    }

    private static OverheadWire read(String fields) throws InputRejected {
        return (OverheadWire) RouteFile.parse(file(fields)).findHazard("H03").orElseThrow();
    }

    /** 18 ft 6 in = 5.6388 m, 12 in = 0.3048 m lower; 6 ft = 1.8288 m. */
    @Test
    void readsADeclaredHeight() throws InputRejected {
        OverheadWire wire = read("\"measured\": \"declared\", \"carries\": \"power\", \"voltage\": \"12.5 kV\","
                + " \"clearance\": \"18 ft 6 in\", \"extent\": [\"-2 m\", \"3 m\"], \"lowering\": \"12 in\"");
        assertEquals(HazardKind.OVERHEAD_WIRE, wire.kind());
        assertEquals(5.334, wire.height().clearanceM().orElseThrow(), 1e-9);
        assertEquals(OptionalDouble.of(12_500), wire.voltageV());
        assertEquals(1.8288, wire.keptAwayM(), 1e-9);
        assertEquals(1.8288, wire.gapM(), 1e-9);
    }

    /**
     * Without road lines: level at its lowest. Supports 9 m, middle 7.5 m less 0.5 m, span 50 m: sag 2 m, lowest 7 m −
     * 0.55 · 4 · 8 / 2500.
     */
    @Test
    void readsAHangingWire() throws InputRejected {
        OverheadWire wire = read("\"measured\": \"surveyed\", \"carries\": \"communication\", \"lowering\": \"0.5 m\","
                + " \"survey\": {\"accuracy\": \"20 mm\", \"source\": \"rod\"}, \"wire\": {\"span\": \"50 m\","
                + " \"supports\": [[\"-4 m\", \"9 m\"], [\"4 m\", \"9 m\"]], \"midSpan\": \"7.5 m\"}");
        assertEquals(7 - 0.00704, wire.height().clearanceM().orElseThrow(), 1e-9);
        assertEquals(0, wire.keptAwayM());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "measured": "declared"                                                              | carries
            "measured": "posted", "carries": "power"                                            | measured
            "measured": "declared", "carries": "gas"                                            | carries
            "measured": "declared", "carries": "communication", "voltage": "12 kV"              | voltage
            "measured": "declared", "carries": "power", "voltage": "12"                         | voltage
            "measured": "declared", "carries": "power", "voltage": 12                           | voltage
            "measured": "declared", "carries": "power", "voltage": "-1 kV"                      | voltage
            "measured": "declared", "carries": "power", "clearance": "6 m"                      | extent
            "measured": "declared", "carries": "power", "extent": ["0 m", "1 m"]                | extent
            "measured": "declared", "carries": "power", "soffit": [["0 m", "6 m"], ["1 m", "6 m"]] | soffit
            "measured": "declared", "carries": "power", "keepAway": "40 m"                      | keepAway
            "measured": "surveyed", "carries": "power", "clearance": "6 m", "extent": ["0 m", "1 m"] | survey
            "measured": "declared", "carries": "power", "clearance": "6 m", "extent": ["0 m", "1 m"], "lowering": "7 m" | lowering
            "measured": "declared", "carries": "power", "wire": {"supports": [["0 m", "9 m"], ["-1 m", "9 m"]], "midSpan": "8 m", "span": "50 m"} | wire/supports
            "measured": "declared", "carries": "power", "wire": {"supports": [["0 m", "9 m"], ["60 m", "9 m"]], "midSpan": "8 m", "span": "50 m"} | wire/span
            "measured": "declared", "carries": "power", "wire": {"supports": [["0 m", "9 m"], ["6 m", "9 m"]], "midSpan": "9.1 m", "span": "50 m"} | wire/midSpan
            "measured": "declared", "carries": "power", "wire": {"supports": [["0 m", "9 m"], ["6 m", "9 m"]], "midSpan": "3.9 m", "span": "50 m"} | wire/midSpan
            "measured": "declared", "carries": "power", "wire": {"supports": [["0 m", "9 m"], ["6 m", "39 m"]], "midSpan": "20 m", "span": "50 m"} | wire/supports
            "measured": "declared", "carries": "power", "wire": {"supports": [["0 m", "9 m"], [6, "9 m"]], "midSpan": "8 m", "span": "50 m"} | wire/supports/1/0
            "measured": "declared", "carries": "power", "wire": {"supports": [["0 m", "9 m"], "x"], "midSpan": "8 m", "span": "50 m"} | wire/supports/1
            "measured": "declared", "carries": "power", "wire": {"supports": [["0 m", "1 m"], ["6 m", "1 m"]], "midSpan": "-1 m", "span": "50 m"} | wire
            """)
    void tellsEveryMistakeAtItsPlace(String fields, String place) {
        InputRejected rejected = assertThrows(InputRejected.class, () -> read(fields));
        assertEquals(
                List.of(AT + "/" + place),
                rejected.problems().stream().map(InputProblem::pointer).toList(),
                rejected.problems().toString());
    }
}
