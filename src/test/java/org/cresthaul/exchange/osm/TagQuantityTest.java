package org.cresthaul.exchange.osm;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Heights and weights as tags write them: by hand, an inch is 25.4 mm and a pound 0.45359237 kg. */
class TagQuantityTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "3.8      | 3.8",
                "3.8 m    | 3.8",
                "4        | 4",
                "380 cm   | 3.8",
                "12'6\"   | 3.81",
                "12' 6\"  | 3.81",
                "13' 10\" | 4.2164",
                "13'      | 3.9624",
                "13 ft    | 3.9624",
                "13 ft 10 in | 4.2164",
                "13'10    | 4.2164",
                "13.5 ft  | 4.1148",
                "162\"    | 4.1148",
                "3.5 @ (22:00-06:00) | 3.5"
            })
    void readsHeights(String text, double meters) {
        assertEquals(meters, TagQuantity.lengthM(text).orElseThrow(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "default",
                "below_default",
                "none",
                "unsigned",
                "16'12\"",
                "3,8",
                "4.0;4.2",
                "4.5|4.2",
                "~4",
                "0",
                "400",
                "12.5'6\"",
                "3.8 m 2",
                "-3",
                "",
                "1e1",
                "3.8 x",
                "14 feet or so",
                "3.5 @ (a); 4 @ (b)"
            })
    void takesNothingElseForAHeight(String text) {
        assertEquals(OptionalDouble.empty(), TagQuantity.lengthM(text));
    }

    @ParameterizedTest
    @CsvSource({"7.5, 7500", "7.5 t, 7500", "12t, 12000", "3500 kg, 3500", "16000 lbs, 7257.47792", "10 st, 9071.8474"})
    void readsWeights(String text, double kilograms) {
        assertEquals(kilograms, TagQuantity.massKg(text).orElseThrow(), 1e-6);
    }

    @ParameterizedTest
    @ValueSource(strings = {"none", "7,5", "0", "7.5 kN", "heavy", "unsigned", "12;16", "9999"})
    void takesNothingElseForAWeight(String text) {
        assertEquals(OptionalDouble.empty(), TagQuantity.massKg(text));
    }
}
