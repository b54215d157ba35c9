package org.cresthaul.axleload;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.Weights;
import org.cresthaul.rig.Weights.MassPoint;

/**
 * Equilibrium of the coupled combination, standing or rolling steadily, in its level stance.
 *
 * <p>Trailer, gooseneck, load and booster are one body on the kingpin, on axles that share air and so carry equally,
 * and on trailing boosters' axles that carry what their regulators set. The tractor stands on its steer axle and its
 * drive group and carries the kingpin; between them jeeps carry one kingpin and hang on another. On a grade the drive
 * wheels pull (or hold) everything, the trailer through the kingpin.
 *
 * <p>Left and right: how a frame hands on a roll moment depends on stiffnesses nobody measures. Taken is the rule that
 * a weight's offset goes to the axles in the shares its weight does; within that rule roll is in exact equilibrium.
 *
 * <p>Statics of rigid bodies; nothing is rounded. Weights and places of any size are taken: a negative result means
 * that the axles named would have to be held down.
 */
public final class Statics {
    private final LevelStance stance;
    private final Weights weights;
    private final BoosterState boosterState;
    /** On each axle of every trailing booster, front to rear. */
    private final List<Double> boosterKg;

    private final List<AxlePlace> places = new ArrayList<>();
    private final List<Double> rearLeversM = new ArrayList<>();
    private final List<MassPoint> behind = new ArrayList<>();
    /** Of every trailing booster: its weight, in the trailer's frame, and its axles' distances behind the kingpin. */
    private final List<Trailing> trailing = new ArrayList<>();

    private record Trailing(MassPoint weight, List<Double> leversM, double kg) {
        double axlesKg() {
            return kg * leversM.size();
        }

        double axlesKgM() {
            return kg * leversM.stream().mapToDouble(Double::doubleValue).sum();
        }
    }

    /**
     * @param boosterKg what the regulator sets on each axle of a trailing booster, those behind it as their own are
     *     set; without meaning in other states
     * @throws IllegalArgumentException when the stance has no weights, or none of what the booster state needs
     */
    public Statics(LevelStance stance, Weights weights, LiftState lift, BoosterState boosterState, double boosterKg) {
        this(stance, weights, lift, boosterState, setKg(weights, boosterKg));
    }

    /** @param boosterKg on each axle of every booster, front to rear; without meaning unless they trail */
    public Statics(
            LevelStance stance, Weights weights, LiftState lift, BoosterState boosterState, List<Double> boosterKg) {
        this.stance = stance;
        this.weights = weights;
        this.boosterState = boosterState;
        this.boosterKg = List.copyOf(boosterKg);
        if (boosterState == BoosterState.TRAILING) {
            boosterKg.forEach(kg -> Finite.requireAtLeast("boosterKg", 0, kg));
            if (boosterKg.size() != stance.boosters().size()
                    || weights.boostersBehind().size()
                            != stance.boostersBehind().size()) {
                throw new IllegalArgumentException("every booster's weight and load must be known");
            }
        }
        if (boosterState != BoosterState.NONE && weights.booster().isEmpty()) {
            throw new IllegalArgumentException("the booster's weight is not known");
        }
        if (weights.jeeps().size() != stance.jeeps().size()) {
            throw new IllegalArgumentException("every jeep's weight must be known");
        }
        placeTractor();
        placeJeeps();
        behind.add(weights.trailer());
        behind.add(weights.gooseneck());
        weights.pieces().forEach(p -> behind.add(p.at()));
        placeTrailer(lift);
        placeBooster();
    }

    private static List<Double> setKg(Weights weights, double boosterKg) {
        List<Double> all = new ArrayList<>(List.of(boosterKg));
        weights.boostersBehind().forEach(b -> all.add(setKg(b)));
        return all;
    }

    /** What stands on each axle of a booster behind the first. */
    public static double setKg(Weights.BoosterBehind booster) {
        return new GaugeChart(booster.gauge()).loadKg(booster.setPa()).orElseThrow();
    }

    private double inTractorM(double trailerXM) {
        return stance.trailerKingpinXM() + trailerXM - stance.trailer().kingpinXM();
    }

    private void placeJeeps() {
        int number = 1;
        for (int j = 0; j < stance.jeeps().size(); j++) {
            LoadGroup group = new LoadGroup(AxleKind.JEEP, j + 1);
            for (Axle axle : stance.jeeps().get(j).axles().axles()) {
                places.add(new AxlePlace(group, AxleKind.JEEP, number++, axle.xM() + stance.jeepShiftM(j)));
            }
        }
    }

    private void placeTractor() {
        Tractor tractor = stance.tractor();
        places.add(
                new AxlePlace(AxleKind.STEER, AxleKind.STEER, 1, tractor.steer().xM()));
        List<Axle> drive = tractor.drive().axles();
        for (int i = 0; i < drive.size(); i++) {
            places.add(new AxlePlace(
                    AxleKind.DRIVE, AxleKind.DRIVE, i + 1, drive.get(i).xM()));
        }
    }

    private void placeTrailer(LiftState lift) {
        List<Axle> axles = stance.trailer().axles().axles();
        List<Axle> down = stance.trailer().down(lift);
        for (int i = 0; i < axles.size(); i++) {
            if (down.contains(axles.get(i))) {
                addRear(AxleKind.TRAILER, i + 1, axles.get(i).xM());
            }
        }
    }

    /** An axle of the trailer's group. */
    private void addRear(AxleKind kind, int number, double trailerXM) {
        places.add(new AxlePlace(AxleKind.TRAILER, kind, number, inTractorM(trailerXM)));
        rearLeversM.add(stance.trailer().kingpinXM() - trailerXM);
    }

    private void placeBooster() {
        if (boosterState == BoosterState.NONE) {
            return;
        }
        Booster booster = stance.booster().orElseThrow();
        Trailer trailer = stance.trailer();
        MassPoint standing = weights.booster().orElseThrow().standing();
        switch (boosterState) {
            case TRAILING -> {
                boolean single = stance.boosters().stream()
                                .mapToInt(b -> b.axles().axles().size())
                                .sum()
                        == 1;
                int number = single ? AxlePlace.ONLY : 1;
                for (int i = 0; i < stance.boosters().size(); i++) {
                    double shiftM = stance.boosterShiftM(i);
                    MassPoint own = i == 0
                            ? standing
                            : weights.boostersBehind().get(i - 1).standing();
                    List<Double> leversM = new ArrayList<>();
                    LoadGroup group = new LoadGroup(AxleKind.BOOSTER, i + 1);
                    for (Axle axle : stance.boosters().get(i).axles().axles()) {
                        double axleXM = axle.xM() + shiftM;
                        leversM.add(trailer.kingpinXM() - axleXM);
                        places.add(new AxlePlace(group, AxleKind.BOOSTER, number++, inTractorM(axleXM)));
                    }
                    trailing.add(new Trailing(own.shiftedBy(shiftM), leversM, boosterKg.get(i)));
                    behind.add(own.shiftedBy(shiftM));
                }
            }
            case CLOSE_COUPLED -> {
                double axleXM = booster.closeCoupledAxleXM().orElseThrow();
                behind.add(standing.shiftedBy(axleXM - booster.onlyAxle().xM()));
                addRear(AxleKind.BOOSTER, AxlePlace.ONLY, axleXM);
            }
            default ->
                behind.add(weights.booster()
                        .flatMap(Weights.BoosterWeight::carried)
                        .orElseThrow(() -> new IllegalArgumentException(
                                "where the weight of the carried booster acts is not known")));
        }
    }

    /** The axles that stand on the road, front to rear. */
    public List<AxlePlace> places() {
        return List.copyOf(places);
    }

    /** On level ground. */
    public AxleLoads level() {
        return onGrade(0);
    }

    /**
     * On an even grade.
     *
     * @param grade rise over run, positive climbs in the direction of travel
     */
    public AxleLoads onGrade(double grade) {
        double cos = 1 / Math.hypot(1, Finite.require("grade", grade));
        double sin = grade * cos;
        double kingpinXM = stance.trailer().kingpinXM();
        double hitchHM = stance.trailerFifthWheel().hM();

        double weightKg = 0;
        double momentKgM = 0;
        double rollKgM = 0;
        double rearRollKgM2 = 0;
        for (MassPoint m : behind) {
            double leverM = cos * (kingpinXM - m.xM()) + sin * (m.hM() - hitchHM);
            weightKg += m.massKg();
            momentKgM += m.massKg() * leverM;
            rollKgM += m.massKg() * m.offsetM() * cos;
            rearRollKgM2 += m.massKg() * m.offsetM() * leverM;
        }
        double leversM = rearLeversM.stream().mapToDouble(Double::doubleValue).sum();
        double boostersKg = trailing.stream().mapToDouble(Trailing::axlesKg).sum();
        double boostersKgM = trailing.stream().mapToDouble(Trailing::axlesKgM).sum();
        double axleKg = (momentKgM - boostersKgM) / leversM;
        double rearKg = rearLeversM.size() * axleKg + boostersKg;
        double kingpinKg = cos * weightKg - rearKg;
        double pullKg = sin * weightKg;
        // Rear axles stand at the mean lever momentKgM / rearKg.
        double rearRollKgM = momentKgM == 0 ? 0 : rearRollKgM2 * rearKg / momentKgM;
        double kingpinRollKgM = rollKgM - rearRollKgM;

        Hitch hitch = new Hitch(kingpinKg, pullKg, hitchHM, kingpinRollKgM);
        Carried[] jeeps = new Carried[stance.jeeps().size()];
        List<Double> fifthWheelsKg = new ArrayList<>(List.of(kingpinKg));
        for (int j = jeeps.length - 1; j >= 0; j--) {
            jeeps[j] = jeep(j, hitch, cos, sin);
            hitch = jeeps[j].hitch;
            fifthWheelsKg.add(0, hitch.kg);
        }
        Carried drive = tractor(hitch, cos, sin);

        List<AxleLoads.AxleLoad> loads = new ArrayList<>();
        for (AxlePlace place : places) {
            Carried by =
                    switch (place.group().kind()) {
                        case STEER -> new Carried(drive.hitch.kg, drive.hitch.rollKgM, null);
                        case DRIVE -> drive.perAxle(stance.tractor().drive());
                        case JEEP -> {
                            int j = place.group().number() - 1;
                            yield jeeps[j].perAxle(stance.jeeps().get(j).axles());
                        }
                        case TRAILER -> new Carried(axleKg, share(axleKg, rearKg, rearRollKgM), null);
                        case BOOSTER -> {
                            double kg = boosterKg.get(place.group().number() - 1);
                            yield new Carried(kg, share(kg, rearKg, rearRollKgM), null);
                        }
                    };
            loads.add(load(place, by));
        }
        return new AxleLoads(
                loads, fifthWheelsKg, trailing.isEmpty() ? Optional.empty() : Optional.of(joint(cos, sin)));
    }

    private AxleLoads.AxleLoad load(AxlePlace place, Carried by) {
        Double trackM = weights.tracks().get(place.kind());
        return new AxleLoads.AxleLoad(
                place,
                by.kg,
                trackM == null ? OptionalDouble.empty() : OptionalDouble.of(by.kg / 2 + by.rollKgM / trackM));
    }

    private static double share(double loadKg, double rearKg, double rearRollKgM) {
        return rearKg == 0 ? 0 : rearRollKgM * loadKg / rearKg;
    }

    /**
     * What a unit hands to the one ahead of it at the kingpin.
     *
     * @param kg down on the fifth wheel
     * @param pullKg backward along the road
     * @param hM height at which it acts
     * @param rollKgM moment of weights off the center line
     */
    private record Hitch(double kg, double pullKg, double hM, double rollKgM) {}

    /** What a group carries in all, and what is left for what holds the unit in front. */
    private record Carried(double kg, double rollKgM, Hitch hitch) {
        Carried perAxle(AxleGroup group) {
            int axles = group.axles().size();
            return new Carried(kg / axles, rollKgM / axles, hitch);
        }
    }

    /** Moments about the jeep's kingpin, at which the unit ahead pulls. */
    private Carried jeep(int index, Hitch behind, double cos, double sin) {
        Jeep jeep = stance.jeeps().get(index);
        MassPoint own = weights.jeeps().get(index);
        double heldHM = index == 0
                ? stance.tractor().fifthWheel().hM()
                : stance.jeeps().get(index - 1).fifthWheel().hM();
        double leverM = jeep.kingpinXM() - meanXM(jeep.axles());
        double ownLeverM = cos * (jeep.kingpinXM() - own.xM()) + sin * (own.hM() - heldHM);
        double fifthLeverM = jeep.kingpinXM() - jeep.fifthWheel().xM();
        double groupKg =
                (own.massKg() * ownLeverM + behind.kg * fifthLeverM + behind.pullKg * (behind.hM - heldHM)) / leverM;
        double groupRollKgM = (own.massKg() * own.offsetM() * ownLeverM + behind.rollKgM * fifthLeverM) / leverM;
        return new Carried(
                groupKg,
                groupRollKgM,
                new Hitch(
                        cos * own.massKg() + behind.kg - groupKg,
                        sin * own.massKg() + behind.pullKg,
                        heldHM,
                        cos * own.massKg() * own.offsetM() + behind.rollKgM - groupRollKgM));
    }

    /** Moments about the ground under the steer axle; what the drive group does not carry is that axle's. */
    private Carried tractor(Hitch behind, double cos, double sin) {
        Tractor tractor = stance.tractor();
        MassPoint own = weights.tractor();
        double steerXM = tractor.steer().xM();
        double driveLeverM = steerXM - meanXM(tractor.drive());
        double ownKgM = own.massKg() * (cos * (steerXM - own.xM()) + sin * own.hM());
        double fifthLeverM = steerXM - tractor.fifthWheel().xM();
        double driveKg = (ownKgM + behind.kg * fifthLeverM + behind.pullKg * behind.hM) / driveLeverM;
        double steerKg = cos * own.massKg() + behind.kg - driveKg;
        double driveRollKgM = (ownKgM * own.offsetM() + behind.rollKgM * fifthLeverM) / driveLeverM;
        double steerRollKgM = cos * own.massKg() * own.offsetM() + behind.rollKgM - driveRollKgM;
        return new Carried(driveKg, driveRollKgM, new Hitch(steerKg, 0, 0, steerRollKgM));
    }

    private static double meanXM(AxleGroup group) {
        return group.axles().stream().mapToDouble(Axle::xM).average().orElseThrow();
    }

    /** Of everything behind the trailer's hinge. */
    private AxleLoads.BoosterJoint joint(double cos, double sin) {
        FramePoint hinge = stance.trailer().boosterHinge().orElseThrow();
        double behindKingpinM = stance.trailer().kingpinXM() - hinge.xM();
        double shearKg = 0;
        double momentKgM = 0;
        for (Trailing t : trailing) {
            MassPoint own = t.weight;
            shearKg += cos * own.massKg() - t.axlesKg();
            momentKgM += t.axlesKgM() - t.axlesKg() * behindKingpinM;
            momentKgM -= own.massKg() * (cos * (hinge.xM() - own.xM()) + sin * (own.hM() - hinge.hM()));
        }
        return new AxleLoads.BoosterJoint(shearKg, momentKgM);
    }

    /** What the gooseneck holds of the deck: the kingpin's load without the gooseneck's own weight. */
    public double deckFrontKg(AxleLoads level) {
        return level.kingpinKg() - weights.gooseneck().massKg();
    }
}
