package org.cresthaul.units;

/** The units a person reads. */
public enum UnitSystem {
    US_CUSTOMARY,
    METRIC
}
