package org.cresthaul.route;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cresthaul.geometry.Finite;

/**
 * The line a route runs on, and the one measure along it: chainage, meters from its start. Immutable.
 *
 * <p>Between two positions the line is straight in longitude and latitude, as RFC 7946 section 3.1.1 has it (across the
 * 180th meridian the short way). It is cut into pieces of at most {@link #PIECE_M}; each piece is as good as its
 * geodesic (apart less than 1 mm at 60° of latitude), and chainage adds up the geodesic lengths of the pieces.
 */
public final class RouteLine {
    /** Longest piece, meters. */
    static final double PIECE_M = 150;
    /** Farthest that two neighboring positions may be apart, meters. */
    public static final double LONGEST_JUMP_M = 100_000;

    /** Positions closer than this are one, meters. */
    static final double SAME_M = 0.001;
    /** A flat frame at a place is off by less than this for pieces that come near it; see {@link #passagesWithin}. */
    private static final double ROUGH_M = 1;

    private static final int CHUNK = 64;

    private final double[] lonDeg;
    private final double[] latDeg;
    private final double[] chainageM;
    /** For pieces [CHUNK c, CHUNK (c + 1)): middle and half width in longitude (unwrapped) and latitude. */
    private final double[] chunkLon;

    private final double[] chunkLonHalf;
    private final double[] chunkLat;
    private final double[] chunkLatHalf;

    private RouteLine(Builder builder) {
        int n = builder.size;
        lonDeg = Arrays.copyOf(builder.lonDeg, n);
        latDeg = Arrays.copyOf(builder.latDeg, n);
        chainageM = Arrays.copyOf(builder.chainageM, n);
        int chunks = (n - 2) / CHUNK + 1;
        chunkLon = new double[chunks];
        chunkLonHalf = new double[chunks];
        chunkLat = new double[chunks];
        chunkLatHalf = new double[chunks];
        for (int c = 0; c < chunks; c++) {
            int from = c * CHUNK;
            double west = 0;
            double east = 0;
            double south = latDeg[from];
            double north = latDeg[from];
            double lon = 0;
            for (int i = from + 1; i <= Math.min(from + CHUNK, n - 1); i++) {
                lon += Geodesic.shortWay(lonDeg[i] - lonDeg[i - 1]);
                west = Math.min(west, lon);
                east = Math.max(east, lon);
                south = Math.min(south, latDeg[i]);
                north = Math.max(north, latDeg[i]);
            }
            chunkLon[c] = lonDeg[from] + 0.5 * (west + east);
            chunkLonHalf[c] = 0.5 * (east - west);
            chunkLat[c] = 0.5 * (south + north);
            chunkLatHalf[c] = 0.5 * (north - south);
        }
    }

    /** Takes positions one by one. Not for sharing. */
    public static final class Builder {
        private final Geodesic geodesic = new Geodesic();
        private double[] lonDeg = new double[256];
        private double[] latDeg = new double[256];
        private double[] chainageM = new double[256];
        private int size;

        /**
         * Adds the next position; one within {@link #SAME_M} of the last adds nothing.
         *
         * @return the index of the position's point on the line
         * @throws IllegalArgumentException when it is farther than {@link #LONGEST_JUMP_M} from the last
         */
        public int add(LonLat position) {
            if (size == 0) {
                return put(position.lonDeg(), position.latDeg(), 0);
            }
            double fromLon = lonDeg[size - 1];
            double fromLat = latDeg[size - 1];
            double dLon = Geodesic.shortWay(position.lonDeg() - fromLon);
            double dLat = position.latDeg() - fromLat;
            double roughM = Geodesic.roughM(fromLon, fromLat, position.lonDeg(), position.latDeg());
            if (roughM > LONGEST_JUMP_M * 1.01) {
                throw new IllegalArgumentException("positions " + roughM + " m apart are not a road");
            }
            if (roughM < SAME_M) {
                return size - 1;
            }
            // A parallel is longer than the great circle between its ends, hence the spare tenth.
            int pieces = (int) Math.ceil(Math.max(roughM, Geodesic.roughM(0, 0, 0, dLat)) * 1.1 / PIECE_M);
            for (int k = 1; k <= Math.max(1, pieces); k++) {
                double t = (double) k / Math.max(1, pieces);
                boolean last = k >= pieces;
                double lon = last ? position.lonDeg() : Geodesic.shortWay(fromLon + t * dLon);
                double lat = last ? position.latDeg() : fromLat + t * dLat;
                double stepM = geodesic.between(lonDeg[size - 1], latDeg[size - 1], lon, lat)
                        .distanceM();
                put(lon, lat, chainageM[size - 1] + stepM);
            }
            return size - 1;
        }

        private int put(double lon, double lat, double chainage) {
            if (size == lonDeg.length) {
                lonDeg = Arrays.copyOf(lonDeg, 2 * size);
                latDeg = Arrays.copyOf(latDeg, 2 * size);
                chainageM = Arrays.copyOf(chainageM, 2 * size);
            }
            lonDeg[size] = lon;
            latDeg[size] = lat;
            chainageM[size] = chainage;
            return size++;
        }

        /** Chainage of a point added before, meters. */
        public double chainageM(int point) {
            if (point >= size) {
                throw new IndexOutOfBoundsException(point);
            }
            return chainageM[point];
        }

        /** Chainage reached so far, meters. */
        public double lengthM() {
            return size == 0 ? 0 : chainageM[size - 1];
        }

        /** @throws IllegalStateException when fewer than two different positions were added */
        public RouteLine build() {
            if (size < 2) {
                throw new IllegalStateException("a line needs two different positions");
            }
            return new RouteLine(this);
        }
    }

    /** A line through positions. */
    public static RouteLine through(List<LonLat> positions) {
        Builder builder = new Builder();
        positions.forEach(builder::add);
        return builder.build();
    }

    /** How many points it has; those between the positions of the file are counted as well. */
    public int size() {
        return lonDeg.length;
    }

    public LonLat position(int point) {
        return new LonLat(lonDeg[point], latDeg[point]);
    }

    public double chainageM(int point) {
        return chainageM[point];
    }

    public double lengthM() {
        return chainageM[chainageM.length - 1];
    }

    /**
     * A place on the line and its local frame, x along the road in the direction of travel.
     *
     * @param chainageM from 0 to {@link #lengthM()}
     */
    public RoadFrame frameAt(double chainageM) {
        Finite.requireAtLeast("chainageM", 0, chainageM);
        Finite.requireAtLeast("-chainageM", -lengthM(), -chainageM);
        int i = pieceAt(chainageM);
        double t = (chainageM - this.chainageM[i]) / (this.chainageM[i + 1] - this.chainageM[i]);
        double lon = Geodesic.shortWay(lonDeg[i] + t * Geodesic.shortWay(lonDeg[i + 1] - lonDeg[i]));
        LonLat origin = new LonLat(lon, latDeg[i] + t * (latDeg[i + 1] - latDeg[i]));
        double azimuthRad = new Geodesic()
                .between(lonDeg[i], latDeg[i], lonDeg[i + 1], latDeg[i + 1])
                .azimuthRad();
        return new RoadFrame(origin, azimuthRad);
    }

    /** The piece a chainage lies in, by the point it starts at. */
    int pieceAt(double chainageM) {
        int found = Arrays.binarySearch(this.chainageM, chainageM);
        return Math.max(0, Math.min(found >= 0 ? found : -found - 2, size() - 2));
    }

    /**
     * Where the line passes within {@code withinM} of a place, in the order of travel. Each maximal stretch within that
     * distance is one passage, told by its nearest point: a route that comes by twice has two. Exact to 1 mm: the ends
     * of a piece are laid out around the place by geodesic distance and azimuth, where a piece is straight.
     *
     * @param withinM at most 300
     */
    public List<PassPoint> passagesWithin(LonLat place, double withinM) {
        Finite.requireAtLeast("-withinM", -300, -withinM);
        FlatFrame flat = new FlatFrame(place);
        Geodesic geodesic = new Geodesic();
        List<PassPoint> passages = new ArrayList<>();
        PassPoint best = null;
        int bestPiece = -2;
        for (int c = 0; c < chunkLon.length; c++) {
            if (flat.boxDistanceM(chunkLon[c], chunkLonHalf[c], chunkLat[c], chunkLatHalf[c]) > withinM + ROUGH_M) {
                continue;
            }
            for (int i = c * CHUNK; i < Math.min((c + 1) * CHUNK, size() - 1); i++) {
                if (flat.pieceDistanceM(lonDeg[i], latDeg[i], lonDeg[i + 1], latDeg[i + 1]) > withinM + ROUGH_M) {
                    continue;
                }
                PassPoint passage = foot(geodesic, place, i);
                if (Math.abs(passage.offsetM()) > withinM) {
                    continue;
                }
                if (best != null && i == bestPiece + 1) {
                    if (Math.abs(passage.offsetM()) < Math.abs(best.offsetM())) {
                        best = passage;
                        passages.set(passages.size() - 1, best);
                    }
                } else {
                    best = passage;
                    passages.add(best);
                }
                bestPiece = i;
            }
        }
        return passages;
    }

    private PassPoint foot(Geodesic geodesic, LonLat place, int i) {
        geodesic.between(place.lonDeg(), place.latDeg(), lonDeg[i], latDeg[i]);
        double ax = geodesic.distanceM() * Math.sin(geodesic.azimuthRad());
        double ay = geodesic.distanceM() * Math.cos(geodesic.azimuthRad());
        geodesic.between(place.lonDeg(), place.latDeg(), lonDeg[i + 1], latDeg[i + 1]);
        double ux = geodesic.distanceM() * Math.sin(geodesic.azimuthRad()) - ax;
        double uy = geodesic.distanceM() * Math.cos(geodesic.azimuthRad()) - ay;
        double t = clamped(-(ax * ux + ay * uy) / (ux * ux + uy * uy));
        double fx = ax + t * ux;
        double fy = ay + t * uy;
        boolean right = ux * fy - uy * fx >= 0;
        return new PassPoint(
                chainageM[i] + t * (chainageM[i + 1] - chainageM[i]), (right ? 1 : -1) * Math.hypot(fx, fy));
    }

    private static double clamped(double t) {
        return t > 0 ? Math.min(1, t) : 0;
    }

    /** About how far a place is from the line, meters: for telling a person that it is far. */
    public double roughDistanceM(LonLat place) {
        FlatFrame flat = new FlatFrame(place);
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < size(); i += CHUNK) {
            least = Math.min(least, flat.pieceDistanceM(lonDeg[i], latDeg[i], lonDeg[i], latDeg[i]));
        }
        for (int c = 0; c < chunkLon.length; c++) {
            if (flat.boxDistanceM(chunkLon[c], chunkLonHalf[c], chunkLat[c], chunkLatHalf[c]) < least) {
                for (int i = c * CHUNK; i < Math.min((c + 1) * CHUNK, size() - 1); i++) {
                    least = Math.min(least, flat.pieceDistanceM(lonDeg[i], latDeg[i], lonDeg[i + 1], latDeg[i + 1]));
                }
            }
        }
        return least;
    }

    /** The plane that touches the ellipsoid at a place: longitudes and latitudes scaled to meters there. */
    private static final class FlatFrame {
        private static final double A_M = 6_378_137;
        private static final double E2 = 0.00669437999014;

        private final LonLat origin;
        private final double xPerDeg;
        private final double yPerDeg;

        FlatFrame(LonLat origin) {
            this.origin = origin;
            double sin = Math.sin(Math.toRadians(origin.latDeg()));
            double w2 = 1 - E2 * sin * sin;
            xPerDeg = Math.toRadians(A_M / Math.sqrt(w2) * Math.cos(Math.toRadians(origin.latDeg())));
            yPerDeg = Math.toRadians(A_M * (1 - E2) / (w2 * Math.sqrt(w2)));
        }

        double boxDistanceM(double lon, double lonHalf, double lat, double latHalf) {
            double x = (Math.abs(Geodesic.shortWay(lon - origin.lonDeg())) - lonHalf) * xPerDeg;
            double y = (Math.abs(lat - origin.latDeg()) - latHalf) * yPerDeg;
            return Math.hypot(Math.max(0, x), Math.max(0, y));
        }

        double pieceDistanceM(double fromLon, double fromLat, double toLon, double toLat) {
            double ax = Geodesic.shortWay(fromLon - origin.lonDeg()) * xPerDeg;
            double ay = (fromLat - origin.latDeg()) * yPerDeg;
            double ux = Geodesic.shortWay(toLon - fromLon) * xPerDeg;
            double uy = (toLat - fromLat) * yPerDeg;
            double t = clamped(-(ax * ux + ay * uy) / (ux * ux + uy * uy));
            return Math.hypot(ax + t * ux, ay + t * uy);
        }
    }
}
