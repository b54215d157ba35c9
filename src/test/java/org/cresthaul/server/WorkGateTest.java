package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.cresthaul.geometry.StopSignal;
import org.junit.jupiter.api.Test;

/** Who gets a turn, and how one ends. */
class WorkGateTest {
    private static WorkGate gate(int running, int waiting, long waitMs, long costMs) {
        return new WorkGate(new WorkGate.Limits(running, waiting, waitMs, 2, costMs, 60_000));
    }

    private static <T> T run(WorkGate gate, Asker asker, Supplier<T> work) {
        try {
            return gate.run(asker, work);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Works until it is stopped. */
    private static int forEver() {
        StopSignal signal = StopSignal.current();
        while (true) {
            signal.poll();
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void refusesWhenEveryPlaceStaysTaken() throws Exception {
        try (WorkGate gate = gate(1, 1, 50, 60_000)) {
            CountDownLatch started = new CountDownLatch(1);
            CountDownLatch end = new CountDownLatch(1);
            CompletableFuture<Integer> first = CompletableFuture.supplyAsync(() -> run(gate, Asker.UNKNOWN, () -> {
                started.countDown();
                await(end);
                return 1;
            }));
            started.await();

            Refusal refused = assertThrows(Refusal.class, () -> gate.run(Asker.UNKNOWN, () -> 2));
            end.countDown();

            assertEquals(503, refused.details().status());
            assertEquals("10", refused.headers().get("Retry-After"));
            assertEquals(1, first.get());
            assertEquals(3, gate.run(Asker.UNKNOWN, () -> 3));
        }
    }

    /** Twice what a check may cost: an import has that, and is ended at five times. */
    @Test
    void anImportMayCostMoreThanACheck() throws Exception {
        try (WorkGate gate = gate(1, 0, 0, 300)) {
            Supplier<Integer> twice = () -> {
                StopSignal signal = StopSignal.current();
                ThreadMXBean clock = ManagementFactory.getThreadMXBean();
                long until = clock.getCurrentThreadCpuTime() + 600_000_000L;
                while (clock.getCurrentThreadCpuTime() < until) {
                    signal.poll();
                }
                return 1;
            };

            Refusal check = assertThrows(Refusal.class, () -> gate.run(Asker.UNKNOWN, twice));
            assertTrue(check.getMessage().contains("The check was stopped"), check.getMessage());
            assertEquals(1, gate.run(Asker.UNKNOWN, WorkGate.Work.IMPORT, twice));
            Refusal longer = assertThrows(
                    Refusal.class, () -> gate.run(Asker.UNKNOWN, WorkGate.Work.IMPORT, WorkGateTest::forEver));
            assertTrue(longer.getMessage().contains("The import was stopped after 1 s"), longer.getMessage());
        }
    }

    @Test
    void refusesAtOnceWhoFindsTheQueueFull() throws Exception {
        try (WorkGate gate = gate(1, 0, 60_000, 60_000)) {
            CountDownLatch started = new CountDownLatch(1);
            CountDownLatch end = new CountDownLatch(1);
            CompletableFuture<Integer> first = CompletableFuture.supplyAsync(() -> run(gate, Asker.UNKNOWN, () -> {
                started.countDown();
                await(end);
                return 1;
            }));
            started.await();
            assertEquals(new WorkGate.State(1, 0, 0, false), gate.state());

            long before = System.nanoTime();
            assertEquals(
                    503,
                    assertThrows(Refusal.class, () -> gate.run(Asker.UNKNOWN, () -> 2))
                            .details()
                            .status());
            assertTrue(System.nanoTime() - before < 10_000_000_000L, "it waited");
            end.countDown();
            first.get();
            assertEquals(new WorkGate.State(0, 0, 0, true), gate.state());
        }
    }

    @Test
    void givesThePlaceBackWhenTheWorkFails() throws Exception {
        try (WorkGate gate = gate(1, 1, 50, 60_000)) {
            IllegalStateException thrown = new IllegalStateException("work");
            assertSame(
                    thrown,
                    assertThrows(
                            IllegalStateException.class,
                            () -> gate.run(Asker.UNKNOWN, () -> {
                                throw thrown;
                            })));
            assertEquals(2, gate.run(Asker.UNKNOWN, () -> 2));
        }
    }

    @Test
    void shortMemoryIsTheRequestsTroubleAlone() throws Exception {
        try (WorkGate gate = gate(1, 1, 50, 60_000)) {
            Refusal refused = assertThrows(
                    Refusal.class,
                    () -> gate.run(Asker.UNKNOWN, () -> {
                        throw new OutOfMemoryError("Java heap space");
                    }));
            assertEquals(503, refused.details().status());
            assertTrue(refused.headers().containsKey("Retry-After"));
            assertEquals(2, gate.run(Asker.UNKNOWN, () -> 2));
        }
    }

    @Test
    void stopsWorkWhoseAskerHasGone() {
        try (WorkGate gate = gate(1, 1, 50, 60_000)) {
            AtomicBoolean gone = new AtomicBoolean();
            CompletableFuture<Integer> work =
                    CompletableFuture.supplyAsync(() -> run(gate, gone::get, WorkGateTest::forEver));
            while (gate.state().running() == 0) {
                Thread.onSpinWait();
            }
            gone.set(true);
            assertThrows(Exception.class, work::get);
            assertEquals(0, gate.state().running());
        }
    }

    @Test
    void stopsWorkOnEveryThreadOnceItHasCostTooMuch() {
        try (WorkGate gate = gate(1, 1, 50, 200)) {
            Refusal refused = assertThrows(
                    Refusal.class,
                    () -> gate.run(
                            Asker.UNKNOWN,
                            () -> IntStream.range(0, 4)
                                    .parallel()
                                    .map(i -> forEver())
                                    .sum()));
            assertEquals("urn:cresthaul:problem:over-time", refused.details().type());
            assertEquals(503, refused.details().status());
        }
    }
}
