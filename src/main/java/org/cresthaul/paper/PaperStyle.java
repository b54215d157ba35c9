package org.cresthaul.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;

/** The one style sheet that every paper as HTML carries, and its name in a content security policy. */
public final class PaperStyle {
    private PaperStyle() {}

    /** What stands between {@code <style>} and {@code </style>}, to the letter. */
    static String text() {
        try (InputStream css = PaperStyle.class.getResourceAsStream("/paper/paper.css")) {
            return "\n" + new String(css.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** "'sha256-…'" (CSP level 3): a policy with it lets this style sheet in and no other. */
    public static String source() {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text().getBytes(StandardCharsets.UTF_8));
            return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
