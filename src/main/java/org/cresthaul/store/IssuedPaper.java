package org.cresthaul.store;

import java.time.Instant;

/**
 * A paper as it was issued.
 *
 * @param revision the latest of its project when it was issued; what it was made from is its request
 * @param mediaType of its content
 * @param version of the program that made it
 * @param requestSha256 of what it was asked for, with every file it was made from
 * @param contentSha256 of the paper itself
 */
public record IssuedPaper(
        String id,
        String project,
        int revision,
        PaperKind kind,
        String mediaType,
        String version,
        Instant issued,
        String requestSha256,
        String contentSha256) {}
