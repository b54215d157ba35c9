package org.cresthaul.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.rigfile.RigWriter;
import org.cresthaul.rig.Rig;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Problems;
import org.cresthaul.units.UnitSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Writes a rig file anew, in the units that are asked for. */
@Command(
        name = "convert",
        description = "Writes a rig file anew, in feet and pounds or in metric units; it reads as the very same rig.",
        versionProvider = Cresthaul.Version.class,
        mixinStandardHelpOptions = true)
final class ConvertCommand implements Callable<Integer> {
    private static final int MOST_TOLD = 20;

    @ParentCommand
    private Cresthaul program;

    @Parameters(index = "0", paramLabel = "RIG", description = "Rig file (JSON)")
    private Path path;

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            converter = CommandOptions.Units.class,
            description = "us (default) or metric; a number with many digits in these is written in others")
    private UnitSystem units = UnitSystem.US_CUSTOMARY;

    @Option(names = "--out", paramLabel = "FILE", description = "Write the rig file to this file")
    private Optional<Path> out = Optional.empty();

    @Override
    public Integer call() throws Refused {
        Mistakes mistakes = new Mistakes();
        InputFile file = InputFile.read(path);
        Optional<Rig> rig = file.parse(RigFile::parse, mistakes);
        Optional<JsonNode> before = file.parse(ConvertCommand::tree, mistakes);
        mistakes.refuseIfAny("written");
        byte[] written = RigWriter.bytes(rig.orElseThrow(), units);
        if (out.isPresent()) {
            OutputFile.write(out.get(), written, List.of(path));
        } else {
            program.print(written);
        }
        List<String> left = new ArrayList<>();
        try {
            addLeft(before.orElseThrow(), tree(written), "", left);
        } catch (InputRejected e) {
            throw new IllegalStateException("what was written cannot be read", e);
        }
        tell(left);
        return ExitCode.CLEAR;
    }

    private static JsonNode tree(byte[] document) throws InputRejected {
        Problems problems = new Problems();
        JsonNode tree = JsonText.read(document, problems);
        problems.throwIfAny();
        return tree;
    }

    /** Members that were there and are not now, each by its pointer. */
    private static void addLeft(JsonNode before, JsonNode after, String at, List<String> left) {
        if (before.isObject()) {
            for (Map.Entry<String, JsonNode> member : before.properties()) {
                String pointer = at + "/" + member.getKey();
                if (after.has(member.getKey())) {
                    addLeft(member.getValue(), after.get(member.getKey()), pointer, left);
                } else {
                    left.add(pointer);
                }
            }
        } else if (before.isArray()) {
            for (int i = 0; i < Math.min(before.size(), after.size()); i++) {
                addLeft(before.get(i), after.get(i), at + "/" + i, left);
            }
        }
    }

    private void tell(List<String> left) {
        if (left.isEmpty()) {
            return;
        }
        StringBuilder text =
                new StringBuilder("Written in another form, or left out because nothing is computed from it:\n");
        left.stream()
                .limit(MOST_TOLD)
                .forEach(at -> text.append("  ").append(at).append('\n'));
        if (left.size() > MOST_TOLD) {
            text.append("  and ").append(left.size() - MOST_TOLD).append(" more\n");
        }
        program.warn(text.toString());
    }
}
