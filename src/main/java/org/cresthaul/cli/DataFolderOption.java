package org.cresthaul.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.SqliteStore;
import org.cresthaul.store.StoreFailure;
import picocli.CommandLine.Option;

/** Where projects are kept: {@code --data}. */
final class DataFolderOption {
    private static final String NONE = "none";
    private static final String USUAL = ".cresthaul";

    @Option(
            names = "--data",
            paramLabel = "FOLDER",
            description = "Folder that projects are kept in, or none; default: .cresthaul in your home folder")
    private Optional<String> data = Optional.empty();

    /** Empty when nothing is to be kept. */
    Optional<Path> folder() {
        return data.isEmpty()
                ? Optional.of(Path.of(System.getProperty("user.home"), USUAL))
                : data.filter(d -> !d.equals(NONE)).map(Path::of);
    }

    /**
     * The store there.
     *
     * @param program is warned, and goes on without, when the folder that nobody named cannot be had
     * @throws Refused when a folder that was named cannot be had
     */
    Optional<ProjectStore> open(Cresthaul program) throws Refused {
        Optional<Path> folder = folder();
        if (folder.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(SqliteStore.in(folder.get()));
        } catch (StoreFailure e) {
            String why = why(e, folder.get());
            if (data.isPresent()) {
                throw new Refused(why + " Choose another with --data, or --data none to keep nothing.\n");
            }
            program.warn("Warning: " + why + " Projects are not kept this time; choose a folder with --data.\n");
            return Optional.empty();
        }
    }

    static String why(StoreFailure e, Path folder) {
        return switch (e.kind()) {
            case FULL -> "The disk of " + folder + " is full.";
            case NOT_WRITABLE -> folder + " cannot be written.";
            case BUSY -> folder + " is held by another program.";
            case UNREADABLE -> folder + " holds no projects that this version can read.";
        };
    }
}
