package org.cresthaul.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.IVersionProvider;

/** The program on the command line. Everything it prints is UTF-8 with plain line feeds, on every system. */
@Command(
        name = "cresthaul",
        description = {
            "Tells which settings of a lowbed combination clear the rail crossings and low structures of a route.",
            "Without a command it serves the sample route (as serve does)."
        },
        subcommands = {
            CheckCommand.class,
            PlanCommand.class,
            CompareCommand.class,
            RunSheetCommand.class,
            StatementCommand.class,
            VerifyCommand.class,
            ImportCommand.class,
            ConvertCommand.class,
            BackupCommand.class,
            ServeCommand.class
        },
        versionProvider = Cresthaul.Version.class,
        mixinStandardHelpOptions = true)
public final class Cresthaul implements Callable<Integer> {
    private static final Logger LOG = LoggerFactory.getLogger(Cresthaul.class);

    private final PrintStream out;
    private final PrintStream err;

    private Cresthaul(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    /** The version of the program. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"cresthaul " + org.cresthaul.report.Version.NUMBER};
        }
    }

    /**
     * Runs a command line to its end; a server runs until the process is ended.
     *
     * @return the exit code, see {@code docs/command-line.md}
     */
    public static int run(String[] arguments, PrintStream out, PrintStream err) {
        Cresthaul program = new Cresthaul(out, err);
        try {
            return program.finished(program.command().execute(arguments));
        } catch (Error e) {
            return program.failed(e);
        }
    }

    private CommandLine command() {
        return new CommandLine(this)
                .setOut(writer(out))
                .setErr(writer(err))
                .setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF))
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler((e, args) -> refuse(e))
                .setExecutionExceptionHandler((e, command, parsed) -> end(e));
    }

    private static PrintWriter writer(PrintStream stream) {
        return new PrintWriter(stream, true, StandardCharsets.UTF_8);
    }

    @Override
    public Integer call() throws Refused {
        return new ServeCommand(this).call();
    }

    void print(byte[] utf8) {
        out.write(utf8, 0, utf8.length);
        out.flush();
    }

    void print(String text) {
        print(text.getBytes(StandardCharsets.UTF_8));
    }

    void warn(String text) {
        complain(text);
    }

    private void complain(String text) {
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        err.write(utf8, 0, utf8.length);
        err.flush();
    }

    private int refuse(CommandLine.ParameterException e) {
        complain(e.getMessage() + "\nTry --help.\n");
        return ExitCode.REFUSED;
    }

    private int end(Exception e) {
        if (e instanceof Refused) {
            complain(e.getMessage());
            return ExitCode.REFUSED;
        }
        return failed(e);
    }

    private int failed(Throwable e) {
        if (e instanceof OutOfMemoryError) {
            complain(
                    "There was not enough memory; nothing was checked. Give the program more (java -Xmx4g -jar ...), or"
                            + " check the route in parts.\n");
            return ExitCode.FAILED;
        }
        complain("The program made a mistake; nothing was checked.\n");
        LOG.error("The command failed", e);
        return ExitCode.FAILED;
    }

    /** What could not be written was not told, whatever came of the check. */
    private int finished(int exitCode) {
        out.flush();
        if (out.checkError()) {
            complain("The output could not be written whole. Check the disk, or what reads it.\n");
            return ExitCode.REFUSED;
        }
        return exitCode;
    }
}
