package org.cresthaul.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LengthTest {
    @ParameterizedTest(name = "{0} = {1} m")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                // By the definition of the foot, 0.3048 m exactly (O5)
                "13'6\"            | 4.1148",
                "14'6\"            | 4.4196",
                "13'1\"            | 3.9878",
                "6'7\"             | 2.0066",
                "13 ft 6 in        | 4.1148",
                "13ft6in           | 4.1148",
                "13' 6 1/2\"       | 4.1275",
                "13′ 6½″           | 4.1275",
                "13’ 6 1/2”        | 4.1275",
                "13 ft             | 3.9624",
                "13.5 ft           | 4.1148",
                "13 feet 6 inches  | 4.1148",
                "1,300 ft          | 396.24",
                "0 ft 7 in         | 0.1778",
                "3/4 in            | 0.01905",
                "¾ in              | 0.01905",
                "-1 1/2 in         | -0.0381",
                "−1 1/2 in         | -0.0381",
                "1 1/2 in          | 0.0381",
                "1½\"              | 0.0381",
                "+3 in             | 0.0762",
                "-13 ft 6 in       | -4.1148",
                "162 in            | 4.1148",
                "6.25 in           | 0.15875",
                "4.11 m            | 4.11",
                "4.11m             | 4.11",
                "180 mm            | 0.18",
                "12 cm             | 0.12",
                "1.5 km            | 1500",
                "-0 in             | 0",
                "  0.5  m          | 0.5",
            })
    void readsWhatPeopleWrite(String text, double meters) throws BadQuantity {
        assertEquals(meters, Length.parse(text).meters(), 1e-12);
    }

    @ParameterizedTest(name = "[{0}] is refused as {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            ignoreLeadingAndTrailingWhitespace = true,
            value = {
                "4.11            | unit-missing",
                "13 ft 6         | unit-missing",
                "13'6            | unit-missing",
                "3/4             | unit-missing",
                "19000 lb        | unit-unknown",
                "4.11 M          | unit-unknown",
                "4.11 meters     | unit-unknown",
                "13.5 ft 6 in    | not-a-quantity",
                "13 ft 12 in     | not-a-quantity",
                "6 in 13 ft      | not-a-quantity",
                "13 ft 6 ft      | not-a-quantity",
                "13 ft -6 in     | not-a-quantity",
                "1 ft 2 in 3 in  | not-a-quantity",
                "5/4 in          | not-a-quantity",
                "½6 in           | not-a-quantity",
                "1 3/0 in        | not-a-quantity",
                "1/2 m           | not-a-quantity",
                "4,11 m          | not-a-quantity",
                "4,110 m         | not-a-quantity",
                "1,30 ft         | not-a-quantity",
                ".5 m            | not-a-quantity",
                "1e3 m           | not-a-quantity",
                "1e308 m         | not-a-quantity",
                "NaN m           | not-a-quantity",
                "Infinity m      | not-a-quantity",
                "NaN             | not-a-quantity",
                "m               | not-a-quantity",
                "--1 m           | not-a-quantity",
                "- 1 m - 2 m     | not-a-quantity",
                "0x10 m          | not-a-quantity",
                "1 m;            | not-a-quantity",
                "١ m             | not-a-quantity",
                "100001 m        | out-of-range",
                "-100.001 km     | out-of-range",
                "999999999999999999999999999999999999999 m | not-a-quantity",
                "9999999999999999999999999999999999 m     | out-of-range",
                "``              | not-a-quantity",
                "` `             | not-a-quantity",
            })
    void refusesWhatCouldBeMisread(String text, String code) {
        BadQuantity bad = assertThrows(BadQuantity.class, () -> Length.parse(text));
        assertEquals(code, bad.code(), bad.getMessage());
    }

    @Test
    void tellsOfABareNumberWithARightExample() throws BadQuantity {
        BadQuantity bad = assertThrows(BadQuantity.class, () -> Length.parse("4.11"));
        assertEquals("\"4.11\" has no unit.", bad.getMessage());
        Matcher example = Pattern.compile("\"([^\"]+)\"").matcher(bad.remedy());
        int examples = 0;
        for (; example.find(); examples++) {
            Length.parse(example.group(1));
        }
        assertEquals(4, examples);
    }

    @ParameterizedTest(name = "{0} m in {1} parts: {2}")
    @CsvSource({
        "4.1148, 8, 13 ft 6 in",
        "4.1275, 8, 13 ft 6 1/2 in",
        "-0.0381, 8, -1 1/2 in",
        "0.01905, 4, 3/4 in",
        "3.9624, 8, 13 ft",
        "0, 8, 0 in",
        "-0.0001, 8, 0 in",
        "0.3, 1, 1 ft",
        "0.3, 16, 11 13/16 in",
        "3.9640, 16, 13 ft 1/16 in",
    })
    void writesFeetAndInchesInLowestTerms(double meters, int parts, String text) {
        assertEquals(text, new Length(meters).inFeetAndInches(parts));
    }

    @Test
    void writesDecimalsAsAsked() {
        Length length = new Length(-0.1262);
        assertEquals("-4.97 in", length.inInches(2));
        assertEquals("-0.13 m", length.inMeters(2));
        assertEquals("-126 mm", length.inMillimeters());
        assertEquals("0.00 in", new Length(-0.00001).inInches(2));
        assertEquals("100000.000 m", new Length(100_000).inMeters(3));
    }

    @Test
    void comesBackWithinAMillimeterUnderADecimalCommaLocale() throws BadQuantity {
        long seed = 20260207;
        System.out.println("lengths there and back, seed " + seed);
        SplittableRandom random = new SplittableRandom(seed);
        Locale before = Locale.getDefault();
        double worstM = 0;
        try {
            Locale.setDefault(Locale.GERMANY);
            for (int i = 0; i < 20_000; i++) {
                double meters = (random.nextDouble() - 0.5) * Math.pow(10, random.nextDouble(-3, 5));
                Length length = new Length(meters);
                for (String text : new String[] {
                    length.format(UnitSystem.US_CUSTOMARY),
                    length.format(UnitSystem.METRIC),
                    length.inMillimeters(),
                    length.inInches(2),
                    length.inFeetAndInches(16)
                }) {
                    worstM = Math.max(worstM, Math.abs(Length.parse(text).meters() - meters));
                }
                double eighth = Length.parse(length.inFeetAndInches(8)).meters();
                assertEquals(meters, eighth, 0.0254 / 16 + 1e-9);
            }
        } finally {
            Locale.setDefault(before);
        }
        assertTrue(worstM <= 0.001, "worst " + worstM + " m");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 1e308, -100_000.1})
    void isNeverMadeOfWhatIsNoLength(double meters) {
        assertThrows(IllegalArgumentException.class, () -> new Length(meters));
    }
}
