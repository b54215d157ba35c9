package org.cresthaul.units;

/**
 * How long something takes.
 *
 * @param seconds whole, not negative, at most {@link #MOST_S}
 */
public record Duration(long seconds) {
    /** Longest time taken, seconds: a day. */
    public static final long MOST_S = 24 * 3600;

    private static final String KIND = "a time";
    private static final String REMEDY = "Write a time with its unit, such as \"15 min\", \"90 s\" or \"1 h 30 min\".";

    public Duration {
        Plausible.require("seconds", 0, MOST_S, seconds);
    }

    /**
     * Reads "90 s", "15 min", "1.5 h" or "1 h 30 min" (minutes below 60), to the nearest second.
     *
     * @throws BadQuantity when the text is not such a time, is negative or beyond {@link #MOST_S}
     */
    public static Duration parse(String text) throws BadQuantity {
        QuantityText quantity = QuantityText.of(text, KIND, REMEDY);
        QuantityText.Part first = quantity.parts().get(0);
        double seconds = seconds(first, text);
        if (quantity.parts().size() == 2) {
            QuantityText.Part minutes = quantity.parts().get(1);
            double more = seconds(minutes, text);
            if (!first.unit().equals("h") || !first.whole() || !minutes.unit().equals("min")) {
                throw new BadQuantity(
                        "not-a-quantity",
                        QuantityText.quoted(text) + " is not a time: only whole hours and minutes go together.",
                        REMEDY);
            }
            if (minutes.value() >= 60) {
                throw new BadQuantity(
                        "not-a-quantity",
                        QuantityText.quoted(text) + ": minutes after hours must be below 60.",
                        REMEDY);
            }
            seconds += more;
        }
        double signed = quantity.sign() * seconds;
        return new Duration(Math.round(QuantityText.within(signed, 0, MOST_S, text, "between 0 and 24 h")));
    }

    private static double seconds(QuantityText.Part part, String text) throws BadQuantity {
        double unitS =
                switch (part.unit()) {
                    case "s" -> 1;
                    case "min" -> 60;
                    case "h" -> 3600;
                    default -> throw QuantityText.unknownUnit(part, text, "time", REMEDY);
                };
        if (part.fraction()) {
            throw new BadQuantity("not-a-quantity", QuantityText.quoted(text) + " is not a time.", REMEDY);
        }
        QuantityText.refuseGrouping(part, text, REMEDY);
        return part.value() * unitS;
    }

    /** "1 h 30 min", "16 min", "0 min": to the minute, rounded up, so that no plan looks shorter than it is. */
    public static String inMinutes(long seconds) {
        long minutes = Math.floorDiv(seconds + 59, 60);
        long hours = minutes / 60;
        if (hours == 0) {
            return minutes + " min";
        }
        return hours + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
    }
}
