package org.cresthaul.server;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.cresthaul.geometry.WorkStopped;

/**
 * Lets a few checks run at a time and a few more wait their turn; anyone else is refused at once. Stops a check whose
 * asker has gone, or that has cost more than one may. A check that does not end then is counted as stuck.
 */
final class WorkGate implements AutoCloseable {
    private static final long TICK_MS = 100;
    private static final long STUCK_AFTER_MS = 10_000;

    private final Limits limits;
    private final Semaphore places;
    private final AtomicInteger inside = new AtomicInteger();
    private final Set<Running> running = ConcurrentHashMap.newKeySet();
    private final ScheduledExecutorService watch = Executors.newSingleThreadScheduledExecutor(r -> {
        Thread thread = new Thread(r, "check-watch");
        thread.setDaemon(true);
        return thread;
    });

    /**
     * What the gate holds to.
     *
     * @param running most checks at a time
     * @param waiting most that wait for one of them to end
     * @param waitMs longest that one waits
     * @param threads of each check
     * @param costMs most processor time of one check, over all its threads
     * @param timeMs longest that one runs by the clock
     */
    record Limits(int running, int waiting, long waitMs, int threads, long costMs, long timeMs) {
        /** One check for each processor, and each may use them all. */
        static Limits usual() {
            int processors = Runtime.getRuntime().availableProcessors();
            return new Limits(processors, 4 + 2 * processors, 30_000, processors, 60_000, 300_000);
        }
    }

    /** What is worked on, and how many times what a check may cost that may. */
    enum Work {
        CHECK("check", 1, "Check the route in parts, or from the command line."),
        /** A map of a whole state takes minutes to go through. */
        IMPORT("import", 5, "Cut the map extract to the route's surroundings, or import from the command line.");

        private final String word;
        private final long times;
        private final String remedy;

        Work(String word, long times, String remedy) {
            this.word = word;
            this.times = times;
            this.remedy = remedy;
        }
    }

    /** How it stands. */
    record State(int running, int waiting, int stuck, boolean takesMore) {}

    private final class Running {
        private final Asker asker;
        private final Work work;
        private final CheckThreads threads = new CheckThreads();
        private final long startedNanos = System.nanoTime();
        private volatile Refusal why;
        private volatile long stoppedNanos;

        Running(Asker asker, Work work) {
            this.asker = asker;
            this.work = work;
        }

        void look() {
            if (why != null) {
                return;
            }
            long now = System.nanoTime();
            boolean over = threads.costNanos() > work.times * limits.costMs * 1_000_000
                    || now - startedNanos > work.times * limits.timeMs * 1_000_000;
            if (over || asker.isGone()) {
                stoppedNanos = now;
                why = over ? overTime(work) : gone();
                threads.stop();
            }
        }

        boolean isStuck() {
            return why != null && System.nanoTime() - stoppedNanos > STUCK_AFTER_MS * 1_000_000;
        }
    }

    WorkGate(Limits limits) {
        this.limits = limits;
        places = new Semaphore(limits.running, true);
        watch.scheduleWithFixedDelay(() -> running.forEach(Running::look), TICK_MS, TICK_MS, TimeUnit.MILLISECONDS);
    }

    /**
     * Does the work on threads of its own, when its turn has come.
     *
     * @throws Refusal with status 503 when there is no turn for it, or it was stopped
     */
    <T> T run(Asker asker, Supplier<T> work) throws InterruptedException {
        return run(asker, Work.CHECK, work);
    }

    /** As {@link #run(Asker, Supplier)}, for work of a kind. */
    <T> T run(Asker asker, Work kind, Supplier<T> work) throws InterruptedException {
        if (inside.incrementAndGet() > limits.running + limits.waiting) {
            inside.decrementAndGet();
            throw busy("As many checks wait already as may.");
        }
        try {
            awaitPlace(asker);
            try {
                return watched(new Running(asker, kind), work);
            } finally {
                places.release();
            }
        } finally {
            inside.decrementAndGet();
        }
    }

    private void awaitPlace(Asker asker) throws InterruptedException {
        long until = System.nanoTime() + limits.waitMs * 1_000_000;
        while (!places.tryAcquire(Math.min(TICK_MS, limits.waitMs), TimeUnit.MILLISECONDS)) {
            if (asker.isGone()) {
                throw gone();
            }
            if (System.nanoTime() > until) {
                throw busy("No check could be started within " + limits.waitMs / 1000 + " s.");
            }
        }
    }

    private <T> T watched(Running check, Supplier<T> work) {
        running.add(check);
        try {
            return check.threads.run(limits.threads, work);
        } catch (WorkStopped stopped) {
            throw check.why == null ? gone() : check.why;
        } catch (OutOfMemoryError e) {
            throw Refusal.memoryShort();
        } finally {
            running.remove(check);
        }
    }

    State state() {
        int in = inside.get();
        int busy = running.size();
        int stuck = (int) running.stream().filter(Running::isStuck).count();
        return new State(
                busy, Math.max(0, in - busy), stuck, in < limits.running + limits.waiting && stuck < limits.running);
    }

    private static Refusal busy(String detail) {
        return new Refusal(ProblemKind.BUSY, detail, List.of(), Map.of("Retry-After", "10"));
    }

    /** Nobody reads it. */
    private static Refusal gone() {
        return new Refusal(ProblemKind.BUSY, "The check was stopped: nobody waits for it.");
    }

    private Refusal overTime(Work work) {
        return new Refusal(
                ProblemKind.OVER_TIME,
                "The " + work.word + " was stopped after " + work.times * limits.costMs / 1000
                        + " s of processor time. " + work.remedy);
    }

    @Override
    public void close() {
        watch.shutdownNow();
        running.forEach(r -> {
            r.why = gone();
            r.threads.stop();
        });
    }
}
