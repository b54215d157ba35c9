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
            case "time" -> Duration.parse(text).seconds();
            case "speed" -> Speed.parse(text).metersPerSecond();
            case "grade" -> Grade.parse(text).ratio();
            default -> Angle.parse(text).radians();
        };
    }

    @ParameterizedTest(name = "{0} {1} = {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                // By the international pound, 0.45359237 kg
                "weight   | 18400 lb  | 8346.09961",
                "weight   | 18,400 lb | 8346.09961",
                "weight   | 8600 kg   | 8600",
                "weight   | 8.6 t     | 8600",
                // NIST SP 811: 1 psi = 6894.757 Pa
                "pressure | 62 psi    | 427474.95",
                "pressure | 2,350 psi | 16202679.6",
                "pressure | 4.1 bar   | 410000",
                "pressure | 400 kPa   | 400000",
                "pressure | 20 MPa    | 20000000",
                "time     | 90 s      | 90",
                "time     | 15 min    | 900",
                "time     | 1.5 h     | 5400",
                "time     | 1 h 30 min | 5400",
                "time     | 1 h 0.5 min | 3630",
                "time     | 0 min     | 0",
                "time     | 0.4 s     | 0",
                // The international mile of 1609.344 m
                "speed    | 3 mph     | 1.34112",
                "speed    | 5 km/h    | 1.3888889",
                "speed    | 1.3 m/s   | 1.3",
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
                "pressure | 62 PSI    | unit-unknown",
                "pressure | -1 bar    | out-of-range",
                "pressure | 1e308 bar | not-a-quantity",
                "time     | 15        | unit-missing",
                "time     | 15 m      | unit-unknown",
                "time     | -1 min    | out-of-range",
                "time     | 25 h      | out-of-range",
                "time     | 1 h 75 min | not-a-quantity",
                "time     | 1.5 h 10 min | not-a-quantity",
                "time     | 10 min 1 h | not-a-quantity",
                "time     | 5 min 30 s | not-a-quantity",
                "time     | 1:30      | not-a-quantity",
                "time     | 1/2 h     | not-a-quantity",
                "time     | 1,000 s   | not-a-quantity",
                "speed    | 3         | unit-missing",
                "speed    | 3 knots   | unit-unknown",
                "speed    | 3 km/hour | unit-unknown",
                "speed    | 3 km      | unit-unknown",
                "speed    | -3 mph    | out-of-range",
                "speed    | 101 m/s   | out-of-range",
                "speed    | 5 km / h  | not-a-quantity",
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
    void timesAreToldRoundedUpAndSpeedsRoundedDown() {
        assertEquals("0 min", Duration.inMinutes(0));
        assertEquals("1 min", Duration.inMinutes(1));
        assertEquals("15 min", Duration.inMinutes(900));
        assertEquals("16 min", Duration.inMinutes(901));
        assertEquals("1 h", Duration.inMinutes(3600));
        assertEquals("2 h 5 min", Duration.inMinutes(7500));
        assertEquals("3 mph", new Speed(3 * 0.44704).format(UnitSystem.US_CUSTOMARY));
        assertEquals("4.8 km/h", new Speed(3 * 0.44704).format(UnitSystem.METRIC));
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
                assertEquals(
                        mass.kilograms(),
                        Mass.parse(mass.format(UnitSystem.METRIC)).kilograms(),
                        0.5001);
                assertEquals(
                        mass.pounds(),
                        Mass.parse(mass.format(UnitSystem.US_CUSTOMARY)).pounds(),
                        0.5001);
                Pressure pressure = new Pressure(random.nextDouble(Pressure.MOST_PA));
                assertEquals(
                        pressure.pascals(),
                        Pressure.parse(pressure.format(UnitSystem.METRIC)).pascals(),
                        501);
                assertEquals(
                        pressure.psi(),
                        Pressure.parse(pressure.format(UnitSystem.US_CUSTOMARY)).psi(),
                        0.5001);
                Grade grade = new Grade(random.nextDouble(-1, 1));
                assertEquals(grade.ratio(), Grade.parse(grade.format()).ratio(), 0.0000501);
                Angle angle = new Angle(random.nextDouble(-6, 6));
                assertEquals(angle.radians(), Angle.parse(angle.format()).radians(), Math.toRadians(0.00501));
            }
        } finally {
            Locale.setDefault(before);
        }
        assertEquals("18,400 lb", Mass.parse("18400 lb").format(UnitSystem.US_CUSTOMARY));
        assertEquals("4.27 bar", Pressure.parse("62 psi").format(UnitSystem.METRIC));
        assertEquals("2.30 %", Grade.parse("2.3 %").format());
        assertEquals("12.00 deg", Angle.parse("12 deg").format());
    }
}
