package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.paper.Drawing.Anchor;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Drawing.Shape;
import org.cresthaul.sheet.Envelope;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;

/**
 * The combination from its right side on level ground, dimensioned: length, height, greatest height while raised,
 * spacing and load of every axle. Figures are rounded as the envelope's rows are.
 */
final class EnvelopeDrawing {
    private static final double WIDTH = 960;
    private static final double LEFT = 26;
    private static final double RIGHT = 150;
    private static final double SIZE = 14;
    private static final double TICK = 5;

    private final Envelope envelope;
    private final RoundedFigures figures;
    private final List<Shape> shapes = new ArrayList<>();
    private final double perM;
    private final double topM;

    private EnvelopeDrawing(Envelope envelope, UnitSystem units) {
        this.envelope = envelope;
        figures = new RoundedFigures(units);
        perM = (WIDTH - LEFT - RIGHT) / envelope.lengthM();
        topM = Math.max(envelope.heightM(), envelope.raisedHeightM() == null ? 0 : envelope.raisedHeightM()) + 0.4;
    }

    static Drawing of(Envelope envelope, UnitSystem units) {
        return new EnvelopeDrawing(envelope, units).drawing();
    }

    private double x(double xM) {
        return LEFT + (xM - envelope.rearXM()) * perM;
    }

    private double y(double zM) {
        return (topM - zM) * perM;
    }

    private Drawing drawing() {
        for (Envelope.Shape o : envelope.outlines()) {
            shapes.add(new Drawing.Path(
                    List.of(o.points().stream()
                            .map(p -> new Point(x(p.get(0)), y(p.get(1))))
                            .toList()),
                    true,
                    o.load() ? Ink.LOAD : Ink.STEEL,
                    Ink.LINE,
                    1,
                    false));
        }
        for (Envelope.Wheel w : envelope.wheels()) {
            shapes.add(
                    new Drawing.Circle(new Point(x(w.xM()), y(w.hM())), w.radiusM() * perM, Ink.TIRE, Ink.LINE, 0.8));
        }
        double ground = y(0);
        shapes.add(Drawing.line(Ink.LINE, 1.4, new Point(LEFT - 10, ground), new Point(WIDTH - 10, ground)));
        double chain = ground + 30;
        axles(chain);
        double length = chain + 3 * (SIZE + 4) + 12;
        dimension(
                x(envelope.rearXM()), x(envelope.frontXM()), length, "length " + figures.distance(envelope.lengthM()));
        height(WIDTH - RIGHT + 12, envelope.heightM(), "height " + figures.required(envelope.heightM()), -4);
        if (envelope.raisedHeightM() != null) {
            height(
                    WIDTH - RIGHT + 24,
                    envelope.raisedHeightM(),
                    "raised " + figures.required(envelope.raisedHeightM()),
                    14);
        }
        return new Drawing(
                WIDTH,
                length + 10,
                "Side view of set-up " + envelope.letter() + " on level ground: length, height, spacing and"
                        + " load of every axle",
                shapes);
    }

    /**
     * Spacings between axles that stand, and what each carries, in two rows in turn where they would run into each
     * other.
     */
    private void axles(double y) {
        List<Envelope.Wheel> down =
                envelope.wheels().stream().filter(w -> !w.lifted()).toList();
        for (int i = 0; i < down.size(); i++) {
            double at = x(down.get(i).xM());
            shapes.add(Drawing.line(Ink.SOFT, 0.7, new Point(at, y(0) + 4), new Point(at, y + TICK)));
            if (i > 0) {
                double before = x(down.get(i - 1).xM());
                shapes.add(Drawing.line(Ink.GUIDE, 0.9, new Point(at, y), new Point(before, y)));
                shapes.add(new Drawing.Lettering(
                        new Point((at + before) / 2, y - 5 - (i % 2) * (SIZE - 1)),
                        Anchor.MIDDLE,
                        SIZE - 1,
                        false,
                        Ink.LINE,
                        figures.spacing(down.get(i).behindM())));
            }
            if (down.get(i).loadKg() != null) {
                shapes.add(new Drawing.Lettering(
                        new Point(at, y + SIZE + 6 + (i % 2) * (SIZE + 2)),
                        Anchor.MIDDLE,
                        SIZE - 1,
                        true,
                        Ink.LINE,
                        figures.weight(down.get(i).loadKg())));
            }
        }
    }

    private void dimension(double fromX, double toX, double y, String label) {
        shapes.add(Drawing.line(Ink.GUIDE, 0.9, new Point(fromX, y), new Point(toX, y)));
        for (double x : new double[] {fromX, toX}) {
            shapes.add(Drawing.line(Ink.GUIDE, 0.9, new Point(x, y - TICK), new Point(x, y + TICK)));
        }
        shapes.add(
                new Drawing.Lettering(new Point((fromX + toX) / 2, y - 4), Anchor.MIDDLE, SIZE, true, Ink.LINE, label));
    }

    private void height(double x, double zM, String label, double dy) {
        shapes.add(Drawing.line(Ink.GUIDE, 0.9, new Point(x, y(0)), new Point(x, y(zM))));
        shapes.add(Drawing.line(Ink.GUIDE, 0.9, new Point(x - TICK, y(zM)), new Point(x + TICK, y(zM))));
        shapes.add(new Drawing.Lettering(
                new Point(WIDTH - RIGHT + 32, (y(0) + y(zM)) / 2 + dy), Anchor.START, SIZE, true, Ink.LINE, label));
    }
}
