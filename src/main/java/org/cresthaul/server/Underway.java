package org.cresthaul.server;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Work that others may ask after while it runs, by the id that its asker gave it.
 *
 * @param <T> what knows how far one has come
 */
final class Underway<T> {
    private static final String ID = "[A-Za-z0-9-]{1,64}";

    private final Map<String, T> all = new ConcurrentHashMap<>();

    /** Work that is answered over HTTP. */
    interface Work {
        void run() throws Exception;
    }

    /** Does the work, found by its id meanwhile. Without an id, or under one that is in use, nobody finds it. */
    void during(String id, T one, Work work) throws Exception {
        boolean found = id != null && id.matches(ID) && all.putIfAbsent(id, one) == null;
        try {
            work.run();
        } finally {
            if (found) {
                all.remove(id);
            }
        }
    }

    Optional<T> find(String id) {
        return Optional.ofNullable(all.get(id));
    }
}
