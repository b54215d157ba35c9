package org.cresthaul.web;

import java.io.IOException;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.BeforeAll;

/** Tests of the page with a route and a rig of a few lines. */
abstract class OnSmallFiles extends OnOwnServer {
    @BeforeAll
    static void startOnSmallFiles() throws IOException {
        begin(TestServer.ofSmallFiles());
    }
}
