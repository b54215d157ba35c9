package org.cresthaul.units;

/**
 * A pressure above the air around, as a gauge shows it.
 *
 * @param pascals not negative, at most {@link #MOST_PA}
 */
public record Pressure(double pascals) {
    /** Highest pressure taken, pascals: 1000 bar, above any truck's hydraulics. */
    public static final double MOST_PA = 1e8;

    /** One pound-force (0.45359237 kg at 9.80665 m/s²) on one square inch. */
    private static final double PSI_PA = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

    private static final String KIND = "a pressure";
    private static final String REMEDY =
            "Write a pressure with its unit, such as \"55 psi\", \"4.1 bar\" or \"400 kPa\".";

    public Pressure {
        Plausible.require("pascals", 0, MOST_PA, pascals);
    }

    /** What one step of a printed pressure is. */
    static double stepPa(UnitSystem units) {
        return units == UnitSystem.METRIC ? 1e3 : PSI_PA;
    }

    /**
     * Reads "55 psi", "4.1 bar", "400 kPa" or "20 MPa".
     *
     * @throws BadQuantity when the text is not such a pressure, is negative or beyond {@link #MOST_PA}
     */
    public static Pressure parse(String text) throws BadQuantity {
        QuantityText quantity = QuantityText.of(text, KIND, REMEDY);
        QuantityText.Part part = quantity.single(text, KIND, REMEDY);
        double unitPa =
                switch (part.unit()) {
                    case "psi" -> PSI_PA;
                    case "bar" -> 1e5;
                    case "kPa" -> 1e3;
                    case "MPa" -> 1e6;
                    default -> throw QuantityText.unknownUnit(part, text, "pressure", REMEDY);
                };
        if (unitPa != PSI_PA) {
            QuantityText.refuseGrouping(part, text, REMEDY);
        }
        double pascals = quantity.sign() * part.value() * unitPa;
        return new Pressure(QuantityText.within(pascals, 0, MOST_PA, text, "between 0 and 1000 bar"));
    }

    public double psi() {
        return pascals / PSI_PA;
    }

    /** Whole psi, "55 psi", or bar with two decimals, "4.14 bar". */
    public String format(UnitSystem system) {
        return system == UnitSystem.METRIC
                ? Decimals.fixed(pascals / 1e5, 2) + " bar"
                : Decimals.grouped(psi()) + " psi";
    }
}
