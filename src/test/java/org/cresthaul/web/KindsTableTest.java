package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.cresthaul.route.HazardKind;
import org.junit.jupiter.api.Test;

/** The page's table of hazard kinds and the program's say the same of every kind. */
class KindsTableTest {
    private static final Map<HazardKind.JudgedBy, String> ENGINES = Map.of(
            HazardKind.JudgedBy.GAPS, "gaps",
            HazardKind.JudgedBy.ROOM, "room",
            HazardKind.JudgedBy.LOADS, "loads");

    @Test
    void sayTheSame() throws Exception {
        JsonNode page = pagesTable();
        Set<String> words = new TreeSet<>();
        page.fieldNames().forEachRemaining(words::add);
        Map<String, HazardKind> kinds = new TreeMap<>();
        for (HazardKind kind : HazardKind.values()) {
            kinds.put(kind.word(), kind);
        }
        assertEquals(kinds.keySet(), words);
        kinds.forEach((word, kind) -> {
            JsonNode row = page.path(word);
            assertEquals(ENGINES.get(kind.judged()), row.path("judged").textValue(), word);
            assertEquals(kind.isSped(), row.path("sped").booleanValue(), word);
            assertEquals(kind.standsAtPoint(), row.path("atPoint").booleanValue(), word);
            assertTrue(row.path("word").textValue().startsWith(kind.spoken()), word);
            assertTrue(row.path("path").textValue().startsWith("M"), word);
        });
    }

    private static JsonNode pagesTable() throws Exception {
        Process node = new ProcessBuilder(
                        "node",
                        "--input-type=module",
                        "-e",
                        "import { KINDS } from './web/report/kinds.js'; console.log(JSON.stringify(KINDS));")
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String table = new String(node.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, node.waitFor());
        return new ObjectMapper().readTree(table);
    }
}
