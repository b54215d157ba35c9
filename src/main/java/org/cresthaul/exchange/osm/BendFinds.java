package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.exchange.osm.MapCandidate.Kind;
import org.cresthaul.route.LonLat;

/**
 * Sharp bends of the driven roads as the map draws them, corner by corner: the search for tight turns of a line, made
 * for what a receiver wavers, sees only where a line ends up, and so no corner that is followed at once by a bend back.
 */
final class BendFinds {
    /** Over this length corners are one bend, meters: as for tight turns of a line. */
    private static final double WINDOW_M = 45;

    private static final double LEAST_RAD = Math.toRadians(55);

    private final DrivenPath path;

    /** Corners from one spot to another, the last one in it. */
    private record Window(int first, int last, double turnRad, double lengthM) {}

    BendFinds(DrivenPath path) {
        this.path = path;
    }

    List<MapCandidate> list() {
        double[] turn = new double[path.size()];
        int before = -1;
        for (int i = 1; i + 1 < path.size(); i++) {
            // Spots in one place are one corner, at the last of them.
            before = path.chainageM(i) - path.chainageM(i - 1) > 0.01 ? i - 1 : before;
            if (path.spot(i).node() >= 0 && before >= 0 && path.chainageM(i + 1) - path.chainageM(i) > 0.01) {
                turn[i] = turnRad(
                        path.spot(before).at(),
                        path.spot(i).at(),
                        path.spot(i + 1).at());
            }
        }
        List<Window> windows = new ArrayList<>();
        for (int i = 0; i < turn.length; i++) {
            double sum = 0;
            for (int k = i; k < turn.length && path.chainageM(k) - path.chainageM(i) <= WINDOW_M; k++) {
                sum += turn[k];
                if (Math.abs(sum) >= LEAST_RAD && turn[i] != 0 && turn[k] != 0) {
                    windows.add(new Window(i, k, sum, path.chainageM(k) - path.chainageM(i)));
                }
            }
        }
        windows.sort(Comparator.comparingDouble((Window w) -> -Math.abs(w.turnRad))
                .thenComparingDouble(Window::lengthM)
                .thenComparingInt(Window::first));
        boolean[] taken = new boolean[turn.length];
        List<MapCandidate> found = new ArrayList<>();
        for (Window window : windows) {
            boolean free = true;
            for (int i = window.first; i <= window.last; i++) {
                free &= !taken[i];
            }
            if (free) {
                found.add(candidate(window, turn));
                Arrays.fill(taken, window.first, window.last + 1, true);
            }
        }
        return found;
    }

    private static double turnRad(LonLat a, LonLat b, LonLat c) {
        Flat flat = Flat.at(b);
        double in = Math.atan2(-flat.y(a.latDeg()), -flat.x(a.lonDeg()));
        double out = Math.atan2(flat.y(c.latDeg()), flat.x(c.lonDeg()));
        return Math.IEEEremainder(out - in, 2 * Math.PI);
    }

    private MapCandidate candidate(Window window, double[] turn) {
        int sharpest = window.first;
        for (int i = window.first; i <= window.last; i++) {
            sharpest = Math.abs(turn[i]) > Math.abs(turn[sharpest]) ? i : sharpest;
        }
        long node = path.net().strip().nodeId(path.spot(sharpest).node());
        double fromM = path.chainageM(window.first);
        double toM = path.chainageM(window.last);
        String hand = window.turnRad > 0 ? "left" : "right";
        return new MapCandidate(
                Kind.TURN,
                "map-n" + node + "-turn",
                "Sharp bend to the " + hand + ", " + Math.round(Math.toDegrees(Math.abs(window.turnRad))) + " degrees",
                (fromM + toM) / 2,
                fromM,
                toM,
                "node " + node,
                0,
                "",
                "as the roads are drawn",
                OptionalDouble.empty(),
                0);
    }
}
