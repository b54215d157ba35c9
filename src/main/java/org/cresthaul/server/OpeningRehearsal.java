package org.cresthaul.server;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.HttpURLConnection;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;

/**
 * Asks a server that has just started for what the page asks when it opens, so that nobody waits while the program
 * loads what answers it. Reports and plans are not asked: they are prepared by themselves.
 */
final class OpeningRehearsal {
    private OpeningRehearsal() {}

    /** What is asked, in the page's order; the first sample of each kind is the one that opens. */
    static List<String> paths(Samples samples) {
        String route = samples.routes().get(0).id();
        List<String> paths = new ArrayList<>(List.of(
                "",
                "lib/leaflet/leaflet.css",
                "app.css",
                "lib/leaflet/leaflet.js",
                "app.js",
                "icon.svg",
                "api/version",
                "api/settings",
                "api/samples",
                "api/samples/routes/" + route,
                "api/samples/rigs/" + samples.rigs().get(0).id()));
        if (samples.maps().stream().anyMatch(m -> m.id().equals(route))) {
            paths.add("api/samples/maps/" + route);
        }
        paths.add("api/route");
        return List.copyOf(paths);
    }

    /**
     * Asks once.
     *
     * @param url of the server, with a slash at its end
     * @return the status of each answer; of fewer where the server is gone by then
     */
    static List<Integer> run(String url, Samples samples) {
        List<Integer> answers = new ArrayList<>();
        try {
            for (String path : paths(samples)) {
                answers.add(ask(
                        url + path,
                        path.equals("api/route") ? samples.routes().get(0).document() : null));
            }
        } catch (IOException gone) {
            // A rehearsal that nobody sees needs no notice: the page will say so itself.
        }
        return answers;
    }

    private static int ask(String url, byte[] body) throws IOException {
        HttpURLConnection connection =
                (HttpURLConnection) URI.create(url).toURL().openConnection();
        connection.setRequestProperty("Accept-Encoding", "gzip");
        if (body != null) {
            connection.setDoOutput(true);
            connection.setRequestProperty("Content-Type", "application/json");
            try (OutputStream out = connection.getOutputStream()) {
                out.write(body);
            }
        }
        int status = connection.getResponseCode();
        if (status < HttpURLConnection.HTTP_BAD_REQUEST) {
            try (InputStream in = connection.getInputStream()) {
                in.readAllBytes();
            }
        }
        return status;
    }
}
