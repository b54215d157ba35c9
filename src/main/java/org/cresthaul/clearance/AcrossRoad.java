package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.cresthaul.geometry.Interval;
import org.cresthaul.posture.AxleTracks;
import org.cresthaul.posture.WheelPaths;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.rig.PlanDimensions.Widths;
import org.cresthaul.road.CrossSection;

/**
 * The places across a road that are judged so that everything under the whole width is, wherever within half a foot of
 * its line a driver keeps. See docs/model.md, "Across the road", for why these are enough.
 *
 * <p>With the combination so far off its line, the gap along one distance is concave across the road between lines that
 * stand out: the ground is straight or hollow there, and the least of several rolls about the middle is concave. So the
 * edges of each unit and those lines are enough. Between two neighboring ways of driving, with no such line crossing an
 * edge, the ground under an edge changes evenly, and what the wheels do strays from even by a quarter of the way times
 * how much the road's slopes across differ under the wheels of one side.
 */
public final class AcrossRoad {
    /**
     * A driver keeps within half a foot of the line he means to drive: an assumption of this program, as in corners.
     */
    public static final double DRIVEN_OFF_M = 0.1524;

    /** Ways of driving are taken nearer to each other until no more than about this is left between two, meters. */
    private static final double LEFT_BETWEEN_M = 0.001;

    private static final int MOST_PARTS = 8;

    /**
     * With more ways at which an edge crosses a line, lines are looked at as far beside an edge as two ways are apart.
     */
    private static final int MOST_CROSSINGS = 8;
    /**
     * Roads with more points in all are not judged between their lines: each place has lines of its own, and takes
     * room.
     */
    public static final int MOST_POINTS = 1_500;

    private final CrossSection road;
    private final LevelStance stance;
    private final PlanDimensions plan;
    private final AxleTracks tracks;
    private final Map<Double, WheelPaths> grounds = new HashMap<>();

    /**
     * A combination on a road.
     *
     * @throws IllegalArgumentException for a stance whose widths were not measured
     */
    public AcrossRoad(CrossSection road, LevelStance stance) {
        this.road = road;
        this.stance = stance;
        plan = stance.plan().orElseThrow(() -> new IllegalArgumentException("the stance has no widths"));
        tracks = AxleTracks.of(plan);
    }

    /** Under the units: each as wide as it is, and raised tires where they are. */
    public List<RoadPlace> underUnits() {
        double booster = plan.booster().map(Widths::bodyM).orElse(0.0);
        double jeep = plan.jeep().map(Widths::bodyM).orElse(0.0);
        boolean coupled = stance.boosterStates().contains(BoosterState.CLOSE_COUPLED);
        double trailer = coupled
                ? Math.max(plan.trailer().bodyM(), booster)
                : plan.trailer().bodyM();
        double[] half = stance.units().stream()
                .mapToDouble(unit -> 0.5
                        * switch (unit.kind()) {
                            case TRACTOR -> plan.tractor().bodyM();
                            case JEEP -> jeep;
                            case TRAILER -> trailer;
                            case BOOSTER -> booster;
                        })
                .toArray();
        return places(half, true);
    }

    /** Over the units: all as wide as the widest, load included; a structure is known along the road only. */
    public List<RoadPlace> overUnits() {
        double widest = Math.max(plan.tractor().bodyM(), plan.trailer().bodyM());
        widest = Math.max(widest, plan.loadWidthM().orElse(0));
        widest = Math.max(widest, plan.booster().map(Widths::bodyM).orElse(0.0));
        widest = Math.max(widest, plan.jeep().map(Widths::bodyM).orElse(0.0));
        double[] half = new double[stance.units().size()];
        Arrays.fill(half, 0.5 * widest);
        return places(half, false);
    }

    private List<RoadPlace> places(double[] halfM, boolean below) {
        List<Integer> standing = new ArrayList<>();
        for (int i = 0; i < road.size(); i++) {
            if (!below || road.isRidge(i)) {
                standing.add(i);
            }
        }
        Interval right = new Interval();
        Interval left = new Interval();
        road.addSlopesAcross(tracks.leastM() - DRIVEN_OFF_M, tracks.mostM() + DRIVEN_OFF_M, right);
        road.addSlopesAcross(-tracks.mostM() - DRIVEN_OFF_M, -tracks.leastM() + DRIVEN_OFF_M, left);
        double differ = right.width() + left.width();
        double[] driven = driven(halfM, standing, differ);
        double widest = 0;
        for (int i = 1; i < driven.length; i++) {
            widest = Math.max(widest, driven[i] - driven[i - 1]);
        }
        // Where the ways at an edge are not all taken, a line inside of it for a part of the way between two counts at
        // both.
        double reach = crossings(edges(halfM), standing).size() - 2 > MOST_CROSSINGS ? widest : 0;
        double perSlope = 0.25 * widest;
        double rolls = rollsRad();
        List<RoadPlace> places = new ArrayList<>();
        RoadPlace.Between edge = new RoadPlace.Between(0.5 * perSlope * differ, 0.5 * perSlope * differ, 0);
        RoadPlace.Between line = new RoadPlace.Between(edge.perLeverM(), edge.perRollM(), perSlope * rolls);
        for (double off : driven) {
            places.add(place("left edge", off, Double.NEGATIVE_INFINITY, halfM, reach, below, edge));
            places.add(place("right edge", off, Double.POSITIVE_INFINITY, halfM, reach, below, edge));
            for (int i : standing) {
                double rightM = road.offsetM(i) - off;
                if (Arrays.stream(halfM).anyMatch(h -> Math.abs(rightM) < h + reach - 1e-9)) {
                    places.add(place(road.name(i), off, rightM, halfM, reach, below, line));
                }
            }
        }
        return places;
    }

    /**
     * By how much the rolls of axles differ at most, radians: extremes are where a wheel stands on a line or at a
     * limit.
     */
    private double rollsRad() {
        Interval rise = new Interval();
        for (AxleKind kind : AxleKind.values()) {
            double half = tracks.halfM(kind);
            for (double off : crossings(new double[] {half}, everyLine())) {
                road.addRise(off - half, off + half, rise);
            }
        }
        return rise.width() / (2 * tracks.leastM());
    }

    private List<Integer> everyLine() {
        return IntStream.range(0, road.size()).boxed().toList();
    }

    /** Both limits, and wherever something so far beside the middle crosses one of the lines. */
    private TreeSet<Double> crossings(double[] besideM, List<Integer> lines) {
        TreeSet<Double> all = new TreeSet<>(List.of(-DRIVEN_OFF_M, DRIVEN_OFF_M));
        for (int line : lines) {
            for (double beside : besideM) {
                for (double off : new double[] {road.offsetM(line) - beside, road.offsetM(line) + beside}) {
                    if (beside > 0 && Math.abs(off) < DRIVEN_OFF_M) {
                        all.add(off);
                    }
                }
            }
        }
        return all;
    }

    /**
     * Both limits, the line itself, wherever an edge crosses a line that stands out, and more where the road is uneven
     * across.
     */
    private double[] driven(double[] halfM, List<Integer> standing, double differ) {
        TreeSet<Double> all = crossings(edges(halfM), standing);
        if (all.size() - 2 > MOST_CROSSINGS) {
            all.removeIf(off -> Math.abs(off) < DRIVEN_OFF_M);
        }
        int parts = 2;
        while (parts < MOST_PARTS && 2 * DRIVEN_OFF_M / parts / 4 * differ > LEFT_BETWEEN_M) {
            parts *= 2;
        }
        for (int i = 1; i < parts; i++) {
            all.add(DRIVEN_OFF_M * (2.0 * i / parts - 1));
        }
        return all.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Beside the middle: of each unit, and of a raised tire where there may be one. */
    private double[] edges(double[] halfM) {
        double[] besideM = Arrays.copyOf(halfM, halfM.length + 2);
        if (!stance.trailer().lift().isEmpty()) {
            besideM[halfM.length] = innerFaceM();
            besideM[halfM.length + 1] = outerFaceM();
        }
        return besideM;
    }

    private double outerFaceM() {
        return 0.5 * plan.trailer().tiresM();
    }

    private double innerFaceM() {
        return outerFaceM() - Math.min(plan.trailer().tires().treadM(), outerFaceM());
    }

    private RoadPlace place(
            String name,
            double off,
            double atM,
            double[] halfM,
            double reach,
            boolean below,
            RoadPlace.Between between) {
        WheelPaths ground = grounds.computeIfAbsent(off, o -> new WheelPaths(road, tracks, o));
        List<RoadPlace.Passed> passed = new ArrayList<>();
        for (int unit = 0; unit < halfM.length; unit++) {
            double rightM = Math.abs(atM) <= halfM[unit] + reach ? atM : Math.copySign(halfM[unit], atM);
            passed.add(new RoadPlace.Passed(stance.units().get(unit), rightM, road.at(name, off + rightM)));
        }
        boolean edge = Double.isInfinite(atM);
        int side = (int) Math.signum(atM);
        return new RoadPlace(
                name, off, ground, side, passed, below && edge ? raisedTires(off, side, reach) : List.of(), between);
    }

    /** Both faces of the tires of one side, and the lines that stand out between them. */
    private List<Double> raisedTires(double off, int side, double reach) {
        double outer = outerFaceM();
        double inner = innerFaceM();
        List<Double> at = new ArrayList<>(List.of(side * inner, side * outer));
        for (int i = 0; i < road.size(); i++) {
            double rightM = side * (road.offsetM(i) - off);
            if (road.isRidge(i) && rightM > inner - reach && rightM < outer + reach) {
                at.add(side * rightM);
            }
        }
        return at;
    }
}
