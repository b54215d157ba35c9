package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleSteering;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.rig.PlanDimensions.Widths;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;

/** Puts a stance that was measured from above together, unit behind unit, in one axle and booster state. */
final class StanceFromAbove {
    private final LevelStance stance;
    private final PlanDimensions plan;
    private final LiftState lift;
    private final BoosterState state;
    private final boolean backing;
    private final List<TurningUnit> chain = new ArrayList<>();
    private final List<PlanUnit> units = new ArrayList<>();
    private final List<Double> limits = new ArrayList<>();

    /** @param backing castering wheels are locked */
    StanceFromAbove(LevelStance stance, PlanDimensions plan, LiftState lift, BoosterState state, boolean backing) {
        this.stance = stance;
        this.plan = plan;
        this.lift = lift;
        this.state = state;
        this.backing = backing;
    }

    /** An axle and how wide it is. */
    private record Wide(Axle axle, Widths widths) {}

    /** The axles of a unit, and where their effective axle is. */
    private final class Group {
        final double lengthM;
        final double axleXM;
        final Optional<SteeredAxles> steered;
        final List<AxleLine> tires = new ArrayList<>();

        Group(double hitchXM, List<Wide> axles, double bendLimitRad) {
            steered = SteeredAxles.of(hitchXM, axles.stream().map(Wide::axle).toList(), backing);
            lengthM = steered.map(SteeredAxles::effectiveM)
                    .orElseGet(() -> EffectiveAxle.behindHitchM(
                            axles.stream().map(a -> hitchXM - a.axle.xM()).toList()));
            axleXM = hitchXM - lengthM;
            for (Wide a : axles) {
                AxleLine line = line(a.axle.xM() - axleXM, a.widths.tiresM(), a.widths.tires());
                tires.add(line.turned(mostTurnRad(a.axle, bendLimitRad)));
            }
        }

        TurningUnit pulling(double nextHitchXM) {
            return new TurningUnit(lengthM, axleXM - nextHitchXM, steered);
        }

        TurningUnit last() {
            return new TurningUnit(lengthM, 0, steered);
        }
    }

    private double mostTurnRad(Axle axle, double bendLimitRad) {
        AxleSteering steering = axle.steering().orElse(null);
        if (steering instanceof AxleSteering.Commanded c) {
            return Math.min(c.limitRad(), c.ratio() * bendLimitRad);
        }
        return steering == null || backing ? 0 : steering.limitRad();
    }

    private static List<Wide> wide(List<Axle> axles, Widths widths) {
        return axles.stream().map(a -> new Wide(a, widths)).toList();
    }

    TurningCombination combination() {
        tractor(stance.tractor());
        stance.jeeps().forEach(this::jeep);
        trailer(stance.trailer());
        for (int i = 0; state == BoosterState.TRAILING && i < stance.boosters().size(); i++) {
            trailing(UnitName.booster(i + 1), stance.boosters().get(i));
        }
        return new TurningCombination(chain, units, plan.steerLimitRad(), plan.lockDistanceM(), limits);
    }

    private void tractor(Tractor tractor) {
        double steerXM = tractor.steer().xM();
        Widths widths = plan.tractor();
        Group drive = new Group(steerXM, wide(tractor.drive().axles(), widths), 0);
        chain.add(drive.pulling(tractor.fifthWheel().xM()));
        List<AxleLine> tires = new ArrayList<>();
        tires.add(line(drive.lengthM, widths.tiresM(), plan.steerTires()));
        tires.addAll(drive.tires);
        Body body = body(UnitName.TRACTOR, tractor.underside(), tractor.topside(), drive.axleXM, widths.bodyM());
        units.add(new PlanUnit(UnitName.TRACTOR, tires, List.of(body), drive.axleXM));
    }

    private void jeep(Jeep jeep) {
        double limitRad = plan.jeepLimitRad().orElseThrow();
        Widths widths = plan.jeep().orElseThrow();
        Group group = new Group(jeep.kingpinXM(), wide(jeep.axles().axles(), widths), limitRad);
        UnitName name = UnitName.jeep(chain.size());
        chain.add(group.pulling(jeep.fifthWheel().xM()));
        limits.add(limitRad);
        Body body = body(name, jeep.underside(), jeep.topside(), group.axleXM, widths.bodyM());
        units.add(new PlanUnit(name, group.tires, List.of(body), group.axleXM));
    }

    private void trailer(Trailer trailer) {
        limits.add(plan.kingpinLimitRad());
        List<Wide> axles = new ArrayList<>(wide(trailer.down(lift), plan.trailer()));
        Optional<Booster> booster = stance.booster().filter(b -> state != BoosterState.NONE);
        if (state == BoosterState.CLOSE_COUPLED) {
            axles.add(closeCoupled(booster.orElseThrow()));
        }
        Group group = new Group(trailer.kingpinXM(), axles, plan.kingpinLimitRad());
        chain.add(
                state == BoosterState.TRAILING && trailer.boosterHinge().isPresent()
                        ? group.pulling(trailer.boosterHinge().get().xM())
                        : group.last());
        double trailerM = plan.trailer().bodyM();
        List<Body> bodies = new ArrayList<>();
        bodies.add(body(UnitName.TRAILER, trailer.underside(), trailer.topside(), group.axleXM, trailerM));
        double loadM = plan.loadWidthM().orElse(trailerM);
        trailer.load()
                .forEach(l -> bodies.add(new Body(
                        UnitPart.LOAD.of(UnitName.TRAILER),
                        l.rearXM() - group.axleXM,
                        l.frontXM() - group.axleXM,
                        loadM / 2)));
        booster.flatMap(b -> onTrailer(b, group.axleXM)).ifPresent(bodies::add);
        units.add(new PlanUnit(UnitName.TRAILER, group.tires, bodies, group.axleXM));
    }

    /** Its wheels are an axle of the trailer's then; a pivot that is locked commands nothing. */
    private Wide closeCoupled(Booster booster) {
        Axle own = booster.onlyAxle();
        Optional<AxleSteering> steering = own.steering().filter(AxleSteering.Castering.class::isInstance);
        return new Wide(
                new Axle(booster.closeCoupledAxleXM().orElseThrow(), own.radiusM(), steering),
                plan.booster().orElseThrow());
    }

    /** A booster that does not turn on its own. */
    private Optional<Body> onTrailer(Booster booster, double axleXM) {
        double boosterM = plan.booster().orElseThrow().bodyM();
        if (state == BoosterState.CLOSE_COUPLED) {
            double shift = booster.closeCoupledAxleXM().orElseThrow()
                    - booster.onlyAxle().xM();
            return Optional.of(body(
                    UnitName.BOOSTER,
                    booster.underside().shiftedBy(shift),
                    booster.topside().shiftedBy(shift),
                    axleXM,
                    boosterM));
        }
        return state == BoosterState.CARRIED
                ? booster.carried()
                        .map(c -> new Body(
                                UnitPart.CARRIED_BOOSTER.of(UnitName.TRAILER),
                                c.rearXM() - axleXM,
                                c.frontXM() - axleXM,
                                boosterM / 2))
                : Optional.empty();
    }

    private void trailing(UnitName name, Booster booster) {
        double limitRad = plan.pivotLimitRad().orElseThrow();
        Widths widths = plan.booster().orElseThrow();
        Group group = new Group(booster.hingeXM(), wide(booster.axles().axles(), widths), limitRad);
        chain.add(booster.nextHinge().map(h -> group.pulling(h.at().xM())).orElseGet(group::last));
        limits.add(limitRad);
        Body body = body(name, booster.underside(), booster.topside(), group.axleXM, widths.bodyM());
        units.add(new PlanUnit(name, group.tires, List.of(body), group.axleXM));
    }

    private static AxleLine line(double aheadM, double overTiresM, PlanDimensions.Tires tires) {
        return new AxleLine(aheadM, overTiresM / 2, Math.min(tires.treadM(), overTiresM / 2), tires.contactM());
    }

    private static Body body(UnitName unit, Outline underside, Outline topside, double axleXM, double widthM) {
        return new Body(
                UnitPart.BODY.of(unit),
                Math.min(underside.rearXM(), topside.rearXM()) - axleXM,
                Math.max(underside.frontXM(), topside.frontXM()) - axleXM,
                widthM / 2);
    }
}
