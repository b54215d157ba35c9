package org.cresthaul.exchange.rigfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftAxle;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Several lift axles in a rig file: what is taken, and which mistakes are told where. Numbers are converted by hand: an
 * inch is 25.4 mm.
 */
class LiftAxlesReaderTest {
    /** Three axles; the height valves read the second. */
    private static final String RIG = with(
            RigTexts.RIG,
            "[{\"axle\": 3, \"gap\": \"4 in\"}, {\"axle\": 1, \"gap\": \"3 in\"}]",
            "[{\"up\": [3], \"secondaryRise\": \"1 in\"}, {\"up\": [3, 1], \"secondaryRise\": \"-2 in\"}]");

    private static String with(String rig, String axles, String states) {
        String text = JsonEdit.edit(rig, "/stances/0/trailer/liftAxle", "absent");
        text = JsonEdit.edit(text, "/stances/0/trailer/valveAxle", "2");
        text = JsonEdit.edit(text, "/stances/0/trailer/liftAxles", axles);
        return JsonEdit.edit(text, "/stances/0/trailer/liftStates", states);
    }

    static Stream<Mistake> mistakes() {
        return Stream.of(
                        "both ways of saying it    | S/trailer/liftAxle | {\"gap\": \"4 in\", \"secondaryRise\": \"1 in\"} | both-lifts | = | shape",
                        "lift axles without states | S/trailer/liftStates | absent | missing | = | shape",
                        "states without lift axles | S/trailer/liftAxles | absent | missing | = | shape",
                        "an axle that is not there | S/trailer/liftAxles/0/axle | 4 | no-such-axle | = | sense",
                        "an axle listed twice      | S/trailer/liftAxles/0/axle | 1 | given-twice | S/trailer/liftAxles/1/axle | sense",
                        "the valves read it        | S/trailer/valveAxle | 3 | valve-on-lift-axle | = | sense",
                        "an axle without a gap     | S/trailer/liftAxles/0/gap | absent | missing | = | shape",
                        "a gap of two meters       | S/trailer/liftAxles/0/gap | \"2 m\" | out-of-range | = | sense",
                        "an axle by its name       | S/trailer/liftAxles/0/axle | \"rear\" | wrong-number | = | shape",
                        "up without lifting        | S/trailer/liftStates/0/up | [2] | no-lift-axle | S/trailer/liftStates/0/up/0 | sense",
                        "up by half an axle        | S/trailer/liftStates/0/up | [1.5] | wrong-type | S/trailer/liftStates/0/up/0 | shape",
                        "up twice in one state     | S/trailer/liftStates/0/up | [3, 3] | given-twice | S/trailer/liftStates/0/up/1 | sense",
                        "nothing up                | S/trailer/liftStates/0/up | [] | wrong-count | = | shape",
                        "one state twice           | S/trailer/liftStates/0/up | [1, 3] | given-twice | S/trailer/liftStates/1/up | sense",
                        "an axle never up          | S/trailer/liftStates/1 | absent | never-up | S/trailer/liftStates | sense",
                        "a state without a rise    | S/trailer/liftStates/0/secondaryRise | absent | missing | = | shape",
                        "a rise beyond the travel  | S/trailer/liftStates/0/secondaryRise | \"4 in\" | beyond-travel | = | sense",
                        "a drop beyond the travel  | S/trailer/liftStates/1/secondaryRise | \"-4 in\" | beyond-travel | = | sense",
                        "a chart that falls        | S/trailer/liftStates/0/gauge | {\"accuracy\": \"4 %\", \"points\": [[\"2 bar\", \"5 t\"], [\"1 bar\", \"2 t\"]]} | not-monotone | S/trailer/liftStates/0/gauge/points/1 | sense",
                        "a misspelled state        | S/trailer/liftStates/0/rise | \"1 in\" | unknown-key | = | shape")
                .map(row -> row.replace("S/", "/stances/0/"))
                .map(Mistake::of);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mistakes")
    void tellsAMistakeWhereItIs(Mistake mistake) {
        List<InputProblem> problems = assertThrows(InputRejected.class, () -> RigFile.parse(mistake.in(RIG)))
                .problems();
        assertTrue(mistake.isToldIn(problems), problems.toString());
    }

    @Test
    void everyStateHasItsAxlesAndItsHeight() throws Exception {
        LevelStance stance = RigFile.parse(RIG).stances().get(0);
        assertEquals(
                List.of("down", "up-3", "up-1-3"),
                stance.liftStates().stream().map(LiftState::word).toList());
        LiftAxles lift = stance.trailer().lift();
        LiftState both = stance.liftStates().get(2);
        assertEquals(List.of(0, 2), lift.up(both).stream().map(LiftAxle::index).toList());
        assertEquals(0.0762, lift.up(both).get(0).gapM(), 1e-12);
        assertEquals(0.1016, lift.up(both).get(1).gapM(), 1e-12);
        assertEquals(-0.0508, lift.secondaryRiseM(both), 1e-12);
        assertEquals(0.0254, lift.secondaryRiseM(stance.liftStates().get(1)), 1e-12);
        assertEquals(0, lift.secondaryRiseM(LiftState.DOWN), 0);
        assertEquals(
                List.of(-13.0),
                stance.trailer().down(both).stream().map(Axle::xM).toList());
        assertEquals(
                List.of(-11.6, -13.0),
                stance.trailer().down(stance.liftStates().get(1)).stream()
                        .map(Axle::xM)
                        .toList());
        assertThrows(IllegalArgumentException.class, () -> lift.up(LiftState.UP));
    }

    @Test
    void aListOfTheLastAxleAloneIsTheLiftAxle() throws Exception {
        String listed = with(
                RigTexts.RIG,
                "[{\"axle\": 3, \"gap\": \"4 1/4 in\"}]",
                "[{\"up\": [3], \"secondaryRise\": \"1 1/4 in\"}]");
        String plain = JsonEdit.edit(RigTexts.RIG, "/stances/0/trailer/valveAxle", "2");
        assertEquals(RigFile.parse(plain), RigFile.parse(listed));
    }

    @Test
    void theOneAxleInTheMiddleMayBeIt() throws Exception {
        String listed = with(
                RigTexts.RIG, "[{\"axle\": 1, \"gap\": \"4 in\"}]", "[{\"up\": [1], \"secondaryRise\": \"1 in\"}]");
        LevelStance stance = RigFile.parse(listed).stances().get(0);
        assertEquals(List.of(LiftState.DOWN, LiftState.UP), stance.liftStates());
        assertEquals(
                List.of(-13.0, -14.4),
                stance.trailer().down(LiftState.UP).stream().map(Axle::xM).toList());
    }

    @Test
    void aChartBesideTheStatesIsRefused() {
        String weights = "{\"gauges\": {\"trailerUp\": {\"accuracy\": \"4 %\","
                + " \"points\": [[\"1 bar\", \"2 t\"], [\"5 bar\", \"9 t\"]]}}}";
        String rig = JsonEdit.edit(RIG, "/stances/0/weights", weights);
        List<InputProblem> problems =
                assertThrows(InputRejected.class, () -> RigFile.parse(rig)).problems();
        assertTrue(
                problems.stream()
                        .anyMatch(p -> p.code().equals("chart-of-no-state")
                                && p.pointer().equals("/stances/0/weights/gauges/trailerUp")),
                problems.toString());
    }

    @Test
    void aStateHasAChartOfItsOwn() throws Exception {
        String chart = "{\"accuracy\": \"4 %\", \"points\": [[\"1 bar\", \"2 t\"], [\"5 bar\", \"9 t\"]]}";
        LevelStance stance = RigFile.parse(JsonEdit.edit(RIG, "/stances/0/trailer/liftStates/1/gauge", chart))
                .stances()
                .get(0);
        LiftAxles lift = stance.trailer().lift();
        assertEquals(
                Optional.of(9_000.0),
                lift.find(stance.liftStates().get(2))
                        .flatMap(LiftAxles.Raised::gauge)
                        .map(g -> g.points().get(1).loadKg()));
        assertEquals(Optional.empty(), lift.find(stance.liftStates().get(1)).flatMap(LiftAxles.Raised::gauge));
    }
}
