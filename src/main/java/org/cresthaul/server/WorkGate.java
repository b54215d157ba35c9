package org.cresthaul.server;

import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/** Lets as many checks run at a time as there are processors; others wait their turn, but not for ever. */
final class WorkGate {
    private final Semaphore places;
    private final long waitMs;

    WorkGate(int places, long waitMs) {
        this.places = new Semaphore(places, true);
        this.waitMs = waitMs;
    }

    /** @throws Refusal with status 503 when no turn came in time */
    <T> T run(Callable<T> work) throws Exception {
        if (!places.tryAcquire(waitMs, TimeUnit.MILLISECONDS)) {
            throw new Refusal(ProblemKind.BUSY, "No check could be started within " + waitMs / 1000 + " s.", List.of(),
                    Map.of("Retry-After", "10"));
        }
        try {
            return work.call();
        } finally {
            places.release();
        }
    }
}
