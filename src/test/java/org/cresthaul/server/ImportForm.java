package org.cresthaul.server;

import java.io.ByteArrayOutputStream;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;

/** A form of files and fields as a browser writes it (RFC 7578), by hand. */
final class ImportForm {
    static final String TYPE = "multipart/form-data; boundary=--hand--";

    private final ByteArrayOutputStream body = new ByteArrayOutputStream();

    ImportForm file(String part, String name, byte[] bytes) {
        write("----hand--\r\nContent-Disposition: form-data; name=\"" + part + "\"; filename=\"" + name
                + "\"\r\nContent-Type: application/octet-stream\r\n\r\n");
        body.writeBytes(bytes);
        write("\r\n");
        return this;
    }

    ImportForm field(String part, String value) {
        write("----hand--\r\nContent-Disposition: form-data; name=\"" + part + "\"\r\n\r\n" + value + "\r\n");
        return this;
    }

    private void write(String text) {
        body.writeBytes(text.getBytes(StandardCharsets.UTF_8));
    }

    byte[] bytes() {
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        whole.writeBytes(body.toByteArray());
        whole.writeBytes("----hand----\r\n".getBytes(StandardCharsets.UTF_8));
        return whole.toByteArray();
    }

    HttpRequest.Builder request(TestServer server) {
        return server.request("/api/import")
                .header("Content-Type", TYPE)
                .POST(HttpRequest.BodyPublishers.ofByteArray(bytes()));
    }
}
