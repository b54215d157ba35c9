package org.cresthaul.units;

/**
 * A mass, or a weight told as the mass it comes from.
 *
 * @param kilograms not negative, at most {@link #MOST_KG}
 */
public record Mass(double kilograms) {
    /** Heaviest mass taken, kilograms. */
    public static final double MOST_KG = 1_000_000;

    private static final double POUND_KG = 0.45359237;
    private static final String KIND = "a weight";
    private static final String REMEDY =
            "Write a weight with its unit, such as \"17500 lb\", \"8600 kg\" or \"8.6 t\".";

    public Mass {
        Plausible.require("kilograms", 0, MOST_KG, kilograms);
    }

    /**
     * Reads pounds ("17500 lb", "17,500 lb"), kilograms ("8600 kg") or metric tonnes ("8.6 t").
     *
     * @throws BadQuantity when the text is not such a weight, is negative or beyond {@link #MOST_KG}
     */
    public static Mass parse(String text) throws BadQuantity {
        QuantityText quantity = QuantityText.of(text, KIND, REMEDY);
        QuantityText.Part part = quantity.single(text, KIND, REMEDY);
        double unitKg =
                switch (part.unit()) {
                    case "lb", "lbs" -> POUND_KG;
                    case "kg" -> 1;
                    case "t" -> 1000;
                    default -> throw QuantityText.unknownUnit(part, text, "weight", REMEDY);
                };
        if (unitKg >= 1) {
            QuantityText.refuseGrouping(part, text, REMEDY);
        }
        double kilograms = quantity.sign() * part.value() * unitKg;
        return new Mass(QuantityText.within(kilograms, 0, MOST_KG, text, "between 0 and 1000 t"));
    }

    public double pounds() {
        return kilograms / POUND_KG;
    }

    /** Whole pounds, "17,500 lb", or whole kilograms, "8618 kg". */
    public String format(UnitSystem system) {
        return system == UnitSystem.METRIC ? Decimals.fixed(kilograms, 0) + " kg" : Decimals.grouped(pounds()) + " lb";
    }
}
