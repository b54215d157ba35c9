package org.cresthaul.units;

/** The units a person reads. */
public enum UnitSystem implements Worded {
    US_CUSTOMARY("us"),
    METRIC("metric");

    private final String word;

    UnitSystem(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
