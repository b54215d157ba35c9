package org.cresthaul.route;

import java.util.Locale;
import java.util.random.RandomGenerator;

/**
 * One hazard of any kind that has a road or a structure, over all that docs/file-formats.md allows, in a small file.
 */
public final class RangeRoads {
    private final RandomGenerator random;

    private RangeRoads(RandomGenerator random) {
        this.random = random;
    }

    /** The text of a route with one such hazard; the reader may refuse it. */
    public static String text(RandomGenerator random) {
        return """
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "One hazard", "note": "Invented.",
                 "features": [
                  {"type": "Feature", "properties": {"route": "Straight"},
                   "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}},
                  {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.09, 44.6]},
                   "properties": {"id": "H1", "name": "The hazard", %s}}]}
                """.formatted(new RangeRoads(random).hazard());
    }

    private String hazard() {
        if (random.nextInt(3) == 0) {
            double reach = random.nextBoolean() ? 2000 : 10;
            return "\"hazard\": \"low-structure\", \"measured\": \"posted\", \"clearance\": " + m(between(0.5, 8))
                    + ", \"extent\": [" + m(-reach) + ", " + m(reach) + "]";
        }
        String survey = ", \"survey\": {\"accuracy\": \"10 mm\", \"source\": \"level\"}, \"profile\": [" + lines() + "]"
                + approach("Before") + approach("After");
        if (random.nextInt(3) == 0) {
            double reach = random.nextInt(3) == 0 ? 2000 : 15;
            return "\"hazard\": \"low-structure\", \"measured\": \"surveyed\", \"clearance\": " + m(between(0.5, 8))
                    + ", \"extent\": [" + m(-reach) + ", " + m(reach) + "]" + survey;
        }
        return "\"hazard\": \"" + (random.nextBoolean() ? "rail-crossing" : "dip") + "\"" + survey;
    }

    /** One or two that do not say where they run, or several that do. */
    private String lines() {
        if (random.nextInt(3) > 0) {
            return line("left", "") + (random.nextBoolean() ? ", " + line("right", "") : "");
        }
        StringBuilder text = new StringBuilder();
        int n = random.nextInt(2, 10);
        double offset = between(-6, 0);
        for (int i = 0; i < n; i++) {
            text.append(i == 0 ? "" : ", ").append(line("line " + i, ", \"offset\": " + m(offset)));
            offset += random.nextBoolean() ? between(0.021, 0.1) : between(0.2, 3);
        }
        return text.toString();
    }

    private String approach(String where) {
        return random.nextBoolean()
                ? ", \"approach" + where + "\": {\"grade\": \"" + number(between(-50, 50))
                        + " %\", \"accuracy\": \"1 %\"}"
                : "";
    }

    private double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.5f", value);
    }

    private static String m(double meters) {
        return "\"" + number(meters) + " m\"";
    }

    private String line(String name, String more) {
        double reach =
                switch (random.nextInt(4)) {
                    case 0 -> 2000;
                    case 1 -> 200;
                    default -> 25;
                };
        int n = random.nextInt(4) == 0 ? random.nextInt(2, 80) : random.nextInt(2, 12);
        double steepest =
                switch (random.nextInt(4)) {
                    case 0 -> 0.499;
                    case 1 -> 0;
                    default -> between(0, 0.15);
                };
        StringBuilder text = new StringBuilder();
        double z = 0;
        double s = -reach;
        for (int i = 0; i < n; i++) {
            text.append(i == 0 ? "" : ", ").append("[" + m(s) + ", " + m(z) + "]");
            double step = 2 * reach / (n - 1);
            double next = i == n - 2 ? reach : -reach + step * (i + 1 + between(-0.4, 0.4));
            double slope = steepest * (random.nextBoolean() ? (i % 2 == 0 ? 1 : -1) : between(-1, 1));
            z = Math.max(-450, Math.min(8000, z + Math.round((next - s) * slope * 1e4) / 1e4));
            s = next;
        }
        return "{\"line\": \"" + name + "\"" + more + ", \"points\": [" + text + "]}";
    }
}
