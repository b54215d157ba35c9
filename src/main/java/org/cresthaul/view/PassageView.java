package org.cresthaul.view;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.check.CheckedConfiguration;
import org.cresthaul.check.HazardCheck;
import org.cresthaul.check.SideCheck.JudgedSide;
import org.cresthaul.check.Surroundings;
import org.cresthaul.check.UnknownNameException;
import org.cresthaul.clearance.Clearance;
import org.cresthaul.clearance.Passage;
import org.cresthaul.clearance.PassageSearch;
import org.cresthaul.posture.CombinationPosture;
import org.cresthaul.posture.DeckSag;
import org.cresthaul.posture.Pose;
import org.cresthaul.posture.WheelPosture;
import org.cresthaul.report.Finding;
import org.cresthaul.report.Haul;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.PiecewiseLine;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.RouteCorner;

/**
 * One combination moving over one hazard, position by position, for drawing: the component names are the keys of its
 * JSON form, lengths are meters in the hazard's own distances, null stands for "none". See docs/api.md.
 *
 * @param positions every {@value #STEP_M} m of steer travel, and the tightest positions besides
 * @param tightest index of the position that governs: that of the gap with the least left as a share of its need
 */
public record PassageView(
        String hazard,
        String configuration,
        String line,
        String leveling,
        double frontRaiseM,
        double rearRaiseM,
        List<String> lines,
        List<String> levelings,
        GroundView ground,
        List<List<Double>> soffit,
        List<Double> tracks,
        List<UnitView> units,
        List<PositionView> positions,
        int tightest) {
    private static final double STEP_M = 0.25;
    /** Most positions in one view; a longer passage is shown in coarser steps. */
    private static final int MOST_POSITIONS = 1200;

    /** Surveyed ground and how it goes on. */
    public record GroundView(List<List<Double>> points, ApproachView before, ApproachView after) {}

    public record ApproachView(double slope, boolean declared) {}

    /** A unit's outlines in its own frame, each a list of [x, h]. */
    public record UnitView(
            String unit, List<List<Double>> underside, List<List<Double>> topside, List<List<List<Double>>> load) {}

    /**
     * One position.
     *
     * @param poses by unit: [originX, originZ, pitch in radians]
     * @param wheels each [X, Z, radius, unit or "steer" or "drive", state]
     */
    public record PositionView(
            double steerM,
            Double groundM,
            PlaceView groundAt,
            Double overheadM,
            PlaceView overheadAt,
            Map<String, List<Double>> poses,
            List<List<Object>> wheels) {}

    /** Where a gap is: on the unit, and along the road. */
    public record PlaceView(String unit, double xM, double hM, double distanceM) {}

    /**
     * A passage in one configuration.
     *
     * @param line wheel path by name; by default the one that governs
     * @param leveling "held" or "settled"; by default the one that governs
     * @param frontRaiseM raise of the deck front over the notch, meters
     * @param rearRaiseM raise of the rear by hand, meters
     * @throws UnknownNameException when the route or rig has no such hazard, configuration, line or leveling
     * @throws BeyondLimitsException when the rig is not raised so far
     * @throws NotSurveyedException when nothing is known of the hazard's shape
     */
    public static PassageView of(
            Haul haul,
            String hazardId,
            String configurationKey,
            Optional<String> line,
            Optional<String> leveling,
            double frontRaiseM,
            double rearRaiseM) {
        Hazard hazard = haul.route()
                .findHazard(hazardId)
                .orElseThrow(() -> new UnknownNameException("the haul.route() has no hazard " + hazardId, "hazard"));
        if (hazard instanceof RouteCorner) {
            throw new UnknownNameException(hazardId + " is a corner: it is seen from above", "hazard");
        }
        CheckedConfiguration configuration = CheckedConfiguration.listOf(haul.rig(), haul.stance()).stream()
                .filter(c -> c.key().equals(configurationKey))
                .findFirst()
                .orElseThrow(() -> new UnknownNameException(
                        "the haul.rig() has no configuration " + configurationKey, "configuration"));
        requireWithinLimits(haul.stance(), configuration, frontRaiseM, rearRaiseM);
        Setting setting = configuration.transport().raised(frontRaiseM, rearRaiseM);
        if (hazard instanceof LimitedPlace) {
            throw new UnknownNameException(hazardId + " is judged by loads: it has no passage to draw", "hazard");
        }
        Surroundings around = Surroundings.of(hazard, haul.stance());
        if (around.lanes().isEmpty()) {
            throw new NotSurveyedException(hazardId + " is not surveyed: there is nothing to draw");
        }
        List<String> lines =
                around.lanes().stream().map(Surroundings.Lane::name).distinct().toList();
        List<String> levelings =
                setting.levelings().stream().map(Leveling::word).toList();
        line.filter(l -> !lines.contains(l)).ifPresent(l -> {
            throw new UnknownNameException("the hazard has no line " + l + ", only " + lines, "line");
        });
        leveling.filter(l -> !levelings.contains(l)).ifPresent(l -> {
            throw new UnknownNameException("leveling is one of " + levelings + ", not " + l, "leveling");
        });
        HazardCheck.Judgment judgment =
                new HazardCheck(hazard, haul.rig(), haul.stance(), haul.margins()).judge(setting);
        JudgedSide governing = governing(judgment);
        String shownLine = line.orElse(governing.gap().line());
        Leveling rule = setting.levelings().stream()
                .filter(l -> l.word().equals(leveling.orElse(governing.gap().leveling())))
                .findFirst()
                .orElseThrow();
        Surroundings.Lane lane = around.lanes().stream()
                .filter(l -> l.name().equals(shownLine))
                .findFirst()
                .orElseThrow();
        Shown shown = Shown.of(around, lane, haul.stance(), setting, rule, judgment, governing);
        return shown.view(hazard, configuration, haul.stance(), frontRaiseM, rearRaiseM, lines, levelings);
    }

    /** The gap that governs, as the report tells it. */
    private static JudgedSide governing(HazardCheck.Judgment judgment) {
        if (judgment.ground().isEmpty() || judgment.overhead().isEmpty()) {
            return judgment.ground().or(judgment::overhead).orElseThrow();
        }
        JudgedSide below = judgment.ground().get();
        JudgedSide above = judgment.overhead().get();
        boolean ground =
                below.gap().decisive().share() <= above.gap().decisive().share();
        return ground ? below : above;
    }

    private static void requireWithinLimits(
            LevelStance stance, CheckedConfiguration configuration, double frontRaiseM, double rearRaiseM) {
        double mostFront =
                stance.trailer().hydraulicRaiseLimitM() - configuration.notch().offsetM();
        if (frontRaiseM < 0 || frontRaiseM > Math.max(0, mostFront) + 1e-4) {
            throw new BeyondLimitsException(
                    "the front raise is beyond what the hydraulics reach from this notch", "frontRaise");
        }
        if (rearRaiseM < 0 || rearRaiseM > stance.trailer().manualRaiseLimitM() + 1e-4) {
            throw new BeyondLimitsException("the rear raise is beyond the rig's manual limit", "rearRaise");
        }
    }

    /** The line and leveling shown, and the tightest positions on it. */
    private record Shown(
            Surroundings around,
            Surroundings.Lane lane,
            Leveling rule,
            Passage passage,
            PassageSearch search,
            Optional<Clearance> ground,
            Optional<Clearance> overhead,
            Clearance tightest) {
        static Shown of(
                Surroundings around,
                Surroundings.Lane lane,
                LevelStance stance,
                Setting setting,
                Leveling rule,
                HazardCheck.Judgment judgment,
                JudgedSide governing) {
            Passage passage = around.passage(stance, lane);
            PassageSearch search = new PassageSearch(passage, setting, rule);
            Optional<Clearance> ground =
                    around.judgesGroundOn(lane) ? Optional.of(search.least(Optional.empty())) : Optional.empty();
            Optional<Clearance> overhead =
                    lane.soffit().isPresent() ? Optional.of(search.least(lane.soffit())) : Optional.empty();
            boolean governs =
                    governing.leveling() == rule && governing.gap().line().equals(lane.name());
            double overGround = share(ground, judgment.ground());
            double underSoffit = share(overhead, judgment.overhead());
            // Where the report's own gap is on this line, that very position is shown as the tightest.
            Clearance tightest =
                    governs ? governing.least() : (overGround <= underSoffit ? ground : overhead).orElseThrow();
            return new Shown(around, lane, rule, passage, search, ground, overhead, tightest);
        }

        /** Of what its side needs where that is tightest; nothing governs that is not there. */
        private static double share(Optional<Clearance> here, Optional<JudgedSide> side) {
            return here.isEmpty()
                    ? Double.POSITIVE_INFINITY
                    : Finding.shareOfLength(
                            here.get().valueM() - side.orElseThrow().gap().requiredM(),
                            side.get().gap().requiredM());
        }

        PassageView view(
                Hazard hazard,
                CheckedConfiguration configuration,
                LevelStance stance,
                double frontRaiseM,
                double rearRaiseM,
                List<String> lines,
                List<String> levelings) {
            List<PositionView> positions = new ArrayList<>();
            int index = 0;
            for (double steerM : steerPositions()) {
                if (steerM == tightest.steerM()) {
                    index = positions.size();
                }
                positions.add(position(steerM));
            }
            return new PassageView(
                    hazard.place().id(),
                    configuration.key(),
                    lane.name(),
                    rule.word(),
                    frontRaiseM,
                    rearRaiseM,
                    lines,
                    levelings,
                    groundView(lane.line()),
                    lane.soffit().map(Shown::points).orElse(null),
                    hazard instanceof RailCrossing crossing ? crossing.tracksM() : List.of(),
                    unitViews(stance, configuration.booster()),
                    List.copyOf(positions),
                    index);
        }

        private List<Double> steerPositions() {
            double first = passage.firstSteerM();
            double last = passage.lastSteerM();
            double step = Math.max(STEP_M, (last - first) / MOST_POSITIONS);
            List<Double> all = new ArrayList<>();
            for (int i = 0; first + i * step <= last; i++) {
                all.add(first + i * step);
            }
            ground.ifPresent(c -> all.add(c.steerM()));
            overhead.ifPresent(c -> all.add(c.steerM()));
            all.add(tightest.steerM());
            return all.stream().distinct().sorted().toList();
        }

        private PositionView position(double steerM) {
            CombinationPosture posture = search.postureAt(steerM);
            Map<String, List<Double>> poses = new LinkedHashMap<>();
            for (UnitName unit : posture.units()) {
                poses.put(unit.word(), pose(posture.of(unit), raisedM(steerM, unit)));
            }
            Optional<Clearance> groundHere =
                    around.judgesGroundOn(lane) ? search.at(Optional.empty(), steerM) : Optional.empty();
            Optional<Clearance> overheadHere =
                    lane.soffit().isPresent() ? search.at(lane.soffit(), steerM) : Optional.empty();
            List<List<Object>> wheels = new ArrayList<>();
            for (WheelPosture w : posture.wheels()) {
                String ofTractor = wheels.isEmpty() ? "steer" : "drive";
                String kind =
                        w.unit().equals(UnitName.TRACTOR) ? ofTractor : w.unit().word();
                wheels.add(List.of(
                        DrawnLengths.near(w.xM()),
                        DrawnLengths.near(w.zM()),
                        w.radiusM(),
                        kind,
                        w.state().word()));
            }
            return new PositionView(
                    DrawnLengths.near(steerM),
                    groundHere.map(c -> DrawnLengths.down(c.valueM())).orElse(null),
                    groundHere.map(Shown::place).orElse(null),
                    overheadHere.map(c -> DrawnLengths.down(c.valueM())).orElse(null),
                    overheadHere.map(Shown::place).orElse(null),
                    poses,
                    List.copyOf(wheels));
        }

        private static PlaceView place(Clearance c) {
            return new PlaceView(
                    c.unit().word(),
                    DrawnLengths.near(c.point().xM()),
                    DrawnLengths.near(c.point().hM()),
                    DrawnLengths.near(c.distanceM()));
        }

        /** By the roll, at the place across the road that is drawn. */
        private double raisedM(double steerM, UnitName unit) {
            return search.raiseM(lane.soffit(), steerM, unit);
        }

        private static List<Double> pose(Pose pose, double raisedM) {
            // Six decimals of a radian: under 0.1 mm over the longest unit.
            return List.of(
                    DrawnLengths.near(pose.originXM()),
                    DrawnLengths.near(pose.originZM() + raisedM),
                    Math.rint(pose.pitchRad() * 1e6) / 1e6);
        }

        private static GroundView groundView(RoadProfile line) {
            return new GroundView(
                    points(line),
                    new ApproachView(line.slopeBefore(0), line.before().isDeclared()),
                    new ApproachView(line.slopeBefore(line.size()), line.after().isDeclared()));
        }

        private static List<List<Double>> points(PiecewiseLine line) {
            List<List<Double>> points = new ArrayList<>();
            for (int i = 0; i < line.size(); i++) {
                points.add(List.of(DrawnLengths.near(line.distanceM(i)), DrawnLengths.near(line.elevationM(i))));
            }
            return points;
        }

        private static List<UnitView> unitViews(LevelStance stance, BoosterState state) {
            List<UnitView> units = new ArrayList<>();
            units.add(new UnitView(
                    "tractor",
                    points(stance.tractor().underside()),
                    points(stance.tractor().topside()),
                    List.of()));
            for (int i = 0; i < stance.jeeps().size(); i++) {
                units.add(new UnitView(
                        UnitName.jeep(i + 1).word(),
                        points(stance.jeeps().get(i).underside()),
                        points(stance.jeeps().get(i).topside()),
                        List.of()));
            }
            List<List<List<Double>>> load = new ArrayList<>();
            stance.trailer().load().forEach(o -> load.add(points(o)));
            if (state == BoosterState.CARRIED) {
                load.add(points(stance.booster().orElseThrow().carried().orElseThrow()));
            }
            units.add(new UnitView(
                    "trailer",
                    points(DeckSag.lower(
                            stance.trailer().underside(),
                            stance.trailer().deckRear().xM(),
                            stance.trailer().deckFront().xM(),
                            stance.trailer().deckSagM())),
                    points(stance.trailer().topside()),
                    load));
            if (state == BoosterState.CLOSE_COUPLED) {
                Booster b = stance.booster().orElseThrow();
                // It moves with the trailer: its outlines are given in the trailer's frame.
                double shift =
                        b.closeCoupledAxleXM().orElseThrow() - b.onlyAxle().xM();
                units.add(view(
                        UnitName.TRAILER,
                        b.underside().shiftedBy(shift),
                        b.topside().shiftedBy(shift)));
            }
            for (int i = 0;
                    state == BoosterState.TRAILING && i < stance.boosters().size();
                    i++) {
                Booster b = stance.boosters().get(i);
                units.add(view(UnitName.booster(i + 1), b.underside(), b.topside()));
            }
            return units;
        }

        private static UnitView view(UnitName name, Outline underside, Outline topside) {
            return new UnitView(name.word(), points(underside), points(topside), List.of());
        }

        private static List<List<Double>> points(Outline outline) {
            return outline.points().stream().map(Shown::point).toList();
        }

        private static List<Double> point(FramePoint p) {
            return List.of(p.xM(), p.hM());
        }
    }
}
