package org.cresthaul.exchange.routefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.route.CrossingTraffic;
import org.cresthaul.route.CrossingTraffic.Warning;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a rail crossing says of its trains, as a file writes it. */
class CrossingFieldsTest {
    private static final String AT = "/features/3/properties/";

    private static CrossingTraffic read(String... fields) throws InputRejected {
        String text = RouteTexts.ROUTE;
        for (int i = 0; i < fields.length; i += 2) {
            text = JsonEdit.edit(text, AT + fields[i], "\"" + fields[i + 1] + "\"");
        }
        return ((RailCrossing) RouteFile.parse(text).findHazard("H01").orElseThrow()).traffic();
    }

    @Test
    void nothingSaidIsNothingKnown() throws InputRejected {
        assertEquals(CrossingTraffic.UNKNOWN, read());
        assertEquals(OptionalDouble.empty(), read().leastWarningS());
    }

    /** 25 s; 80 ft = 24.384 m and 900 ft = 274.32 m (0.3048 m a foot); 49 mph = 21.90496 m/s (0.44704 m/s). */
    @Test
    void readsEverything() throws InputRejected {
        CrossingTraffic all = read(
                "warning",
                "active",
                "warningTime",
                "25 s",
                "storage",
                "80 ft",
                "trainSpeed",
                "49 mph",
                "sight",
                "900 ft");
        assertEquals(Optional.of(Warning.ACTIVE), all.warning());
        assertEquals(25, all.leastWarningS().orElseThrow());
        assertEquals(24.384, all.storageM().orElseThrow(), 1e-9);
        assertEquals(21.90496, all.trainMps().orElseThrow(), 1e-9);
        assertEquals(274.32, all.sightM().orElseThrow(), 1e-9);
    }

    /** 49 CFR 234.225: 20 s. */
    @Test
    void activeDevicesWarnAtLeastTwentySeconds() throws InputRejected {
        assertEquals(20, read("warning", "active").leastWarningS().orElseThrow());
        assertEquals(OptionalDouble.empty(), read("warning", "passive").leastWarningS());
    }

    @ParameterizedTest
    @ValueSource(strings = {"0 s", "11 min", "1 h"})
    void refusesTimesThatAreNoWarning(String time) {
        InputRejected e = assertThrows(InputRejected.class, () -> read("warning", "active", "warningTime", time));
        assertEquals("out-of-range", e.problems().get(0).code());
        assertEquals(AT + "warningTime", e.problems().get(0).pointer());
    }

    @Test
    void refusesATimeAtSignsAlone() {
        InputRejected e = assertThrows(InputRejected.class, () -> read("warning", "passive", "warningTime", "25 s"));
        assertEquals("warning-without-devices", e.problems().get(0).code());
    }
}
