package org.cresthaul.check;

/**
 * What a report was made from.
 *
 * @param routeSha256 of the route file's bytes as given, lower-case hex
 * @param rigSha256 of the rig file's bytes as given
 */
public record Inputs(String routeSha256, String rigSha256) {}
