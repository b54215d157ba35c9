package org.cresthaul.exchange.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.Problems;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonTextTest {
    private static List<InputProblem> problemsOf(String document) {
        Problems problems = new Problems();
        JsonText.read(document, problems);
        return problems.list();
    }

    @ParameterizedTest(name = "{0}: {1} at \"{2}\"")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "``                              | not-json     | ``",
                "{                               | not-json     | ``",
                "{\"a\": NaN}                    | not-json     | ``",
                "{\"a\": -Infinity}              | not-json     | ``",
                "{\"a\": 01}                     | not-json     | ``",
                "{'a': 1}                        | not-json     | ``",
                "{\"a\": 1,}                     | not-json     | ``",
                "{\"a\": 1} {}                   | not-json     | ``",
                "{\"a\": 1} x                    | not-json     | ``",
                "{\"a\": 1 /* one */}            | not-json     | ``",
                "{\"a\": 1, \"a\": 2}            | key-twice    | /a",
                "{\"b\": [0, {\"a\": 1, \"a\": 2}]}   | key-twice    | /b/1/a",
                "{\"x/y~z\": 1, \"x/y~z\": 1}    | key-twice    | /x~1y~0z",
                "{\"a\": [1, 1e999]}             | out-of-range | /a/1",
                "{\"a\": {\"b\": \"\\ud800\"}}   | wrong-text   | /a",
                "{\"a\": {\"\\udc00\": 1}}        | not-json     | ``",
            })
    void tellsWhatIsNotStrictJson(String document, String code, String pointer) {
        List<InputProblem> problems = problemsOf(document);
        assertTrue(StandardCharsets.UTF_8.newEncoder().canEncode(problems.toString()));
        assertEquals(List.of(code), problems.stream().map(InputProblem::code).toList());
        assertEquals(pointer, problems.get(0).pointer());
        assertFalse(
                problems.get(0).message().contains("JsonReadFeature"),
                problems.get(0).message());
        assertFalse(
                problems.get(0).message().contains("StreamReadConstraints"),
                problems.get(0).message());
    }

    @Test
    void readsOnAfterAKeyThatStandsTwice() {
        Problems problems = new Problems();
        JsonNode root = JsonText.read("{\"a\": 1, \"a\": 2, \"b\": [true, null, 2.5, 3000000000]}", problems);
        assertEquals(1, root.path("a").intValue());
        assertEquals("[true,null,2.5,3000000000]", root.path("b").toString());
        assertEquals(1, problems.count());
    }

    @Test
    void takesAWholeSurrogatePair() {
        assertEquals(List.of(), problemsOf("{\"a\": \"\\ud83d\\ude9a \ud83d\ude9a\"}"));
    }

    @Test
    void refusesDeepNesting() {
        List<InputProblem> problems = problemsOf("{\"a\":".repeat(100_000));
        assertEquals("too-large", problems.get(0).code());
        assertTrue(
                problems.get(0).message().contains("24 levels"), problems.get(0).message());
        assertEquals(List.of(), problemsOf("[".repeat(JsonText.MOST_DEPTH) + "]".repeat(JsonText.MOST_DEPTH)));
    }

    @Test
    void refusesLongTextsKeysAndNumbers() {
        assertEquals(
                "too-large",
                problemsOf("[\"" + "a".repeat(JsonText.LONGEST_TEXT + 1) + "\"]")
                        .get(0)
                        .code());
        assertEquals(
                "too-large",
                problemsOf("{\"" + "a".repeat(201) + "\": 1}").get(0).code());
        assertEquals("too-large", problemsOf("[" + "1".repeat(101) + "]").get(0).code());
    }

    @Test
    void countsPositionsApartFromOtherValues() {
        String million = "{\"coordinates\": [" + "[1,2],".repeat(JsonText.MOST_POSITIONS - 1) + "[1,2]]";
        assertEquals(List.of(), problemsOf(million + "}"));
        InputProblem more =
                problemsOf(million + ", \"b\": {\"coordinates\": [1, 2]}}").get(0);
        assertEquals("too-many", more.code());
        assertEquals("/b/coordinates", more.pointer());
        InputProblem values =
                problemsOf("[" + "1,".repeat(JsonText.MOST_VALUES) + "1]").get(0);
        assertEquals("too-many", values.code());
        InputProblem hidden = problemsOf("{\"coordinates\": [" + "1,".repeat(JsonText.MOST_VALUES + 5) + "1]}")
                .get(0);
        assertEquals("too-many", hidden.code());
    }

    @Test
    void refusesADocumentBeyondTheLimitUnread() {
        Problems problems = new Problems();
        JsonNode root = JsonText.read(new byte[JsonText.MOST_BYTES + 1], problems);
        assertTrue(root.isMissingNode());
        assertEquals("too-large", problems.list().get(0).code());
    }

    @Test
    void refusesWhatIsNotUtf8() {
        Problems problems = new Problems();
        byte[] latin1 = "{\"name\": \"caf\u00e9 au lait\"}".getBytes(StandardCharsets.ISO_8859_1);
        assertTrue(JsonText.read(latin1, problems).isMissingNode());
        assertEquals("not-json", problems.list().get(0).code());
    }

    @Test
    void listsAHundredProblemsAndCountsTheRest() {
        Problems problems = new Problems();
        for (int i = 0; i < 250; i++) {
            problems.add("x", "m", "/" + i, "r");
        }
        assertEquals(101, problems.list().size());
        assertEquals(
                "150 more problems are not listed.", problems.list().get(100).message());
    }
}
