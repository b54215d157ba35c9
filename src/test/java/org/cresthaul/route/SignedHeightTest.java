package org.cresthaul.route;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.cresthaul.units.Length;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SignedHeightTest {
    @ParameterizedTest(name = "{0}: {1} is signed {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                // Traffic Signs Manual ch. 4 7.11-7.12 (O2)
                "british        | 15 ft 2 in     | 14 ft 9 in",
                "british        | 14 ft 6 in     | 14 ft 3 in",
                "british metric | 4.19 m         | 4.1 m",
                // TxDOT sign manual (O3)
                "Texas          | 14 ft 9 in     | 14 ft 6 in",
                // The same rules just under and at a step, by hand
                "british        | 15 ft 0 in     | 14 ft 9 in",
                "british        | 14 ft 11 7/8 in| 14 ft 6 in",
                "british metric | 4.18 m         | 4.1 m",
                "british metric | 4.179 m        | 4.0 m",
            })
    void signsLowByTheRule(String rule, String measured, String signed) throws Exception {
        double measuredM = Length.parse(measured).meters();
        double signedM =
                switch (rule) {
                    case "british" -> SignedHeight.britishM(measuredM);
                    case "british metric" -> SignedHeight.britishMetricM(measuredM);
                    default -> SignedHeight.texanM(measuredM);
                };
        assertEquals(Length.parse(signed).meters(), signedM, 1e-9);
    }

    @ParameterizedTest(name = "statutory 13 ft 6 in, clearance {0}: W12-2 {1}")
    @CsvSource({
        // MUTCD 2009 2C.27 (O4)
        "14 ft 5 7/8 in, true",
        "14 ft 6 in, false",
        "13 ft 6 in, true",
        "16 ft, false"
    })
    void asksForTheLowClearanceSignBelowTwelveInchesOverTheStatutoryHeight(String clearance, boolean required)
            throws Exception {
        assertEquals(
                required,
                SignedHeight.isW12Required(
                        Length.parse(clearance).meters(),
                        Length.parse("13 ft 6 in").meters()));
    }
}
