package org.cresthaul.posture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;
import org.junit.jupiter.api.Test;

class DeckSagTest {
    private static final double SAG_M = 0.020;
    private static final Outline DRAWN = new Outline(List.of(
            new FramePoint(-10, 0.4, "ramp"),
            new FramePoint(-9, 0.3, "main beam"),
            new FramePoint(-2, 0.3, "main beam"),
            new FramePoint(-1, 0.3, "deck front")));

    private final Outline sagging = DeckSag.lower(DRAWN, -9, -1, SAG_M);

    /** The parabola 4 · sag · t (1 − t) below the drawn deck; a tangent polygon lies at most 0.1 mm below it. */
    @Test
    void liesAtOrJustBelowTheParabola() {
        for (FramePoint p : sagging.points()) {
            double t = Math.max(0, (p.xM() + 9) / 8);
            double drawn = p.xM() < -9 ? 0.3 - 0.1 * (p.xM() + 9) : 0.3;
            double below = drawn - 4 * SAG_M * t * (1 - t) - p.hM();
            assertTrue(below > -1e-12 && below < 1e-4 + 1e-12, "at " + p.xM() + ": " + below);
        }
    }

    @Test
    void bendsWithinAPartCarryItsNameAndBendsBetweenTwoPartsNone() {
        assertTrue(sagging.points().size() > DRAWN.points().size());
        for (FramePoint p : sagging.points()) {
            String part = p.xM() >= -9 && p.xM() <= -2 ? "main beam" : p.xM() == -1 ? "deck front" : "";
            assertEquals(p.xM() == -10 ? "ramp" : part, p.part(), "at " + p.xM());
        }
        Set<String> names = sagging.points().stream().map(FramePoint::part).collect(Collectors.toSet());
        assertEquals(Set.of("ramp", "main beam", "", "deck front"), names);
    }

    @Test
    void aPlaceOnASegmentIsOfAPartWhenBothEndsAre() {
        FramePoint rear = new FramePoint(0, 1, "step");
        assertEquals(new FramePoint(0.5, 1.5, "step"), rear.toward(new FramePoint(2, 3, "step"), 0.25));
        assertEquals(new FramePoint(0.5, 1.5, ""), rear.toward(new FramePoint(2, 3, "box"), 0.25));
    }
}
