package org.cresthaul.exchange.rigfile;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.Notch;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Mistake;
import org.cresthaul.units.MutatedJson;
import org.cresthaul.units.Problems;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RigFileTest {
    static List<Mistake> mistakes() {
        return RigMistakes.ALL;
    }

    private static List<InputProblem> problemsOf(String document) {
        return assertThrows(InputRejected.class, () -> RigFile.parse(document)).problems();
    }

    @Test
    void readsEveryFieldInSiUnits() throws Exception {
        Rig rig = RigFile.parse(RigTexts.RIG.getBytes(StandardCharsets.UTF_8));
        assertEquals("Two-axle lowbed", rig.name());
        assertEquals("Invented for the tests.", rig.note());
        assertEquals(0.010, rig.measurement().valueM());
        assertEquals("estimate", rig.ride().source());
        assertArrayEquals(
                new double[] {-0.03175, -0.015875, 0, 0.015875},
                rig.notches().stream().mapToDouble(Notch::offsetM).toArray(),
                1e-12);
        LevelStance stance = rig.stances().get(0);
        assertEquals("loaded", stance.name());
        Tractor tractor = stance.tractor();
        assertEquals(new Axle(0, 0.5), tractor.steer());
        assertEquals(
                List.of(new Axle(-4.4, 0.5), new Axle(-5.7, 0.5)),
                tractor.drive().axles());
        assertEquals(0.0762, tractor.drive().jounceM(), 1e-12);
        assertEquals(0.0762, tractor.drive().reboundM(), 1e-12);
        assertEquals(new FramePoint(-5, 1.25), tractor.fifthWheel());
        assertEquals(
                new FramePoint(0.9, 0.28, "bumper"),
                tractor.underside().points().get(1));
        assertEquals(4, tractor.topside().points().size());
        Trailer trailer = stance.trailer();
        assertEquals(0, trailer.kingpinXM());
        assertEquals(new FramePoint(-3.4, 0.6), trailer.deckFront());
        assertEquals(new FramePoint(-10.8, 0.6), trailer.deckRear());
        assertEquals(3, trailer.axles().axles().size());
        assertEquals(0, trailer.valveAxle());
        assertEquals(0.10795, trailer.lift().axles().get(0).gapM(), 1e-12);
        assertEquals(0.03175, trailer.lift().raised().get(0).secondaryRiseM(), 1e-12);
        assertEquals(0.254, trailer.hydraulicRaiseLimitM(), 1e-12);
        assertEquals(0.0762, trailer.manualRaiseLimitM(), 1e-12);
        assertEquals(0.0127, trailer.deckSagM(), 1e-12);
        assertEquals(6, trailer.underside().points().size());
        assertEquals("wheel loader", trailer.load().get(0).points().get(0).part());
        assertEquals(Optional.of(new FramePoint(-15.2, 0.8)), trailer.boosterHinge());
        Booster booster = stance.booster().orElseThrow();
        assertEquals(0, booster.hingeXM());
        assertEquals(new Axle(-3.2, 0.42), booster.onlyAxle());
        assertEquals(List.of(BoosterState.values()), booster.states());
        assertEquals(Math.toRadians(12), booster.hingeUpRad(), 1e-15);
        assertEquals(-15.9, booster.closeCoupledAxleXM().orElseThrow());
        assertEquals("booster", booster.carried().orElseThrow().points().get(0).part());
    }

    @Test
    void takesARigWithoutWhatIsOptional() throws Exception {
        String bare = RigTexts.RIG;
        for (String pointer : List.of(
                "/note",
                "/stances/0/booster",
                "/stances/0/plan/booster",
                "/stances/0/trailer/boosterHinge",
                "/stances/0/trailer/liftAxle",
                "/stances/0/trailer/deckSag",
                "/stances/0/trailer/load")) {
            bare = JsonEdit.edit(bare, pointer, "absent");
        }
        Rig rig = RigFile.parse(bare);
        Trailer trailer = rig.stances().get(0).trailer();
        assertEquals(LiftAxles.NONE, trailer.lift());
        assertEquals(0, trailer.deckSagM());
        assertEquals(List.of(), trailer.load());
        assertEquals(List.of(BoosterState.NONE), rig.stances().get(0).boosterStates());
        // Without a lift axle the valve may read the last axle.
        RigFile.parse(JsonEdit.edit(bare, "/stances/0/trailer/valveAxle", "3"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mistakes")
    void tellsAMistakeOnceAndAtItsPlace(Mistake mistake) {
        List<InputProblem> problems = problemsOf(mistake.in(RigTexts.RIG));
        assertEquals(1, problems.size(), () -> problems.toString());
        assertEquals(mistake.code(), problems.get(0).code(), () -> problems.toString());
        assertEquals(mistake.at(), problems.get(0).pointer(), () -> problems.toString());
    }

    @Test
    void tellsAllMistakesOfAFileTogether() {
        String bad = RigTexts.RIG;
        bad = JsonEdit.edit(bad, "/notches/0/offset", "\"-1.5\"");
        bad = JsonEdit.edit(bad, "/stances/0/tractor/steer/x", "\"-4.5 m\"");
        bad = JsonEdit.edit(bad, "/stances/0/trailer/valveAxle", "3");
        bad = JsonEdit.edit(bad, "/stances/0/trailer/underside/3/x", "\"-12 m\"");
        bad = JsonEdit.edit(bad, "/stances/0/trailer/manualRaiseLimit", "\"-1 in\"");
        bad = JsonEdit.edit(bad, "/stances/0/booster/closeCoupledAxle/x", "\"-14 m\"");
        bad = bad.replace("\"accuracy\":\"15 mm\"", "\"accuracy\":\"15 mm\",\"accuracy\":\"1 mm\"");
        assertEquals(
                List.of(
                        "/notches/0/offset",
                        "/ride/accuracy",
                        "/stances/0/booster/closeCoupledAxle/x",
                        "/stances/0/tractor/steer/x",
                        "/stances/0/trailer/manualRaiseLimit",
                        "/stances/0/trailer/underside/3/x",
                        "/stances/0/trailer/valveAxle"),
                problemsOf(bad).stream().map(InputProblem::pointer).sorted().toList());
    }

    @Test
    void aKingpinAmongTheAxlesIsAheadOfNothing() {
        List<InputProblem> problems =
                problemsOf(JsonEdit.edit(RigTexts.RIG, "/stances/0/trailer/kingpin/x", "\"-10 m\""));
        assertEquals(
                List.of("/stances/0/trailer/kingpin/x", "/stances/0/trailer/deckFront/x"),
                problems.stream().map(InputProblem::pointer).toList());
        assertEquals(
                "The kingpin is not at least 2 m ahead of the first trailer axle.",
                problems.get(0).message());
    }

    @Test
    void namesTheFieldAndShowsARightExample() {
        InputProblem bare = problemsOf(JsonEdit.edit(RigTexts.RIG, "/stances/0/trailer/hydraulicRaiseLimit", "10"))
                .get(0);
        assertEquals("hydraulicRaiseLimit: the bare number 10 has no unit.", bare.message());
        assertEquals("Write a length in quotes with its unit, such as \"13 ft 6 in\" or \"4.11 m\".", bare.remedy());
        InputProblem misspelled = problemsOf(JsonEdit.edit(RigTexts.RIG, "/stances/0/trailer/hydraulicRaseLimit", "10"))
                .get(0);
        assertEquals("Did you mean \"hydraulicRaiseLimit\"?", misspelled.remedy());
        InputProblem strange =
                problemsOf(JsonEdit.edit(RigTexts.RIG, "/color", "\"red\"")).get(0);
        assertEquals(
                "Known here: cresthaul, name, note, measurement, ride, notches, stances, times, identity.",
                strange.remedy());
    }

    @Test
    void readsAPartOfALargerDocument() {
        Problems problems = new Problems();
        Optional<Rig> rig =
                RigFile.read(JsonText.read(JsonEdit.edit(RigTexts.RIG, "/name", "absent"), problems), "/rig", problems);
        assertEquals(Optional.empty(), rig);
        assertEquals("/rig/name", problems.list().get(0).pointer());
    }

    @Test
    void refusesWhatIsNotARig() {
        assertEquals("wrong-type", problemsOf("[]").get(0).code());
        assertEquals("wrong-type", problemsOf("7").get(0).code());
        assertEquals("not-json", problemsOf("").get(0).code());
        assertEquals("not-json", problemsOf("{\"cresthaul\": NaN}").get(0).code());
        assertEquals("too-large", problemsOf("[".repeat(1_000_000)).get(0).code());
        assertEquals("missing", problemsOf("{}").get(0).code());
    }

    @Test
    void readsTheSameUnderADecimalCommaLocale() throws Exception {
        Rig expected = RigFile.parse(RigTexts.RIG);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertEquals(expected, RigFile.parse(RigTexts.RIG));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void answersAnyMangledFileWithARigOrWithProblemsInIt() throws Exception {
        long seed = 20260210;
        System.out.println("mangled rig files, seed " + seed);
        MutatedJson mutated = new MutatedJson(RigTexts.RIG, seed);
        ObjectMapper mapper = new ObjectMapper();
        int taken = 0;
        int refused = 0;
        for (int i = 0; i < 5_000; i++) {
            String document = mutated.next();
            try {
                RigFile.parse(document);
                taken++;
            } catch (InputRejected e) {
                refused++;
                for (InputProblem problem : e.problems()) {
                    MutatedJson.requireParentExists(mapper.readTree(document), problem.pointer());
                }
            }
        }
        assertTrue(taken > 100 && refused > 2_500, taken + " taken, " + refused + " refused");
    }
}
