package org.cresthaul.exchange.rigfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A mistake is told where it is and nowhere else, with a remedy that helps. */
class MessagesTest {
    private static final Pattern SUGGESTED = Pattern.compile("Add it, such as \"([^\"]+)\": (\".*\"|-?\\d+)\\.");

    static Stream<Mistake> mistakes() {
        return RigMistakes.ALL.stream();
    }

    private static List<InputProblem> problemsOf(String rig) {
        try {
            RigFile.parse(rig);
            return List.of();
        } catch (InputRejected e) {
            return e.problems();
        }
    }

    /** A mistake elsewhere in the file does not blame the weights. */
    @ParameterizedTest
    @MethodSource("mistakes")
    void aMistakeElsewhereDoesNotBlameTheWeights(Mistake mistake) {
        if (mistake.pointer().startsWith("/stances/0/weights")
                || mistake.pointer().contains("/booster")
                || mistake.pointer().contains("/load")
                || mistake.pointer().equals("/stances")
                || mistake.pointer().equals("/stances/0")) {
            return;
        }
        List<String> blamed = problemsOf(mistake.in(WeightsTexts.RIG)).stream()
                .map(InputProblem::pointer)
                .filter(p -> p.startsWith("/stances/0/weights"))
                .toList();
        assertEquals(List.of(), blamed);
    }

    /** What a remedy suggests for a value that is missing is taken at its place. */
    @Test
    void whatIsSuggestedForAMissingValueIsTaken() throws Exception {
        List<String> pointers = new ArrayList<>();
        gather(new ObjectMapper().readTree(WeightsTexts.RIG), "", pointers);
        int suggested = 0;
        for (String pointer : pointers) {
            String without = JsonEdit.edit(WeightsTexts.RIG, pointer, "absent");
            Optional<InputProblem> missing = problemsOf(without).stream()
                    .filter(p -> p.pointer().equals(pointer) && p.code().equals("missing"))
                    .findFirst();
            if (missing.isEmpty()) {
                continue;
            }
            Matcher words = SUGGESTED.matcher(missing.get().remedy());
            if (!words.matches()) {
                continue;
            }
            assertTrue(pointer.endsWith("/" + words.group(1)), missing.get().toString());
            List<String> shape = problemsOf(JsonEdit.edit(without, pointer, words.group(2))).stream()
                    .filter(p -> p.pointer().equals(pointer))
                    .filter(p -> List.of(
                                    "out-of-range",
                                    "unit-missing",
                                    "unit-unknown",
                                    "wrong-type",
                                    "unknown-word",
                                    "missing")
                            .contains(p.code()))
                    .map(Object::toString)
                    .toList();
            assertEquals(List.of(), shape, pointer + " " + missing.get().remedy());
            suggested++;
        }
        assertTrue(suggested > 60, suggested + " suggestions");
    }

    private static void gather(JsonNode node, String pointer, List<String> into) {
        if (node.isObject()) {
            node.properties().forEach(e -> gather(e.getValue(), pointer + "/" + e.getKey(), into));
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                gather(node.get(i), pointer + "/" + i, into);
            }
        } else if (!pointer.matches(".*/\\d+")) {
            into.add(pointer);
        }
    }

    @Test
    void theFormatThatIsMissingIsTheOneToAdd() {
        String rig = JsonEdit.edit(RigTexts.RIG, "/cresthaul", "absent");
        assertTrue(
                problemsOf(rig).get(0).remedy().contains("\"cresthaul\": \"rig/1\""),
                problemsOf(rig).toString());
        String route = JsonEdit.edit(RouteTexts.ROUTE, "/cresthaul", "absent");
        InputRejected refused = assertThrows(InputRejected.class, () -> RouteFile.parse(route));
        assertTrue(
                refused.problems().get(0).remedy().contains("\"cresthaul\": \"route/1\""),
                refused.problems().toString());
    }

    /** 42 in where the outline has 22: the deck is held against the trailer's outline. */
    @Test
    void aDeckOffTheOutlineIsFound() throws Exception {
        String sound = RigTexts.RIG;
        assertFalse(problemsOf(sound).stream().anyMatch(p -> p.code().equals("off-outline")));
        for (String wrong : List.of("/stances/0/trailer/deckFront/h", "/stances/0/trailer/deckRear/h")) {
            List<InputProblem> problems = problemsOf(JsonEdit.edit(sound, wrong, "\"1.9 m\""));
            assertEquals(
                    List.of("off-outline"),
                    problems.stream().map(InputProblem::code).toList());
            assertEquals(wrong, problems.get(0).pointer());
            assertTrue(
                    problems.get(0).remedy().contains("3 ft 3 3/8 in"),
                    problems.get(0).remedy());
        }
    }
}
