package org.cresthaul.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.StoreFailure;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Copies every project into one file, while others go on saving. */
@Command(
        name = "backup",
        description = "Copies all projects into one file, as they stand at one moment; a server may go on saving.",
        versionProvider = Cresthaul.Version.class,
        mixinStandardHelpOptions = true)
final class BackupCommand implements Callable<Integer> {
    @ParentCommand
    private Cresthaul program;

    @Parameters(index = "0", paramLabel = "FILE", description = "File to write; none may be there yet")
    private Path file;

    @Mixin
    private DataFolderOption data;

    @Override
    public Integer call() throws Refused {
        Path folder = data.folder().orElseThrow(() -> new Refused("--data none holds nothing. Nothing was written.\n"));
        if (!Files.isDirectory(folder)) {
            throw new Refused("There are no projects in " + folder + ". Name their folder with --data.\n");
        }
        if (Files.exists(file)) {
            throw new Refused(file + " is there already. Nothing was written.\n");
        }
        try (ProjectStore store = data.open(program).orElseThrow(() -> new Refused("Nothing was written.\n"))) {
            int projects = store.listProjects().size();
            store.backUp(file);
            program.print(projects + (projects == 1 ? " project" : " projects") + " copied to " + file + ".\n");
            return ExitCode.CLEAR;
        } catch (StoreFailure e) {
            throw new Refused(file + " cannot be written whole: "
                    + DataFolderOption.why(e, folder).replace(folder.toString(), "its folder") + "\n");
        }
    }
}
