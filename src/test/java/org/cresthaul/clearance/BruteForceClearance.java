package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.cresthaul.posture.BruteForcePosture;
import org.cresthaul.posture.BruteForcePosture.Frame;
import org.cresthaul.posture.BruteForcePosture.Standing;
import org.cresthaul.posture.PlainGround;
import org.cresthaul.posture.RaisedAxles;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;

/**
 * The smallest clearance of a passage, from the definitions, for checking the engine.
 *
 * <p>At one position: every vertex of the outlines over the line and every vertex of the line under the outlines, a
 * sagging deck as a polyline of 1 cm steps. Over all positions, two ways: {@link #denseScan} looks at every position at
 * one small step; {@link #least} starts from a coarse step and halves every interval that could still hide something
 * smaller. Both rest on {@link PassageSlopes}, a bound on how fast a gap can change as the truck moves, and the search
 * checks that bound at every position it looks at.
 */
final class BruteForceClearance {
    private static final double SAG_STEP_M = 0.01;
    private static final double COARSE_STEP_M = 0.25;

    private final BruteForcePosture posture;
    private final PlainGround ground;
    /** Null for ground clearance. */
    private final PlainGround soffit;

    private final PassageSlopes slopes;
    /** Outlines per unit, in its frame: tractor, trailer, booster (empty unless trailing), jeeps, boosters behind. */
    private final List<List<Line>> units;
    /** Raised tires in the trailer frame. */
    private final List<RaisedAxles.Tire> raisedTires;

    /** An outline in its unit's frame. */
    record Line(double[] x, double[] h) {
        static Line of(Outline outline) {
            return new Line(
                    outline.points().stream().mapToDouble(FramePoint::xM).toArray(),
                    outline.points().stream().mapToDouble(FramePoint::hM).toArray());
        }
    }

    /**
     * A smallest clearance.
     *
     * @param valueM attained with the steer axle at {@code steerM}; infinite when nothing is ever overhead
     * @param positions how many positions were looked at
     */
    record Least(double valueM, double steerM, int positions) {}

    private BruteForceClearance(
            LevelStance stance, Setting setting, Leveling leveling, RoadProfile profile, Soffit soffit) {
        posture = new BruteForcePosture(stance, setting, leveling, profile);
        ground = posture.ground();
        this.soffit = soffit == null ? null : PlainGround.ofSoffit(soffitPoints(soffit));
        slopes = new PassageSlopes(stance, setting, ground, this.soffit);
        raisedTires = soffit == null ? RaisedAxles.tires(stance.trailer(), setting.lift()) : List.of();
        units = soffit == null ? undersides(stance, setting) : topsides(stance, setting);
    }

    static BruteForceClearance overGround(LevelStance stance, Setting setting, Leveling leveling, RoadProfile profile) {
        return new BruteForceClearance(stance, setting, leveling, profile, null);
    }

    static BruteForceClearance underSoffit(
            LevelStance stance, Setting setting, Leveling leveling, RoadProfile profile, Soffit soffit) {
        return new BruteForceClearance(stance, setting, leveling, profile, soffit);
    }

    static List<SurveyedPoint> soffitPoints(Soffit soffit) {
        List<SurveyedPoint> points = new ArrayList<>();
        for (int i = 0; i < soffit.size(); i++) {
            points.add(new SurveyedPoint(soffit.distanceM(i), soffit.elevationM(i)));
        }
        return points;
    }

    static List<List<Line>> undersides(LevelStance stance, Setting setting) {
        List<Line> trailer = new ArrayList<>();
        trailer.add(sagged(stance.trailer()));
        List<Line> booster = new ArrayList<>();
        stance.booster().ifPresent(b -> {
            if (setting.booster() == BoosterState.TRAILING) {
                booster.add(Line.of(b.underside()));
            } else if (setting.booster() == BoosterState.CLOSE_COUPLED) {
                trailer.add(Line.of(b.underside().shiftedBy(closeCoupledShiftM(b))));
            }
        });
        List<List<Line>> all =
                new ArrayList<>(List.of(List.of(Line.of(stance.tractor().underside())), trailer, booster));
        stance.jeeps().forEach(j -> all.add(List.of(Line.of(j.underside()))));
        if (setting.booster() == BoosterState.TRAILING) {
            stance.boostersBehind().forEach(b -> all.add(List.of(Line.of(b.underside()))));
        }
        return all;
    }

    static List<List<Line>> topsides(LevelStance stance, Setting setting) {
        List<Line> trailer = new ArrayList<>();
        trailer.add(Line.of(stance.trailer().topside()));
        stance.trailer().load().forEach(load -> trailer.add(Line.of(load)));
        List<Line> booster = new ArrayList<>();
        stance.booster().ifPresent(b -> {
            switch (setting.booster()) {
                case TRAILING -> booster.add(Line.of(b.topside()));
                case CLOSE_COUPLED -> trailer.add(Line.of(b.topside().shiftedBy(closeCoupledShiftM(b))));
                case CARRIED -> trailer.add(Line.of(b.carried().orElseThrow()));
                case NONE -> {}
            }
        });
        List<List<Line>> all =
                new ArrayList<>(List.of(List.of(Line.of(stance.tractor().topside())), trailer, booster));
        stance.jeeps().forEach(j -> all.add(List.of(Line.of(j.topside()))));
        if (setting.booster() == BoosterState.TRAILING) {
            stance.boostersBehind().forEach(b -> all.add(List.of(Line.of(b.topside()))));
        }
        return all;
    }

    private static double closeCoupledShiftM(Booster booster) {
        return booster.closeCoupledAxleXM().orElseThrow() - booster.onlyAxle().xM();
    }

    /** The trailer's underside, lowered by the deck sag: 4 sag t (1 − t) between the deck's ends. */
    private static Line sagged(Trailer trailer) {
        if (trailer.deckSagM() == 0) {
            return Line.of(trailer.underside());
        }
        List<FramePoint> outline = trailer.underside().points();
        List<double[]> points = new ArrayList<>();
        points.add(saggedAt(trailer, outline.get(0).xM(), outline.get(0).hM()));
        for (int i = 1; i < outline.size(); i++) {
            FramePoint from = outline.get(i - 1);
            FramePoint to = outline.get(i);
            double length = to.xM() - from.xM();
            SortedSet<Double> shares = new TreeSet<>();
            int steps = (int) Math.ceil(length / SAG_STEP_M);
            for (int k = 1; k < steps; k++) {
                shares.add((double) k / steps);
            }
            // The parabola starts and ends with a corner, which must not be cut.
            shares.add((trailer.deckRear().xM() - from.xM()) / length);
            shares.add((trailer.deckFront().xM() - from.xM()) / length);
            for (double share : shares) {
                if (share > 0 && share < 1) {
                    double x = from.xM() + length * share;
                    points.add(saggedAt(trailer, x, from.hM() + (to.hM() - from.hM()) * share));
                }
            }
            points.add(saggedAt(trailer, to.xM(), to.hM()));
        }
        return new Line(
                points.stream().mapToDouble(p -> p[0]).toArray(),
                points.stream().mapToDouble(p -> p[1]).toArray());
    }

    private static double[] saggedAt(Trailer trailer, double x, double h) {
        return new double[] {x, h - sagAtM(trailer, x)};
    }

    private static double sagAtM(Trailer trailer, double x) {
        double t = (trailer.deckFront().xM() - x)
                / (trailer.deckFront().xM() - trailer.deckRear().xM());
        return t <= 0 || t >= 1 ? 0 : 4 * trailer.deckSagM() * t * (1 - t);
    }

    /** The smallest gap at one position, infinite when nothing is overhead. */
    double at(double steerM) {
        double least = Double.POSITIVE_INFINITY;
        for (double gap : gapsM(steerM)) {
            least = Math.min(least, gap);
        }
        return least;
    }

    /** The smallest gap of each unit at one position. */
    private double[] gapsM(double steerM) {
        Standing standing = posture.at(steerM);
        double[] gaps = new double[units.size()];
        gaps[0] = gapM(standing.tractor(), units.get(0));
        gaps[1] = gapM(standing.trailer(), units.get(1));
        gaps[2] = standing.booster() == null ? Double.POSITIVE_INFINITY : gapM(standing.booster(), units.get(2));
        for (int j = 0; j < standing.jeeps().size(); j++) {
            gaps[3 + j] = gapM(standing.jeeps().get(j), units.get(3 + j));
        }
        int behind = 3 + standing.jeeps().size();
        for (int i = 0; i < standing.boostersBehind().size(); i++) {
            gaps[behind + i] = gapM(standing.boostersBehind().get(i), units.get(behind + i));
        }
        for (RaisedAxles.Tire tire : raisedTires) {
            // A tire clears the ground by how far its center is above where it would be, standing there.
            double x = tire.axle().xM();
            double h = tire.axle().radiusM() + tire.gapM();
            gaps[1] = Math.min(
                    gaps[1],
                    standing.trailer().worldZM(x, h)
                            - ground.wheelCenterM(
                                    standing.trailer().worldXM(x, h),
                                    tire.axle().radiusM()));
        }
        return gaps;
    }

    private double gapM(Frame frame, List<Line> lines) {
        double least = Double.POSITIVE_INFINITY;
        for (Line line : lines) {
            least = Math.min(least, soffit == null ? gapOverM(frame, line) : gapUnderM(frame, line));
        }
        return least;
    }

    private double gapOverM(Frame frame, Line line) {
        return gapOverM(ground, frame, line);
    }

    /** The least gap of an outline over ground. */
    static double gapOverM(PlainGround ground, Frame frame, Line line) {
        double least = Double.POSITIVE_INFINITY;
        double lastX = 0;
        double lastZ = 0;
        for (int k = 0; k < line.x.length; k++) {
            double x = frame.worldXM(line.x[k], line.h[k]);
            double z = frame.worldZM(line.x[k], line.h[k]);
            int segment = ground.segmentAt(x);
            least = Math.min(least, z - ground.heightOn(segment, x));
            if (k > 0) {
                for (int i = ground.segmentAt(Math.min(lastX, x)); i < ground.size(); i++) {
                    double s = ground.distanceM(i);
                    if (s >= Math.max(lastX, x)) {
                        break;
                    }
                    double over = lastZ + (z - lastZ) * (s - lastX) / (x - lastX);
                    least = Math.min(least, over - ground.elevationM(i));
                }
            }
            lastX = x;
            lastZ = z;
        }
        return least;
    }

    private double gapUnderM(Frame frame, Line line) {
        return gapUnderM(soffit, frame, line);
    }

    /** The least gap of an outline under a structure; infinite when nothing is overhead. */
    static double gapUnderM(PlainGround soffit, Frame frame, Line line) {
        double least = Double.POSITIVE_INFINITY;
        double lastX = 0;
        double lastZ = 0;
        for (int k = 0; k < line.x.length; k++) {
            double x = frame.worldXM(line.x[k], line.h[k]);
            double z = frame.worldZM(line.x[k], line.h[k]);
            if (x >= soffit.startM() && x <= soffit.endM()) {
                int segment = Math.min(soffit.segmentAt(x), soffit.size() - 1);
                least = Math.min(least, soffit.heightOn(segment, x) - z);
            }
            for (int i = 0; k > 0 && i < soffit.size(); i++) {
                double s = soffit.distanceM(i);
                if (s > Math.min(lastX, x) && s < Math.max(lastX, x)) {
                    double under = lastZ + (z - lastZ) * (s - lastX) / (x - lastX);
                    least = Math.min(least, soffit.elevationM(i) - under);
                }
            }
            lastX = x;
            lastZ = z;
        }
        return least;
    }

    /** Looks at every position at the one step that bounds the error by {@code accuracyM} everywhere. */
    Least denseScan(double accuracyM) {
        double steepest = 0;
        for (int unit = 0; unit < units.size(); unit++) {
            steepest = Math.max(steepest, slopes.bound(unit, slopes.fromM(), slopes.toM()));
        }
        double length = slopes.toM() - slopes.fromM();
        double step = Math.min(COARSE_STEP_M, soffit == null ? 2 * accuracyM / steepest : accuracyM / steepest);
        int steps = (int) Math.ceil(length / step);
        double least = Double.POSITIVE_INFINITY;
        double where = slopes.fromM();
        for (int i = 0; i <= steps; i++) {
            double steer = slopes.fromM() + length * i / steps;
            double gap = at(steer);
            if (gap < least) {
                least = gap;
                where = steer;
            }
        }
        return new Least(least, where, steps + 1);
    }

    /** An interval of positions and the gaps of the units at its ends. */
    private record Span(double from, double[] gapsFrom, double to, double[] gapsTo) {}

    /**
     * The smallest gap of the passage, to {@code accuracyM}: no position has a gap smaller than the value given by more
     * than that.
     */
    Least least(double accuracyM) {
        double length = slopes.toM() - slopes.fromM();
        double coarse =
                soffit == null ? COARSE_STEP_M : Math.min(COARSE_STEP_M, 0.8 * (soffit.endM() - soffit.startM()));
        int steps = (int) Math.ceil(length / coarse);
        double best = Double.POSITIVE_INFINITY;
        double where = slopes.fromM();
        int positions = steps + 1;
        List<Span> open = new ArrayList<>();
        double from = 0;
        double[] gapsFrom = null;
        for (int i = 0; i <= steps; i++) {
            double to = slopes.fromM() + length * i / steps;
            double[] gapsTo = gapsM(to);
            double gap = Arrays.stream(gapsTo).min().orElseThrow();
            if (gap < best) {
                best = gap;
                where = to;
            }
            if (i > 0) {
                open.add(new Span(from, gapsFrom, to, gapsTo));
            }
            from = to;
            gapsFrom = gapsTo;
        }
        while (!open.isEmpty()) {
            List<Span> next = new ArrayList<>();
            for (Span span : open) {
                if (lowestPossibleM(span, best - accuracyM) >= best - accuracyM) {
                    continue;
                }
                double middle = (span.from + span.to) / 2;
                double[] gaps = gapsM(middle);
                positions++;
                requireSlopesHold(span, middle, gaps);
                double gap = Arrays.stream(gaps).min().orElseThrow();
                if (gap < best) {
                    best = gap;
                    where = middle;
                }
                next.add(new Span(span.from, span.gapsFrom, middle, gaps));
                next.add(new Span(middle, gaps, span.to, span.gapsTo));
            }
            open = next;
        }
        return new Least(best, where, positions);
    }

    /**
     * A lower bound of the gaps inside a span. Under a soffit a point may come in from outside within the span, so only
     * one of the two ends is sure to know it, and the whole length counts instead of half.
     */
    private double lowestPossibleM(Span span, double threshold) {
        double lowest = Double.POSITIVE_INFINITY;
        double reach = (span.to - span.from) * (soffit == null ? 0.5 : 1);
        for (int unit = 0; unit < units.size(); unit++) {
            double ends = soffit == null
                    ? (span.gapsFrom[unit] + span.gapsTo[unit]) / 2
                    : Math.min(span.gapsFrom[unit], span.gapsTo[unit]);
            // The bound for the whole passage settles most spans without a look at their own slopes.
            if (ends - slopes.boundAnywhere(unit) * reach < threshold) {
                lowest = Math.min(lowest, ends - slopes.bound(unit, span.from, span.to) * reach);
            }
        }
        return lowest;
    }

    private void requireSlopesHold(Span span, double middle, double[] gaps) {
        if (soffit != null) {
            return;
        }
        for (int unit = 0; unit < units.size(); unit++) {
            double most = slopes.bound(unit, span.from, span.to) * (middle - span.from) + 1e-9;
            if (Math.abs(gaps[unit] - span.gapsFrom[unit]) > most || Math.abs(gaps[unit] - span.gapsTo[unit]) > most) {
                throw new IllegalStateException("the bound on slopes does not hold between " + span.from + " and "
                        + span.to + " m for unit " + unit + ": " + span.gapsFrom[unit] + ", " + gaps[unit] + ", "
                        + span.gapsTo[unit] + " m with a bound of " + most + " m");
            }
        }
    }
}
