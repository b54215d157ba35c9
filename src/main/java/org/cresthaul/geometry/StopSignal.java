package org.cresthaul.geometry;

import java.util.function.Supplier;

/**
 * Whether anybody still wants what a thread works on. Engines poll it wherever work repeats, so that a check whose
 * asker has gone, or whose time is over, ends within a moment.
 *
 * <p>It belongs to the threads of one check, by {@link #during}, instead of being handed through every constructor: a
 * call that forgot to pass it on would be one that nothing can stop. It never changes an answer: work is done to its
 * end, or there is no answer. What bounds an answer is a {@link WorkLimit}.
 */
public final class StopSignal {
    private static final StopSignal NEVER = new StopSignal();
    private static final ThreadLocal<StopSignal> CURRENT = new ThreadLocal<>();

    private volatile boolean given;

    /** That of this thread's work; one that is never given where nobody has set up any. */
    public static StopSignal current() {
        StopSignal own = CURRENT.get();
        return own == null ? NEVER : own;
    }

    /**
     * Does work that this signal can stop. The work's other threads need a call of their own.
     *
     * @throws WorkStopped when it was given before the work was done
     */
    public <T> T during(Supplier<T> work) {
        StopSignal before = CURRENT.get();
        CURRENT.set(this);
        try {
            return work.get();
        } finally {
            if (before == null) {
                CURRENT.remove();
            } else {
                CURRENT.set(before);
            }
        }
    }

    /** From any thread: the work shall end. */
    public void give() {
        if (this == NEVER) {
            throw new IllegalStateException("this work was not set up to be stopped");
        }
        given = true;
    }

    public boolean isGiven() {
        return given;
    }

    /** @throws WorkStopped when the signal was given */
    public void poll() {
        if (given) {
            throw new WorkStopped();
        }
    }
}
