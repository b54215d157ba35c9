package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import java.util.random.RandomGenerator;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.Approach;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;

/** The same road or rig described otherwise, or with one thing about it changed. */
public final class Redrawn {
    private Redrawn() {}

    public static RoadProfile withPoints(RoadProfile profile, List<SurveyedPoint> points) {
        return RoadProfile.of(profile.name(), points, profile.before(), profile.after());
    }

    public static RoadProfile mapped(RoadProfile profile, UnaryOperator<SurveyedPoint> move) {
        return withPoints(profile, profile.points().stream().map(move).toList());
    }

    public static Soffit mapped(Soffit soffit, UnaryOperator<SurveyedPoint> move) {
        return Soffit.of(points(soffit).stream().map(move).toList());
    }

    public static List<SurveyedPoint> points(Soffit soffit) {
        List<SurveyedPoint> points = new ArrayList<>();
        for (int i = 0; i < soffit.size(); i++) {
            points.add(new SurveyedPoint(soffit.distanceM(i), soffit.elevationM(i)));
        }
        return points;
    }

    /** The same line with up to {@code most} more points on each segment longer than 5 cm. */
    public static List<SurveyedPoint> split(List<SurveyedPoint> points, RandomGenerator random, int most) {
        List<SurveyedPoint> split = new ArrayList<>();
        split.add(points.get(0));
        for (int i = 1; i < points.size(); i++) {
            SurveyedPoint a = points.get(i - 1);
            SurveyedPoint b = points.get(i);
            double length = b.distanceM() - a.distanceM();
            int parts = length > 0.05 ? random.nextInt(2, most + 2) : 1;
            for (int k = 1; k < parts; k++) {
                double t = (k + random.nextDouble(-0.3, 0.3)) / parts;
                split.add(new SurveyedPoint(
                        a.distanceM() + t * length, a.elevationM() + t * (b.elevationM() - a.elevationM())));
            }
            split.add(b);
        }
        return split;
    }

    public static RoadProfile mirrored(RoadProfile profile) {
        List<SurveyedPoint> points = new ArrayList<>();
        for (SurveyedPoint p : profile.points()) {
            points.add(0, new SurveyedPoint(-p.distanceM(), p.elevationM()));
        }
        return RoadProfile.of(profile.name(), points, mirrored(profile.after()), mirrored(profile.before()));
    }

    private static Approach mirrored(Approach approach) {
        OptionalDouble grade = approach.declaredGrade();
        return grade.isPresent()
                ? Approach.declared(-grade.getAsDouble(), approach.gradeAccuracy())
                : Approach.undeclared();
    }

    public static LevelStance shifted(LevelStance stance, double tractorM, double trailerM, double boosterM) {
        Tractor t = stance.tractor();
        Trailer f = stance.trailer();
        Tractor tractor = new Tractor(
                shifted(t.steer(), tractorM),
                shifted(t.drive(), tractorM),
                t.fifthWheel().shiftedBy(tractorM),
                t.underside().shiftedBy(tractorM),
                t.topside().shiftedBy(tractorM));
        Trailer trailer = new Trailer(
                f.kingpinXM() + trailerM,
                f.deckFront().shiftedBy(trailerM),
                f.deckRear().shiftedBy(trailerM),
                shifted(f.axles(), trailerM),
                f.valveAxle(),
                f.lift(),
                f.hydraulicRaiseLimitM(),
                f.manualRaiseLimitM(),
                f.deckSagM(),
                f.underside().shiftedBy(trailerM),
                f.topside().shiftedBy(trailerM),
                f.load().stream().map(o -> o.shiftedBy(trailerM)).toList(),
                f.boosterHinge().map(p -> p.shiftedBy(trailerM)));
        Optional<Booster> booster = stance.booster()
                .map(b -> new Booster(
                        b.hingeXM() + boosterM,
                        shifted(b.onlyAxle(), boosterM),
                        b.underside().shiftedBy(boosterM),
                        b.topside().shiftedBy(boosterM),
                        b.states(),
                        b.hingeUpRad(),
                        b.hingeDownRad(),
                        OptionalDouble.of(b.closeCoupledAxleXM().orElseThrow() + trailerM),
                        b.carried().map(o -> o.shiftedBy(trailerM))));
        return new LevelStance(stance.name(), tractor, trailer, booster);
    }

    /**
     * The same rig with its long outline segments dented, a centimeter up or down every so often, here and there with a
     * rod.
     */
    public static LevelStance dented(LevelStance stance, RandomGenerator random) {
        Tractor t = stance.tractor();
        Tractor tractor = new Tractor(
                t.steer(), t.drive(), t.fifthWheel(), dented(t.underside(), random), dented(t.topside(), random));
        Trailer f = withUnderside(stance.trailer(), dented(stance.trailer().underside(), random));
        Trailer trailer =
                withLoad(f, f.load().stream().map(o -> dented(o, random)).toList());
        Optional<Booster> booster = stance.booster()
                .map(b -> new Booster(
                        b.hingeXM(),
                        b.onlyAxle(),
                        dented(b.underside(), random),
                        dented(b.topside(), random),
                        b.states(),
                        b.hingeUpRad(),
                        b.hingeDownRad(),
                        b.closeCoupledAxleXM(),
                        b.carried()));
        return new LevelStance(stance.name(), tractor, trailer, booster);
    }

    public static Outline dented(Outline outline, RandomGenerator random) {
        List<FramePoint> points = new ArrayList<>();
        points.add(outline.points().get(0));
        for (int i = 1; i < outline.points().size(); i++) {
            FramePoint rear = outline.points().get(i - 1);
            FramePoint front = outline.points().get(i);
            double length = front.xM() - rear.xM();
            int parts = length > 0.4 ? random.nextInt(1, 8) : 1;
            for (int k = 1; k < parts; k++) {
                double t = (k + random.nextDouble(-0.3, 0.3)) / parts;
                FramePoint on = rear.toward(front, t);
                points.add(new FramePoint(on.xM(), on.hM() + random.nextDouble(-0.012, 0.012)));
                rod(points, random);
            }
            points.add(front);
        }
        return new Outline(points);
    }

    /** At the last point now and then a rod without a width, up or down and back again, or the point once more. */
    private static void rod(List<FramePoint> points, RandomGenerator random) {
        FramePoint at = points.get(points.size() - 1);
        switch (random.nextInt(12)) {
            case 0 -> {
                points.add(new FramePoint(at.xM(), at.hM() + random.nextDouble(-0.15, 0.15)));
                points.add(at);
            }
            case 1 -> points.add(at);
            default -> {}
        }
    }

    private static Axle shifted(Axle axle, double byM) {
        return new Axle(axle.xM() + byM, axle.radiusM());
    }

    private static AxleGroup shifted(AxleGroup group, double byM) {
        return new AxleGroup(
                group.axles().stream().map(a -> shifted(a, byM)).toList(), group.jounceM(), group.reboundM());
    }

    public static Trailer withUnderside(Trailer t, Outline underside) {
        return new Trailer(
                t.kingpinXM(),
                t.deckFront(),
                t.deckRear(),
                t.axles(),
                t.valveAxle(),
                t.lift(),
                t.hydraulicRaiseLimitM(),
                t.manualRaiseLimitM(),
                t.deckSagM(),
                underside,
                t.topside(),
                t.load(),
                t.boosterHinge());
    }

    public static Trailer withLoad(Trailer t, List<Outline> load) {
        return new Trailer(
                t.kingpinXM(),
                t.deckFront(),
                t.deckRear(),
                t.axles(),
                t.valveAxle(),
                t.lift(),
                t.hydraulicRaiseLimitM(),
                t.manualRaiseLimitM(),
                t.deckSagM(),
                t.underside(),
                t.topside(),
                load,
                t.boosterHinge());
    }
}
