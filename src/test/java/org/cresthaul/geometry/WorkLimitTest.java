package org.cresthaul.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Limits count, signals stop, and neither reaches beyond its own work. */
class WorkLimitTest {
    @Test
    void allowsExactlyItsSteps() {
        WorkLimit limit = WorkLimit.of(3);
        assertTrue(limit.take(2));
        assertFalse(limit.isSpent());
        assertTrue(limit.take());
        assertTrue(limit.isSpent());
        assertFalse(limit.take());
        assertEquals(3, limit.taken());
    }

    @Test
    void isSpentByAStepTooLargeForIt() {
        WorkLimit limit = WorkLimit.of(3);
        assertFalse(limit.take(4));
        assertTrue(limit.isSpent());
        assertFalse(limit.take());
    }

    @Test
    void withoutALimitIsNeverSpent() {
        WorkLimit limit = WorkLimit.none();
        assertTrue(limit.take(Long.MAX_VALUE - 1));
        assertTrue(limit.take());
        assertThrows(IllegalArgumentException.class, () -> WorkLimit.of(0));
        assertThrows(IllegalArgumentException.class, () -> limit.take(-1));
    }

    @Test
    void aGivenSignalStopsTheWorkUnderItAndNoOther() {
        StopSignal signal = new StopSignal();
        WorkLimit outside = WorkLimit.of(10);
        WorkLimit inside = signal.during(() -> WorkLimit.of(10));
        signal.give();
        assertTrue(outside.take());
        assertThrows(WorkStopped.class, inside::take);
        assertThrows(
                WorkStopped.class, () -> signal.during(() -> WorkLimit.none().take()));
    }

    @Test
    void theSignalBelongsToItsWorkAlone() throws Exception {
        StopSignal outer = new StopSignal();
        StopSignal inner = new StopSignal();
        StopSignal never = StopSignal.current();
        outer.during(() -> {
            assertSame(outer, StopSignal.current());
            assertThrows(
                    IllegalStateException.class,
                    () -> inner.during(() -> {
                        assertSame(inner, StopSignal.current());
                        throw new IllegalStateException();
                    }));
            assertSame(outer, StopSignal.current());
            return 0;
        });
        assertSame(never, StopSignal.current());
        assertNotSame(never, outer);
        assertThrows(IllegalStateException.class, never::give);
        assertFalse(never.isGiven());
    }
}
