package org.cresthaul.exchange.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.cresthaul.exchange.track.LineMending.Mended;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.geometry.WorkStopped;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;

/** Lines on the equator, where a degree either way is 111,320 m long within 0.7 %. */
class LineMendingTest {
    private static final double M = 1 / 111_320.0;

    private final List<TrackPoint> points = new ArrayList<>();

    private void add(double eastM, double northM, double timeS) {
        points.add(new TrackPoint(new LonLat(eastM * M, northM * M), timeS, points.size() + 1, points.size() + 1));
    }

    private void add(double eastM, double northM) {
        add(eastM, northM, Double.NaN);
    }

    /** Every 20 m from one place east to another. */
    private void straight(double fromM, double toM) {
        for (double x = fromM; x <= toM; x += 20) {
            add(x, 0);
        }
    }

    private Mended mended() throws InputRejected {
        return LineMending.of(List.of(new TrackLeg("a", "f", List.of(points))), 250);
    }

    private static List<String> codes(Mended mended) {
        return mended.notes().stream().map(TrackNote::code).toList();
    }

    private static int size(Mended mended) {
        return mended.legs().stream().mapToInt(l -> l.positions().size()).sum();
    }

    @Test
    void leavesASoundLineAsItIs() throws Exception {
        straight(0, 400);
        assertEquals(List.of(), codes(mended()));
        assertEquals(21, size(mended()));
    }

    @Test
    void leavesOutASpikeOfOneOrThreePoints() throws Exception {
        straight(0, 200);
        add(210, 300);
        straight(220, 400);
        add(402, 500);
        add(404, 510);
        add(406, 505);
        straight(420, 600);

        Mended mended = mended();

        assertEquals(List.of("spike", "spike"), codes(mended));
        assertEquals(12, mended.notes().get(0).line());
        assertEquals(11 + 10 + 10, size(mended));
        assertTrue(mended.legs().get(0).positions().stream().allMatch(p -> p.latDeg() == 0));
    }

    /** Out along a side road and back by the same way: driven, not strayed. */
    @Test
    void keepsASpur() throws Exception {
        straight(0, 200);
        add(200, 300);
        add(200, 0);
        straight(220, 400);

        Mended mended = mended();

        assertEquals(List.of("turns-back"), codes(mended));
        assertEquals(
                0, mended.notes().stream().filter(n -> n.code().equals("spike")).count());
        assertEquals(11 + 2 + 10, size(mended));
    }

    @Test
    void takesNullIslandForASpike() throws Exception {
        for (int i = 0; i < 10; i++) {
            points.add(new TrackPoint(new LonLat(11, 50 + i * 20 * M), Double.NaN, i + 1, i + 1));
        }
        points.add(5, new TrackPoint(new LonLat(0, 0), Double.NaN, 99, 99));

        assertEquals(List.of("spike"), codes(mended()));
        assertEquals(10, size(mended()));
    }

    @Test
    void makesOnePointOfAStop() throws Exception {
        straight(0, 200);
        double[][] around = {
            {1, 2}, {-3, 1}, {2, -2}, {0, 3}, {-2, -3}, {3, 0}, {-1, 2}, {1, -3}, {-3, -1}, {2, 3}, {0, -2}
        };
        for (double[] p : around) {
            add(200 + p[0], p[1]);
        }
        straight(220, 400);

        assertEquals(List.of("stop"), codes(mended()));
        assertEquals(21, size(mended()));
    }

    /** By its times 40 s within 5 m; and at a walking pace of 1 m/s nothing stands. */
    @Test
    void tellsAStopByItsTimes() throws Exception {
        for (int i = 0; i <= 4; i++) {
            add(i * 20, 0, i);
        }
        for (int i = 1; i <= 5; i++) {
            add(80 + i, 0, 10 * i);
        }
        for (int i = 1; i <= 20; i++) {
            add(90 + i, 0, 60 + i);
        }

        assertEquals(List.of("stop"), codes(mended()));
        assertEquals(5, mended().notes().get(0).line());
    }

    /** A loop of 6 m radius is a bend: its way is 3.14 times its width. */
    @Test
    void takesNoTightLoopForAStop() throws Exception {
        straight(0, 200);
        for (int i = 1; i < 24; i++) {
            double a = 2 * Math.PI * i / 24;
            add(200 + 6 * Math.sin(a), 6 - 6 * Math.cos(a));
        }
        straight(220, 400);

        assertEquals(0, codes(mended()).stream().filter(c -> c.equals("stop")).count());
    }

    @Test
    void leavesOutRepeatedPoints() throws Exception {
        straight(0, 100);
        add(100, 0);
        add(100, 0);
        straight(120, 200);

        assertEquals(List.of("repeated-point"), codes(mended()));
        assertEquals(7, mended().notes().get(0).line());
        assertEquals(11, size(mended()));
    }

    @Test
    void turnsAPieceWrittenEndFirst() throws Exception {
        for (int i = 0; i <= 10; i++) {
            add(200 - 20 * i, 0, 100 - i);
        }

        Mended mended = mended();

        assertEquals(List.of("reversed"), codes(mended));
        assertEquals(new LonLat(0, 0), mended.legs().get(0).positions().get(0));
    }

    private static TrackLeg leg(String name, double fromM, double toM) {
        List<TrackPoint> leg = new ArrayList<>();
        int n = (int) Math.abs(toM - fromM) / 20;
        for (int i = 0; i <= n; i++) {
            double x = fromM + (toM - fromM) * i / n;
            leg.add(new TrackPoint(new LonLat(x * M, 0), Double.NaN, i + 1, i + 1));
        }
        return new TrackLeg(name, name + ".gpx", List.of(leg));
    }

    @Test
    void turnsLegsDrawnAgainstTheTravel() throws Exception {
        Mended second = LineMending.of(List.of(leg("a", 0, 200), leg("b", 400, 200)), 250);
        Mended first = LineMending.of(List.of(leg("a", 200, 0), leg("b", 200, 400)), 250);

        assertEquals(List.of("reversed"), codes(second));
        assertEquals("b.gpx", second.notes().get(0).file());
        assertEquals(List.of("reversed"), codes(first));
        assertEquals("a.gpx", first.notes().get(0).file());
        assertEquals(second.legs().get(1).positions(), first.legs().get(1).positions());
    }

    @Test
    void bridgesAGapTellsItAndRefusesALongOne() throws Exception {
        Mended mended = LineMending.of(List.of(leg("a", 0, 200), leg("b", 400, 600)), 250);

        assertEquals(List.of("gap"), codes(mended));
        assertTrue(
                mended.notes().get(0).message().contains("200 m"),
                mended.notes().get(0).message());
        assertEquals(1, mended.gaps().size());
        InputRejected refused = assertThrows(
                InputRejected.class, () -> LineMending.of(List.of(leg("a", 0, 200), leg("b", 500, 600)), 250));
        assertEquals("gap", refused.problems().get(0).code());
        assertTrue(refused.getMessage().contains("b.gpx, line 1"), refused.getMessage());
    }

    @Test
    void refusesWhatHasNoLine() {
        InputRejected refused = assertThrows(InputRejected.class, () -> LineMending.of(List.of(), 250));
        assertEquals("no-line", refused.problems().get(0).code());
        assertEquals(
                "no-line",
                assertThrows(
                                InputRejected.class,
                                () -> LineMending.of(
                                        List.of(new TrackLeg(
                                                "a",
                                                "f",
                                                List.of(Collections.nCopies(
                                                        5, new TrackPoint(new LonLat(1, 1), Double.NaN, 1, 1))))),
                                        250))
                        .problems()
                        .get(0)
                        .code());
    }

    /** A degree and a half of the equator are 167 km. */
    @Test
    void refusesAJumpThatNobodyDrives() {
        straight(0, 200);
        points.add(new TrackPoint(new LonLat(1.5, 0), Double.NaN, 77, 77));
        InputRejected refused = assertThrows(InputRejected.class, this::mended);
        assertEquals("position-far", refused.problems().get(0).code());
        assertTrue(refused.getMessage().contains("f, line 77"), refused.getMessage());
        assertTrue(refused.getMessage().contains("167 km"), refused.getMessage());
    }

    /** Of a zigzag 0.2 m to either side nothing is left within 0.25 m, and all is kept within 0.15 m. */
    @Test
    void thinsWithinItsTolerance() {
        List<LonLat> zigzag = new ArrayList<>();
        for (int i = 0; i <= 20; i++) {
            zigzag.add(new LonLat(20 * i * M, i == 0 || i == 20 ? 0 : (i % 2 == 0 ? 0.2 : -0.2) * M));
        }
        assertEquals(2, LineThinning.of(zigzag, 0.25).size());
        assertEquals(21, LineThinning.of(zigzag, 0.15).size());
        assertEquals(21, LineThinning.of(zigzag, 0).size());
    }

    /** So that the work grows no faster than the line: of 5,000 points on a straight one every 1,024th stays. */
    @Test
    void thinsALongLinePieceByPiece() {
        List<LonLat> straight = new ArrayList<>();
        for (int i = 0; i < 5000; i++) {
            straight.add(new LonLat(i * M, 0));
        }
        assertEquals(
                List.of(0, 1024, 2048, 3072, 4096, 4999),
                LineThinning.of(straight, 0.25).stream().map(straight::indexOf).toList());
        assertThrows(WorkStopped.class, () -> {
            StopSignal stop = new StopSignal();
            stop.give();
            stop.during(() -> LineThinning.of(straight, 0.25));
        });
    }
}
