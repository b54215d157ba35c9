package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.cresthaul.road.Approach;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;

/** Surveyed lines as they come from the road, and the hard corners that a search could stumble over. */
public final class RandomProfiles {
    private RandomProfiles() {}

    /** A line of any of the kinds below, at any datum, with its origin anywhere, its ends declared or not. */
    public static RoadProfile profile(RandomGenerator random) {
        List<double[]> steps =
                switch (random.nextInt(10)) {
                    case 0, 1 -> railHump(random);
                    case 2 -> dip(random);
                    case 3 -> crest(random);
                    case 4 -> noisySurvey(random);
                    case 5 -> sharpKinks(random, 0.15);
                    case 6 -> sharpKinks(random, 0.30);
                    case 7 -> shortSegments(random);
                    case 8 -> rails(random);
                    default -> steadyGrade(random);
                };
        double datumM = random.nextBoolean() ? 0 : random.nextDouble(-20, 1500);
        double fromM = random.nextBoolean() ? 0 : random.nextDouble(-100, 100);
        double tilt = random.nextInt(3) == 0 ? random.nextDouble(-0.06, 0.06) : 0;
        List<SurveyedPoint> points = new ArrayList<>();
        points.add(new SurveyedPoint(fromM, datumM));
        double s = 0;
        double z = 0;
        for (double[] step : steps) {
            s += step[0];
            z += step[0] * (step[1] + tilt);
            points.add(new SurveyedPoint(fromM + s, datumM + z));
        }
        return RoadProfile.of(
                "random",
                points,
                end(random, steps.get(0)[1] + tilt),
                end(random, steps.get(steps.size() - 1)[1] + tilt));
    }

    /** Declared near the end segment's slope, declared quite otherwise, or left undeclared. */
    private static Approach end(RandomGenerator random, double slope) {
        return switch (random.nextInt(3)) {
            case 0 -> Approach.undeclared();
            case 1 -> Approach.declared(slope + random.nextDouble(-0.005, 0.005), 0.002);
            default -> Approach.declared(random.nextDouble(-0.06, 0.06), 0.002);
        };
    }

    private static double between(RandomGenerator random, double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    /** Steps of (length, slope). */
    private static List<double[]> railHump(RandomGenerator random) {
        List<double[]> steps = new ArrayList<>();
        double up = between(random, 0.005, 0.09);
        double down = between(random, 0.005, 0.09);
        double noise = random.nextBoolean() ? 0 : between(random, 0, 0.01);
        surveyed(random, steps, between(random, 3, 14), up, noise);
        surveyed(random, steps, between(random, 2, 8), between(random, -0.01, 0.01), noise);
        surveyed(random, steps, between(random, 3, 14), -down, noise);
        return steps;
    }

    private static void surveyed(
            RandomGenerator random, List<double[]> steps, double lengthM, double slope, double noise) {
        double left = lengthM;
        while (left > 0) {
            double length = Math.min(left, between(random, 0.4, 3));
            steps.add(new double[] {Math.max(length, 0.05), slope + noise * random.nextGaussian()});
            left -= length;
        }
    }

    private static List<double[]> dip(RandomGenerator random) {
        List<double[]> steps = new ArrayList<>();
        double slope = between(random, 0.02, 0.15);
        steps.add(new double[] {between(random, 2, 10), 0});
        steps.add(new double[] {between(random, 0.5, 6), -slope});
        if (random.nextBoolean()) {
            steps.add(new double[] {between(random, 0.2, 3), 0});
        }
        steps.add(new double[] {between(random, 0.5, 6), slope});
        steps.add(new double[] {between(random, 2, 10), 0});
        return steps;
    }

    /** A vertical curve, short or longer than the truck, as a fine polyline. */
    private static List<double[]> crest(RandomGenerator random) {
        List<double[]> steps = new ArrayList<>();
        double length = between(random, 5, 60);
        double change = between(random, 0.03, 0.14);
        int n = (int) Math.ceil(length / between(random, 0.5, 2));
        for (int i = 0; i < n; i++) {
            steps.add(new double[] {length / n, change / 2 - change * (i + 0.5) / n});
        }
        return steps;
    }

    private static List<double[]> noisySurvey(RandomGenerator random) {
        List<double[]> steps = new ArrayList<>();
        double noise = between(random, 0.002, 0.015);
        double spacing = between(random, 0.3, 1.5);
        int n = random.nextInt(8, 40);
        double last = 0;
        for (int i = 0; i < n; i++) {
            double z = noise * random.nextGaussian();
            double length = spacing * between(random, 0.6, 1.4);
            steps.add(new double[] {length, Math.max(-0.3, Math.min(0.3, (z - last) / length))});
            last = z;
        }
        return steps;
    }

    private static List<double[]> sharpKinks(RandomGenerator random, double steepest) {
        List<double[]> steps = new ArrayList<>();
        int n = random.nextInt(3, 14);
        for (int i = 0; i < n; i++) {
            double slope = between(random, -steepest, steepest);
            // Long steep grades one way only would be a ramp, not a road: the longer, the flatter.
            double length = between(random, 0.3, 5);
            steps.add(new double[] {length, Math.abs(slope) * length > 0.5 ? slope / 3 : slope});
        }
        return steps;
    }

    private static List<double[]> shortSegments(RandomGenerator random) {
        List<double[]> steps = new ArrayList<>();
        int n = random.nextInt(3, 12);
        for (int i = 0; i < n; i++) {
            steps.add(new double[] {between(random, 0.5, 6), between(random, -0.05, 0.05)});
            int shorts = random.nextInt(1, 6);
            for (int k = 0; k < shorts; k++) {
                steps.add(new double[] {between(random, 0.002, 0.06), between(random, -0.3, 0.3)});
            }
        }
        steps.add(new double[] {between(random, 0.5, 6), between(random, -0.05, 0.05)});
        return steps;
    }

    /** Two tracks of two rails standing proud of their flangeways, on a slight hump. */
    private static List<double[]> rails(RandomGenerator random) {
        List<double[]> steps = new ArrayList<>();
        double grade = between(random, 0.01, 0.05);
        steps.add(new double[] {between(random, 4, 10), grade});
        int rails = 2 * random.nextInt(1, 3);
        for (int i = 0; i < rails; i++) {
            steps.add(new double[] {0.05, 0.35});
            steps.add(new double[] {0.07, 0});
            steps.add(new double[] {0.06, -between(random, 0.2, 0.42)});
            steps.add(new double[] {i % 2 == 0 ? 1.4 : between(random, 1.8, 3), between(random, -0.002, 0.002)});
        }
        steps.add(new double[] {between(random, 4, 10), -grade});
        return steps;
    }

    private static List<double[]> steadyGrade(RandomGenerator random) {
        double slope = between(random, -0.1, 0.1);
        List<double[]> steps = new ArrayList<>();
        int n = random.nextInt(1, 4);
        for (int i = 0; i < n; i++) {
            steps.add(new double[] {between(random, 0.5, 20), slope});
        }
        return steps;
    }

    /**
     * A structure somewhere over the line, sometimes reaching past its ends: short or long, flat, parallel, sagging or
     * stepped like beams.
     *
     * @param heightM about how high above the road
     */
    public static Soffit soffit(RandomGenerator random, RoadProfile profile, double heightM) {
        double span = profile.endM() - profile.startM();
        double lengthM =
                switch (random.nextInt(3)) {
                    case 0 -> between(random, 0.3, 1);
                    case 1 -> between(random, 2, 12);
                    default -> between(random, 10, 30);
                };
        double fromM = random.nextInt(10) == 0
                ? profile.startM() - lengthM * random.nextDouble() - 3
                : profile.startM() + Math.max(0, span - lengthM) * random.nextDouble();
        double middleM = profile.heightAt(fromM + lengthM / 2) + heightM;
        List<SurveyedPoint> points = new ArrayList<>();
        int kind = random.nextInt(4);
        int n = kind == 0 ? 1 : random.nextInt(1, 8);
        double tilt = between(random, -0.05, 0.05);
        for (int i = 0; i <= n; i++) {
            double t = (double) i / n;
            double z =
                    switch (kind) {
                        case 0 -> 0;
                        case 1 -> tilt * lengthM * (t - 0.5);
                        case 2 -> -0.1 * Math.min(1, lengthM / 5) * 4 * t * (1 - t);
                        default -> Math.min(0.2, 0.2 * lengthM / n) * (random.nextDouble() - 0.5);
                    };
            points.add(new SurveyedPoint(fromM + lengthM * t, middleM + z));
        }
        return Soffit.of(points);
    }
}
