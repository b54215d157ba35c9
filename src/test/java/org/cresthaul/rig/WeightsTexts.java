package org.cresthaul.rig;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Mistake;

/** The small rig file with weights, and mistakes people make in them. Invented. */
public final class WeightsTexts {
    private WeightsTexts() {}

    public static final String WEIGHTS = """
            { "accuracy": "2 %", "source": "scale tickets", "gross": "88,900 lb",
              "tractor": {"weight": "19,000 lb", "cg": {"x": "-1.9 m", "h": "1 m"}},
              "trailer": {"weight": "17,000 lb", "cg": {"x": "-10.4 m", "h": "0.7 m"}},
              "gooseneck": {"weight": "5,900 lb", "cg": {"x": "-1.5 m", "h": "1.3 m"}},
              "booster": {"weight": "5,000 lb", "cg": {"x": "-2.8 m", "h": "0.7 m"},
                          "carriedCg": {"x": "-7.5 m", "h": "1.3 m"}},
              "pieces": [{"name": "wheel loader", "weight": "42,000 lb",
                          "cg": {"x": "-7.4 m", "h": "1.9 m", "offset": "2 in"}}],
              "tracks": {"steer": "82 in", "drive": "73 in", "trailer": "77 in", "booster": "77 in"},
              "ratings": {"axles": {"steer": "14,600 lb", "drive": "23,000 lb", "trailer": "25,000 lb", "booster": "25,000 lb"},
                          "tires": {"steer": "14,320 lb", "drive": "26,400 lb", "trailer": "24,000 lb", "booster": "24,000 lb"},
                          "fifthWheel": "50,000 lb"},
              "leastBraked": "3,000 lb",
              "gauges": {"trailerDown": {"accuracy": "3 %", "points": [["5 psi", "3,000 lb"], ["55 psi", "16,800 lb"],
                                                                        ["80 psi", "25,000 lb"]]},
                         "trailerUp": {"accuracy": "3 %", "points": [["5 psi", "3,000 lb"], ["80 psi", "25,000 lb"]]},
                         "booster": {"accuracy": "5 %", "airSpring": {"load": "7,045 lb", "pressure": "100 psi",
                             "pivotToSpring": "27.2 in", "pivotToAxle": "20 in", "unsprung": "800 lb", "upTo": "100 psi"}}},
              "regulator": {"least": "12 psi", "most": "90 psi", "set": "35 psi"},
              "shims": {"fitted": "3/8 in plate", "arm": "18 in", "fold": "1.19 deg", "foldLoad": "20,000 lb",
                        "plates": [{"name": "no plate", "thickness": "0 in", "least": "0 lb", "most": "8,000 lb"},
                                   {"name": "3/16 in plate", "thickness": "3/16 in", "least": "5,000 lb", "most": "14,000 lb"},
                                   {"name": "3/8 in plate", "thickness": "3/8 in", "least": "6,000 lb", "most": "22,000 lb"}]},
              "frontLift": {"ratedPressure": "2,250 psi", "ratedLoad": "50,000 lb", "takeOff": "2,350 psi"} }
            """;

    public static final String RIG = JsonEdit.edit(RigTexts.RIG, "/stances/0/weights", WEIGHTS);

    private static final String AT = "/stances/0/weights";

    public static final List<Mistake> MISTAKES = Stream.of(
                    "weights that are a text     | W | \"heavy\" | wrong-type | = | shape",
                    "no accuracy                 | W/accuracy | absent | missing | = | shape",
                    "an accuracy of a half       | W/accuracy | \"50 %\" | out-of-range | = | sense",
                    "a bare accuracy             | W/accuracy | 0.02 | unit-missing | = | shape",
                    "no source                   | W/source | absent | missing | = | shape",
                    "a tractor without weight    | W/tractor/weight | absent | missing | = | shape",
                    "a weight without unit       | W/tractor/weight | \"19000\" | unit-missing | = | shape",
                    "a weight that is a number   | W/trailer/weight | 17000 | unit-missing | = | shape",
                    "a weight in feet            | W/trailer/weight | \"17 ft\" | unit-unknown | = | shape",
                    "a negative weight           | W/trailer/weight | \"-1 lb\" | out-of-range | = | sense",
                    "a weight of a ship          | W/trailer/weight | \"900 t\" | out-of-range | = | sense",
                    "a cg without height         | W/gooseneck/cg/h | absent | missing | = | shape",
                    "a cg far off the side       | W/pieces/0/cg/offset | \"4 m\" | out-of-range | = | sense",
                    "a cg outside the outline    | W/pieces/0/cg/x | \"-3 m\" | cg-outside | W/pieces/0/cg | sense",
                    "a cg above the outline      | W/pieces/0/cg/h | \"4.2 m\" | cg-outside | W/pieces/0/cg | sense",
                    "a cg above the hull's slope | W/pieces/0/cg | {\"x\":\"-9.9 m\",\"h\":\"3.4 m\"} | cg-outside | = | sense",
                    "a piece nobody drew         | W/pieces/0/name | \"excavator\" | piece-not-drawn | = | sense",
                    "a tractor's cg on the deck  | W/tractor/cg/x | \"-8 m\" | cg-outside | W/tractor/cg | sense",
                    "a trailer's cg up in the air| W/trailer/cg/h | \"2 m\" | cg-outside | W/trailer/cg | sense",
                    "a gooseneck off its trailer | W/gooseneck/cg/x | \"3 m\" | cg-outside | W/gooseneck/cg | sense",
                    "a booster's cg at the deck  | W/booster/cg/x | \"-16 m\" | cg-outside | W/booster/cg | sense",
                    "carried, but not there      | W/booster/carriedCg/x | \"-2.8 m\" | cg-outside | W/booster/carriedCg | sense",
                    "shims that are a text       | W/shims | \"thick\" | wrong-type | = | shape",
                    "a regulator that is a number| W/regulator | 35 | wrong-type | = | shape",
                    "a booster nobody weighed    | W/booster | absent | missing | = | sense",
                    "weights that don't add up   | W/gross | \"95,000 lb\" | weights-do-not-add-up | = | sense",
                    "a load nobody weighed       | W/pieces | [] | load-not-weighed | = | sense",
                    "off-center, but no tracks   | W/tracks | absent | missing | = | sense",
                    "off-center, one track short | W/tracks/drive | absent | missing | W/tracks | sense",
                    "a rating of nothing         | W/ratings/axles/drive | \"0 lb\" | out-of-range | = | sense",
                    "a rating of a fifth axle    | W/ratings/axles/dolly | \"1 lb\" | unknown-key | = | shape",
                    "a chart that falls          | W/gauges/trailerDown/points/1 | [\"62 psi\", \"2,000 lb\"] | not-monotone | = | sense",
                    "a chart that goes back      | W/gauges/trailerDown/points/2 | [\"50 psi\", \"25,000 lb\"] | not-monotone | = | sense",
                    "a chart that stands still   | W/gauges/trailerUp/points/1 | [\"5 psi\", \"25,000 lb\"] | not-monotone | = | sense",
                    "a chart of one point        | W/gauges/trailerUp/points | [[\"5 psi\", \"3,000 lb\"]] | wrong-count | = | shape",
                    "a point of one number       | W/gauges/trailerUp/points/1 | [\"5 psi\"] | wrong-type | = | shape",
                    "a pressure in pounds        | W/gauges/trailerUp/points/1/0 | \"80 lb\" | unit-unknown | = | shape",
                    "a chart both ways           | W/gauges/booster/points | [[\"5 psi\", \"1 lb\"], [\"9 psi\", \"2 lb\"]] | both-charts | = | shape",
                    "no chart for the regulator  | W/gauges/booster | absent | no-chart | W/regulator/set | sense",
                    "regulator beyond its chart  | W/regulator/most | \"110 psi\" | beyond-chart | = | sense",
                    "regulator the wrong way     | W/regulator/most | \"5 psi\" | order | = | sense",
                    "set beyond the regulator    | W/regulator/set | \"95 psi\" | out-of-range | = | sense",
                    "a plate that is not listed  | W/shims/fitted | \"double\" | no-such-shim | = | sense",
                    "a plate listed twice        | W/shims/plates/0 | {\"name\":\"3/16 in plate\",\"thickness\":\"3/16 in\",\"least\":\"0 lb\",\"most\":\"1 lb\"} | shim-twice | W/shims/plates/1/name | sense",
                    "a plate range turned round   | W/shims/plates/1/most | \"1,000 lb\" | order | = | sense",
                    "a plate without a name      | W/shims/plates/0/name | absent | missing | = | shape",
                    "a lift without take-off     | W/frontLift/takeOff | absent | missing | = | shape",
                    "an unknown field            | W/driver | \"200 lb\" | unknown-key | = | shape")
            .map(row -> Mistake.of(row.replace("W/", AT + "/").replace("| W |", "| " + AT + " |")))
            .toList();
}
