package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

class WorkGateTest {
    @Test
    void refusesWhenEveryPlaceStaysTaken() throws Exception {
        WorkGate gate = new WorkGate(1, 50);
        CountDownLatch started = new CountDownLatch(1);
        CountDownLatch end = new CountDownLatch(1);
        CompletableFuture<Integer> first = CompletableFuture.supplyAsync(() -> {
            try {
                return gate.run(() -> {
                    started.countDown();
                    end.await();
                    return 1;
                });
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        started.await();

        Refusal refused = assertThrows(Refusal.class, () -> gate.run(() -> 2));
        end.countDown();

        assertEquals(503, refused.details().status());
        assertEquals("10", refused.headers().get("Retry-After"));
        assertEquals(1, first.get());
        assertEquals(3, gate.run(() -> 3));
    }

    @Test
    void givesThePlaceBackWhenTheWorkFails() throws Exception {
        WorkGate gate = new WorkGate(1, 50);

        assertThrows(IllegalStateException.class, () -> gate.run(() -> {
            throw new IllegalStateException("work");
        }));
        assertEquals(2, gate.run(() -> 2));
    }
}
