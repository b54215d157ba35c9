package org.cresthaul.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The version of this program, as the build wrote it. */
public final class Version {
    public static final String NUMBER = read();

    private Version() {}

    private static String read() {
        try (InputStream in = Version.class.getResourceAsStream("/cresthaul.properties")) {
            if (in == null) {
                throw new IllegalStateException("cresthaul.properties is missing from the build");
            }
            Properties properties = new Properties();
            properties.load(in);
            return properties.getProperty("version");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
