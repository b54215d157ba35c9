package org.cresthaul.units;

/** A text that is not the quantity asked for. The caller knows which field it stood in and says so. */
public final class BadQuantity extends Exception {
    private final String code;
    private final String remedy;

    public BadQuantity(String code, String message, String remedy) {
        super(message);
        this.code = code;
        this.remedy = remedy;
    }

    /** "unit-missing", "unit-unknown", "not-a-quantity" or "out-of-range". */
    public String code() {
        return code;
    }

    /** What to write instead, with a right example. */
    public String remedy() {
        return remedy;
    }
}
