package org.cresthaul.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.server.Sample;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;

/** A route or rig file as it was when it was read, or why it could not be. Immutable. */
final class InputFile {
    /** How a file's bytes become a value. */
    interface Reader<T> {
        T read(byte[] document) throws InputRejected;
    }

    private final String name;
    private final byte[] bytes;
    private final Optional<InputProblem> unreadable;

    private InputFile(String name, byte[] bytes, Optional<InputProblem> unreadable) {
        this.name = name;
        this.bytes = bytes;
        this.unreadable = unreadable;
    }

    static InputFile read(Path path) {
        try {
            if (Files.isDirectory(path)) {
                return unreadable(path, "not-a-file", "This is a folder, not a file.", "Name a file in it.");
            }
            if (Files.size(path) > JsonText.MOST_BYTES) {
                return unreadable(
                        path,
                        "too-large",
                        "The file is longer than " + JsonText.MOST_BYTES / (1024 * 1024) + " MiB.",
                        "Leave out what is not needed, or thin the route line.");
            }
            return new InputFile(path.toString(), Files.readAllBytes(path), Optional.empty());
        } catch (NoSuchFileException e) {
            return unreadable(path, "no-such-file", "There is no such file.", "Check its name and folder.");
        } catch (IOException e) {
            return unreadable(path, "unreadable", "The file cannot be read.", "Check that you may read it.");
        }
    }

    private static InputFile unreadable(Path path, String code, String message, String remedy) {
        return new InputFile(path.toString(), new byte[0], Optional.of(new InputProblem(code, message, "", remedy)));
    }

    static InputFile of(Sample sample) {
        return new InputFile(sample.id(), sample.document(), Optional.empty());
    }

    /** What the file holds; empty after its mistakes were added. */
    <T> Optional<T> parse(Reader<T> reader, Mistakes mistakes) {
        if (unreadable.isPresent()) {
            mistakes.add(name, List.of(unreadable.get()));
            return Optional.empty();
        }
        try {
            return Optional.of(reader.read(bytes.clone()));
        } catch (InputRejected rejected) {
            mistakes.add(name, rejected.problems());
            return Optional.empty();
        }
    }

    /** Of all its bytes, lower-case hexadecimal, as {@code sha256sum} prints it. */
    String sha256() {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** For the page to open. */
    Sample sample() {
        return new Sample(Path.of(name).getFileName().toString(), bytes);
    }
}
