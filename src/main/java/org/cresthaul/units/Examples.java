package org.cresthaul.units;

import java.util.List;

/** Values a remedy may suggest: such as a reader would take at that place. */
public final class Examples {
    private static final List<String> LENGTHS =
            List.of("1 ft 6 in", "3 in", "1/4 in", "10 ft", "60 ft", "-10 ft", "0 in");
    private static final List<String> GRADES = List.of("1.5 %", "0.5 %", "5 %", "0 %");
    private static final List<String> ANGLES = List.of("12 deg", "1.2 deg", "40 deg", "90 deg", "0 deg");
    private static final List<String> MASSES = List.of("17,500 lb", "80,000 lb", "500 lb", "0 lb");

    private interface Reading {
        double of(String text) throws BadQuantity;
    }

    private Examples() {}

    public static String length(LengthLimits limits) {
        return within(LENGTHS, t -> Length.parse(t).meters(), limits.leastM(), limits.mostM());
    }

    public static String grade(double least, double most) {
        return within(GRADES, t -> Grade.parse(t).ratio(), least, most);
    }

    public static String angle(double least, double most) {
        return within(ANGLES, t -> Angle.parse(t).radians(), least, most);
    }

    public static String mass(double least, double most) {
        return within(MASSES, t -> Mass.parse(t).kilograms(), least, most);
    }

    /** Of a text that may be anything. */
    public static String text(String key) {
        return switch (key) {
            case "source" -> "steel tape, two people";
            case "name" -> "a short name";
            default -> "a few words";
        };
    }

    private static String within(List<String> examples, Reading value, double least, double most) {
        for (String example : examples) {
            try {
                double read = value.of(example);
                if (read >= least && read <= most) {
                    return example;
                }
            } catch (BadQuantity unreadable) {
                throw new IllegalStateException(example, unreadable);
            }
        }
        return examples.get(0);
    }
}
