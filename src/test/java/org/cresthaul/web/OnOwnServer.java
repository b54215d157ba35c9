package org.cresthaul.web;

import java.io.IOException;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.AfterAll;

/** Tests of the page: for each class a server and a browser of its own, which one method of a subclass starts. */
abstract class OnOwnServer {
    /** Of the class that runs: no two run at a time in one process. */
    static TestServer server;

    static Browser browser;

    static void begin(TestServer own) throws IOException {
        server = own;
        browser = new Browser();
    }

    @AfterAll
    static void stop() throws IOException {
        browser.close();
        server.close();
    }

    /** The page from its beginning, with the report on the server's files. */
    static void openPage(int heightPx) {
        browser.resize(1280, heightPx);
        browser.open("about:blank");
        browser.open(server.url());
        browser.await(
                "the report is shown", b -> !b.list("#hazard-table tbody tr").isEmpty());
    }
}
