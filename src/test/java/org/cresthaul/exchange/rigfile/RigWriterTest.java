package org.cresthaul.exchange.rigfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.cresthaul.check.TwoLiftAxles;
import org.cresthaul.rig.RangeRigs;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is written reads as the very same rig, to the last bit of every number. */
class RigWriterTest {
    static Stream<String> files() throws IOException {
        String loaded = Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"));
        return Stream.of(
                loaded,
                Files.readString(Path.of("sample-routes/lowbed-empty.rig.json")),
                Files.readString(Path.of("sample-routes/lowbed-with-jeep.rig.json")),
                Files.readString(Path.of("sample-routes/lowbed-with-two-boosters.rig.json")),
                RigTexts.RIG,
                JsonEdit.edit(
                        JsonEdit.edit(
                                Files.readString(Path.of("sample-routes/lowbed-with-two-boosters.rig.json")),
                                "/stances/0/jeeps/0/states",
                                "[\"in\", \"out\"]"),
                        "/stances/0/boostersBehind/0/states",
                        "[\"trailing\", \"none\"]"),
                TwoLiftAxles.of(
                        "[{\"axle\": 2, \"gap\": \"3 in\"}, {\"axle\": 3, \"gap\": \"3 in\"}]",
                        "[{\"up\": [3], \"secondaryRise\": \"0 in\"}, {\"up\": [2, 3], \"secondaryRise\": \"1/3 in\"}]"),
                JsonEdit.edit(
                        loaded,
                        "/stances/0/trailer/axles/0/steering",
                        "{\"wheels\": \"commanded\", \"ratio\": \"33.3 %\", \"limit\": \"20 deg\"}"),
                JsonEdit.edit(
                        loaded,
                        "/stances/0/trailer/axles/0/steering",
                        "{\"wheels\": \"castering\", \"limit\": \"0.3 rad\"}"));
    }

    @ParameterizedTest
    @MethodSource("files")
    void readsAsTheSameRig(String file) throws InputRejected {
        requireSame(RigFile.parse(file));
    }

    @Test
    void whateverAFileMaySayReadsAsTheSame() throws InputRejected {
        Random random = new Random(20_261_130);
        for (int i = 0; i < 300; i++) {
            requireSame(RigFile.parse(RangeRigs.text(random)));
        }
    }

    /** So that the comparison could fail. */
    @Test
    void oneSixteenthOfAnInchMakesAnotherRig() throws Exception {
        String written =
                new String(RigWriter.bytes(RigFile.parse(RigTexts.RIG), UnitSystem.METRIC), StandardCharsets.UTF_8);
        String other = JsonEdit.edit(written, "/stances/0/trailer/deckSag", "\"1/16 in\"");
        assertNotEquals(RigFile.parse(RigTexts.RIG), RigFile.parse(other));
    }

    private static void requireSame(Rig rig) throws InputRejected {
        for (UnitSystem units : UnitSystem.values()) {
            byte[] written = RigWriter.bytes(rig, units);
            assertEquals(rig, RigFile.parse(written), () -> new String(written, StandardCharsets.UTF_8));
            assertEquals(
                    List.of(),
                    new String(written, StandardCharsets.UTF_8)
                            .lines()
                            .filter(l -> l.length() > 200)
                            .filter(l -> !l.contains("\"note\""))
                            .toList());
        }
    }
}
