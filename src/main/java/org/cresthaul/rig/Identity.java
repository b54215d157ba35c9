package org.cresthaul.rig;

import java.util.Map;
import java.util.Optional;

/**
 * Which vehicles, which load and which tires a rig file is about, in words to be compared with papers and plates; empty
 * where the file does not say. Nothing is computed from it.
 *
 * @param tractor vehicle identification number and plate
 * @param jeep of every jeep
 * @param trailer likewise
 * @param booster likewise
 * @param load make and serial number
 * @param tires size and rating by the kind of axle, of those the file tells
 */
public record Identity(
        Optional<String> tractor,
        Optional<String> jeep,
        Optional<String> trailer,
        Optional<String> booster,
        Optional<String> load,
        Map<AxleKind, String> tires) {
    public Identity {
        tires = Map.copyOf(tires);
    }

    /** Of a file that says nothing. */
    public static final Identity UNKNOWN = new Identity(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Map.of());
}
