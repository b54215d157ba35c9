package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ConvertCommandTest {
    private static final Path LOADED = Path.of("sample-routes/lowbed-loaded.rig.json");

    @TempDir
    Path folder;

    private record Run(int exitCode, String out, String err) {}

    private static Run run(Object... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Cresthaul.run(
                Arrays.stream(arguments).map(Object::toString).toArray(String[]::new),
                new PrintStream(out),
                new PrintStream(err));
        return new Run(exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    @Test
    void writesTheSameRigInOtherUnits() throws Exception {
        Path metric = folder.resolve("metric.rig.json");
        Run first = run("convert", LOADED, "--units", "metric", "--out", metric);
        assertEquals(0, first.exitCode(), first.err());
        assertEquals("", first.out());
        Run back = run("convert", metric);
        assertEquals(0, back.exitCode(), back.err());
        assertEquals(RigFile.parse(Files.readAllBytes(LOADED)), RigFile.parse(Files.readAllBytes(metric)));
        assertEquals(RigFile.parse(Files.readAllBytes(LOADED)), RigFile.parse(back.out()));
        assertFalse(Files.readString(metric).contains(" ft "), "feet and inches together");
    }

    @Test
    void whatNoRigHoldsIsTold() throws Exception {
        Path file = Files.writeString(
                folder.resolve("locked.rig.json"),
                JsonEdit.edit(
                        Files.readString(LOADED),
                        "/stances/0/trailer/axles/0/steering",
                        "{\"wheels\": \"locked\", \"limit\": \"20 deg\"}"));
        Run run = run("convert", file);
        assertEquals(0, run.exitCode());
        assertTrue(run.err().contains("  /stances/0/trailer/axles/0/steering\n"), run.err());
    }

    @Test
    void aWrongFileIsRefusedWithItsMistakes() throws Exception {
        Path file = Files.writeString(
                folder.resolve("wrong.rig.json"),
                JsonEdit.edit(Files.readString(LOADED), "/stances/0/trailer/valveAxle", "9"));
        Run run = run("convert", file, "--out", folder.resolve("out.json"));
        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("/stances/0/trailer/valveAxle"), run.err());
        assertTrue(run.err().endsWith("Nothing was written.\n"), run.err());
        assertFalse(Files.exists(folder.resolve("out.json")));
    }

    @Test
    void theFileThatWasReadIsNotWrittenOver() throws Exception {
        Path file = Files.copy(LOADED, folder.resolve("mine.rig.json"));
        Run run = run("convert", file, "--out", file);
        assertEquals(2, run.exitCode());
        assertEquals(Files.readString(LOADED), Files.readString(file));
    }
}
