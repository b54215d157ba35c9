package org.cresthaul.exchange.json;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.units.Angle;
import org.cresthaul.units.BadQuantity;
import org.cresthaul.units.Grade;
import org.cresthaul.units.Length;
import org.cresthaul.units.Mass;
import org.cresthaul.units.Pressure;
import org.cresthaul.units.Speed;
import org.cresthaul.units.UnitSystem;

/**
 * Quantities as files have them, written so that reading a text gives back the very number. Of the texts that do, it is
 * one of the system asked for, feet and inches to the sixteenth before others; where that would be a long row of
 * digits, the shortest of any.
 */
public final class QuantityTexts {
    private static final double FOOT_M = 0.3048;
    private static final double MPH_MPS = 0.44704;
    private static final int FINEST_INCH = 16;
    /** Nobody measured what is longer in these units. */
    private static final int LONGEST_OWN = 12;
    /** No text with more decimals is shorter than the number itself. */
    private static final int MOST_DECIMALS = 12;

    /** Reading rounds once and so does asking back, so that the number is at most so many steps off. */
    private static final int NEIGHBORS = 2;

    private final boolean us;

    /** @param units which are written where that is no long row of digits */
    public QuantityTexts(UnitSystem units) {
        us = units == UnitSystem.US_CUSTOMARY;
    }

    private interface Reader {
        double read(String text) throws BadQuantity;
    }

    /** A unit, and how many of it the number comes to. */
    private record In(double count, String unit) {}

    public String length(double meters) {
        Reader reader = text -> Length.parse(text).meters();
        String taped = new Length(meters).inFeetAndInches(FINEST_INCH);
        if (us && reads(reader, taped, meters)) {
            return taped;
        }
        return text(
                reader,
                meters,
                List.of(new In(new Length(meters).inches(), "in"), new In(meters / FOOT_M, "ft")),
                List.of(new In(meters, "m")));
    }

    public String mass(double kilograms) {
        return text(
                text -> Mass.parse(text).kilograms(),
                kilograms,
                List.of(new In(new Mass(kilograms).pounds(), "lb")),
                List.of(new In(kilograms, "kg")));
    }

    /** @throws IllegalArgumentException when no text reads so; one that was read always does */
    public String pressure(double pascals) {
        return text(
                text -> Pressure.parse(text).pascals(),
                pascals,
                List.of(new In(new Pressure(pascals).psi(), "psi")),
                List.of(new In(pascals / 1e5, "bar"), new In(pascals / 1e3, "kPa"), new In(pascals / 1e6, "MPa")));
    }

    public String angle(double radians) {
        List<In> both = List.of(new In(Math.toDegrees(radians), "deg"), new In(radians, "rad"));
        return text(text -> Angle.parse(text).radians(), radians, both, both);
    }

    /** A share or a grade. @throws IllegalArgumentException when no text reads so; one that was read always does */
    public String percent(double ratio) {
        List<In> percent = List.of(new In(ratio * 100, "%"));
        return text(text -> Grade.parse(text).ratio(), ratio, percent, percent);
    }

    public String speed(double metersPerSecond) {
        return text(
                text -> Speed.parse(text).metersPerSecond(),
                metersPerSecond,
                List.of(new In(metersPerSecond / MPH_MPS, "mph")),
                List.of(new In(metersPerSecond * 3.6, "km/h"), new In(metersPerSecond, "m/s")));
    }

    public String time(long seconds) {
        return seconds % 60 == 0 ? seconds / 60 + " min" : seconds + " s";
    }

    private String text(Reader reader, double value, List<In> customary, List<In> metric) {
        Optional<String> own = shortest(reader, value, us ? customary : metric);
        if (own.isPresent() && own.get().length() <= LONGEST_OWN) {
            return own.get();
        }
        return Stream.concat(own.stream(), shortest(reader, value, us ? metric : customary).stream())
                .min(Comparator.comparingInt(String::length))
                .orElseThrow(() -> new IllegalArgumentException("no text reads as " + value));
    }

    private static Optional<String> shortest(Reader reader, double value, List<In> units) {
        return units.stream()
                .flatMap(in ->
                        texts(in).stream().filter(t -> reads(reader, t, value)).limit(1))
                .min(Comparator.comparingInt(String::length));
    }

    private static boolean reads(Reader reader, String text, double value) {
        try {
            return Double.compare(reader.read(text), value) == 0;
        } catch (BadQuantity e) {
            return false;
        }
    }

    /** What might read so, shortest first: rounded, then those about the number itself. */
    private static List<String> texts(In in) {
        List<String> texts = new ArrayList<>();
        BigDecimal count = BigDecimal.valueOf(Math.abs(in.count));
        String sign = Math.copySign(1, in.count) < 0 ? "-" : "";
        for (int decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
            texts.add(sign + plain(count.setScale(decimals, RoundingMode.HALF_EVEN)) + " " + in.unit);
        }
        double exact = Math.abs(in.count);
        for (int beside = -NEIGHBORS; beside <= NEIGHBORS; beside++) {
            double number = Math.max(0, exact + beside * Math.ulp(exact));
            texts.add(sign + plain(BigDecimal.valueOf(number)) + " " + in.unit);
        }
        return texts;
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
