package org.cresthaul.server;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinWorkerThread;
import java.util.function.Supplier;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.geometry.WorkStopped;
import org.cresthaul.plan.Outcome;

/**
 * The threads of one check: everything the check does side by side is done on them, all of them heed its stop signal,
 * and their processor time is its cost. What a check throws reaches its caller as it was thrown.
 */
final class CheckThreads {
    private static final ThreadMXBean TIMES = ManagementFactory.getThreadMXBean();

    private final StopSignal signal = new StopSignal();
    private final List<Thread> threads = new CopyOnWriteArrayList<>();

    private final class Worker extends ForkJoinWorkerThread {
        Worker(ForkJoinPool pool) {
            super(pool);
        }

        @Override
        public void run() {
            threads.add(this);
            signal.during(() -> {
                super.run();
                return null;
            });
        }
    }

    /** What came of the work. */
    private static final class Outcome<T> {
        private T value;
        private Throwable thrown;
    }

    /**
     * Does the work on {@code count} threads of its own.
     *
     * @throws WorkStopped when it was stopped
     */
    <T> T run(int count, Supplier<T> work) {
        Outcome<T> outcome = new Outcome<>();
        ForkJoinPool pool = new ForkJoinPool(count, Worker::new, null, false);
        try {
            pool.submit(() -> {
                        try {
                            outcome.value = work.get();
                        } catch (Throwable thrown) {
                            outcome.thrown = thrown;
                        }
                    })
                    .join();
        } finally {
            pool.shutdownNow();
        }
        if (signal.isGiven()) {
            // Whatever the stopping broke off on the way out.
            throw new WorkStopped();
        }
        if (outcome.thrown instanceof Error error) {
            throw error;
        }
        if (outcome.thrown instanceof RuntimeException exception) {
            throw exception;
        }
        return outcome.value;
    }

    void stop() {
        signal.give();
    }

    /** Processor time spent so far, nanoseconds; zero where the platform does not tell. */
    long costNanos() {
        long sum = 0;
        for (Thread thread : threads) {
            long spent = TIMES.isThreadCpuTimeSupported() ? TIMES.getThreadCpuTime(thread.getId()) : -1;
            sum += Math.max(0, spent);
        }
        return sum;
    }
}
