package org.cresthaul.language;

import java.util.Map;

/**
 * What units, their parts and lines over the road are called. Those of the program have a word in every language; what
 * a file calls by another name keeps it.
 */
public final class Names {
    private static final Map<String, Code> KNOWN = Map.ofEntries(
            Map.entry("tractor", Code.NAME_TRACTOR),
            Map.entry("jeep", Code.NAME_JEEP),
            Map.entry("jeep 2", Code.NAME_JEEP_2),
            Map.entry("jeep 3", Code.NAME_JEEP_3),
            Map.entry("trailer", Code.NAME_TRAILER),
            Map.entry("booster", Code.NAME_BOOSTER),
            Map.entry("booster 2", Code.NAME_BOOSTER_2),
            Map.entry("booster 3", Code.NAME_BOOSTER_3),
            Map.entry("load", Code.NAME_LOAD),
            Map.entry("carried booster", Code.NAME_CARRIED_BOOSTER),
            Map.entry("tires", Code.NAME_TIRES),
            Map.entry("raised tire", Code.NAME_RAISED_TIRE),
            Map.entry("left", Code.NAME_LINE_LEFT),
            Map.entry("center", Code.NAME_LINE_CENTER),
            Map.entry("right", Code.NAME_LINE_RIGHT),
            Map.entry("left edge", Code.NAME_LEFT_EDGE),
            Map.entry("right edge", Code.NAME_RIGHT_EDGE),
            Map.entry("middle", Code.NAME_MIDDLE));

    private Names() {}

    public static Sentence of(String name) {
        return KNOWN.containsKey(name) ? Sentence.of(KNOWN.get(name)) : Sentence.verbatim(name);
    }
}
