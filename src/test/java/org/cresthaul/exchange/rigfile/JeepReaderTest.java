package org.cresthaul.exchange.rigfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.JeepTexts;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.TapeMeasures;
import org.cresthaul.rig.UnitName;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Jeeps in a rig file: what is taken, and which mistakes are told where. Places are worked by hand from the file. */
class JeepReaderTest {
    private static final String RIG = JeepTexts.with(JeepTexts.JEEP);

    static Stream<Mistake> mistakes() {
        return Stream.of(
                        "four jeeps                  | S/jeeps | four | wrong-count | = | shape",
                        "no kingpin                  | S/jeeps/0/kingpin | absent | missing | = | shape",
                        "a kingpin at the axles      | S/jeeps/0/kingpin/x | \"-1.8 m\" | order | = | sense",
                        "no axle                     | S/jeeps/0/axles | [] | wrong-count | = | shape",
                        "a fifth wheel at the pin    | S/jeeps/0/fifthWheel/x | \"-0.4 m\" | order | = | sense",
                        "a fifth wheel far behind    | S/jeeps/0/fifthWheel/x | \"-6.2 m\" | order | = | sense",
                        "a fifth wheel too high      | S/jeeps/0/fifthWheel/h | \"2.6 m\" | coupling-height | = | sense",
                        "a reach of 2 m              | S/jeeps/0/fifthWheel/reach | \"2 m\" | out-of-range | = | sense",
                        "an underside cut short      | S/jeeps/0/underside/0/x | \"-4 m\" | outline-short | S/jeeps/0/underside | sense",
                        "a misspelled field          | S/jeeps/0/fithWheel | {} | unknown-key | = | shape",
                        "tires under the drive axles | S/jeeps/0/axles/0/x | \"-1.5 m\" | tires-near | S/jeeps/0 | sense",
                        "a load over the tractor     | S/trailer/load/0/outline/1/x | \"2.4 m\" | reach | S/trailer | sense",
                        "a plan without its jeep     | S/plan/jeep | absent | missing | = | sense",
                        "a plan for no jeep          | S/jeeps | absent | no-jeep | S/plan/jeep | sense",
                        "a limit in meters           | S/plan/jeep/kingpinLimit | \"1 m\" | unit-unknown | = | shape")
                .map(row -> row.replace("S/", "/stances/0/"))
                .map(Mistake::of);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mistakes")
    void tellsAMistakeWhereItIs(Mistake mistake) {
        String four = List.of(JeepTexts.JEEP, JeepTexts.JEEP, JeepTexts.JEEP, JeepTexts.JEEP)
                .toString();
        String document =
                mistake.value().equals("four") ? JsonEdit.edit(RIG, mistake.pointer(), four) : mistake.in(RIG);
        List<InputProblem> problems =
                assertThrows(InputRejected.class, () -> RigFile.parse(document)).problems();
        assertTrue(mistake.isToldIn(problems), problems.toString());
    }

    @Test
    void everyWeightHasItsJeep() {
        String weights = """
                { "accuracy": "2 %", "source": "scale, invented",
                  "tractor": {"weight": "8 t", "cg": {"x": "-1.9 m", "h": "1 m"}},
                  "trailer": {"weight": "8 t", "cg": {"x": "-10.4 m", "h": "0.7 m"}},
                  "gooseneck": {"weight": "2 t", "cg": {"x": "-1.5 m", "h": "1.4 m"}},
                  "booster": {"weight": "2 t", "cg": {"x": "-2.8 m", "h": "0.7 m"}},
                  "pieces": [{"name": "wheel loader", "weight": "18 t", "cg": {"x": "-7.4 m", "h": "1.9 m"}}] }
                """;
        String rig = JsonEdit.edit(RIG, "/stances/0/weights", weights);
        List<InputProblem> problems =
                assertThrows(InputRejected.class, () -> RigFile.parse(rig)).problems();
        assertEquals("/stances/0/weights/jeeps", problems.get(0).pointer());
        assertEquals("jeeps-not-weighed", problems.get(0).code());
        String outside = "[{\"weight\": \"4 t\", \"cg\": {\"x\": \"-6 m\", \"h\": \"1 m\"}}]";
        problems = assertThrows(
                        InputRejected.class,
                        () -> RigFile.parse(JsonEdit.edit(rig, "/stances/0/weights/jeeps", outside)))
                .problems();
        assertEquals("/stances/0/weights/jeeps/0/cg", problems.get(0).pointer());
    }

    @Test
    void unitsStandBehindOneAnother() throws Exception {
        LevelStance stance = RigFile.parse(JeepTexts.with(JeepTexts.JEEP, JeepTexts.JEEP))
                .stances()
                .get(0);
        assertEquals(
                List.of("tractor", "jeep", "jeep 2", "trailer", "booster"),
                stance.units().stream().map(UnitName::word).toList());
        // The fifth wheel at -5, a jeep's 3.8 behind its kingpin.
        assertEquals(-5, stance.jeepShiftM(0), 1e-12);
        assertEquals(-8.8, stance.jeepShiftM(1), 1e-12);
        assertEquals(-12.6, stance.trailerShiftM(), 1e-12);
        // From the bumper at 0.9 to the booster's rear: its hinge 15.2 behind the kingpin, 3.8 more.
        assertEquals(0.9 + 12.6 + 15.2 + 3.8, CombinationLength.meters(stance, BoosterState.TRAILING), 1e-12);
        assertTrue(TapeMeasures.of(stance).stream()
                .anyMatch(m -> m.what().equals("kingpin of jeep 2 to jeep 2 axle 1") && m.meters() == 3.2));
    }
}
