package org.cresthaul.clearance.bound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;

/**
 * What counts of one unit's outlines toward a line on one side of them: the vertices that bulge toward it, the segments
 * that a vertex of the line can be nearest to, and the stretches that are so nearly straight that their chord stands
 * for them until a closer look is needed.
 */
public final class FrameOutline {
    /** No unit is ever pitched more than this, radians; the bounds say so when one is. */
    public static final double MOST_PITCH = 0.55;

    /** A stretch counts as nearly straight with this much between it and its chord, meters. */
    private static final double MOST_OFF_CHORD_M = 0.02;

    /** A chord pays when it spares at least so many vertices. */
    private static final int LEAST_SPARED = 2;

    private static final double STEEPEST_CHORD_RAD = 0.3;

    /** +1: the unit is above the line; -1: the line is above the unit. */
    final int side;

    /** Vertices that bulge toward the line, and outline ends. */
    public final FramePoint[] vertex;

    final double[] vx;
    final double[] vh;
    public final int rearmost;
    final int foremost;
    final double lengthM;
    final double heightM;
    /** Segments that line vertices can be nearest to: rear and front end. */
    public final FramePoint[][] face;
    /**
     * The faces, then the chords of the nearly straight stretches: rear and front end in the frame, and their angle.
     */
    public final double[] rx;

    final double[] rh;
    public final double[] fx;
    final double[] fh;
    final double[] angle;
    public final Straight[] straights;
    /** Vertices and faces that are in no nearly straight stretch; its two ends are not in it. */
    public final int[] loneVertices;

    public final int[] loneFaces;

    /**
     * A nearly straight stretch, from one vertex to another of the same outline.
     *
     * <p>At every pitch within {@value #MOST_PITCH} rad each point of it is over or under its chord, and nowhere nearer
     * to the line than the chord by more than {@code offM}, measured vertically in the world.
     *
     * @param rear index of its first vertex; all up to {@code front} are on it
     * @param firstFace index of its first face
     * @param endFace index past its last
     */
    public record Straight(int rear, int front, int firstFace, int endFace, double offM) {
        boolean holdsVertex(int i) {
            return i > rear && i < front;
        }

        boolean holdsFace(int k) {
            return k >= firstFace && k < endFace;
        }
    }

    /**
     * The outlines of one side.
     *
     * @param steepest slope of the line anywhere, absolute: segments that always are steeper have no vertex of the line
     *     nearest to them, for along them the gap falls all the way to an end
     */
    FrameOutline(List<Outline> outlines, int side, double steepest) {
        this.side = side;
        List<FramePoint> bulges = new ArrayList<>();
        List<FramePoint[]> faces = new ArrayList<>();
        List<Straight> nearly = new ArrayList<>();
        double steep = Math.atan(steepest) + MOST_PITCH;
        for (Outline outline : outlines) {
            List<FramePoint> points = outline.points();
            List<Mark> marks = new ArrayList<>();
            for (int i = 0; i < points.size(); i++) {
                FramePoint p = points.get(i);
                if (i > 0 && Math.abs(angle(points.get(i - 1), p)) <= steep) {
                    faces.add(new FramePoint[] {points.get(i - 1), p});
                }
                boolean end = i == 0 || i == points.size() - 1;
                if (end || sticksOut(points.get(i - 1), p, points.get(i + 1))) {
                    marks.add(new Mark(i, bulges.size(), faces.size()));
                    bulges.add(p);
                }
            }
            addStraights(points, marks, nearly);
        }
        vertex = bulges.toArray(new FramePoint[0]);
        vx = bulges.stream().mapToDouble(FramePoint::xM).toArray();
        vh = bulges.stream().mapToDouble(FramePoint::hM).toArray();
        int rearEnd = 0;
        int frontEnd = 0;
        for (int i = 0; i < vx.length; i++) {
            rearEnd = vx[i] < vx[rearEnd] ? i : rearEnd;
            frontEnd = vx[i] > vx[frontEnd] ? i : frontEnd;
        }
        rearmost = rearEnd;
        foremost = frontEnd;
        lengthM = vx[foremost] - vx[rearmost];
        heightM =
                Arrays.stream(vh).max().orElseThrow() - Arrays.stream(vh).min().orElseThrow();
        face = faces.toArray(new FramePoint[0][]);
        straights = nearly.toArray(new Straight[0]);
        nearly.forEach(s -> faces.add(new FramePoint[] {vertex[s.rear], vertex[s.front]}));
        rx = faces.stream().mapToDouble(f -> f[0].xM()).toArray();
        rh = faces.stream().mapToDouble(f -> f[0].hM()).toArray();
        fx = faces.stream().mapToDouble(f -> f[1].xM()).toArray();
        fh = faces.stream().mapToDouble(f -> f[1].hM()).toArray();
        angle = faces.stream().mapToDouble(f -> angle(f[0], f[1])).toArray();
        loneVertices = IntStream.range(0, vertex.length)
                .filter(i -> nearly.stream().noneMatch(s -> s.holdsVertex(i)))
                .toArray();
        loneFaces = IntStream.range(0, face.length)
                .filter(k -> nearly.stream().noneMatch(s -> s.holdsFace(k)))
                .toArray();
    }

    /** Where the chord of a nearly straight stretch is among faces and chords. */
    public int chordOf(int straight) {
        return face.length + straight;
    }

    /** A bulging point of one outline: its place there, among all vertices, and how many faces lie before it. */
    private record Mark(int point, int vertex, int face) {}

    /** From each vertex the longest stretch that is nearly straight, none over another. */
    private void addStraights(List<FramePoint> points, List<Mark> marks, List<Straight> into) {
        for (int from = 0; from < marks.size(); ) {
            int next = from + 1;
            for (int to = marks.size() - 1; to > from + LEAST_SPARED; to--) {
                Mark rear = marks.get(from);
                Mark front = marks.get(to);
                double off = offChord(points.subList(rear.point, front.point + 1));
                if (off <= MOST_OFF_CHORD_M) {
                    double tilt = MOST_PITCH + Math.abs(angle(points.get(rear.point), points.get(front.point)));
                    into.add(new Straight(rear.vertex, front.vertex, rear.face, front.face, off / Math.cos(tilt)));
                    next = to;
                    break;
                }
            }
            from = next;
        }
    }

    /**
     * How far points reach beyond the chord of the first and last toward the line; infinite where not nearly straight.
     */
    private double offChord(List<FramePoint> points) {
        FramePoint rear = points.get(0);
        FramePoint front = points.get(points.size() - 1);
        double angle = Math.abs(angle(rear, front));
        if (angle > STEEPEST_CHORD_RAD) {
            return Double.POSITIVE_INFINITY;
        }
        double length = Math.hypot(front.xM() - rear.xM(), front.hM() - rear.hM());
        double alongX = (front.xM() - rear.xM()) / length;
        double alongH = (front.hM() - rear.hM()) / length;
        // However the unit is pitched, a point this far off the chord must not come to lie beyond its ends.
        double tilt = Math.tan(MOST_PITCH + angle);
        double most = 0;
        for (FramePoint p : points.subList(1, points.size() - 1)) {
            double along = (p.xM() - rear.xM()) * alongX + (p.hM() - rear.hM()) * alongH;
            double above = (p.hM() - rear.hM()) * alongX - (p.xM() - rear.xM()) * alongH;
            if (Math.min(along, length - along) < Math.abs(above) * tilt) {
                return Double.POSITIVE_INFINITY;
            }
            most = Math.max(most, -side * above);
        }
        return most;
    }

    /** Toward the line, or the tip of a rod without a width, where the outline goes back the way it came. */
    private boolean sticksOut(FramePoint a, FramePoint b, FramePoint c) {
        double turn = side * turnAt(a, b, c);
        return turn > 0
                || turn == 0
                        && a.xM() == b.xM()
                        && b.xM() == c.xM()
                        && side * (a.hM() - b.hM()) > 0
                        && side * (c.hM() - b.hM()) > 0;
    }

    private static double turnAt(FramePoint a, FramePoint b, FramePoint c) {
        return (b.xM() - a.xM()) * (c.hM() - b.hM()) - (b.hM() - a.hM()) * (c.xM() - b.xM());
    }

    private static double angle(FramePoint rear, FramePoint front) {
        return Math.atan2(front.hM() - rear.hM(), front.xM() - rear.xM());
    }
}
