package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Under which host names the server answers, wherever it listens. */
class HostNamesTest {
    private static TestServer server(Optional<String> host, List<String> names) {
        return new TestServer(
                new ServerOptions(host, 0, Optional.empty(), TestServer.small(), Optional.empty(), names));
    }

    /** What is answered at {@code address} to a request that calls the server {@code host}. */
    private static String answer(TestServer server, String address, String host) throws IOException {
        try (Socket socket = new Socket(address, server.port())) {
            socket.getOutputStream()
                    .write(("GET /api/version HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n")
                            .getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static int status(TestServer server, String address, String host) throws IOException {
        return Integer.parseInt(answer(server, address, host).substring(9, 12));
    }

    @ParameterizedTest
    @CsvSource({
        "127.0.0.1, 200",
        "localhost:8137, 200",
        "LocalHost, 200",
        "[::1]:8137, 200",
        "[0:0:0:0:0:0:0:1], 200",
        "planner.example.org, 200",
        "Planner.Example.org:8443, 200",
        "[2001:db8::7], 200",
        "[2001:DB8:0::7]:80, 200",
        "evil.example, 421",
        "evil.example:8137, 421",
        "planner.example.org.evil.example, 421",
        "xplanner.example.org, 421",
        "[2001:db8::8], 421",
        "192.0.2.7, 421",
        "0x7f.1, 421",
        "[localhost], 400",
    })
    void everywhereItAnswersToListedNames(String host, int status) throws IOException {
        try (TestServer server = server(Optional.of("0.0.0.0"), List.of("planner.example.org", "2001:db8::7"))) {
            assertEquals(status, status(server, "127.0.0.1", host), host);
        }
    }

    /** Each by its own address; a server on one address does not answer to those it is not reached by. */
    @Test
    void everyAddressOfThisMachineIsListedWhereItListensOnAll() throws IOException {
        List<String> own = NetworkInterface.networkInterfaces()
                .flatMap(NetworkInterface::inetAddresses)
                .map(InetAddress::getHostAddress)
                .filter(address -> address.indexOf(':') < 0)
                .toList();
        assertFalse(own.isEmpty());
        try (TestServer server = server(Optional.of("0.0.0.0"), List.of())) {
            for (String address : own) {
                assertEquals(200, status(server, address, address + ":" + server.port()), address);
                assertEquals(421, status(server, address, "evil.example"), address);
            }
        }
        for (String address : own) {
            if (!address.startsWith("127.")) {
                try (TestServer server = server(Optional.of(address), List.of())) {
                    assertEquals(200, status(server, address, address), address);
                    assertEquals(421, status(server, address, "127.0.0.1"), address);
                    assertEquals(421, status(server, address, "evil.example"), address);
                }
            }
        }
    }

    @Test
    void whoIsRefusedLearnsNoName() throws IOException {
        try (TestServer server = server(Optional.of("0.0.0.0"), List.of("planner.example.org"))) {
            String refused = answer(server, "127.0.0.1", "evil.example");
            assertTrue(refused.contains("--host-name"), refused);
            assertFalse(refused.contains("planner"), refused);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "http://planner.example.org", "planner.example.org:80", "a b", "*"})
    void aNameThatIsNoneIsRefused(String name) {
        assertThrows(IllegalArgumentException.class, () -> server(Optional.empty(), List.of(name)));
    }
}
