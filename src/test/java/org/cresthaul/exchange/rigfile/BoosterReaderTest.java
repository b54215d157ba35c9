package org.cresthaul.exchange.rigfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.TapeMeasures;
import org.cresthaul.rig.UnitName;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Boosters on several axles and behind one another in a rig file: what is taken, and which mistakes are told where.
 * Places are worked by hand from the file.
 */
class BoosterReaderTest {
    private static final String BEHIND = """
            { "hinge": {"x": "0 m"}, "axle": {"x": "-2.4 m", "radius": "0.42 m"},
              "underside": [{"x": "-3 m", "h": "0.5 m"}, {"x": "0 m", "h": "0.6 m"}],
              "topside": [{"x": "-3 m", "h": "1.1 m"}, {"x": "0 m", "h": "1.1 m"}],
              "hingeUp": "9 deg", "hingeDown": "8 deg" }
            """;

    private static final String RIG = with("""
            { "hinge": {"x": "0 m"}, "travelUp": "3 in", "travelDown": "3 in",
              "axles": [{"x": "-2.6 m", "radius": "0.42 m"}, {"x": "-4 m", "radius": "0.42 m"}],
              "underside": [{"x": "-4.8 m", "h": "0.5 m"}, {"x": "0 m", "h": "0.6 m"}],
              "topside": [{"x": "-4.8 m", "h": "1.1 m"}, {"x": "0 m", "h": "1.1 m"}],
              "states": ["trailing"], "hingeUp": "12 deg", "hingeDown": "12 deg",
              "nextHinge": {"x": "-5 m", "h": "0.75 m"} }
            """, BEHIND);

    private static String with(String booster, String behind) {
        return JsonEdit.edit(
                JsonEdit.edit(RigTexts.RIG, "/stances/0/booster", booster),
                "/stances/0/boostersBehind",
                "[" + behind + "]");
    }

    static Stream<Mistake> mistakes() {
        return Stream.of(
                        "three behind                | S/boostersBehind | three | wrong-count | = | shape",
                        "an axle besides axles       | S/booster/axle | {\"x\": \"-2 m\", \"radius\": \"0.4 m\"} | both-axles | S/booster/axles | shape",
                        "no axle at all              | S/boostersBehind/0/axle | absent | missing | = | shape",
                        "axles without travel        | S/booster/travelUp | absent | missing | = | shape",
                        "axles in no order           | S/booster/axles/1/x | \"-2 m\" | axle-order | = | sense",
                        "axles ahead of the hinge    | S/booster/axles/0/x | \"-0.3 m\" | order | S/booster/hinge/x | sense",
                        "several close-coupled       | S/booster/states | [\"close-coupled\"] | several-axles | = | sense",
                        "left with one behind it     | S/booster/states | [\"none\", \"trailing\"] | booster-behind | = | sense",
                        "no hinge for the one behind | S/booster/nextHinge | absent | no-hinge | S/boostersBehind/0 | sense",
                        "a hinge for nothing         | S/boostersBehind/0/nextHinge | {\"x\": \"-3 m\", \"h\": \"0.7 m\"} | nothing-behind | S/boostersBehind | sense",
                        "a hinge ahead of the own    | S/booster/nextHinge/x | \"0.2 m\" | order | = | sense",
                        "a hinge far behind          | S/booster/nextHinge/x | \"-12.2 m\" | order | = | sense",
                        "a hinge too high            | S/booster/nextHinge/h | \"2.6 m\" | coupling-height | = | sense",
                        "one behind on the deck      | S/boostersBehind/0/states | [\"carried\"] | unknown-word | S/boostersBehind/0/states/0 | shape",
                        "tires among the ones ahead  | S/booster/nextHinge/x | \"-2.5 m\" | tires-near | S/boostersBehind/0 | sense",
                        "reaching to the trailer     | S/boostersBehind | reaching | reach | S/boostersBehind/0 | sense",
                        "a plan without boosters     | S/plan/booster | absent | missing | = | sense")
                .map(row -> row.replace("S/", "/stances/0/"))
                .map(Mistake::of);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mistakes")
    void tellsAMistakeWhereItIs(Mistake mistake) {
        String document =
                switch (mistake.value()) {
                    case "three" ->
                        JsonEdit.edit(
                                RIG,
                                mistake.pointer(),
                                List.of(BEHIND, BEHIND, BEHIND).toString());
                    case "reaching" ->
                        JsonEdit.edit(
                                RIG, mistake.pointer(), "[" + BEHIND.replace("\"0 m\", \"h\"", "\"6 m\", \"h\"") + "]");
                    default -> mistake.in(RIG);
                };
        List<InputProblem> problems =
                assertThrows(InputRejected.class, () -> RigFile.parse(document)).problems();
        assertTrue(mistake.isToldIn(problems), problems.toString());
    }

    @Test
    void everyWeightHasItsBooster() {
        String weights = """
                { "accuracy": "2 %", "source": "scale, invented",
                  "tractor": {"weight": "8 t", "cg": {"x": "-1.9 m", "h": "1 m"}},
                  "trailer": {"weight": "8 t", "cg": {"x": "-10.4 m", "h": "0.7 m"}},
                  "gooseneck": {"weight": "2 t", "cg": {"x": "-1.5 m", "h": "1.4 m"}},
                  "booster": {"weight": "3 t", "cg": {"x": "-2.8 m", "h": "0.7 m"}},
                  "pieces": [{"name": "wheel loader", "weight": "18 t", "cg": {"x": "-7.4 m", "h": "1.9 m"}}] }
                """;
        String rig = JsonEdit.edit(RIG, "/stances/0/weights", weights);
        String behind = """
                [{ "weight": "2 t", "cg": {"x": "-2 m", "h": "0.7 m"}, "set": "3 bar",
                   "gauge": {"accuracy": "4 %", "points": [["1 bar", "2 t"], ["5 bar", "9 t"]]} }]
                """;
        String weighed = JsonEdit.edit(rig, "/stances/0/weights/boostersBehind", behind);
        assertEquals(List.of("missing at /stances/0/weights/boostersBehind"), told(rig));
        assertEquals(
                List.of("beyond-chart at /stances/0/weights/boostersBehind/0/set"),
                told(JsonEdit.edit(weighed, "/stances/0/weights/boostersBehind/0/set", "\"6 bar\"")));
        assertEquals(
                List.of("cg-outside at /stances/0/weights/boostersBehind/0/cg"),
                told(JsonEdit.edit(weighed, "/stances/0/weights/boostersBehind/0/cg/x", "\"-4 m\"")));
    }

    private static List<String> told(String rig) {
        return assertThrows(InputRejected.class, () -> RigFile.parse(rig)).problems().stream()
                .map(p -> p.code() + " at " + p.pointer())
                .toList();
    }

    @Test
    void unitsStandBehindOneAnother() throws Exception {
        LevelStance stance = RigFile.parse(RIG).stances().get(0);
        assertEquals(
                List.of("tractor", "trailer", "booster", "booster 2"),
                stance.units().stream().map(UnitName::word).toList());
        // The trailer's hinge at -15.2, the next one 5 behind that.
        assertEquals(-15.2, stance.boosterShiftM(0), 1e-12);
        assertEquals(-20.2, stance.boosterShiftM(1), 1e-12);
        // From the bumper at 0.9 to the fifth wheel at -5, to the trailer's hinge, to the next, to the rear.
        assertEquals(0.9 + 5 + 15.2 + 5 + 3, CombinationLength.meters(stance, BoosterState.TRAILING), 1e-12);
        List<String> tape = TapeMeasures.of(stance).stream()
                .map(m -> "%s %.2f".formatted(m.what(), m.meters()))
                .toList();
        assertTrue(
                tape.containsAll(List.of(
                        "booster hinge to booster axle 1 2.60",
                        "booster axle 1 to booster axle 2 1.40",
                        "booster axle 2 to the hinge behind 1.00",
                        "booster 2 hinge to booster 2 axle 2.40",
                        "booster 2 axle to rear of booster 2 0.60")),
                tape.toString());
    }
}
