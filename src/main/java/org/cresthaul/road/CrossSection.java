package org.cresthaul.road;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.cresthaul.geometry.Interval;

/**
 * The road as a surface: several lines that are known to run so far beside each other, and the ground straight between
 * two neighbors, at every distance. Outside of the outermost lines it goes on as high as they are; nobody has looked
 * there.
 *
 * <p>Beyond the end of a line it goes on at the declared grade. Where none is declared all lines go on at one slope,
 * the mean of theirs, so that the road keeps the crossfall it has at its end. Ground counts as surveyed where all lines
 * are. Immutable.
 */
public final class CrossSection {
    /** Lines nearer to each other than this are one, meters: no road is as steep to a side as that would make it. */
    public static final double LEAST_APART_M = 0.02;

    private final List<RoadProfile> lines;
    private final double[] offsetM;
    private final double[] slopes;
    private final double surveyedFromM;
    private final double surveyedToM;

    private CrossSection(List<RoadProfile> surveyed) {
        List<RoadProfile> sorted = surveyed.stream()
                .sorted(Comparator.comparingDouble(l -> l.offsetM().orElseThrow()))
                .toList();
        offsetM = sorted.stream().mapToDouble(l -> l.offsetM().orElseThrow()).toArray();
        slopes = new double[] {
            sorted.stream().mapToDouble(l -> l.slopeBefore(0)).average().orElseThrow(),
            sorted.stream().mapToDouble(l -> l.slopeBefore(l.size())).average().orElseThrow()
        };
        surveyedFromM = sorted.stream().mapToDouble(RoadProfile::startM).max().orElseThrow();
        surveyedToM = sorted.stream().mapToDouble(RoadProfile::endM).min().orElseThrow();
        lines = sorted.stream()
                .map(l -> RoadProfile.workedOut(
                        l, l.name(), l.offsetM().orElseThrow(), l.points(), slopes, surveyedFromM, surveyedToM))
                .toList();
    }

    /** The road between lines; empty where there are fewer than two, or where one does not say where it runs. */
    public static Optional<CrossSection> of(List<RoadProfile> lines) {
        return lines.size() < 2 || lines.stream().anyMatch(l -> l.offsetM().isEmpty())
                ? Optional.empty()
                : Optional.of(new CrossSection(lines));
    }

    /** How many lines were surveyed. */
    public int size() {
        return lines.size();
    }

    /** Points of all lines. */
    public int points() {
        return lines.stream().mapToInt(RoadProfile::size).sum();
    }

    /** Where a surveyed line runs, from left to right, meters to the right of the path of the truck's middle. */
    public double offsetM(int line) {
        return offsetM[line];
    }

    /** Name of a surveyed line. */
    public String name(int line) {
        return lines.get(line).name();
    }

    /** The ground along a line so far to the right, exact at every distance. */
    public RoadProfile at(String name, double rightM) {
        int next = 0;
        while (next < offsetM.length && offsetM[next] < rightM) {
            next++;
        }
        int right = Math.min(next, offsetM.length - 1);
        int left = Math.max(0, next - 1);
        double apart = offsetM[right] - offsetM[left];
        double share = apart > 0 ? Math.min(1, Math.max(0, (rightM - offsetM[left]) / apart)) : 0;
        return between(name, rightM, lines.get(left), lines.get(right), share);
    }

    private RoadProfile between(String name, double rightM, RoadProfile a, RoadProfile b, double share) {
        List<SurveyedPoint> points = new ArrayList<>();
        for (double s :
                share == 0 ? distances(List.of(a)) : share == 1 ? distances(List.of(b)) : distances(List.of(a, b))) {
            points.add(new SurveyedPoint(s, (1 - share) * a.heightAt(s) + share * b.heightAt(s)));
        }
        return RoadProfile.workedOut(a, name, rightM, points, slopes, surveyedFromM, surveyedToM);
    }

    /** Where one of the lines has a point; of two nearer than a micrometer only the first. */
    private static List<Double> distances(List<RoadProfile> of) {
        TreeSet<Double> all = new TreeSet<>();
        for (RoadProfile line : of) {
            for (int i = 0; i < line.size(); i++) {
                all.add(line.distanceM(i));
            }
        }
        List<Double> apart = new ArrayList<>(all.size());
        for (double s : all) {
            if (apart.isEmpty() || s - apart.get(apart.size() - 1) > 1e-6) {
                apart.add(s);
            }
        }
        return apart;
    }

    /**
     * Whether a surveyed line stands anywhere higher than straight between its neighbors, level ground being taken
     * outside of the outermost: a crown, a rail, a curb. The ground under a unit can be nearest there, and elsewhere
     * only under the unit's edges.
     */
    public boolean isRidge(int line) {
        RoadProfile own = lines.get(line);
        RoadProfile left = lines.get(Math.max(0, line - 1));
        RoadProfile right = lines.get(Math.min(lines.size() - 1, line + 1));
        boolean outermost = left == own || right == own;
        double share = outermost
                ? left == own ? 1 : 0
                : (offsetM[line] - offsetM[line - 1]) / (offsetM[line + 1] - offsetM[line - 1]);
        // Beyond the ends all go on alike, so that what holds at the outermost points holds there.
        return distances(List.of(left, own, right)).stream()
                .anyMatch(s -> own.heightAt(s) > (1 - share) * left.heightAt(s) + share * right.heightAt(s) + 1e-9);
    }

    /** Widens {@code into} by every slope across the road, up to the right, in a strip; level outside of the lines. */
    public void addSlopesAcross(double fromRightM, double toRightM, Interval into) {
        if (fromRightM < offsetM[0] || toRightM > offsetM[offsetM.length - 1]) {
            into.add(0);
        }
        for (int i = 1; i < offsetM.length; i++) {
            if (offsetM[i] > fromRightM && offsetM[i - 1] < toRightM) {
                double apart = offsetM[i] - offsetM[i - 1];
                for (double s : distances(lines.subList(i - 1, i + 1))) {
                    into.add((lines.get(i).heightAt(s) - lines.get(i - 1).heightAt(s)) / apart);
                }
            }
        }
    }

    /** Widens {@code into} by how much higher the road is at one place across than at another, at every distance. */
    public void addRise(double fromRightM, double toRightM, Interval into) {
        RoadProfile from = at("from", fromRightM);
        RoadProfile to = at("to", toRightM);
        for (double s : distances(List.of(from, to))) {
            into.add(to.heightAt(s) - from.heightAt(s));
        }
    }
}
