package org.cresthaul.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FilePiecesTest {
    private static List<String> pieces(String file) {
        byte[] bytes = file.getBytes(StandardCharsets.UTF_8);
        List<String> pieces = new ArrayList<>();
        int from = 0;
        for (int to : FilePieces.ends(bytes)) {
            pieces.add(new String(bytes, from, to - from, StandardCharsets.UTF_8));
            from = to;
        }
        return pieces;
    }

    @Test
    void cutsBeforeEachFeatureAndBehindTheLast() {
        assertEquals(
                List.of("{\"name\":\"a\",\"features\":[", "{\"b\":[1,{}]},", "{\"c\":\"]\"}", "],\"z\":[{}]}"),
                pieces("{\"name\":\"a\",\"features\":[{\"b\":[1,{}]},{\"c\":\"]\"}],\"z\":[{}]}"));
    }

    /** As a request holds a route within it. */
    @Test
    void cutsACollectionWithinAnother() {
        assertEquals(
                List.of("{\"route\":{\"features\": [ ", "{\"features\":[{}]} , ", "{}", "]},\"rig\":[{}]}"),
                pieces("{\"route\":{\"features\": [ {\"features\":[{}]} , {}]},\"rig\":[{}]}"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "no JSON",
                "{}",
                "{\"features\":7,\"other\":[{},{}]}",
                "{\"x\":\"features\",\"other\":[{},{}]}",
                "{\"features\": \"open",
                "\"features\""
            })
    void leavesWholeWhatHasNoFeaturesOfItsOwn(String file) {
        assertEquals(List.of(file), pieces(file));
    }

    /** Whatever the bytes are, the ends ascend to the last, so that the pieces are the file. */
    @Test
    void losesNothingOfAnything() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(20261130);
        String[] words = {
            "{", "}", "[", "]", "\"features\"", ":", ",", "\"", "\\", "1", " ", "\u00e9", "{\"features\":["
        };
        int cutOften = 0;
        for (int trial = 0; trial < 20_000; trial++) {
            StringBuilder text = new StringBuilder(random.nextBoolean() ? "{\"features\":[" : "");
            int count = random.nextInt(40);
            for (int i = 0; i < count; i++) {
                text.append(words[random.nextInt(words.length)]);
            }
            byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
            List<Integer> ends = FilePieces.ends(bytes);
            int last = 0;
            for (int i = 0; i < ends.size(); i++) {
                assertTrue(ends.get(i) > last || ends.size() == 1, text + " " + ends);
                last = ends.get(i);
            }
            assertEquals(bytes.length, last, text.toString());
            cutOften += ends.size() > 2 ? 1 : 0;
        }
        assertTrue(cutOften > 1000, cutOften + " cut twice or more");
    }
}
