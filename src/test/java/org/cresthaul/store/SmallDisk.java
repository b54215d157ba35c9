package org.cresthaul.store;

import java.nio.file.Path;
import java.time.Clock;

/** Stores on a disk that does not do its part, as the database itself meets it. */
public final class SmallDisk {
    private SmallDisk() {}

    /** No larger than so many pages of 4 KiB. */
    public static ProjectStore of(Path folder, int pages) {
        return SqliteStore.in(
                folder, Clock.systemUTC(), statement -> statement.execute("PRAGMA max_page_count = " + pages));
    }

    public static ProjectStore readOnly(Path folder) {
        return SqliteStore.in(folder, Clock.systemUTC(), statement -> statement.execute("PRAGMA query_only = ON"));
    }
}
