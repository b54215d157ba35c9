package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.cresthaul.plan.Plan;
import org.cresthaul.posture.CombinationPosture;
import org.cresthaul.posture.Pose;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.WheelPosture;
import org.cresthaul.posture.WheelState;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.RoadProfile;

/**
 * What a combination measures in one set-up, standing straight on level ground: figures and the side view they belong
 * to. Meters and kilograms, null for "not known"; x runs forward, heights are above the ground.
 *
 * @param letter of the set-up
 * @param raisedHeightM greatest height of any raise of the plan in this set-up, or null where none is raised
 * @param widthM of the widest of tractor, trailer, booster and load
 * @param frontXM of the foremost point
 * @param rearXM of the rearmost point
 * @param outlines each closed, bodies and load
 * @param wheels front to rear, one for each axle, lifted ones too
 */
public record Envelope(
        String letter,
        String configuration,
        String label,
        double lengthM,
        double heightM,
        Double raisedHeightM,
        Double widthM,
        Double grossKg,
        double frontXM,
        double rearXM,
        List<Shape> outlines,
        List<Wheel> wheels) {
    public Envelope {
        outlines = List.copyOf(outlines);
        wheels = List.copyOf(wheels);
    }

    /** @param load whether it is carried */
    public record Shape(boolean load, List<List<Double>> points) {
        public Shape {
            points = List.copyOf(points);
        }
    }

    /**
     * @param behindM behind the axle ahead that stands, as the axle table has it; null for the first and for a lifted
     *     one
     * @param axle as the axle table names it, or null where loads are not known or the axle is lifted
     * @param loadKg it carries, or null
     */
    public record Wheel(
            double xM, double hM, double radiusM, boolean lifted, Double behindM, String axle, Double loadKg) {}

    /** The side view and figures of one set-up of a plan. */
    static Envelope of(Sources sources, LevelStance stance, Plan.SetUp set) {
        Setting setting = sources.setting(set, 0, 0);
        CombinationPosture standing =
                new PostureSolver(stance, setting, setting.levelings().get(0), RoadProfile.level()).at(0);
        List<Shape> outlines = shapes(stance, setting.booster(), standing);
        List<Wheel> wheels = wheels(standing, sources.loads(set).map(Sources.Loads::sheet));
        double front = Stream.concat(
                        outlines.stream().flatMap(o -> o.points.stream()).map(p -> p.get(0)),
                        wheels.stream().map(w -> w.xM + w.radiusM))
                .mapToDouble(x -> x)
                .max()
                .orElseThrow();
        OptionalDouble raised = sources.raised(set)
                .mapToDouble(p ->
                        sources.heightM(set, sources.mostFrontM(p), p.raise().rearM()))
                .max();
        return new Envelope(
                sources.letterOf(set),
                set.configuration(),
                set.label(),
                set.lengthM(),
                sources.heightM(set, 0, 0),
                raised.isPresent() ? raised.getAsDouble() : null,
                stance.plan().map(Envelope::widestM).orElse(null),
                sources.loads(set).map(l -> l.sheet().grossKg()).orElse(null),
                front,
                front - set.lengthM(),
                outlines,
                wheels);
    }

    /** Of everything that has a width. */
    static double widestM(PlanDimensions p) {
        return Stream.of(
                        Stream.of(p.tractor(), p.trailer()).flatMap(w -> Stream.of(w.bodyM(), w.tiresM())),
                        Stream.of(p.jeep(), p.booster())
                                .flatMap(Optional::stream)
                                .flatMap(w -> Stream.of(w.bodyM(), w.tiresM())),
                        p.loadWidthM().stream().boxed())
                .flatMap(w -> w)
                .mapToDouble(w -> w)
                .max()
                .orElseThrow();
    }

    private static List<Shape> shapes(LevelStance stance, BoosterState booster, CombinationPosture standing) {
        List<Shape> shapes = new ArrayList<>();
        stance.trailer()
                .load()
                .forEach(o -> shapes.add(
                        onDeck(standing.trailer(), o, stance.trailer().topside())));
        if (booster == BoosterState.CARRIED) {
            stance.booster()
                    .flatMap(Booster::carried)
                    .ifPresent(o -> shapes.add(
                            onDeck(standing.trailer(), o, stance.trailer().topside())));
        }
        shapes.add(body(
                standing.tractor(),
                stance.tractor().underside(),
                stance.tractor().topside(),
                0));
        for (int i = 0; i < stance.jeeps().size(); i++) {
            Jeep jeep = stance.jeeps().get(i);
            shapes.add(body(standing.of(UnitName.jeep(i + 1)), jeep.underside(), jeep.topside(), 0));
        }
        shapes.add(body(
                standing.trailer(),
                stance.trailer().underside(),
                stance.trailer().topside(),
                0));
        if (booster == BoosterState.CLOSE_COUPLED) {
            Booster b = stance.booster().orElseThrow();
            double shiftM = b.closeCoupledAxleXM().orElseThrow() - b.onlyAxle().xM();
            shapes.add(body(standing.trailer(), b.underside(), b.topside(), shiftM));
        }
        for (int i = 0;
                booster == BoosterState.TRAILING && i < stance.boosters().size();
                i++) {
            Booster b = stance.boosters().get(i);
            shapes.add(body(standing.of(UnitName.booster(i + 1)), b.underside(), b.topside(), 0));
        }
        return shapes;
    }

    private static Shape body(Pose pose, Outline underside, Outline topside, double shiftM) {
        List<List<Double>> points = new ArrayList<>();
        underside.points().forEach(p -> points.add(world(pose, p.xM() + shiftM, p.hM())));
        for (int i = topside.points().size() - 1; i >= 0; i--) {
            points.add(world(
                    pose,
                    topside.points().get(i).xM() + shiftM,
                    topside.points().get(i).hM()));
        }
        return new Shape(false, points);
    }

    /** A load's top line closed along the deck's highest line between its ends. */
    private static Shape onDeck(Pose pose, Outline load, Outline deck) {
        List<List<Double>> points = new ArrayList<>();
        load.points().forEach(p -> points.add(world(pose, p.xM(), p.hM())));
        double lowestM = load.points().stream().mapToDouble(p -> p.hM()).min().orElseThrow();
        double deckM = deck.points().stream()
                .filter(p -> p.xM() >= load.rearXM() && p.xM() <= load.frontXM())
                .mapToDouble(p -> p.hM())
                .min()
                .orElse(lowestM);
        points.add(world(pose, load.frontXM(), Math.min(deckM, lowestM)));
        points.add(world(pose, load.rearXM(), Math.min(deckM, lowestM)));
        return new Shape(true, points);
    }

    private static List<Double> world(Pose pose, double xM, double hM) {
        return List.of(near(pose.worldXM(xM, hM)), near(pose.worldZM(xM, hM)));
    }

    /** To 0.1 mm, as reports have it. */
    private static double near(double meters) {
        return Math.rint(meters * 1e4) / 1e4;
    }

    /** Front to rear; the axles that stand are those of the load sheet, in its order. */
    private static List<Wheel> wheels(CombinationPosture standing, Optional<LoadSheet> sheet) {
        List<WheelPosture> all = standing.wheels().stream()
                .sorted((a, b) -> Double.compare(b.xM(), a.xM()))
                .toList();
        long down = all.stream().filter(w -> w.state() != WheelState.LIFTED).count();
        boolean matched = sheet.map(s -> s.axles().size() == down).orElse(false);
        List<Wheel> wheels = new ArrayList<>();
        int axle = 0;
        double aheadXM = Double.NaN;
        for (WheelPosture w : all) {
            boolean lifted = w.state() == WheelState.LIFTED;
            LoadSheet.AxleLine line =
                    lifted || !matched ? null : sheet.orElseThrow().axles().get(axle);
            axle += lifted ? 0 : 1;
            double xM = line == null ? near(w.xM()) : line.xM();
            wheels.add(new Wheel(
                    near(w.xM()),
                    near(w.zM()),
                    near(w.radiusM()),
                    lifted,
                    lifted || Double.isNaN(aheadXM) ? null : Double.valueOf(aheadXM - xM),
                    line == null ? null : line.label(),
                    line == null ? null : line.loadKg()));
            aheadXM = lifted ? aheadXM : xM;
        }
        return wheels;
    }
}
