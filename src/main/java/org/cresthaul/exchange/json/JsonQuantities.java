package org.cresthaul.exchange.json;

import com.fasterxml.jackson.databind.JsonNode;
import org.cresthaul.units.Angle;
import org.cresthaul.units.BadQuantity;
import org.cresthaul.units.Decimals;
import org.cresthaul.units.Duration;
import org.cresthaul.units.Grade;
import org.cresthaul.units.Length;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Mass;
import org.cresthaul.units.Pressure;
import org.cresthaul.units.Problems;
import org.cresthaul.units.Speed;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.units.Voltage;

/**
 * Quantities with their units, anywhere in a JSON document. Each is NaN when it is not one or beyond its limits, after
 * a problem was added at {@code at}; {@code name} stands in the message.
 */
public final class JsonQuantities {
    private JsonQuantities() {}

    /** A length, meters. */
    public static double lengthM(JsonNode value, String at, String name, LengthLimits limits, Problems problems) {
        try {
            double meters = Length.parse(quantityText(value, "a length", "such as \"13 ft 6 in\" or \"4.11 m\""))
                    .meters();
            if (meters < limits.leastM() || meters > limits.mostM()) {
                problems.add(
                        "out-of-range",
                        name + " is " + value.textValue() + ".",
                        at,
                        "It must be " + limits.inWords() + ".");
                return Double.NaN;
            }
            return meters;
        } catch (BadQuantity e) {
            return bad(e, at, name, problems);
        }
    }

    /** A grade, rise over run. */
    static double grade(JsonNode value, String at, String name, double least, double most, Problems problems) {
        try {
            double ratio = Grade.parse(quantityText(value, "a grade", "such as \"1.5 %\""))
                    .ratio();
            Range range = new Range(least, most, new Grade(least).format(), new Grade(most).format());
            return within(value, at, name, ratio, range, problems);
        } catch (BadQuantity e) {
            return bad(e, at, name, problems);
        }
    }

    /** An angle, radians. */
    static double angleRad(JsonNode value, String at, String name, double least, double most, Problems problems) {
        try {
            double radians = Angle.parse(quantityText(value, "an angle", "such as \"12 deg\""))
                    .radians();
            Range range = new Range(least, most, new Angle(least).format(), new Angle(most).format());
            return within(value, at, name, radians, range, problems);
        } catch (BadQuantity e) {
            return bad(e, at, name, problems);
        }
    }

    /** A weight, kilograms. */
    public static double massKg(JsonNode value, String at, String name, double least, double most, Problems problems) {
        try {
            double kilograms = Mass.parse(quantityText(value, "a weight", "such as \"17,500 lb\" or \"8600 kg\""))
                    .kilograms();
            Range range = new Range(
                    least, most, new Mass(least).format(UnitSystem.METRIC), new Mass(most).format(UnitSystem.METRIC));
            return within(value, at, name, kilograms, range, problems);
        } catch (BadQuantity e) {
            return bad(e, at, name, problems);
        }
    }

    /** A pressure, pascals. */
    public static double pressurePa(JsonNode value, String at, String name, Problems problems) {
        try {
            return Pressure.parse(quantityText(value, "a pressure", "such as \"55 psi\" or \"4.1 bar\""))
                    .pascals();
        } catch (BadQuantity e) {
            return bad(e, at, name, problems);
        }
    }

    /** A voltage, volts. */
    static double voltageV(JsonNode value, String at, String name, Problems problems) {
        try {
            return Voltage.parse(quantityText(value, "a voltage", "such as \"12.5 kV\" or \"480 V\""))
                    .volts();
        } catch (BadQuantity e) {
            return bad(e, at, name, problems);
        }
    }

    /** A time, seconds. */
    static double durationS(JsonNode value, String at, String name, Problems problems) {
        try {
            return Duration.parse(quantityText(value, "a time", "such as \"15 min\" or \"90 s\""))
                    .seconds();
        } catch (BadQuantity e) {
            return bad(e, at, name, problems);
        }
    }

    /** A speed, meters per second. */
    static double speedMps(JsonNode value, String at, String name, double least, double most, Problems problems) {
        try {
            double mps = Speed.parse(quantityText(value, "a speed", "such as \"3 mph\" or \"5 km/h\""))
                    .metersPerSecond();
            Range range = new Range(least, most, Decimals.fixed(least, 1) + " m/s", Decimals.fixed(most, 1) + " m/s");
            return within(value, at, name, mps, range, problems);
        } catch (BadQuantity e) {
            return bad(e, at, name, problems);
        }
    }

    /** What a quantity may be, and its ends as they are told. */
    private record Range(double least, double most, String from, String to) {}

    private static double within(
            JsonNode value, String at, String name, double number, Range range, Problems problems) {
        if (number < range.least() || number > range.most()) {
            problems.add(
                    "out-of-range",
                    name + " is " + value.textValue() + ".",
                    at,
                    "It must be between " + range.from() + " and " + range.to() + ".");
            return Double.NaN;
        }
        return number;
    }

    private static double bad(BadQuantity e, String at, String name, Problems problems) {
        problems.add(e.code(), name + ": " + e.getMessage(), at, e.remedy());
        return Double.NaN;
    }

    private static String quantityText(JsonNode value, String kind, String example) throws BadQuantity {
        String remedy = "Write " + kind + " in quotes with its unit, " + example + ".";
        if (value.isNumber()) {
            throw new BadQuantity("unit-missing", "the bare number " + value.asText() + " has no unit.", remedy);
        }
        if (!value.isTextual()) {
            throw new BadQuantity("wrong-type", "must be " + kind + ", is " + JsonFields.kindOf(value) + ".", remedy);
        }
        return value.textValue();
    }
}
