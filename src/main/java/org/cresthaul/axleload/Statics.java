package org.cresthaul.axleload;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
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
 * and on a trailing booster's axle that carries what its regulator sets. The tractor stands on its steer axle and its
 * drive group and carries the kingpin. On a grade the drive wheels pull (or hold) everything, the trailer through the
 * kingpin.
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
    private final double boosterKg;
    private final List<AxlePlace> places = new ArrayList<>();
    private final List<Double> rearLeversM = new ArrayList<>();
    private final List<MassPoint> behind = new ArrayList<>();
    private MassPoint trailingBooster;
    private double trailingLeverM = Double.NaN;

    /**
     * @param boosterKg what the regulator sets on the axle of a trailing booster; without meaning in other states
     * @throws IllegalArgumentException when the stance has no weights, or none of what the booster state needs
     */
    public Statics(LevelStance stance, Weights weights, LiftState lift, BoosterState boosterState, double boosterKg) {
        this.stance = stance;
        this.weights = weights;
        this.boosterState = boosterState;
        this.boosterKg = boosterState == BoosterState.TRAILING ? Finite.requireAtLeast("boosterKg", 0, boosterKg) : 0;
        if (boosterState != BoosterState.NONE && weights.booster().isEmpty()) {
            throw new IllegalArgumentException("the booster's weight is not known");
        }
        placeTractor();
        behind.add(weights.trailer());
        behind.add(weights.gooseneck());
        weights.pieces().forEach(p -> behind.add(p.at()));
        placeTrailer(lift);
        placeBooster();
    }

    private double inTractorM(double trailerXM) {
        return stance.tractor().fifthWheel().xM() + trailerXM - stance.trailer().kingpinXM();
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
        for (int i = 0; i < stance.axlesDown(lift); i++) {
            addRear(AxleKind.TRAILER, AxleKind.TRAILER, i + 1, axles.get(i).xM());
        }
    }

    private void addRear(AxleKind group, AxleKind kind, int number, double trailerXM) {
        places.add(new AxlePlace(group, kind, number, inTractorM(trailerXM)));
        if (group == AxleKind.TRAILER) {
            rearLeversM.add(stance.trailer().kingpinXM() - trailerXM);
        }
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
                double shiftM = trailer.boosterHinge().orElseThrow().xM() - booster.hingeXM();
                trailingBooster = standing.shiftedBy(shiftM);
                behind.add(trailingBooster);
                double axleXM = booster.axle().xM() + shiftM;
                trailingLeverM = trailer.kingpinXM() - axleXM;
                addRear(AxleKind.BOOSTER, AxleKind.BOOSTER, 1, axleXM);
            }
            case CLOSE_COUPLED -> {
                double axleXM = booster.closeCoupledAxleXM().orElseThrow();
                behind.add(standing.shiftedBy(axleXM - booster.axle().xM()));
                addRear(AxleKind.TRAILER, AxleKind.BOOSTER, 1, axleXM);
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
        double hitchHM = stance.tractor().fifthWheel().hM();

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
        boolean trailing = boosterState == BoosterState.TRAILING;
        double axleKg = (momentKgM - (trailing ? boosterKg * trailingLeverM : 0)) / leversM;
        double rearKg = rearLeversM.size() * axleKg + boosterKg;
        double kingpinKg = cos * weightKg - rearKg;
        double pullKg = sin * weightKg;
        // Rear axles stand at the mean lever momentKgM / rearKg.
        double rearRollKgM = momentKgM == 0 ? 0 : rearRollKgM2 * rearKg / momentKgM;
        double kingpinRollKgM = rollKgM - rearRollKgM;

        Tractor tractor = stance.tractor();
        MassPoint own = weights.tractor();
        double steerXM = tractor.steer().xM();
        List<Axle> drive = tractor.drive().axles();
        double driveLeverM =
                steerXM - drive.stream().mapToDouble(Axle::xM).average().orElseThrow();
        double ownKgM = own.massKg() * (cos * (steerXM - own.xM()) + sin * own.hM());
        double fifthLeverM = steerXM - tractor.fifthWheel().xM();
        double driveKg = (ownKgM + kingpinKg * fifthLeverM + pullKg * hitchHM) / driveLeverM;
        double steerKg = cos * own.massKg() + kingpinKg - driveKg;
        double driveRollKgM = (ownKgM * own.offsetM() + kingpinRollKgM * fifthLeverM) / driveLeverM;
        double steerRollKgM = cos * own.massKg() * own.offsetM() + kingpinRollKgM - driveRollKgM;

        List<AxleLoads.AxleLoad> loads = new ArrayList<>();
        for (AxlePlace place : places) {
            double loadKg =
                    switch (place.group()) {
                        case STEER -> steerKg;
                        case DRIVE -> driveKg / drive.size();
                        case TRAILER -> axleKg;
                        case BOOSTER -> boosterKg;
                    };
            double roll =
                    switch (place.group()) {
                        case STEER -> steerRollKgM;
                        case DRIVE -> driveRollKgM / drive.size();
                        case TRAILER, BOOSTER -> rearKg == 0 ? 0 : rearRollKgM * loadKg / rearKg;
                    };
            Double trackM = weights.tracks().get(place.kind());
            loads.add(new AxleLoads.AxleLoad(
                    place,
                    loadKg,
                    trackM == null ? OptionalDouble.empty() : OptionalDouble.of(loadKg / 2 + roll / trackM)));
        }
        return new AxleLoads(loads, kingpinKg, trailing ? Optional.of(joint(cos, sin)) : Optional.empty());
    }

    private AxleLoads.BoosterJoint joint(double cos, double sin) {
        var hinge = stance.trailer().boosterHinge().orElseThrow();
        double axleM = hinge.xM() - (stance.trailer().kingpinXM() - trailingLeverM);
        double ownKgM = trailingBooster.massKg()
                * (cos * (hinge.xM() - trailingBooster.xM()) + sin * (trailingBooster.hM() - hinge.hM()));
        return new AxleLoads.BoosterJoint(cos * trailingBooster.massKg() - boosterKg, boosterKg * axleM - ownKgM);
    }

    /** What the gooseneck holds of the deck: the kingpin's load without the gooseneck's own weight. */
    public double deckFrontKg(AxleLoads level) {
        return level.kingpinKg() - weights.gooseneck().massKg();
    }
}
