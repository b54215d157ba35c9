package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;

/** Every change that the page can make of the sample rigs is read by the program's own reader. */
class RigChangesTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** With the figures of the examples there is no room for these: the reader says so, and nothing else. */
    private static final Map<String, List<String>> NO_ROOM = Map.of(
            "lowbed-with-jeep: Add an axle behind the drive axles", List.of("reach", "tires-near"),
            "lowbed-with-jeep: Add a jeep behind", List.of("axle-order", "reach"),
            "lowbed-with-two-boosters: Add an axle behind the drive axles", List.of("reach", "tires-near"),
            "lowbed-with-two-boosters: Add a jeep behind", List.of("axle-order", "reach"));

    @Test
    void everyChangeLeavesAFileThatIsRead() throws Exception {
        Map<String, List<String>> refused = new TreeMap<>();
        int made = 0;
        for (String line : lines()) {
            JsonNode change = JSON.readTree(line);
            String rig = Path.of(change.path("file").textValue())
                    .getFileName()
                    .toString()
                    .replace(".rig.json", "");
            try {
                RigFile.parse(change.path("text").textValue());
            } catch (InputRejected e) {
                refused.put(
                        rig + ": " + change.path("title").textValue(),
                        e.problems().stream().map(InputProblem::code).sorted().toList());
            }
            made++;
        }
        assertTrue(made > 80, made + " changes");
        Map<String, List<String>> expected = new TreeMap<>(NO_ROOM);
        for (String start : List.of(" without load", " with one more lift axle")) {
            NO_ROOM.forEach((change, codes) -> expected.put(change + start, codes));
        }
        assertEquals(expected, refused);
    }

    private static List<String> lines() throws Exception {
        List<String> command = new ArrayList<>(List.of("node", "src/test/web/everyrigchange.mjs"));
        try (Stream<Path> rigs = Files.list(Path.of("sample-routes"))) {
            rigs.map(Path::toString)
                    .filter(name -> name.endsWith(".rig.json"))
                    .sorted()
                    .forEach(command::add);
        }
        assertTrue(command.size() >= 6, command.toString());
        Path log = Files.createTempFile("rig-changes", ".txt");
        try {
            Process node = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(log.toFile())
                    .start();
            assertTrue(node.waitFor(2, TimeUnit.MINUTES), "the changes come to an end");
            assertEquals(0, node.exitValue(), Files.readString(log));
            return Files.readAllLines(log, StandardCharsets.UTF_8);
        } finally {
            Files.delete(log);
        }
    }
}
