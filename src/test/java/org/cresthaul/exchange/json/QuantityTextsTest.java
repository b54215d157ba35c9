package org.cresthaul.exchange.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.cresthaul.units.Angle;
import org.cresthaul.units.BadQuantity;
import org.cresthaul.units.Grade;
import org.cresthaul.units.Length;
import org.cresthaul.units.Mass;
import org.cresthaul.units.Pressure;
import org.cresthaul.units.Speed;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTextsTest {
    /** What people write, of each kind, with the text that has to come back: theirs, or a shorter one by hand. */
    @ParameterizedTest
    @CsvSource({
        "length, us, 13 ft 6 in, 13 ft 6 in",
        "length, us, 162 in, 13 ft 6 in",
        "length, us, -1 1/2 in, -1 1/2 in",
        "length, us, 12.345 in, 12.345 in",
        "length, us, 0 in, 0 in",
        "length, us, 4.11 m, 4.11 m",
        "length, metric, 4115 mm, 4.115 m",
        "length, metric, -0.5 m, -0.5 m",
        "mass, us, '17,500 lb', 17500 lb",
        "mass, us, 8600 kg, 8600 kg",
        "mass, metric, 8.6 t, 8600 kg",
        "pressure, us, 55 psi, 55 psi",
        "pressure, metric, 410 kPa, 410 kPa",
        "pressure, metric, 4.1 bar, 4.1 bar",
        "pressure, metric, 55 psi, 55 psi",
        "angle, us, 12 deg, 12 deg",
        "angle, metric, 0.2 rad, 0.2 rad",
        "percent, us, 2.3 %, 2.3 %",
        "speed, us, 3 mph, 3 mph",
        "speed, metric, 5 km/h, 5 km/h"
    })
    void areThoseOfATapeOrAGauge(String kind, String units, String given, String written) throws BadQuantity {
        QuantityTexts texts = new QuantityTexts(units.equals("us") ? UnitSystem.US_CUSTOMARY : UnitSystem.METRIC);
        assertEquals(written, write(texts, kind, read(kind, given)));
    }

    /** Whatever number a text gives: 4,000 of each unit, of any count of digits. */
    @ParameterizedTest
    @CsvSource({
        "length, m, 1e4",
        "length, mm, 1e6",
        "length, cm, 1e6",
        "length, in, 1e5",
        "length, ft, 1e4",
        "length, km, 10",
        "mass, kg, 1e5",
        "mass, lb, 1e5",
        "mass, t, 100",
        "pressure, psi, 3000",
        "pressure, bar, 300",
        "pressure, kPa, 3e4",
        "pressure, MPa, 30",
        "angle, deg, 90",
        "angle, rad, 1.5",
        "percent, %, 100",
        "speed, mph, 20",
        "speed, km/h, 30",
        "speed, m/s, 9"
    })
    void giveBackTheVeryNumber(String kind, String unit, double most) throws BadQuantity {
        Random random = new Random(unit.hashCode());
        for (int i = 0; i < 4_000; i++) {
            String given = String.format(
                    java.util.Locale.ROOT, "%." + random.nextInt(16) + "f %s", most * random.nextDouble(), unit);
            double number = read(kind, given);
            for (UnitSystem units : UnitSystem.values()) {
                String written = write(new QuantityTexts(units), kind, number);
                assertEquals(number, read(kind, written), given + " as " + written);
            }
        }
    }

    private static double read(String kind, String text) throws BadQuantity {
        return switch (kind) {
            case "length" -> Length.parse(text).meters();
            case "mass" -> Mass.parse(text).kilograms();
            case "pressure" -> Pressure.parse(text).pascals();
            case "angle" -> Angle.parse(text).radians();
            case "percent" -> Grade.parse(text).ratio();
            default -> Speed.parse(text).metersPerSecond();
        };
    }

    private static String write(QuantityTexts texts, String kind, double number) {
        return switch (kind) {
            case "length" -> texts.length(number);
            case "mass" -> texts.mass(number);
            case "pressure" -> texts.pressure(number);
            case "angle" -> texts.angle(number);
            case "percent" -> texts.percent(number);
            default -> texts.speed(number);
        };
    }
}
