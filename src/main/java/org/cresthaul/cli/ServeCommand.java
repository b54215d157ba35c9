package org.cresthaul.cli;

import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.cresthaul.exchange.BaseMapFile;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.server.Sample;
import org.cresthaul.server.Samples;
import org.cresthaul.server.ServerOptions;
import org.cresthaul.server.Tiles;
import org.cresthaul.server.WebServer;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.units.UnitSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Prints the verdicts of a route and serves the page that shows them. */
@Command(
        name = "serve",
        description = "Check a route, print its verdicts, and serve the page that shows them; the sample route when no"
                + " files are named.",
        versionProvider = Cresthaul.Version.class,
        mixinStandardHelpOptions = true)
final class ServeCommand implements Callable<Integer> {
    private static final int USUAL_PORT = 8137;
    private static final int PORTS_TRIED = 50;

    @ParentCommand
    private Cresthaul program;

    @Parameters(arity = "0..*", paramLabel = "FILE", description = "A route file, then one rig file or more")
    private List<Path> files = List.of();

    @Option(
            names = "--port",
            paramLabel = "PORT",
            description = "Port to listen on, 0 for any; default: 8137 or the next free one")
    private Optional<Integer> port = Optional.empty();

    @Option(
            names = "--host",
            paramLabel = "ADDRESS",
            description = "Address to listen on instead of 127.0.0.1; everyone who reaches it can then use the server")
    private Optional<String> host = Optional.empty();

    @Option(
            names = "--host-name",
            paramLabel = "NAME",
            description = "Host name that the server answers to beside its own addresses, such as a proxy's; may be"
                    + " given again for more")
    private List<String> hostNames = List.of();

    @Option(
            names = "--tiles",
            paramLabel = "URL",
            description = "Base map, such as https://tiles.example.org/{z}/{x}/{y}.png; without it nothing is loaded"
                    + " from elsewhere")
    private Optional<String> tilesUrl = Optional.empty();

    @Option(names = "--tiles-attribution", paramLabel = "TEXT", description = "Whom to thank for the base map")
    private Optional<String> tilesAttribution = Optional.empty();

    @Option(
            names = "--stance",
            paramLabel = "NAME",
            description = "Stance of the rig for what is printed here; default: loaded")
    private Optional<String> stance = Optional.empty();

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            converter = CommandOptions.Units.class,
            description = "us (default) or metric, for what is printed here")
    private UnitSystem units = UnitSystem.US_CUSTOMARY;

    @Mixin
    private DataFolderOption data = new DataFolderOption();

    ServeCommand() {}

    ServeCommand(Cresthaul program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Refused {
        if (port.isPresent() && (port.get() < 0 || port.get() > 65_535)) {
            throw new Refused("--port " + port.get() + " is not a port; it is between 0 and 65535.\n");
        }
        Optional<Tiles> tiles = tiles();
        Samples samples = files.isEmpty() ? Samples.bundled() : named(files);
        Question question = Question.of(
                InputFile.of(samples.routes().get(0)),
                InputFile.of(samples.rigs().get(0)),
                stance);
        requireOwnAddress();
        Optional<ProjectStore> projects = data.open(program);
        try (WebServer server = start(tiles, samples, projects)) {
            server.rehearseOpening(samples);
            Haul haul = question.haul(Margins.defaults());
            Report report = server.check(haul, question.inputs());
            program.print(new VerdictTable(units).of(report));
            if (projects.isPresent()) {
                program.print("\nProjects are kept in " + data.folder().orElseThrow() + ".");
            }
            program.print("\nOpen " + server.url() + " for the sheet; Ctrl+C ends the server.\n");
            server.prepare(haul, question.inputs());
            new CountDownLatch(1).await();
            return ExitCode.CLEAR;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return ExitCode.CLEAR;
        } finally {
            // Last, when nobody asks any more.
            projects.ifPresent(ProjectStore::close);
        }
    }

    private Optional<Tiles> tiles() throws Refused {
        if (tilesUrl.isEmpty() && tilesAttribution.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Tiles(tilesUrl.orElse(""), tilesAttribution.orElse("")));
        } catch (IllegalArgumentException e) {
            throw new Refused("--tiles and --tiles-attribution: " + e.getMessage() + "\n");
        }
    }

    /** The named files, every one of them sound. */
    private static Samples named(List<Path> paths) throws Refused {
        if (paths.size() < 2) {
            throw new Refused("serve takes a route file and at least one rig file, or none for the sample.\n");
        }
        Mistakes mistakes = new Mistakes();
        List<Sample> rigs = new ArrayList<>();
        InputFile route = InputFile.read(paths.get(0));
        route.parse(RouteFile::parse, mistakes);
        for (Path path : paths.subList(1, paths.size())) {
            InputFile rig = InputFile.read(path);
            rig.parse(RigFile::parse, mistakes);
            rigs.add(rig.sample());
        }
        mistakes.refuseIfAny();
        try {
            return new Samples(List.of(route.sample()), rigs, mapBeside(paths.get(0)));
        } catch (IllegalArgumentException e) {
            throw new Refused(e.getMessage() + "; give each its own name.\n");
        }
    }

    /** The base map that an import left beside the route, where there is one. */
    private static List<Sample> mapBeside(Path route) throws Refused {
        Path beside =
                route.resolveSibling(BaseMapFile.nameBeside(route.getFileName().toString()));
        if (!Files.isRegularFile(beside)) {
            return List.of();
        }
        Mistakes mistakes = new Mistakes();
        InputFile map = InputFile.read(beside);
        map.parse(BaseMapFile::requireForm, mistakes);
        mistakes.refuseIfAny();
        return List.of(map.sample());
    }

    /** On the port asked for, or the first free one: whoever binds it has it, nobody looks first. */
    private WebServer start(Optional<Tiles> tiles, Samples samples, Optional<ProjectStore> projects) throws Refused {
        List<Integer> candidates = new ArrayList<>();
        if (port.isPresent()) {
            candidates.add(port.get());
        } else {
            for (int i = 0; i < PORTS_TRIED; i++) {
                candidates.add(USUAL_PORT + i);
            }
            candidates.add(0);
        }
        for (int candidate : candidates) {
            ServerOptions options = options(candidate, tiles, samples, projects);
            try {
                WebServer server = WebServer.start(options);
                warnIfOpen(options);
                return server;
            } catch (UncheckedIOException taken) {
                continue;
            }
        }
        throw new Refused("Port " + candidates.get(0) + " cannot be listened on. Choose another with --port.\n");
    }

    private ServerOptions options(
            int candidate, Optional<Tiles> tiles, Samples samples, Optional<ProjectStore> projects) throws Refused {
        try {
            return new ServerOptions(host, candidate, tiles, samples, projects, hostNames);
        } catch (IllegalArgumentException e) {
            throw new Refused("--host-name: " + e.getMessage() + ".\n");
        }
    }

    private void requireOwnAddress() throws Refused {
        if (host.isEmpty()) {
            return;
        }
        try {
            InetAddress address = InetAddress.getByName(host.get());
            if (!address.isAnyLocalAddress() && NetworkInterface.getByInetAddress(address) == null) {
                throw new Refused("--host " + host.get() + " is not an address of this machine.\n");
            }
        } catch (UnknownHostException | SocketException e) {
            throw new Refused("--host " + host.get() + " is not an address of this machine.\n");
        }
    }

    private void warnIfOpen(ServerOptions options) {
        if (!options.isLoopback()) {
            program.warn(
                    "Warning: " + host.orElseThrow() + " can be reached from other machines. There is no sign-in and no"
                            + " encryption (TLS): whoever reaches this server can use it and read what is sent. Leave --host out, or"
                            + " put a proxy with both in front of it.\n");
        }
    }
}
