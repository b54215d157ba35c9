package org.cresthaul.report;

import java.util.Optional;

/**
 * What a report was made from.
 *
 * @param routeSha256 of the route file's bytes as given, lower-case hex
 * @param rigSha256 of the rig file's bytes as given
 * @param limitsSha256 of the limits file's bytes as given; empty when none replaced the route's own limits
 */
public record Inputs(String routeSha256, String rigSha256, Optional<String> limitsSha256) {
    /** Without a limits file. */
    public Inputs(String routeSha256, String rigSha256) {
        this(routeSha256, rigSha256, Optional.empty());
    }
}
