package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is not needed is not there: whatever is in the archive can be reached by a request. */
class ArchiveTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "org.eclipse.jetty.ee10.websocket.server.JettyWebSocketServlet",
                "org.eclipse.jetty.websocket.core.server.WebSocketUpgradeHandler",
                "org.eclipse.jetty.ee10.annotations.AnnotationConfiguration",
                "org.eclipse.jetty.ee10.webapp.WebAppContext",
                "org.eclipse.jetty.jndi.NamingContext",
                "jakarta.transaction.Transaction",
                "jakarta.enterprise.inject.spi.CDI",
                "org.geotools.referencing.GeodeticCalculator",
                "org.apache.commons.lang3.StringUtils"
            })
    void leavesOutWhatNothingUses(String name) {
        assertThrows(
                ClassNotFoundException.class, () -> Class.forName(name, false, ArchiveTest.class.getClassLoader()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"geotools-wrapper", "commons-lang3"})
    void declaresNoneOfThem(String artifact) throws Exception {
        assertTrue(
                !Files.readString(Path.of("pom.xml")).contains("<artifactId>" + artifact + "</artifactId>"), artifact);
    }
}
