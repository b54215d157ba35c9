package org.cresthaul.store;

import java.time.Instant;
import java.util.List;

/**
 * A project as it was saved once.
 *
 * @param project id of the project
 * @param number 1 for the first, without a gap
 * @param author who saved it; empty when nobody said
 * @param saved when, by the clock of the machine that keeps it
 * @param view what was asked and shown, as an address fragment of the page
 */
public record Revision(
        String project,
        int number,
        String name,
        String author,
        Instant saved,
        String reason,
        String view,
        List<KeptFile> files) {
    public Revision {
        files = List.copyOf(files);
    }

    /**
     * A file of it.
     *
     * @param sha256 lower-case hexadecimal; its bytes are had by it
     * @param bytes how many
     */
    public record KeptFile(FileKind kind, String name, String sha256, long bytes) {}
}
