package org.cresthaul.exchange.rigfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.JeepTexts;
import org.cresthaul.rig.LeftOff;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Units that may be left off: what a file may say, and that the combination without them is to the last digit the one
 * that a file tells in which they never were.
 */
class LeftOffReaderTest {
    private static final String RIG = JeepTexts.with(JeepTexts.JEEP, JeepTexts.JEEP);
    private static final String OFF = "[\"in\", \"out\"]";

    /** Each begins with jeep 2 that may be left off. */
    static Stream<Mistake> mistakes() {
        return Stream.of(
                        "an unknown state       | S/jeeps/1/states | [\"in\", \"none\"] | unknown-word | S/jeeps/1/states/1 | shape",
                        "the same state twice   | S/jeeps/1/states | [\"in\", \"in\"] | state-twice | S/jeeps/1/states/1 | shape",
                        "never in               | S/jeeps/1/states | [\"out\"] | never-coupled | S/jeeps/1/states | shape",
                        "no state               | S/jeeps/1/states | [] | wrong-count | S/jeeps/1/states | shape",
                        "only the one ahead     | S/jeeps | ahead | not-from-rear | S/jeeps/0/states | sense",
                        "its wheel higher       | S/jeeps/1/fifthWheel/h | \"1.251 m\" | other-height | S/jeeps/1/states | sense",
                        "the one ahead lower    | S/jeeps/0/fifthWheel/h | \"1.249 m\" | other-height | S/jeeps/1/states | sense",
                        "reaching to the tractor | S/trailer/load/0/outline/1/x | reaching | reach | S/trailer | sense")
                .map(row -> row.replace("S/", "/stances/0/"))
                .map(Mistake::of);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mistakes")
    void tellsAMistakeWhereItIs(Mistake mistake) {
        String rig = JsonEdit.edit(RIG, "/stances/0/jeeps/1/states", OFF);
        String document =
                switch (mistake.value()) {
                    case "ahead" -> JsonEdit.edit(RIG, "/stances/0/jeeps/0/states", OFF);
                    // A tractor 2.2 m behind its fifth wheel and a load 2 m ahead of the kingpin: a jeep's two pins
                    // are 3.8 m apart, and the jeep's own frame ends 1.4 m behind its fifth wheel.
                    case "reaching" -> {
                        String load = JsonEdit.edit(rig, "/stances/0/trailer/load/0/outline/1/x", "\"2 m\"");
                        yield JsonEdit.edit(
                                JsonEdit.edit(load, "/stances/0/tractor/underside/0/x", "\"-7.2 m\""),
                                "/stances/0/tractor/topside/0/x",
                                "\"-7.2 m\"");
                    }
                    default -> mistake.in(rig);
                };
        List<InputProblem> problems =
                assertThrows(InputRejected.class, () -> RigFile.parse(document)).problems();
        assertTrue(mistake.isToldIn(problems), problems.toString());
    }

    @Test
    void everyCombinationHasAName() throws Exception {
        String both =
                JsonEdit.edit(JsonEdit.edit(RIG, "/stances/0/jeeps/1/states", OFF), "/stances/0/jeeps/0/states", OFF);
        Rig rig = RigFile.parse(both);
        assertEquals(1, rig.stances().size());
        assertEquals(
                List.of("loaded", "loaded, without jeep 2", "loaded, without jeep and jeep 2"),
                rig.combinations().stream().map(LevelStance::name).toList());
        // A jeep is 3.8 from pin to pin in this file: see JeepReaderTest for the length with both.
        double[] lengthsM = {0.9 + 12.6 + 15.2 + 3.8, 0.9 + 8.8 + 15.2 + 3.8, 0.9 + 5 + 15.2 + 3.8};
        for (int i = 0; i < lengthsM.length; i++) {
            assertEquals(
                    lengthsM[i], CombinationLength.meters(rig.combinations().get(i), BoosterState.TRAILING), 1e-12);
        }
    }

    /** By hand, and read by the page's own test too: which jeeps and boosters behind may be left off, and the names. */
    @Test
    void theTableOfCombinations() throws Exception {
        LevelStance two = RigFile.parse(RIG).stances().get(0);
        for (JsonNode row : new ObjectMapper()
                .readTree(Path.of("src/test/resources/combinations.json").toFile())) {
            List<Jeep> jeeps = new ArrayList<>();
            for (JsonNode off : row.get("jeeps")) {
                Jeep j = two.jeeps().get(0);
                jeeps.add(new Jeep(
                        j.kingpinXM(),
                        j.axles(),
                        j.fifthWheel(),
                        j.plateReachM(),
                        j.underside(),
                        j.topside(),
                        off.booleanValue()));
            }
            List<Booster> boosters = new ArrayList<>();
            for (JsonNode off : row.get("boosters")) {
                boosters.add(booster(
                        two.booster().orElseThrow(),
                        off.booleanValue()
                                ? List.of(BoosterState.NONE, BoosterState.TRAILING)
                                : List.of(BoosterState.TRAILING)));
            }
            LevelStance measured = new LevelStance(
                    "loaded",
                    two.tractor(),
                    jeeps,
                    two.trailer(),
                    Optional.of(booster(two.booster().orElseThrow(), List.of(BoosterState.TRAILING))),
                    boosters,
                    Optional.empty(),
                    Optional.empty());
            List<String> names = new ArrayList<>();
            row.get("names").forEach(n -> names.add(n.textValue()));
            assertEquals(
                    names,
                    LeftOff.combinationsOf(measured).stream()
                            .map(LevelStance::name)
                            .toList());
        }
    }

    /** The sample of 13 axles with every unit coupled for good. */
    private static String coupled() throws IOException {
        String sample = Files.readString(Path.of("sample-routes/lowbed-with-two-boosters.rig.json"));
        return JsonEdit.edit(
                JsonEdit.edit(sample, "/stances/0/jeeps/0/states", "[\"in\"]"),
                "/stances/0/boostersBehind/0/states",
                "[\"trailing\"]");
    }

    private static Booster booster(Booster b, List<BoosterState> states) {
        return new Booster(
                b.hingeXM(),
                b.axles(),
                b.underside(),
                b.topside(),
                states,
                b.hingeUpRad(),
                b.hingeDownRad(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.of(new Booster.Hinge(new FramePoint(b.hingeXM() - 4, 0.8), 0.3)));
    }

    @Test
    void twoStancesDoNotShareAName() throws Exception {
        String rig = JsonEdit.edit(RIG, "/stances/0/jeeps/1/states", OFF);
        String first = new ObjectMapper().readTree(rig).at("/stances/0").toString();
        String other = JsonEdit.edit(rig, "/stances/-", JsonEdit.edit(first, "/name", "\"loaded, without jeep 2\""));
        List<InputProblem> problems =
                assertThrows(InputRejected.class, () -> RigFile.parse(other)).problems();
        assertEquals("name-twice", problems.get(0).code());
    }

    /** The file of the sample, its units marked; and the same file with them cut out by hand. */
    static Stream<List<String>> cutOut() {
        String behind = "boostersBehind";
        return Stream.of(
                List.of(
                        "jeeps/0",
                        OFF,
                        ", without jeep",
                        "jeeps plan/jeep weights/jeeps weights/tracks/jeep"
                                + " weights/ratings/axles/jeep weights/ratings/tires/jeep"),
                List.of(
                        behind + "/0",
                        "[\"none\", \"trailing\"]",
                        ", without booster 2",
                        behind + " booster/nextHinge weights/" + behind));
    }

    @ParameterizedTest
    @MethodSource("cutOut")
    void runsAsIfItHadNeverBeenThere(List<String> way) throws Exception {
        String sample = coupled();
        String marked = JsonEdit.edit(sample, "/stances/0/" + way.get(0) + "/states", way.get(1));
        String cut = JsonEdit.edit(sample, "/stances/0/name", "\"loaded" + way.get(2) + "\"");
        cut = JsonEdit.edit(cut, "/stances/0/weights/gross", "absent");
        for (String key : way.get(3).split(" ")) {
            cut = JsonEdit.edit(cut, "/stances/0/" + key, "absent");
        }
        List<LevelStance> all = RigFile.parse(marked).combinations();
        assertEquals(2, all.size());
        assertEquals(RigFile.parse(sample).stances().get(0).name(), all.get(0).name());
        assertEquals(RigFile.parse(cut).stances().get(0), all.get(1));
    }

    /** What the first booster may do alone it may do once those behind it are off, and not before. */
    @Test
    void theFirstBoosterIsFreeOnceNothingHangsOnIt() throws Exception {
        String sample = coupled();
        String alone = JsonEdit.edit(sample, "/stances/0/booster/states", "[\"none\", \"trailing\"]");
        assertEquals(
                "booster-behind",
                assertThrows(InputRejected.class, () -> RigFile.parse(alone))
                        .problems()
                        .get(0)
                        .code());
        List<LevelStance> all = RigFile.parse(
                        JsonEdit.edit(alone, "/stances/0/boostersBehind/0/states", "[\"none\", \"trailing\"]"))
                .combinations();
        assertEquals(List.of(BoosterState.TRAILING), all.get(0).boosterStates());
        assertEquals(
                List.of(BoosterState.NONE, BoosterState.TRAILING), all.get(1).boosterStates());
    }
}
