package org.cresthaul.units;

/**
 * A grade of the road, positive when it climbs in the direction of travel.
 *
 * @param ratio rise over run, within 1 either way
 */
public record Grade(double ratio) {
    private static final String KIND = "a grade";
    private static final String REMEDY = "Write a grade in percent, such as \"2.3 %\" or \"-1.5 %\".";

    public Grade {
        Plausible.require("ratio", -1, 1, ratio);
    }

    /**
     * Reads "2.3 %".
     *
     * @throws BadQuantity when the text is not such a grade or steeper than 100 %
     */
    public static Grade parse(String text) throws BadQuantity {
        QuantityText quantity = QuantityText.of(text, KIND, REMEDY);
        QuantityText.Part part = quantity.single(text, KIND, REMEDY);
        if (!part.unit().equals("%")) {
            throw QuantityText.unknownUnit(part, text, "grade", REMEDY);
        }
        QuantityText.refuseGrouping(part, text, REMEDY);
        double ratio = quantity.sign() * part.value() / 100;
        return new Grade(QuantityText.within(ratio, -1, 1, text, "within 100 % either way"));
    }

    /** Percent with two decimals, in both systems: "2.30 %". */
    public String format() {
        return Decimals.fixed(ratio * 100, 2) + " %";
    }
}
