package org.cresthaul.units;

/**
 * A speed on the road.
 *
 * @param metersPerSecond not negative, at most {@link #MOST_MPS}
 */
public record Speed(double metersPerSecond) {
    /** Highest speed taken, meters per second. */
    public static final double MOST_MPS = 100;

    private static final double MPH_MPS = 0.44704;
    private static final String KIND = "a speed";
    private static final String REMEDY = "Write a speed with its unit, such as \"3 mph\", \"5 km/h\" or \"1.3 m/s\".";

    public Speed {
        Plausible.require("metersPerSecond", 0, MOST_MPS, metersPerSecond);
    }

    /**
     * Reads "3 mph", "5 km/h" or "1.3 m/s".
     *
     * @throws BadQuantity when the text is not such a speed, is negative or beyond {@link #MOST_MPS}
     */
    public static Speed parse(String text) throws BadQuantity {
        QuantityText quantity = QuantityText.of(text, KIND, REMEDY);
        QuantityText.Part part = quantity.single(text, KIND, REMEDY);
        double unitMps =
                switch (part.unit()) {
                    case "mph" -> MPH_MPS;
                    case "km/h" -> 1 / 3.6;
                    case "m/s" -> 1;
                    default -> throw QuantityText.unknownUnit(part, text, "speed", REMEDY);
                };
        QuantityText.refuseGrouping(part, text, REMEDY);
        double mps = quantity.sign() * part.value() * unitMps;
        return new Speed(QuantityText.within(mps, 0, MOST_MPS, text, "between 0 and 100 m/s"));
    }

    /** "3 mph" or "4.8 km/h", to the tenth, rounded down: a limit must not look higher than it is. */
    public String format(UnitSystem system) {
        double value = system == UnitSystem.METRIC ? metersPerSecond * 3.6 : metersPerSecond / MPH_MPS;
        double tenths = Math.floor(value * 10 + 1e-9) / 10;
        String number = tenths == Math.rint(tenths) ? Decimals.fixed(tenths, 0) : Decimals.fixed(tenths, 1);
        return number + (system == UnitSystem.METRIC ? " km/h" : " mph");
    }
}
