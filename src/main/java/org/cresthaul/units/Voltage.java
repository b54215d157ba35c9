package org.cresthaul.units;

/**
 * The voltage of a line, between its conductors.
 *
 * @param volts not negative, at most {@link #MOST_V}
 */
public record Voltage(double volts) {
    /** Highest voltage taken, volts: above any line over a road. */
    public static final double MOST_V = 2e6;

    private static final String KIND = "a voltage";
    private static final String REMEDY = "Write a voltage with its unit, such as \"12.5 kV\" or \"480 V\".";

    public Voltage {
        Plausible.require("volts", 0, MOST_V, volts);
    }

    /**
     * Reads "12.5 kV" or "480 V".
     *
     * @throws BadQuantity when the text is not such a voltage, is negative or beyond {@link #MOST_V}
     */
    public static Voltage parse(String text) throws BadQuantity {
        QuantityText quantity = QuantityText.of(text, KIND, REMEDY);
        QuantityText.Part part = quantity.single(text, KIND, REMEDY);
        double unitV =
                switch (part.unit()) {
                    case "V" -> 1;
                    case "kV" -> 1e3;
                    default -> throw QuantityText.unknownUnit(part, text, "voltage", REMEDY);
                };
        QuantityText.refuseGrouping(part, text, REMEDY);
        double volts = quantity.sign() * part.value() * unitV;
        return new Voltage(QuantityText.within(volts, 0, MOST_V, text, "between 0 and 2000 kV"));
    }
}
