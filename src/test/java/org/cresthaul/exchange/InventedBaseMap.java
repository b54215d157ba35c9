package org.cresthaul.exchange;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.cresthaul.exchange.osm.BaseMap;
import org.cresthaul.exchange.osm.BaseMap.Layer;
import org.cresthaul.exchange.osm.BaseMap.Shape;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteLine;

/**
 * Invents the country around a sample route: roads, railways where it crosses rails, rivers under its bridges, woods,
 * ponds and names, the same on every run. Run it to write the samples' base maps anew.
 */
public final class InventedBaseMap {
    static final String SAYS_SO = "invented, as the route is: no such road, river or town exists";
    static final List<String> SAMPLES = List.of("alder-county", "sorrel-valley");

    private static final double M_PER_DEG = 111_200;
    private static final String[] NAMES = {
        "Ravenfold",
        "Tallow Green",
        "Osierby",
        "Quillan",
        "Harrow Dell",
        "Mosswick End",
        "Kestrel Flat",
        "Ludder",
        "Ambry",
        "Fennimoor",
        "Sedgeley Cross",
        "Wickering"
    };

    private final RouteLine line;
    private final Route route;
    private final SplittableRandom random;
    private final List<Shape> shapes = new ArrayList<>();

    private InventedBaseMap(Route route, long seed) {
        this.route = route;
        line = route.line();
        random = new SplittableRandom(seed);
    }

    /** Of a sample, by its name without ending. */
    static byte[] of(String sample) throws Exception {
        Route route = RouteFile.parse(Files.readAllBytes(Path.of("sample-routes", sample + ".route.geojson")));
        return BaseMapFile.bytes(new InventedBaseMap(route, sample.hashCode()).map(), SAYS_SO);
    }

    public static void main(String[] none) throws Exception {
        for (String sample : SAMPLES) {
            Files.write(Path.of("sample-routes", sample + BaseMapFile.ENDING), of(sample));
        }
    }

    private BaseMap map() {
        List<LonLat> own = new ArrayList<>();
        for (int i = 0; i < line.size(); i++) {
            own.add(line.position(i));
        }
        shapes.add(new Shape(Layer.MIDDLE_ROAD, false, "", own));
        for (double at = 400; at < line.lengthM(); at += random.nextDouble(600, 1500)) {
            boolean right = random.nextBoolean();
            Layer layer = random.nextInt(6) == 0 ? Layer.MIDDLE_ROAD : Layer.MINOR_ROAD;
            way(layer, at, 0, right ? 90 : -90, random.nextDouble(500, 2600), 25);
            if (random.nextInt(3) == 0) {
                way(layer, at, 0, right ? -90 : 90, random.nextDouble(400, 1800), 25);
            }
            if (random.nextInt(3) == 0) {
                blob(Layer.WOODS, at, random.nextDouble(500, 1900) * (right ? -1 : 1), random.nextDouble(200, 620));
            }
            if (random.nextInt(9) == 0) {
                blob(Layer.WATER, at, random.nextDouble(500, 1700) * (right ? 1 : -1), random.nextDouble(80, 220));
            }
        }
        across(Layer.MAJOR_ROAD, 0.42 * line.lengthM(), 80, 4000, 12);
        for (Hazard hazard : route.hazards()) {
            double at = hazard.place().chainageM();
            if (hazard.kind() == HazardKind.RAIL_CROSSING) {
                across(Layer.RAILWAY, at, random.nextDouble(60, 110), 2600, 6);
            } else if (hazard.kind() == HazardKind.POSTED_BRIDGE) {
                across(Layer.WATER, at, 90, 3000, 45);
            }
        }
        for (int i = 0; i < 6; i++) {
            LonLat place =
                    beside((i + 0.5) * line.lengthM() / 6, random.nextDouble(2400, 3200) * (i % 2 == 0 ? 1 : -1));
            String name = NAMES[(i + Math.floorMod(route.name().hashCode(), 2) * 6) % NAMES.length];
            shapes.add(new Shape(Layer.PLACE, false, name, List.of(place)));
        }
        return new BaseMap(shapes, true);
    }

    /** Both ways from the route, the one going on as the other. */
    private void across(Layer layer, double chainageM, double angleDeg, double lengthM, double bendDeg) {
        way(layer, chainageM, 0, angleDeg, lengthM, bendDeg);
        way(layer, chainageM, 0, angleDeg - 180, lengthM, bendDeg);
    }

    /** A line that sets out at an angle to the route and wanders. */
    private void way(Layer layer, double chainageM, double offM, double angleDeg, double lengthM, double bendDeg) {
        double heading = headingDeg(chainageM) + angleDeg;
        LonLat at = beside(chainageM, offM);
        List<LonLat> points = new ArrayList<>(List.of(at));
        for (double m = 0; m < lengthM; m += 150) {
            at = from(at, heading, 150);
            points.add(at);
            heading += random.nextDouble(-bendDeg, bendDeg);
        }
        shapes.add(new Shape(layer, false, "", points));
    }

    /** A closed area of sixteen corners. */
    private void blob(Layer layer, double chainageM, double offM, double radiusM) {
        LonLat middle = beside(chainageM, offM);
        List<LonLat> points = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            points.add(from(middle, i * 22.5, radiusM * random.nextDouble(0.7, 1.15)));
        }
        points.add(points.get(0));
        shapes.add(new Shape(layer, true, "", points));
    }

    /** Clockwise from north. */
    private double headingDeg(double chainageM) {
        LonLat before = line.frameAt(Math.max(0, chainageM - 30)).origin();
        LonLat after = line.frameAt(Math.min(line.lengthM(), chainageM + 30)).origin();
        return Math.toDegrees(Math.atan2(
                (after.lonDeg() - before.lonDeg()) * Math.cos(Math.toRadians(after.latDeg())),
                after.latDeg() - before.latDeg()));
    }

    private LonLat beside(double chainageM, double rightM) {
        return from(line.frameAt(chainageM).origin(), headingDeg(chainageM) + 90, rightM);
    }

    private static LonLat from(LonLat at, double headingDeg, double m) {
        double heading = Math.toRadians(headingDeg);
        return new LonLat(
                at.lonDeg() + m * Math.sin(heading) / M_PER_DEG / Math.cos(Math.toRadians(at.latDeg())),
                at.latDeg() + m * Math.cos(heading) / M_PER_DEG);
    }
}
