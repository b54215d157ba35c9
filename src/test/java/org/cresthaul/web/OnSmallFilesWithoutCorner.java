package org.cresthaul.web;

import java.io.IOException;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.BeforeAll;

/** Tests of the page that ask about the rig or other places: the corner takes longer to be judged than all the rest. */
abstract class OnSmallFilesWithoutCorner extends OnOwnServer {
    @BeforeAll
    static void startWithoutCorner() throws IOException {
        begin(TestServer.ofSmallFilesWithoutCorner());
    }
}
