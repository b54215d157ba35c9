package org.cresthaul.rig;

import java.util.stream.Stream;
import org.cresthaul.units.JsonEdit;

/** {@link RigTexts} with a jeep or more under its trailer. Invented. */
public final class JeepTexts {
    private JeepTexts() {}

    public static final String JEEP = """
            { "kingpin": {"x": "0 m"},
              "axles": [{"x": "-3.2 m", "radius": "0.42 m"}, {"x": "-4.6 m", "radius": "0.42 m"}],
              "travelUp": "3 in", "travelDown": "3 in",
              "fifthWheel": {"x": "-3.8 m", "h": "1.25 m"},
              "underside": [{"x": "-5.2 m", "h": "0.6 m"}, {"x": "-2.4 m", "h": "0.6 m"}, {"x": "-2.2 m", "h": "1.25 m"},
                            {"x": "0.6 m", "h": "1.25 m"}],
              "topside": [{"x": "-5.2 m", "h": "1.1 m"}, {"x": "-2.4 m", "h": "1.1 m"}, {"x": "-2.2 m", "h": "1.7 m"},
                          {"x": "0.6 m", "h": "1.7 m"}] }
            """;

    /** The rig with these jeeps, widths included. */
    public static String with(String... jeeps) {
        return JsonEdit.edit(
                JsonEdit.edit(
                        RigTexts.RIG,
                        "/stances/0/jeeps",
                        Stream.of(jeeps).toList().toString()),
                "/stances/0/plan/jeep",
                "{\"width\": \"2.6 m\", \"overTires\": \"2.6 m\", \"kingpinLimit\": \"60 deg\"}");
    }
}
