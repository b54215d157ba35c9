package org.cresthaul.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** The folder that a store is in: for its owner's eyes, where the system knows owners. */
final class DataFolder {
    private static final String DATABASE = "projects.db";

    private DataFolder() {}

    /** The database file, made empty when it is not there; the folder likewise. */
    static Path database(Path folder) throws IOException {
        boolean posix = isPosix(folder);
        Files.createDirectories(folder, rights(posix, "rwx------"));
        Path file = folder.resolve(DATABASE);
        try {
            Files.createFile(file, rights(posix, "rw-------"));
        } catch (FileAlreadyExistsException there) {
            return file;
        }
        return file;
    }

    /** Does something that no two programs may do at once in one folder. */
    static void alone(Path folder, Runnable work) throws IOException {
        synchronized (DataFolder.class) {
            // A file of its own: to close one that the database holds open would let go of the database's locks.
            Path file = folder.resolve("migration.lock");
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                    FileLock lock = channel.lock()) {
                if (lock.isValid()) {
                    work.run();
                }
            }
        }
    }

    private static boolean isPosix(Path folder) throws IOException {
        Path there = folder.toAbsolutePath();
        while (!Files.exists(there)) {
            there = there.getParent();
        }
        FileStore disk = Files.getFileStore(there);
        return disk.supportsFileAttributeView("posix");
    }

    private static FileAttribute<?>[] rights(boolean posix, String rights) {
        return posix
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))}
                : new FileAttribute<?>[0];
    }
}
