package org.cresthaul.store;

import java.time.Instant;

/**
 * A project that was removed: it is listed no more, and nothing of it is gone.
 *
 * @param latest its last revision
 * @param removed when, by the clock of the machine that keeps it
 * @param author who removed it; empty when nobody said
 */
public record RemovedProject(Revision latest, Instant removed, String author) {}
