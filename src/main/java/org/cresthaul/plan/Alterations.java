package org.cresthaul.plan;

import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.Weights;
import org.cresthaul.route.Route;

/** The same route, rig or stance with one thing other than declared. */
public final class Alterations {
    private Alterations() {}

    /** Every survey so many times as coarse; at nought every survey exact. */
    public static Route surveyed(Route route, double times) {
        return route.withHazards(route.hazards().stream()
                .map(h -> h.survey()
                        .map(s -> h.withSurvey(new Uncertainty(s.valueM() * times, s.source(), s.date())))
                        .orElse(h))
                .toList());
    }

    /** Every underside {@code byM} closer to the ground and every topside, the load's too, as much higher. */
    public static LevelStance closer(LevelStance stance, double byM) {
        Tractor t = stance.tractor();
        Trailer r = stance.trailer();
        Tractor tractor = new Tractor(
                t.steer(),
                t.drive(),
                t.fifthWheel(),
                t.plateReachM(),
                lifted(t.underside(), -byM),
                lifted(t.topside(), byM));
        Trailer trailer = new Trailer(
                r.kingpinXM(),
                r.deckFront(),
                r.deckRear(),
                r.axles(),
                r.valveAxle(),
                r.lift().lowered(byM),
                r.hydraulicRaiseLimitM(),
                r.manualRaiseLimitM(),
                r.deckSagM(),
                lifted(r.underside(), -byM),
                lifted(r.topside(), byM),
                r.load().stream().map(o -> lifted(o, byM)).toList(),
                r.boosterHinge(),
                r.hingeReachM());
        Optional<Booster> booster = stance.booster().map(b -> closer(b, byM));
        List<Booster> behind =
                stance.boostersBehind().stream().map(b -> closer(b, byM)).toList();
        List<Jeep> jeeps = stance.jeeps().stream()
                .map(j -> new Jeep(
                        j.kingpinXM(),
                        j.axles(),
                        j.fifthWheel(),
                        j.plateReachM(),
                        lifted(j.underside(), -byM),
                        lifted(j.topside(), byM),
                        j.mayBeLeftOff()))
                .toList();
        return new LevelStance(
                stance.name(), tractor, jeeps, trailer, booster, behind, stance.weights(), stance.plan());
    }

    private static Booster closer(Booster b, double byM) {
        return new Booster(
                b.hingeXM(),
                b.axles(),
                lifted(b.underside(), -byM),
                lifted(b.topside(), byM),
                b.states(),
                b.hingeUpRad(),
                b.hingeDownRad(),
                b.closeCoupledAxleXM(),
                b.carried().map(o -> lifted(o, byM)),
                b.nextHinge());
    }

    /** What is carried stands {@code byM} higher. */
    public static LevelStance loadHigher(LevelStance stance, double byM) {
        Trailer r = stance.trailer();
        return stance.withTrailer(new Trailer(
                r.kingpinXM(),
                r.deckFront(),
                r.deckRear(),
                r.axles(),
                r.valveAxle(),
                r.lift(),
                r.hydraulicRaiseLimitM(),
                r.manualRaiseLimitM(),
                r.deckSagM(),
                r.underside(),
                r.topside(),
                r.load().stream().map(o -> lifted(o, byM)).toList(),
                r.boosterHinge(),
                r.hingeReachM()));
    }

    /**
     * The front may be raised to {@code mostM} over the reference notch and the rear as far by hand, if it was less.
     */
    public static LevelStance raisable(LevelStance stance, double mostM) {
        Trailer r = stance.trailer();
        return stance.withTrailer(new Trailer(
                r.kingpinXM(),
                r.deckFront(),
                r.deckRear(),
                r.axles(),
                r.valveAxle(),
                r.lift(),
                Math.max(mostM, r.hydraulicRaiseLimitM()),
                Math.max(mostM, r.manualRaiseLimitM()),
                r.deckSagM(),
                r.underside(),
                r.topside(),
                r.load(),
                r.boosterHinge(),
                r.hingeReachM()));
    }

    /** Every weight more by a share of it; what the booster's regulator sets stays. */
    public static LevelStance heavier(LevelStance stance, double share) {
        return stance.weights()
                .map(w -> stance.withWeights(new Weights(
                        w.accuracy(),
                        w.source(),
                        more(w.tractor(), share),
                        w.jeeps().stream().map(j -> more(j, share)).toList(),
                        more(w.trailer(), share),
                        more(w.gooseneck(), share),
                        w.booster()
                                .map(b -> new Weights.BoosterWeight(
                                        more(b.standing(), share), b.carried().map(c -> more(c, share)))),
                        w.boostersBehind().stream()
                                .map(b -> new Weights.BoosterBehind(more(b.standing(), share), b.gauge(), b.setPa()))
                                .toList(),
                        w.pieces().stream()
                                .map(p -> new Weights.Piece(p.name(), more(p.at(), share), p.outline()))
                                .toList(),
                        w.tracks(),
                        w.ratings(),
                        w.leastBrakedKg(),
                        w.gauges(),
                        w.regulator(),
                        w.shims(),
                        w.frontLift())))
                .orElse(stance);
    }

    private static Weights.MassPoint more(Weights.MassPoint mass, double share) {
        return mass.withMassKg(mass.massKg() * (1 + share));
    }

    private static Outline lifted(Outline outline, double byM) {
        return new Outline(outline.points().stream()
                .map(p -> new FramePoint(p.xM(), p.hM() + byM, p.part()))
                .toList());
    }
}
