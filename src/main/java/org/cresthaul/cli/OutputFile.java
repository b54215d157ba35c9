package org.cresthaul.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.List;
import java.util.Optional;

/**
 * Writes what was made, whole or not at all: beside its place first, and then into it in one step, so that whoever is
 * interrupted keeps the file that was there. Never over a file that was read.
 */
final class OutputFile {
    private OutputFile() {}

    /**
     * Writes a file.
     *
     * @param inputs what was read for it
     * @throws Refused when it is one of them, or cannot be written
     */
    static void write(Path file, byte[] printed, List<Path> inputs) throws Refused {
        try {
            for (Path input : inputs) {
                if (Files.exists(file) && Files.exists(input) && Files.isSameFile(file, input)) {
                    throw new Refused("--out names an input file, " + file + ". Nothing was written.\n");
                }
            }
            if (Files.exists(file) && !Files.isRegularFile(file)) {
                // A pipe or a device: nothing that could be kept.
                Files.write(file, printed, StandardOpenOption.WRITE);
                return;
            }
            // A link stays a link: what it points to is written.
            replace(Files.exists(file) ? file.toRealPath() : file.toAbsolutePath(), printed);
        } catch (IOException e) {
            throw new Refused(
                    file + " cannot be written. Check the folder, the room on its disk, and that you may write"
                            + " there.\n");
        }
    }

    private static void replace(Path file, byte[] printed) throws IOException {
        Path beside = Files.createTempFile(file.getParent(), "." + file.getFileName(), ".part");
        try {
            try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.WRITE)) {
                ByteBuffer rest = ByteBuffer.wrap(printed);
                while (rest.hasRemaining()) {
                    channel.write(rest);
                }
                channel.force(true);
            }
            keepPermissions(file, beside);
            try {
                Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(beside);
        }
    }

    /** A file that was there keeps who may read it; a new one gets what the system gives a new file. */
    private static void keepPermissions(Path file, Path beside) throws IOException {
        Optional<PosixFileAttributeView> view =
                Optional.ofNullable(Files.getFileAttributeView(beside, PosixFileAttributeView.class));
        if (view.isEmpty()) {
            return;
        }
        if (Files.exists(file)) {
            view.get().setPermissions(Files.getPosixFilePermissions(file));
            return;
        }
        Path usual = file.resolveSibling(beside.getFileName() + ".new");
        Files.createFile(usual);
        try {
            view.get().setPermissions(Files.getPosixFilePermissions(usual));
        } finally {
            Files.delete(usual);
        }
    }
}
