package org.cresthaul.units;

/**
 * An angle.
 *
 * @param radians within one full turn either way
 */
public record Angle(double radians) {
    private static final String KIND = "an angle";
    private static final String REMEDY = "Write an angle in degrees, such as \"12 deg\".";

    public Angle {
        Plausible.require("radians", -2 * Math.PI, 2 * Math.PI, radians);
    }

    /**
     * Reads "12 deg", "12°" or "0.2 rad".
     *
     * @throws BadQuantity when the text is not such an angle or beyond a full turn
     */
    public static Angle parse(String text) throws BadQuantity {
        QuantityText quantity = QuantityText.of(text, KIND, REMEDY);
        QuantityText.Part part = quantity.single(text, KIND, REMEDY);
        QuantityText.refuseGrouping(part, text, REMEDY);
        double radians =
                switch (part.unit()) {
                    case "deg", "°" -> Math.toRadians(part.value());
                    case "rad" -> part.value();
                    default -> throw QuantityText.unknownUnit(part, text, "angle", REMEDY);
                };
        double most = 2 * Math.PI;
        return new Angle(quantity.sign() * QuantityText.within(radians, 0, most, text, "within 360 deg either way"));
    }

    /** Degrees with two decimals, in both systems: "12.00 deg". */
    public String format() {
        return Decimals.fixed(Math.toDegrees(radians), 2) + " deg";
    }
}
