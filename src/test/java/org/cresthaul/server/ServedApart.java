package org.cresthaul.server;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Scanner;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.SqliteStore;

/** A server of small files that keeps projects, in a process of its own, for measures of what it does under load. */
final class ServedApart implements AutoCloseable {
    private final Process process;
    private final BufferedReader answers;
    private final PrintWriter questions;
    private final String url;

    /** What it holds once all that is not needed is thrown away: bytes of the heap, and threads. */
    record Held(long heapBytes, int threads) {}

    /** @param options of its virtual machine */
    ServedApart(String... options) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of(options));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), ServedApart.class.getName()));
        command.add(Files.createTempDirectory("served-apart").toString());
        process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        answers = process.inputReader();
        questions = new PrintWriter(process.outputWriter(), true);
        url = answers.readLine();
    }

    /** The server: it writes its address, then for every line that it reads what it holds. */
    public static void main(String[] arguments) throws Exception {
        try (ProjectStore store = SqliteStore.in(Path.of(arguments[0]));
                TestServer server = TestServer.keeping(store);
                Scanner asked = new Scanner(System.in)) {
            System.out.println(server.url());
            while (asked.hasNextLine()) {
                asked.nextLine();
                System.gc();
                Runtime runtime = Runtime.getRuntime();
                System.out.println((runtime.totalMemory() - runtime.freeMemory()) + " " + Thread.activeCount());
            }
        }
    }

    String url() {
        return url;
    }

    Held held() throws IOException {
        questions.println();
        String[] told = answers.readLine().split(" ");
        return new Held(Long.parseLong(told[0]), Integer.parseInt(told[1]));
    }

    @Override
    public void close() {
        process.destroy();
    }
}
