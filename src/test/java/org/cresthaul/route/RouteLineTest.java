package org.cresthaul.route;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RouteLineTest {
    /** WGS 84, as published: semi-major axis and first eccentricity squared. */
    private static final double A_M = 6_378_137;

    private static final double E2 = 0.00669437999014;

    private static RouteLine line(double... lonLat) {
        return RouteLine.through(IntStream.range(0, lonLat.length / 2)
                .mapToObj(i -> new LonLat(lonLat[2 * i], lonLat[2 * i + 1]))
                .toList());
    }

    @Test
    void oneDegreeOfTheEquatorHasItsClosedForm() {
        assertEquals(Math.toRadians(A_M), line(10, 0, 10.5, 0, 11, 0).lengthM(), 0.0001);
    }

    @ParameterizedTest(name = "along {0}° of latitude")
    @ValueSource(doubles = {-70, -33.5, 20, 44.6, 60, 80})
    void aLineAtOneLatitudeFollowsTheParallelAndNotTheGeodesic(double latDeg) {
        // RFC 7946 section 3.1.1. Closed form: N cos(lat) times the difference of longitude.
        double sin = Math.sin(Math.toRadians(latDeg));
        double parallelM = A_M / Math.sqrt(1 - E2 * sin * sin) * Math.cos(Math.toRadians(latDeg)) * Math.toRadians(0.9);
        RouteLine line = line(-93.4, latDeg, -92.5, latDeg);
        assertEquals(parallelM, line.lengthM(), 0.001);
        for (int i = 0; i < line.size(); i++) {
            assertEquals(latDeg, line.position(i).latDeg(), 1e-12);
        }
    }

    @Test
    void aMeridianHasItsIntegral() {
        // M(lat) = a (1 - e²) / (1 - e² sin² lat)^(3/2), integrated by Simpson's rule
        int n = 2000;
        double from = Math.toRadians(44);
        double step = Math.toRadians(0.8) / n;
        double sum = 0;
        for (int i = 0; i <= n; i++) {
            double sin = Math.sin(from + i * step);
            double m = A_M * (1 - E2) / Math.pow(1 - E2 * sin * sin, 1.5);
            sum += m * (i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2);
        }
        assertEquals(sum * step / 3, line(-93, 44, -93, 44.8).lengthM(), 0.001);
        assertEquals(sum * step / 3, line(-93, 44.8, -93, 44.35, -93, 44).lengthM(), 0.001);
    }

    @Test
    void crossesThe180thMeridianTheShortWay() {
        RouteLine across = line(179.995, 51, -179.995, 51.001);
        RouteLine elsewhere = line(9.995, 51, 10.005, 51.001);
        assertEquals(elsewhere.lengthM(), across.lengthM(), 1e-6);
        LonLat middle = across.frameAt(across.lengthM() / 2).origin();
        assertEquals(180, Math.abs(middle.lonDeg()), 0.0001);
        List<PassPoint> passages = across.passagesWithin(new LonLat(180, 51.0005), 30);
        assertEquals(1, passages.size());
        assertEquals(across.lengthM() / 2, passages.get(0).chainageM(), 0.01);
        assertEquals(passages, across.passagesWithin(new LonLat(-180, 51.0005), 30));
    }

    @Test
    void nearestPointAgreesWithAPlainSearchInSpace() {
        long seed = 20260209;
        System.out.println("hazards on lines, seed " + seed);
        SplittableRandom random = new SplittableRandom(seed);
        int found = 0;
        double worstM = 0;
        double worstAlongM = 0;
        for (int k = 0; k < 400; k++) {
            double lat = random.nextDouble(-70, 70);
            double perDegM = 111_000 * Math.cos(Math.toRadians(lat));
            List<LonLat> positions = new ArrayList<>();
            double lon = random.nextDouble(-179, 179);
            double heading = random.nextDouble(2 * Math.PI);
            double y = lat;
            for (int i = 0; i < 6; i++) {
                positions.add(new LonLat(lon, y));
                heading += random.nextDouble(-0.6, 0.6);
                double stepM = random.nextBoolean() ? random.nextDouble(2, 60) : random.nextDouble(60, 4000);
                lon += stepM * Math.sin(heading) / perDegM;
                y += stepM * Math.cos(heading) / 111_000;
            }
            int segment = random.nextInt(5);
            double t = random.nextDouble();
            LonLat a = positions.get(segment);
            LonLat b = positions.get(segment + 1);
            double offM = random.nextDouble(-25, 25);
            double normal =
                    Math.atan2((b.lonDeg() - a.lonDeg()) * perDegM, (b.latDeg() - a.latDeg()) * 111_000) + Math.PI / 2;
            LonLat hazard = new LonLat(
                    a.lonDeg() + t * (b.lonDeg() - a.lonDeg()) + offM * Math.sin(normal) / perDegM,
                    a.latDeg() + t * (b.latDeg() - a.latDeg()) + offM * Math.cos(normal) / 111_000);
            RouteLine line = RouteLine.through(positions);
            List<PassPoint> passages = line.passagesWithin(hazard, 30);
            double plainM = plainNearest(positions, hazard);
            assertTrue(!passages.isEmpty(), "case " + k);
            PassPoint nearest = passages.stream()
                    .min((p, q) -> Double.compare(Math.abs(p.offsetM()), Math.abs(q.offsetM())))
                    .orElseThrow();
            found++;
            worstM = Math.max(worstM, Math.abs(Math.abs(nearest.offsetM()) - plainM));
            LonLat foot = line.frameAt(nearest.chainageM()).origin();
            // Where two feet are equally near, either will do: compare the distances, not the places.
            double footM = chordM(space(hazard.lonDeg(), hazard.latDeg()), space(foot.lonDeg(), foot.latDeg()));
            worstAlongM = Math.max(worstAlongM, Math.abs(footM - Math.abs(nearest.offsetM())));
            if (passages.size() == 1) {
                assertEquals(offM >= 0, nearest.offsetM() >= 0, "side, case " + k);
            }
        }
        assertEquals(400, found);
        assertTrue(worstM < 0.005, "worst " + worstM);
        assertTrue(worstAlongM < 0.005, "worst foot " + worstAlongM);
    }

    /** Least distance found by stepping along each segment, straight in longitude and latitude, and then finer. */
    private static double plainNearest(List<LonLat> positions, LonLat hazard) {
        double[] p = space(hazard.lonDeg(), hazard.latDeg());
        double best = Double.POSITIVE_INFINITY;
        for (int i = 1; i < positions.size(); i++) {
            LonLat a = positions.get(i - 1);
            LonLat b = positions.get(i);
            double from = 0;
            double to = 1;
            for (int round = 0; round < 6; round++) {
                double bestT = from;
                double least = Double.POSITIVE_INFINITY;
                for (int k = 0; k <= 200; k++) {
                    double t = from + (to - from) * k / 200;
                    double d = chordM(
                            p,
                            space(
                                    a.lonDeg() + t * (b.lonDeg() - a.lonDeg()),
                                    a.latDeg() + t * (b.latDeg() - a.latDeg())));
                    if (d < least) {
                        least = d;
                        bestT = t;
                    }
                }
                double width = (to - from) / 100;
                from = Math.max(0, bestT - width);
                to = Math.min(1, bestT + width);
                best = Math.min(best, least);
            }
        }
        return best;
    }

    private static double[] space(double lonDeg, double latDeg) {
        double lat = Math.toRadians(latDeg);
        double lon = Math.toRadians(lonDeg);
        double n = A_M / Math.sqrt(1 - E2 * Math.sin(lat) * Math.sin(lat));
        return new double[] {
            n * Math.cos(lat) * Math.cos(lon), n * Math.cos(lat) * Math.sin(lon), n * (1 - E2) * Math.sin(lat)
        };
    }

    private static double chordM(double[] a, double[] b) {
        return Math.hypot(Math.hypot(a[0] - b[0], a[1] - b[1]), a[2] - b[2]);
    }

    @Test
    void saysOnWhichSideAndMirrorsWhenTravelIsReversed() {
        LonLat north = new LonLat(-93.05, 44.6001);
        RouteLine east = line(-93.1, 44.6, -93, 44.6);
        RouteLine west = line(-93, 44.6, -93.1, 44.6);
        PassPoint there = east.passagesWithin(north, 30).get(0);
        PassPoint back = west.passagesWithin(north, 30).get(0);
        assertEquals(-11.1, there.offsetM(), 0.05);
        assertEquals(11.1, back.offsetM(), 0.05);
        assertEquals(east.lengthM(), there.chainageM() + back.chainageM(), 0.001);
    }

    @Test
    void aRouteThatComesByTwiceHasTwoPassages() {
        RouteLine outAndBack = line(-93.1, 44.6, -93, 44.6, -93, 44.601, -93, 44.6, -93.1, 44.6);
        List<PassPoint> passages = outAndBack.passagesWithin(new LonLat(-93.05, 44.6), 30);
        assertEquals(2, passages.size());
        assertEquals(
                outAndBack.lengthM(),
                passages.get(0).chainageM() + passages.get(1).chainageM(),
                0.01);
    }

    @Test
    void aBendNearAHazardIsOnePassage() {
        RouteLine bend = line(-93.1, 44.6, -93.05, 44.6, -93.05, 44.65);
        assertEquals(1, bend.passagesWithin(new LonLat(-93.0501, 44.6001), 30).size());
        assertEquals(0, bend.passagesWithin(new LonLat(-93.06, 44.61), 30).size());
        assertEquals(790, bend.roughDistanceM(new LonLat(-93.06, 44.61)), 10);
    }

    @Test
    void theLineAndItsFramesAgree() {
        RouteLine line = line(-93.1, 44.6, -93.05, 44.62, -93.05, 44.6, -92.9, 44.61);
        for (int k = 0; k <= 100; k++) {
            double chainageM = k == 100 ? line.lengthM() : line.lengthM() * k / 100;
            RoadFrame frame = line.frameAt(chainageM);
            for (double rightM : new double[] {-20, 0, 20}) {
                LonLat place = frame.at(0, rightM);
                double nearest = line.passagesWithin(place, 30).stream()
                        .mapToDouble(p -> Math.hypot(p.chainageM() - chainageM, p.offsetM() - rightM))
                        .min()
                        .orElseThrow();
                // Within 30 m of a bend the nearest point may be on the other arm.
                boolean bend = IntStream.range(0, line.size() - 1)
                        .anyMatch(
                                i -> Math.abs(line.chainageM(i) - chainageM) < 60 && Math.abs(turnRad(line, i)) > 0.01);
                assertTrue(bend || nearest < 0.002, chainageM + " m, " + rightM + " m: " + nearest);
            }
        }
        RoadFrame north = line(-93, 44, -93, 44.5).frameAt(1000);
        assertEquals(0, north.azimuthRad(), 1e-9);
        assertEquals(north.origin().latDeg(), north.at(0, 50).latDeg(), 1e-8);
        assertTrue(north.at(0, 50).lonDeg() > -93, "right of north is east");
        assertTrue(north.at(-50, 0).latDeg() < north.origin().latDeg());
    }

    private static double turnRad(RouteLine line, int point) {
        if (point == 0) {
            return 0;
        }
        return line.frameAt(line.chainageM(point)).azimuthRad()
                - line.frameAt(line.chainageM(point - 1)).azimuthRad();
    }

    @Test
    void splittingASegmentChangesNothing() {
        RouteLine whole = line(-93.1, 44.6, -92.9, 44.7);
        RouteLine split = line(-93.1, 44.6, -93.06, 44.62, -93.06, 44.62, -93.0, 44.65, -92.9, 44.7);
        assertEquals(whole.lengthM(), split.lengthM(), 0.001);
        LonLat place = new LonLat(-93.03, 44.6351);
        assertEquals(
                whole.passagesWithin(place, 30).get(0).chainageM(),
                split.passagesWithin(place, 30).get(0).chainageM(),
                0.001);
    }

    @Test
    void refusesWhatIsNoLine() {
        assertThrows(IllegalStateException.class, () -> line(-93, 44));
        assertThrows(IllegalStateException.class, () -> line(-93, 44, -93, 44));
        assertThrows(IllegalArgumentException.class, () -> line(-93, 44, -90, 44));
        assertThrows(IllegalArgumentException.class, () -> new LonLat(-93, 86));
        assertThrows(IllegalArgumentException.class, () -> new LonLat(Double.NaN, 44));
        RouteLine line = line(-93, 44, -93, 44.1);
        assertThrows(IllegalArgumentException.class, () -> line.frameAt(-1));
        assertThrows(IllegalArgumentException.class, () -> line.frameAt(line.lengthM() + 1));
    }
}
