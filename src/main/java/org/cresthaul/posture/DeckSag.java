package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;

/**
 * The underside of a deck that sags under its load: the drawn underside lowered by a parabola, 4·sag·t(1 − t) from deck
 * rear (t = 0) to deck front (t = 1).
 *
 * <p>The parabola is replaced by its tangents, so the result is a polyline that never lies above the sagging deck and
 * at most {@value #WITHIN_M} m below it.
 */
public final class DeckSag {
    static final double WITHIN_M = 1e-4;

    private DeckSag() {}

    /** The underside between its ends, lowered between deck rear and deck front; unchanged without sag. */
    public static Outline lower(Outline underside, double rearXM, double frontXM, double sagM) {
        if (sagM == 0) {
            return underside;
        }
        int pieces = (int) Math.ceil(Math.sqrt(sagM / WITHIN_M));
        double length = frontXM - rearXM;
        TreeSet<Double> bends = new TreeSet<>(List.of(rearXM, frontXM));
        for (int i = 0; i < pieces; i++) {
            bends.add(rearXM + length * (i + 0.5) / pieces);
        }
        List<FramePoint> lowered = new ArrayList<>();
        List<FramePoint> points = underside.points();
        for (int i = 0; i < points.size(); i++) {
            FramePoint p = points.get(i);
            if (i > 0) {
                FramePoint q = points.get(i - 1);
                for (double x : bends.subSet(q.xM(), false, p.xM(), false)) {
                    FramePoint drawn = q.toward(p, (x - q.xM()) / (p.xM() - q.xM()));
                    lowered.add(
                            new FramePoint(x, drawn.hM() - drop((x - rearXM) / length, pieces, sagM), drawn.part()));
                }
            }
            double t = (p.xM() - rearXM) / length;
            lowered.add(new FramePoint(p.xM(), p.hM() - drop(t, pieces, sagM), p.part()));
        }
        return new Outline(lowered);
    }

    /** Depth of the tangent polygon at {@code t}: the least of the tangents' depths, each at least the parabola's. */
    private static double drop(double t, int pieces, double sagM) {
        if (t <= 0 || t >= 1) {
            return 0;
        }
        // The polygon touches the parabola at i / pieces; the shallowest tangent at t is that of the nearest one.
        double touch = Math.rint(t * pieces) / pieces;
        return 4 * sagM * (touch * (1 - touch) + (1 - 2 * touch) * (t - touch));
    }
}
