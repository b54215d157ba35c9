package org.cresthaul.rig;

import org.cresthaul.units.JsonEdit;

/** A small sound rig file to start from. Invented. */
public final class RigTexts {
    private RigTexts() {}

    public static final String RIG = """
            { "cresthaul": "rig/1", "name": "Two-axle lowbed", "note": "Invented for the tests.",
              "measurement": {"accuracy": "10 mm", "source": "steel tape"},
              "ride": {"accuracy": "15 mm", "source": "estimate"},
              "notches": [{"name": "1", "offset": "-1 1/4 in"}, {"name": "2", "offset": "-5/8 in"},
                          {"name": "3", "offset": "0 in"}, {"name": "4", "offset": "5/8 in"}],
              "stances": [{ "name": "loaded",
                "tractor": {
                  "steer": {"x": "0 m", "radius": "500 mm"},
                  "drive": {"axles": [{"x": "-4.4 m", "radius": "500 mm"}, {"x": "-5.7 m", "radius": "500 mm"}],
                            "travelUp": "3 in", "travelDown": "3 in"},
                  "fifthWheel": {"x": "-5 m", "h": "1.25 m"},
                  "underside": [{"x": "-6.5 m", "h": "0.6 m"}, {"x": "0.9 m", "h": "280 mm", "part": "bumper"}],
                  "topside": [{"x": "-6.5 m", "h": "0.9 m"}, {"x": "-2.2 m", "h": "0.9 m"},
                              {"x": "-2.2 m", "h": "3.1 m"}, {"x": "0.9 m", "h": "3.1 m"}]},
                "trailer": {
                  "kingpin": {"x": "0 m"},
                  "deckFront": {"x": "-3.4 m", "h": "0.6 m"}, "deckRear": {"x": "-10.8 m", "h": "0.6 m"},
                  "axles": [{"x": "-11.6 m", "radius": "0.42 m"}, {"x": "-13 m", "radius": "0.42 m"},
                            {"x": "-14.4 m", "radius": "0.42 m"}],
                  "travelUp": "3 in", "travelDown": "3 in", "valveAxle": 1,
                  "liftAxle": {"gap": "4 1/4 in", "secondaryRise": "1 1/4 in"},
                  "hydraulicRaiseLimit": "10 in", "manualRaiseLimit": "3 in", "deckSag": "1/2 in",
                  "underside": [{"x": "-15.2 m", "h": "0.5 m"}, {"x": "-10.9 m", "h": "0.45 m"},
                                {"x": "-10.8 m", "h": "0.3 m", "part": "deck rear"},
                                {"x": "-3.4 m", "h": "0.3 m", "part": "deck front"}, {"x": "-3.3 m", "h": "1.25 m"},
                                {"x": "0.6 m", "h": "1.25 m"}],
                  "topside": [{"x": "-15.2 m", "h": "1 m"}, {"x": "-3.4 m", "h": "1 m"}, {"x": "-3.3 m", "h": "1.7 m"},
                              {"x": "0.6 m", "h": "1.7 m"}],
                  "load": [{"name": "wheel loader", "outline": [{"x": "-10 m", "h": "3.3 m"},
                                                                {"x": "-5 m", "h": "4.1 m"}]}],
                  "boosterHinge": {"x": "-15.2 m", "h": "0.8 m"}},
                "plan": {
                  "tractor": {"width": "2.6 m", "overTires": "2.5 m", "steerLimit": "40 deg", "lockDistance": "6 m"},
                  "trailer": {"width": "2.6 m", "overTires": "2.6 m", "loadWidth": "3 m", "kingpinLimit": "80 deg"},
                  "booster": {"width": "2.5 m", "overTires": "2.6 m", "pivotLimit": "35 deg"}},
                "booster": {
                  "hinge": {"x": "0 m"}, "axle": {"x": "-3.2 m", "radius": "0.42 m"},
                  "underside": [{"x": "-3.8 m", "h": "0.5 m"}, {"x": "0 m", "h": "0.6 m"}],
                  "topside": [{"x": "-3.8 m", "h": "1.1 m"}, {"x": "0 m", "h": "1.1 m"}],
                  "states": ["none", "trailing", "close-coupled", "carried"],
                  "hingeUp": "12 deg", "hingeDown": "12 deg", "closeCoupledAxle": {"x": "-15.9 m"},
                  "carried": [{"x": "-9 m", "h": "1.4 m"}, {"x": "-6 m", "h": "1.4 m"}]}
              }] }
            """;

    /** The same on four axles of which the height valves read the second. */
    public static String onFourAxles(String liftAxles, String liftStates) {
        String text = JsonEdit.edit(RIG, "/stances/0/trailer/liftAxle", "absent");
        text = JsonEdit.edit(text, "/stances/0/trailer/axles/-", "{\"x\": \"-15.8 m\", \"radius\": \"0.42 m\"}");
        text = JsonEdit.edit(text, "/stances/0/trailer/valveAxle", "2");
        text = JsonEdit.edit(text, "/stances/0/booster/closeCoupledAxle/x", "\"-17.3 m\"");
        text = JsonEdit.edit(text, "/stances/0/trailer/underside/0/x", "\"-16.6 m\"");
        text = JsonEdit.edit(text, "/stances/0/trailer/topside/0/x", "\"-16.6 m\"");
        text = JsonEdit.edit(text, "/stances/0/trailer/boosterHinge/x", "\"-16.6 m\"");
        text = JsonEdit.edit(text, "/stances/0/trailer/liftAxles", liftAxles);
        return JsonEdit.edit(text, "/stances/0/trailer/liftStates", liftStates);
    }
}
