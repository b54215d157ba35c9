package org.cresthaul.geometry;

/**
 * How many steps a search may still take. Counted, not timed, so that the same question ends at the same place on every
 * machine. A search whose limit is spent has not decided anything and must say so. Every step also polls the thread's
 * {@link StopSignal}. For one thread.
 */
public final class WorkLimit {
    private final StopSignal stop = StopSignal.current();
    private final long allowed;
    private long taken;

    private WorkLimit(long allowed) {
        this.allowed = allowed;
    }

    /** @param steps allowed, at least one */
    public static WorkLimit of(long steps) {
        if (steps < 1) {
            throw new IllegalArgumentException("a limit of " + steps + " steps");
        }
        return new WorkLimit(steps);
    }

    /** No limit: only the stop signal ends the work. */
    public static WorkLimit none() {
        return new WorkLimit(Long.MAX_VALUE);
    }

    /** As {@link #take(long)} with one step. */
    public boolean take() {
        return take(1);
    }

    /**
     * Takes steps from what is left; whoever gets false takes none.
     *
     * @param steps not negative
     * @return whether so many were left
     * @throws WorkStopped when nobody wants the answer any more
     */
    public boolean take(long steps) {
        stop.poll();
        if (steps < 0) {
            throw new IllegalArgumentException(steps + " steps");
        }
        if (steps > allowed - taken) {
            taken = allowed;
            return false;
        }
        taken += steps;
        return true;
    }

    /** Whether nothing is left. */
    public boolean isSpent() {
        return taken >= allowed;
    }

    /** Steps taken so far. */
    public long taken() {
        return taken;
    }
}
