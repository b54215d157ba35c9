package org.cresthaul.route;

/**
 * A candidate at its place. While it is open or surveyed, a hazard of the same identifier is judged; a dismissed one is
 * remembered and told, and not judged.
 */
public record RouteCandidate(HazardPlace place, HazardKind kind, Candidate candidate) {}
