package org.cresthaul.web;

import java.io.IOException;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;

/** Tests of the page with a route and a rig of a few lines: for each class a server and a browser of its own. */
abstract class OnSmallFiles {
    /** Of the class that runs: no two run at a time in one process. */
    static TestServer server;

    static Browser browser;

    @BeforeAll
    static void start() throws IOException {
        start(TestServer.ofSmallFiles());
    }

    /** With a server of its own: a class hides {@link #start()} by one that calls this. */
    static void start(TestServer own) throws IOException {
        server = own;
        browser = new Browser();
    }

    @AfterAll
    static void stop() throws IOException {
        browser.close();
        server.close();
    }

    /** The page from its beginning, with the report on the small files. */
    static void openPage(int heightPx) {
        browser.resize(1280, heightPx);
        browser.open("about:blank");
        browser.open(server.url());
        browser.await(
                "the report is shown", b -> !b.list("#hazard-table tbody tr").isEmpty());
    }
}
