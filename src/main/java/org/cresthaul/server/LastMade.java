package org.cresthaul.server;

import java.lang.ref.SoftReference;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What was made last, by what it hangs on. Memory that runs short is given back first from here. Safe to share.
 *
 * @param <Q> everything that a value hangs on, by value
 * @param <A> the value, which never changes
 */
final class LastMade<Q, A> {
    private final Map<Q, SoftReference<A>> made;

    /** @param most how many are kept */
    LastMade(int most) {
        made = new LinkedHashMap<>(most * 2, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<Q, SoftReference<A>> eldest) {
                return size() > most;
            }
        };
    }

    synchronized Optional<A> find(Q question) {
        return Optional.ofNullable(made.get(question)).map(SoftReference::get);
    }

    synchronized void keep(Q question, A answer) {
        made.put(question, new SoftReference<>(answer));
    }
}
