package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.clearance.bound.MotionBounds;
import org.cresthaul.clearance.bound.OutlineGaps;
import org.cresthaul.clearance.bound.PointBow;
import org.cresthaul.clearance.bound.PointMotion;
import org.cresthaul.clearance.bound.RaisedTire;
import org.cresthaul.clearance.bound.SteerBow;
import org.cresthaul.clearance.bound.Stretch;
import org.cresthaul.clearance.bound.UnitBow;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.geometry.WorkLimit;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CombinationShape.ChainUnit;
import org.cresthaul.posture.CoupledCombination;
import org.cresthaul.posture.PivotedGroup;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.WheelPaths;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.WheelPath;

/**
 * One combination's way over one line: what is the same for every setting, namely the ground under the wheels, the
 * steer positions to be searched, and the tractor's posture and motion at each. Not safe to share between threads.
 */
public final class Passage {
    /** Positions are first taken this far apart, meters; the search halves where it must. */
    private static final double FIRST_STEP_M = 10.0;

    /** What one question may take: stretches looked at, and more for each point of the lines that were surveyed. */
    private static final long STEPS = 30_000;

    private static final long STEPS_PER_POINT = 200;
    /** Stretches kept for the next setting, of some 2 kB each, and more for each point of the line. */
    private static final int KEPT_SPANS = 1_500;

    private static final int KEPT_SPANS_PER_POINT = 4;
    /** Of all passages together. */
    private static final int MOST_KEPT_SPANS = 12_000;

    /** Placed points of outlines that a search keeps from one question to the next; a megabyte. */
    private static final int KEPT_POINTS = 20_000;

    /** Covers wheel radii, and how far a high top swings along the road on a steep approach. */
    private static final double PAD_M = 2;

    private final LevelStance stance;
    private final Optional<RoadPlace> place;
    private final WheelPaths ground;
    private final PivotedGroup tractor;
    private final WheelPath steerPath;
    private final WheelPath[] drivePaths;
    private final List<Span> spans;
    private final WayPlaces wayPlaces;
    private final Map<Soffit, OutlineGaps> tractorUnder = new HashMap<>();
    private final Map<CombinationShape, Target> groundTargets = new HashMap<>();
    private final Map<Soffit, Map<CombinationShape, Target>> overheadTargets = new HashMap<>();
    private final Map<OutlineGaps, Map<Demand, UnitNeed>> needs = new HashMap<>();
    private final OutlineGaps tractorOver;
    private final TractorSearch tractorSearch;
    private final int supports;
    private int spansKept;
    /** What is left to the question being asked; null where every search has its own. */
    private WorkLimit shared;
    /** How many passages are searched together. */
    private int among = 1;
    /** How many of them are ways of their own, with stretches of their own. */
    private int amongWays = 1;

    /**
     * A passage whose searched positions reach from every part of the combination before {@code fromM} to every part
     * past {@code toM}.
     */
    public Passage(LevelStance stance, RoadProfile line, double fromM, double toM) {
        this(stance, Optional.empty(), new WheelPaths(line), fromM, toM);
    }

    /** The same at one place across a road, with left and right wheels on lines of their own. */
    public Passage(LevelStance stance, RoadPlace place, double fromM, double toM) {
        this(stance, Optional.of(place), place.ground(), fromM, toM);
    }

    /** Shares with another what does not depend on the place across the road. */
    private Passage(Passage way, RoadPlace place) {
        stance = way.stance;
        supports = way.supports;
        this.place = Optional.of(place);
        ground = way.ground;
        tractor = way.tractor;
        steerPath = way.steerPath;
        drivePaths = way.drivePaths;
        spans = way.spans;
        wayPlaces = way.wayPlaces;
        tractorOver = OutlineGaps.over(
                lineUnder(UnitName.TRACTOR), List.of(stance.tractor().underside()), List.of());
        tractorSearch = new TractorSearch(this);
    }

    /**
     * The same way at another place across the road, of one combination driven alike: the tractor's postures are found
     * once.
     *
     * @throws IllegalArgumentException for a place on other ground
     */
    public Passage at(RoadPlace other) {
        if (other.ground() != ground) {
            throw new IllegalArgumentException(other.label() + " is on another way than " + name());
        }
        return new Passage(this, other);
    }

    private Passage(LevelStance stance, Optional<RoadPlace> place, WheelPaths ground, double fromM, double toM) {
        this.stance = stance;
        supports = Leverage.supports(stance);
        this.place = place;
        this.ground = ground;
        tractor = CoupledCombination.tractorGroup(stance.tractor());
        steerPath = ground.rolled(stance.tractor().steer().radiusM(), AxleKind.STEER);
        drivePaths = tractor.rolledOn(ground, PostureSolver.drives(tractor));
        double first = fromM - frontOverhangM(stance) - PAD_M;
        double last = toM + reachBehindM(stance) + PAD_M;
        int count = (int) Math.ceil((last - first) / FIRST_STEP_M);
        double step = (last - first) / count;
        List<Span> all = new ArrayList<>(count);
        PlacedUnit at = place(first, 0);
        StopSignal stop = StopSignal.current();
        for (int i = 0; i < count; i++) {
            stop.poll();
            double end = i + 1 == count ? last : first + (i + 1) * step;
            PlacedUnit next = place(end, at.pose.pitchRad());
            all.add(new Span(first + i * step, end, at, next, i));
            at = next;
        }
        spans = List.copyOf(all);
        wayPlaces = new WayPlaces(stance, ground, spans);
        tractorOver = OutlineGaps.over(
                lineUnder(UnitName.TRACTOR), List.of(stance.tractor().underside()), List.of());
        tractorSearch = new TractorSearch(this);
    }

    /** A passage over the whole surveyed line. */
    public Passage(LevelStance stance, RoadProfile line) {
        this(stance, line, line.startM(), line.endM());
    }

    public LevelStance stance() {
        return stance;
    }

    /** Under the middle of the combination: how far the ground was surveyed. */
    public RoadProfile line() {
        return ground.line();
    }

    /** What is told of it: the line, or the place across the road. */
    public String name() {
        return place.map(RoadPlace::label).orElse(line().name());
    }

    /** The ground that a unit is judged over. */
    public RoadProfile lineUnder(UnitName unit) {
        return place.map(p -> p.line(unit)).orElse(line());
    }

    /** Where across the road it judges; empty where all wheels are taken to run on one line, and all units over it. */
    public Optional<RoadPlace> place() {
        return place;
    }

    /** First steer position of the search, meters along the line. */
    public double firstSteerM() {
        return spans.get(0).startM;
    }

    /** Last steer position of the search, meters along the line. */
    public double lastSteerM() {
        return spans.get(spans.size() - 1).endM;
    }

    /**
     * From now on searches draw on one limit, which several passages may share: when it is spent they end undecided.
     * The tractor's own searches, which serve every setting, have their own.
     */
    public void share(WorkLimit limit) {
        shared = limit;
    }

    /** So many passages are searched together, and keep less each. */
    public void keepAmong(int passages, int ways) {
        among = passages;
        amongWays = ways;
    }

    private int mostKeptSpans() {
        return Math.min(KEPT_SPANS + KEPT_SPANS_PER_POINT * line().size(), MOST_KEPT_SPANS / amongWays);
    }

    /** How many placed points of outlines a search may keep: as many as nine lines do in all. */
    int mostKeptPoints() {
        return KEPT_POINTS * 9 / Math.max(9, among);
    }

    /** What a question may take that asks about lines and soffits with so many points in all. */
    public static WorkLimit limit(long points) {
        return WorkLimit.of(STEPS + STEPS_PER_POINT * points);
    }

    WorkLimit limit() {
        return shared == null ? ownLimit() : shared;
    }

    WorkLimit ownLimit() {
        return limit(line().size());
    }

    WheelPaths ground() {
        return ground;
    }

    TractorSearch tractorSearch() {
        return tractorSearch;
    }

    CombinationShape shape(LiftState lift, BoosterState booster) {
        return wayPlaces.shape(lift, booster);
    }

    /** Where the units behind the tractor stand on this way. */
    UnitPlaces places(Setting setting, Leveling leveling) {
        return wayPlaces.of(setting, leveling);
    }

    /** The undersides of a shape over this line. */
    Target over(CombinationShape shape) {
        return groundTargets.computeIfAbsent(shape, s -> {
            List<OutlineGaps> all = new ArrayList<>(List.of(tractorOver));
            for (int k = 1; k < s.units().size(); k++) {
                ChainUnit unit = s.units().get(k);
                all.add(OutlineGaps.over(
                        lineUnder(unit.name()),
                        unit.outlines().undersides(),
                        k == s.trailerIndex() ? raisedTires(s.raisedTires()) : List.of()));
            }
            return new Target(all);
        });
    }

    /** Raised tires over their paths; at one place across the road each maybe over several, or none. */
    private List<RaisedTire> raisedTires(List<CombinationShape.Circle> circles) {
        return circles.stream()
                .flatMap(circle -> place.isEmpty()
                        ? Stream.of(new RaisedTire(circle, ground.rolled(circle.radiusM(), AxleKind.TRAILER), 0))
                        : place.get().raisedTiresRightM().stream()
                                .map(rightM -> new RaisedTire(
                                        circle, ground.beside(circle.radiusM(), rightM), Math.abs(rightM))))
                .toList();
    }

    /** The topsides of a shape under a soffit. */
    Target under(CombinationShape shape, Soffit soffit) {
        return overheadTargets.computeIfAbsent(soffit, s -> new HashMap<>()).computeIfAbsent(shape, s -> {
            List<OutlineGaps> all = new ArrayList<>();
            all.add(tractorUnder.computeIfAbsent(
                    soffit, o -> OutlineGaps.under(o, List.of(stance.tractor().topside()))));
            for (int k = 1; k < s.units().size(); k++) {
                all.add(OutlineGaps.under(soffit, s.units().get(k).outlines().topsides()));
            }
            return new Target(all);
        });
    }

    /** What a demand asks of one unit; the same for every notch. For one search at a time. */
    UnitNeed need(OutlineGaps gaps, UnitName unit, Demand demand, Leverage leverage) {
        return needs.computeIfAbsent(gaps, g -> new HashMap<>(4))
                .computeIfAbsent(demand, d -> new UnitNeed(d, this, leverage, unit, gaps));
    }

    /** Margin and what is not certain about the gap of a point, without ground beyond the survey, meters. */
    double wantedM(Demand demand, Leverage leverage, UnitName unit, double xM) {
        return place.isPresent()
                ? place.get().wantedM(demand, leverage, unit, xM)
                : demand.at(leverage.surveyFactor(unit, xM));
    }

    /** How many there are in {@link Leverage}. */
    int supports() {
        return supports;
    }

    List<Span> spans() {
        return spans;
    }

    private PlacedUnit place(double steerM, double guessRad) {
        return tractor.place(drivePaths, steerM, steerPath.heightAt(steerM), guessRad);
    }

    private static double frontOverhangM(LevelStance stance) {
        Tractor t = stance.tractor();
        double front = Math.max(t.underside().frontXM(), t.topside().frontXM());
        double overhang = Math.max(0, front - t.steer().xM());
        // A load, a carried booster or the gooseneck may reach ahead over the tractor.
        for (int i = 0; i < stance.jeeps().size(); i++) {
            Jeep jeep = stance.jeeps().get(i);
            double jeepFront =
                    Math.max(jeep.underside().frontXM(), jeep.topside().frontXM());
            overhang = Math.max(
                    overhang, jeepFront + stance.jeepShiftM(i) - t.steer().xM());
        }
        double kingpinBehindSteer = t.steer().xM() - stance.trailerKingpinXM();
        List<Outline> outlines = new ArrayList<>(stance.trailer().load());
        outlines.add(stance.trailer().underside());
        outlines.add(stance.trailer().topside());
        stance.booster().flatMap(Booster::carried).ifPresent(outlines::add);
        for (Outline o : outlines) {
            overhang = Math.max(overhang, o.frontXM() - stance.trailer().kingpinXM() - kingpinBehindSteer);
        }
        return overhang;
    }

    private static double reachBehindM(LevelStance stance) {
        Tractor t = stance.tractor();
        Trailer trailer = stance.trailer();
        double rear = Math.min(trailer.underside().rearXM(), trailer.topside().rearXM());
        for (Outline o : trailer.load()) {
            rear = Math.min(rear, o.rearXM());
        }
        double lastAxle =
                trailer.axles().axles().get(trailer.axles().axles().size() - 1).xM();
        rear = Math.min(rear, lastAxle - 1);
        for (int i = 0; i < stance.boosters().size(); i++) {
            Booster b = stance.boosters().get(i);
            double bodyRear = Math.min(
                    Math.min(b.underside().rearXM(), b.topside().rearXM()),
                    b.lastAxle().xM() - 1);
            rear = Math.min(rear, bodyRear + stance.boosterShiftM(i));
            if (b.closeCoupledAxleXM().isPresent()) {
                rear = Math.min(
                        rear,
                        b.closeCoupledAxleXM().getAsDouble()
                                + bodyRear
                                - b.onlyAxle().xM());
            }
            Optional<Outline> carried = b.carried();
            if (carried.isPresent()) {
                rear = Math.min(rear, carried.get().rearXM());
            }
        }
        double tractorRear = Math.min(
                Math.min(t.underside().rearXM(), t.topside().rearXM()),
                t.drive().axles().get(t.drive().axles().size() - 1).xM() - 1);
        return t.steer().xM() - Math.min(tractorRear, stance.trailerShiftM() + rear);
    }

    /** A stretch of steer positions with the tractor at both ends; halves are made once and shared by all settings. */
    final class Span {
        final double startM;
        final double endM;
        /** Of its own among those that are kept; negative for one that is made anew each time. */
        final int number;

        final PlacedUnit start;
        final PlacedUnit end;
        final MotionBounds motion;
        final UnitBow bow;
        /** How the kingpin moves, and how far it strays from moving evenly; null where that is not known. */
        final PointMotion kingpin;

        final PointBow kingpinBow;
        private Halves halves;

        Span(double startM, double endM, PlacedUnit start, PlacedUnit end, int number) {
            this.startM = startM;
            this.endM = endM;
            this.number = number;
            this.start = start;
            this.end = end;
            Stretch on = new Stretch(tractor, drivePaths, start, end, endM - startM);
            SteerBow steer = SteerBow.of(steerPath, startM, endM);
            motion = MotionBounds.of(on, steer.motion());
            bow = UnitBow.of(on, motion, steer);
            FramePoint plate = stance.tractor().fifthWheel();
            kingpin = motion.known ? motion.at(start.pose, end.pose, plate) : null;
            kingpinBow = bow.known ? bow.at(plate.xM(), plate.hM()) : null;
        }

        double lengthM() {
            return endM - startM;
        }

        /** The two halves; kept for the other settings as long as the passage has room for more. */
        Halves halves() {
            if (halves != null) {
                return halves;
            }
            double middle = 0.5 * (startM + endM);
            PlacedUnit at = place(middle, 0.5 * (start.pose.pitchRad() + end.pose.pitchRad()));
            boolean kept = spansKept < mostKeptSpans();
            int next = kept ? spans.size() + spansKept : -1;
            Halves made = new Halves(
                    new Span(startM, middle, start, at, next), new Span(middle, endM, at, end, kept ? next + 1 : -1));
            if (kept) {
                spansKept += 2;
                halves = made;
            }
            return made;
        }
    }

    /** The halves of a stretch. */
    record Halves(Span first, Span second) {}
}
