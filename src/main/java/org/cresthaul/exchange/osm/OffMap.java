package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.LonLat;

/**
 * Stretches of the line of which the map says nothing: where it has no road, and what lies outside of the area that the
 * extracts say they cover. A road that ends where the map does runs past its border as a whole way: nothing is known of
 * it from where the map last has another road on.
 */
final class OffMap {
    /** A shorter piece off the roads is where two pieces on them meet, meters. */
    private static final double LEAST_M = 30;
    /** A line that goes on for so long behind the end of a road has left the map, not the road, meters. */
    private static final double LEFT_M = 500;
    /** How finely the line is held against what is covered, meters. */
    private static final double STEP_M = 10;

    private final DrivenPath path;
    private final MapCover cover;

    /** From where to where along the line, meters. */
    private record Stretch(double fromM, double toM) {}

    OffMap(DrivenPath path, MapCover cover) {
        this.path = path;
        this.cover = cover;
    }

    List<MapCandidate> list() {
        List<MapCandidate> found = new ArrayList<>();
        List<Stretch> outside = outside();
        for (Stretch s : outside) {
            found.add(candidate(
                    "map-edge-",
                    "Outside of the map extract",
                    "the extract says that it does not cover this part of the line",
                    s));
        }
        for (Stretch s : withoutRoad()) {
            if (outside.stream().noneMatch(o -> o.fromM <= s.fromM && o.toM >= s.toM)) {
                found.add(candidate(
                        "map-off-",
                        "No road in the map extract",
                        "the extract has no road under this part of the line",
                        s));
            }
        }
        return found;
    }

    private static MapCandidate candidate(String id, String name, String raw, Stretch s) {
        return new MapCandidate(
                MapCandidate.Kind.OFF_MAP,
                id + Math.round(s.fromM),
                name,
                (s.fromM + s.toM) / 2,
                s.fromM,
                s.toM,
                Candidate.NO_OBJECT,
                0,
                "",
                raw,
                OptionalDouble.empty(),
                0);
    }

    private List<Stretch> withoutRoad() {
        List<Stretch> found = new ArrayList<>();
        for (int i = 1; i < path.size(); i++) {
            int first = i - 1;
            while (i < path.size() && path.spot(i).edge() < 0) {
                i++;
            }
            int last = Math.max(first, i - 1);
            double lengthM = path.chainageM(last) - path.chainageM(first);
            // Where an extract does not say what it covers, a short way behind a road may be behind its edge as well.
            if (lengthM >= (cover.silent().isEmpty() ? LEFT_M : LEAST_M)) {
                found.add(new Stretch(path.chainageM(mapEnds(first)), path.chainageM(mapBegins(last))));
            } else if (lengthM >= LEAST_M) {
                found.add(new Stretch(path.chainageM(first), path.chainageM(last)));
            }
        }
        return found;
    }

    /** The last spot before this one where the map has more than the road that ends here; this one where it goes on. */
    private int mapEnds(int spot) {
        int node = path.spot(spot).node();
        if (path.spot(spot).edge() < 0 || node < 0 || path.net().leaving(node).length != 1) {
            return spot;
        }
        int at = spot;
        do {
            at--;
        } while (at > 0
                && path.spot(at).edge() >= 0
                && !hasMore(at, path.spot(spot).edge()));
        return at;
    }

    /** The same, looking forward along a road that begins here. */
    private int mapBegins(int spot) {
        int node = path.spot(spot).node();
        if (spot + 1 >= path.size()
                || path.spot(spot + 1).edge() < 0
                || node < 0
                || path.net().leaving(node).length != 1) {
            return spot;
        }
        int at = spot + 1;
        while (at + 1 < path.size()
                && path.spot(at + 1).edge() >= 0
                && !hasMore(at, path.spot(spot + 1).edge())) {
            at++;
        }
        return at;
    }

    /** Whether another way begins, ends or crosses at a spot. */
    private boolean hasMore(int spot, int edge) {
        int node = path.spot(spot).node();
        if (node < 0) {
            return false;
        }
        for (int leaving : path.net().leaving(node)) {
            if (!path.net().way(leaving).equals(path.net().way(edge))) {
                return true;
            }
        }
        return false;
    }

    private List<Stretch> outside() {
        List<Stretch> found = new ArrayList<>();
        double fromM = Double.NaN;
        double beforeM = 0;
        for (int i = 0; i < path.size(); i++) {
            LonLat a = path.spot(Math.max(0, i - 1)).at();
            LonLat b = path.spot(i).at();
            double startM = path.chainageM(Math.max(0, i - 1));
            double stepM = path.chainageM(i) - startM;
            int steps = Math.max(1, (int) Math.ceil(stepM / STEP_M));
            for (int k = 1; k <= steps; k++) {
                double t = (double) k / steps;
                double hereM = startM + t * stepM;
                boolean holds = cover.holds(k == steps ? b : between(a, b, t));
                if (!holds && Double.isNaN(fromM)) {
                    // From the last place that is covered on.
                    fromM = beforeM;
                } else if (holds && !Double.isNaN(fromM)) {
                    found.add(new Stretch(fromM, hereM));
                    fromM = Double.NaN;
                }
                beforeM = hereM;
            }
        }
        if (!Double.isNaN(fromM)) {
            found.add(new Stretch(fromM, beforeM));
        }
        return found;
    }

    private static LonLat between(LonLat a, LonLat b, double t) {
        return new LonLat(
                Flat.wrapped(a.lonDeg() + t * Flat.shortWay(b.lonDeg() - a.lonDeg())),
                a.latDeg() + t * (b.latDeg() - a.latDeg()));
    }
}
