package org.cresthaul.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Weights, pressures, grades and angles. Lengths have a test of their own. */
class QuantitiesTest {
    private static double si(String kind, String text) throws BadQuantity {
        return switch (kind) {
            case "weight" -> Mass.parse(text).kilograms();
            case "pressure" -> Pressure.parse(text).pascals();
            case "grade" -> Grade.parse(text).ratio();
            default -> Angle.parse(text).radians();
        };
    }

    @ParameterizedTest(name = "{0} {1} = {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                // By the international pound, 0.45359237 kg
                "weight   | 19000 lb  | 8618.25503",
                "weight   | 19,000 lb | 8618.25503",
                "weight   | 8600 kg   | 8600",
                "weight   | 8.6 t     | 8600",
                // NIST SP 811: 1 psi = 6894.757 Pa
                "pressure | 60 psi    | 413685.4",
                "pressure | 3,000 psi | 20684271.9",
                "pressure | 4.1 bar   | 410000",
                "pressure | 400 kPa   | 400000",
                "pressure | 20 MPa    | 20000000",
                "grade    | 2.3 %     | 0.023",
                "grade    | -2.3%     | -0.023",
                "grade    | −1.5 %    | -0.015",
                "angle    | 12 deg    | 0.20943951",
                "angle    | 12°       | 0.20943951",
                "angle    | 0.2 rad   | 0.2",
            })
    void readsWhatPeopleWrite(String kind, String text, double expected) throws BadQuantity {
        assertEquals(expected, si(kind, text), Math.abs(expected) * 1e-7);
    }

    @ParameterizedTest(name = "{0} {1} is refused as {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "weight   | 19000     | unit-missing",
                "weight   | 8,600 kg  | not-a-quantity",
                "weight   | 9 tons    | unit-unknown",
                "weight   | -5 lb     | out-of-range",
                "weight   | 1001 t    | out-of-range",
                "weight   | 1/2 lb    | not-a-quantity",
                "pressure | 60        | unit-missing",
                "pressure | 60 PSI    | unit-unknown",
                "pressure | -1 bar    | out-of-range",
                "pressure | 1e308 bar | not-a-quantity",
                "grade    | 0.023     | unit-missing",
                "grade    | 2.3 deg   | unit-unknown",
                "grade    | 101 %     | out-of-range",
                "grade    | 2,3 %     | not-a-quantity",
                "grade    | NaN %     | not-a-quantity",
                "angle    | 12        | unit-missing",
                "angle    | 361 deg   | out-of-range",
                "angle    | 12 %      | unit-unknown",
            })
    void refusesWhatCouldBeMisread(String kind, String text, String code) {
        BadQuantity bad = assertThrows(BadQuantity.class, () -> si(kind, text));
        assertEquals(code, bad.code(), bad.getMessage());
        assertTrue(bad.remedy().contains(code.equals("out-of-range") ? "must be" : "\""), bad.remedy());
    }

    @Test
    void comeBackWithinHalfTheLastDigitUnderADecimalCommaLocale() throws BadQuantity {
        long seed = 20260208;
        System.out.println("quantities there and back, seed " + seed);
        SplittableRandom random = new SplittableRandom(seed);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            for (int i = 0; i < 5_000; i++) {
                Mass mass = new Mass(random.nextDouble(Mass.MOST_KG));
                assertEquals(mass.kilograms(), Mass.parse(mass.format(UnitSystem.METRIC)).kilograms(), 0.5001);
                assertEquals(
                        mass.pounds(), Mass.parse(mass.format(UnitSystem.US_CUSTOMARY)).pounds(), 0.5001);
                Pressure pressure = new Pressure(random.nextDouble(Pressure.MOST_PA));
                assertEquals(
                        pressure.pascals(), Pressure.parse(pressure.format(UnitSystem.METRIC)).pascals(), 501);
                assertEquals(
                        pressure.psi(), Pressure.parse(pressure.format(UnitSystem.US_CUSTOMARY)).psi(), 0.5001);
                Grade grade = new Grade(random.nextDouble(-1, 1));
                assertEquals(grade.ratio(), Grade.parse(grade.format()).ratio(), 0.0000501);
                Angle angle = new Angle(random.nextDouble(-6, 6));
                assertEquals(angle.radians(), Angle.parse(angle.format()).radians(), Math.toRadians(0.00501));
            }
        } finally {
            Locale.setDefault(before);
        }
        assertEquals("19,000 lb", Mass.parse("19000 lb").format(UnitSystem.US_CUSTOMARY));
        assertEquals("4.14 bar", Pressure.parse("60 psi").format(UnitSystem.METRIC));
        assertEquals("2.30 %", Grade.parse("2.3 %").format());
        assertEquals("12.00 deg", Angle.parse("12 deg").format());
    }
}
