package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cresthaul.server.Blanks;
import org.cresthaul.store.Draft;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program as its own process, started as the README has it, in a plain C locale and with little memory. */
class ProgramTest {
    private static final long BODY_LENGTH = 500L << 20;

    @TempDir
    Path folder;

    private Process start(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-Duser.home=" + folder,
                "-cp",
                System.getProperty("java.class.path"),
                "org.cresthaul.Main"));
        command.addAll(Arrays.asList(arguments));
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectError(folder.resolve("err").toFile());
        builder.environment().put("LC_ALL", "C");
        return builder.start();
    }

    @Test
    void withoutArgumentsPrintsTheSamplesVerdictsAndServesThePage() throws Exception {
        Process program = start();
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(program.getInputStream(), StandardCharsets.UTF_8))) {
            List<String> printed = new ArrayList<>();
            String line = out.readLine();
            while (line != null && !line.startsWith("Open http://127.0.0.1:")) {
                printed.add(line);
                line = out.readLine();
            }
            assertTrue(line != null, printed + Files.readString(folder.resolve("err")));
            assertTrue(printed.stream().anyMatch(l -> l.contains("whole route in transport")), printed.toString());
            assertTrue(printed.stream().anyMatch(l -> l.contains("not surveyed, so never clear")), printed.toString());

            URI page = URI.create(line.split(" ")[1]);
            assertEquals(200, get(page.resolve("/api/version")).statusCode());
            HttpResponse<String> index = get(page);
            assertEquals(200, index.statusCode(), index.body());
            assertTrue(index.headers().firstValue("Content-Type").orElse("").startsWith("text/html"));

            HttpResponse<String> refused = postBlanks(page.resolve("/api/check"));
            assertEquals(413, refused.statusCode(), refused.body());
            assertEquals(200, get(page.resolve("/api/samples")).statusCode(), "it goes on after the long body");
        } finally {
            program.destroy();
            assertTrue(program.waitFor(20, TimeUnit.SECONDS));
        }
        assertEquals("", Files.readString(folder.resolve("err")));
        assertTrue(
                Files.isRegularFile(folder.resolve(".cresthaul/projects.db")), "projects are kept in the home folder");
    }

    private static HttpResponse<String> get(URI address) throws Exception {
        return HttpClient.newHttpClient()
                .send(HttpRequest.newBuilder(address).build(), HttpResponse.BodyHandlers.ofString());
    }

    /** Sends twice the memory that the program has. */
    private static HttpResponse<String> postBlanks(URI address) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(address)
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofInputStream(() -> new Blanks(BODY_LENGTH)))
                .build();
        return HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
    }

    @Test
    void printsUtf8InAPlainLocale() throws Exception {
        Path route = Path.of("sample-routes/alder-county.route.geojson");
        Path rig = folder.resolve("named.rig.json");
        Files.writeString(
                rig,
                Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"))
                        .replaceFirst("\"name\": \"", "\"name\": \"Süd № 2 "));

        Process program = start("check", route.toString(), rig.toString());
        String text = new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertEquals(1, program.waitFor(), Files.readString(folder.resolve("err")));
        assertTrue(text.contains("Süd № 2"), text.substring(0, 400));
        assertFalse(text.contains("\uFFFD"));
        assertEquals("", Files.readString(folder.resolve("err")));
    }

    @Test
    void endsWithTheExitCodeOfARefusal() throws Exception {
        Process program = start("check", "missing", "missing");

        assertEquals(2, program.waitFor());
        assertEquals(0, program.getInputStream().readAllBytes().length);
        assertFalse(Files.readString(folder.resolve("err")).contains("\tat "));
    }

    @Test
    void aBackupHoldsTheProjects() throws Exception {
        Path data = folder.resolve("data");
        try (ProjectStore store = SqliteStore.in(data)) {
            store.begin(new Draft("Mill road move", "", "begun", "", List.of()));
        }
        Path copy = Files.createDirectory(folder.resolve("copy")).resolve("projects.db");

        Process program = start("backup", copy.toString(), "--data", data.toString());

        assertEquals(0, program.waitFor(), Files.readString(folder.resolve("err")));
        assertEquals(
                "1 project copied to " + copy + ".\n",
                new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        try (ProjectStore store = SqliteStore.in(copy.getParent())) {
            assertEquals("Mill road move", store.listProjects().get(0).name());
        }
        assertEquals(
                2, start("backup", copy.toString(), "--data", data.toString()).waitFor(), "it is there already");
        assertEquals(
                2,
                start("backup", copy + "2", "--data", folder.resolve("none").toString())
                        .waitFor());
        assertFalse(Files.exists(folder.resolve("none")), "nothing is made by looking for it");
    }
}
