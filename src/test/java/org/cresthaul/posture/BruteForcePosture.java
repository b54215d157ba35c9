package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.RoadProfile;

/**
 * The posture straight from its definitions, slowly, for checking the engine. Written without sight of the engine; it
 * shares with it only the values that describe rig, setting and road.
 *
 * <p>A unit's pitch is the largest one at which its group rule asks for no more than it has, no axle is beyond its
 * upper stop, and a booster at its hinge stop is not in the ground. All three tighten as the nose rises, so the pitch
 * is found by closing a bracket on that yes-or-no question; only the two ends of the bracket are trusted, never an
 * estimate.
 */
public final class BruteForcePosture {
    /** Half-width of the bracket a pitch is looked for in; about 50 %, far beyond any case. */
    private static final double STEEPEST_PITCH_RAD = 0.5;
    /** Width a bracket is closed to, radians: a thousandth of a micrometer at 100 m. */
    private static final double PITCH_CLOSE_RAD = 1e-11;

    private final LevelStance stance;
    private final Setting setting;
    private final Leveling leveling;
    private final WheelGround ground;
    private final PlainGround line;
    private final List<Axle> downAxles;
    private final FramePoint kingpin;
    private final double valveTravelM;
    /** What the clamped travels of the down axles add up to, standing level. */
    private final double heldSumM;

    public BruteForcePosture(LevelStance stance, Setting setting, Leveling leveling, RoadProfile profile) {
        this(stance, setting, leveling, PlainGround.of(profile));
    }

    private BruteForcePosture(LevelStance stance, Setting setting, Leveling leveling, PlainGround line) {
        this(stance, setting, leveling, line, line, levelSumM(stance, setting, leveling));
    }

    /** On ground that is no one line. */
    public BruteForcePosture(LevelStance stance, Setting setting, Leveling leveling, WheelGround ground) {
        this(stance, setting, leveling, ground, null, levelSumM(stance, setting, leveling));
    }

    private BruteForcePosture(
            LevelStance stance,
            Setting setting,
            Leveling leveling,
            WheelGround ground,
            PlainGround line,
            double heldSumM) {
        this.stance = stance;
        this.setting = setting;
        this.leveling = leveling;
        this.ground = ground;
        this.line = line;
        this.heldSumM = heldSumM;
        Trailer trailer = stance.trailer();
        downAxles = listDownAxles();
        Axle valveAxle = trailer.axles().axles().get(trailer.valveAxle());
        double turn = (setting.notchOffsetM() + setting.frontRaiseM())
                / (trailer.deckFront().xM() - valveAxle.xM());
        kingpin = new FramePoint(
                trailer.kingpinXM(), lastFifthWheel().hM() - turn * (trailer.kingpinXM() - valveAxle.xM()));
        valveTravelM = -(RaisedAxles.riseM(trailer, setting.lift()) + setting.rearRaiseM());
    }

    private static double levelSumM(LevelStance stance, Setting setting, Leveling leveling) {
        if (leveling == Leveling.SETTLED) {
            return Double.NaN;
        }
        BruteForcePosture level = new BruteForcePosture(
                stance, setting, Leveling.SETTLED, PlainGround.of(RoadProfile.level()), null, Double.NaN);
        Frame trailer = level.trailerFrame(level.lastAhead(level.tractorFrame(0)));
        return sumM(
                level.travelsM(trailer, level.downAxles),
                stance.trailer().axles().reboundM());
    }

    private List<Axle> listDownAxles() {
        List<Axle> down = RaisedAxles.down(stance.trailer(), setting.lift());
        if (setting.booster() == BoosterState.CLOSE_COUPLED) {
            Booster booster = stance.booster().orElseThrow();
            down.add(new Axle(
                    booster.closeCoupledAxleXM().orElseThrow(),
                    booster.onlyAxle().radiusM()));
        }
        return down;
    }

    /** The line it stands on. */
    public PlainGround ground() {
        return line;
    }

    /** Everything that stands when the steer axle's center is over {@code steerM}. */
    public Standing at(double steerM) {
        Frame tractor = tractorFrame(steerM);
        List<Frame> jeeps = jeepFrames(tractor);
        Frame trailer = trailerFrame(jeeps.isEmpty() ? tractor : jeeps.get(jeeps.size() - 1));
        return new Standing(tractor, jeeps, trailer, boosterFrames(trailer));
    }

    /** The frames of the units; there are no boosters unless they trail. */
    public record Standing(Frame tractor, List<Frame> jeeps, Frame trailer, List<Frame> boosters) {
        /** The first booster's; null unless it trails. */
        public Frame booster() {
            return boosters.isEmpty() ? null : boosters.get(0);
        }

        /** Those behind the first. */
        public List<Frame> boostersBehind() {
            return boosters.subList(Math.min(1, boosters.size()), boosters.size());
        }

        /** Of the unit that carries the trailer. */
        public Frame aheadOfTrailer() {
            return jeeps.isEmpty() ? tractor : jeeps.get(jeeps.size() - 1);
        }
    }

    private FramePoint lastFifthWheel() {
        List<Jeep> jeeps = stance.jeeps();
        return jeeps.isEmpty()
                ? stance.tractor().fifthWheel()
                : jeeps.get(jeeps.size() - 1).fifthWheel();
    }

    private Frame lastAhead(Frame tractor) {
        List<Frame> jeeps = jeepFrames(tractor);
        return jeeps.isEmpty() ? tractor : jeeps.get(jeeps.size() - 1);
    }

    /** Each hangs by its kingpin on the fifth wheel ahead; its axles' travels add up to nothing. */
    private List<Frame> jeepFrames(Frame tractor) {
        List<Frame> frames = new ArrayList<>();
        Frame ahead = tractor;
        FramePoint carrier = stance.tractor().fifthWheel();
        for (Jeep jeep : stance.jeeps()) {
            double x = ahead.worldXM(carrier.xM(), carrier.hM());
            double z = ahead.worldZM(carrier.xM(), carrier.hM());
            double pinH = carrier.hM();
            double pitch = largestPitch(p -> {
                double[] travels = travelsM(
                        Frame.through(jeep.kingpinXM(), pinH, x, z, p),
                        jeep.axles().axles());
                return Math.max(
                        sumM(travels, jeep.axles().reboundM()),
                        largestM(travels) - jeep.axles().jounceM());
            });
            ahead = Frame.through(jeep.kingpinXM(), pinH, x, z, pitch);
            carrier = jeep.fifthWheel();
            frames.add(ahead);
        }
        return frames;
    }

    /** A unit's frame in the world: exact rotation about its origin. */
    public record Frame(double originXM, double originZM, double pitchRad, double cos, double sin) {
        /** The frame whose point (x, h) is at (worldX, worldZ). */
        public static Frame through(double x, double h, double worldX, double worldZ, double pitchRad) {
            double cos = Math.cos(pitchRad);
            double sin = Math.sin(pitchRad);
            return new Frame(worldX - x * cos + h * sin, worldZ - x * sin - h * cos, pitchRad, cos, sin);
        }

        public double worldXM(double x, double h) {
            return originXM + x * cos - h * sin;
        }

        public double worldZM(double x, double h) {
            return originZM + x * sin + h * cos;
        }
    }

    private Frame tractorFrame(double steerM) {
        Tractor tractor = stance.tractor();
        Axle steer = tractor.steer();
        double steerZM = ground.wheelCenterM(steerM, steer.radiusM());
        List<Axle> drive = tractor.drive().axles();
        double pitch = largestPitch(p -> {
            Frame frame = Frame.through(steer.xM(), steer.radiusM(), steerM, steerZM, p);
            double[] travels = travelsM(frame, drive);
            return Math.max(
                    sumM(travels, tractor.drive().reboundM()),
                    largestM(travels) - tractor.drive().jounceM());
        });
        return Frame.through(steer.xM(), steer.radiusM(), steerM, steerZM, pitch);
    }

    private Frame trailerFrame(Frame ahead) {
        FramePoint fifthWheel = lastFifthWheel();
        double x = ahead.worldXM(fifthWheel.xM(), fifthWheel.hM());
        double z = ahead.worldZM(fifthWheel.xM(), fifthWheel.hM());
        double pitch = largestPitch(p -> trailerExcessM(Frame.through(kingpin.xM(), kingpin.hM(), x, z, p)));
        return Frame.through(kingpin.xM(), kingpin.hM(), x, z, pitch);
    }

    /** At most zero while the trailer's nose may rise further; never falls as the pitch grows. */
    private double trailerExcessM(Frame frame) {
        return Math.max(groupExcessM(frame), excessBehindM(frame, 0));
    }

    /**
     * At most zero while no booster from the given one on is in the ground with every hinge to it on its lower stop;
     * what is behind it is asked the same of its own frame.
     */
    private double excessBehindM(Frame ahead, int index) {
        if (setting.booster() != BoosterState.TRAILING
                || index == stance.boosters().size()) {
            return Double.NEGATIVE_INFINITY;
        }
        Booster booster = stance.boosters().get(index);
        return boosterExcessM(boosterAt(ahead, index, ahead.pitchRad() - booster.hingeDownRad()), index);
    }

    /** At most zero while a booster's nose may rise further: its own wheels, and what is behind it. */
    private double boosterExcessM(Frame frame, int index) {
        return Math.max(boosterInGroundM(frame, index), excessBehindM(frame, index + 1));
    }

    /** The same for the trailer's own group, booster apart. */
    private double groupExcessM(Frame frame) {
        double rebound = stance.trailer().axles().reboundM();
        double[] travels = travelsM(frame, downAxles);
        double largest = largestM(travels);
        double rule;
        if (leveling == Leveling.HELD) {
            rule = sumM(travels, rebound) - heldSumM;
        } else {
            // However long the valve feeds air, a trailer whose every axle hangs at its stop is held up by nothing.
            Trailer trailer = stance.trailer();
            int valve = downAxles.indexOf(trailer.axles().axles().get(trailer.valveAxle()));
            rule = Math.min(travels[valve] - valveTravelM, largest + rebound);
        }
        return Math.max(rule, largest - stance.trailer().axles().jounceM());
    }

    private List<Frame> boosterFrames(Frame trailer) {
        List<Frame> frames = new ArrayList<>();
        Frame ahead = trailer;
        for (int i = 0;
                setting.booster() == BoosterState.TRAILING
                        && i < stance.boosters().size();
                i++) {
            ahead = boosterFrame(ahead, i);
            frames.add(ahead);
        }
        return frames;
    }

    private Frame boosterFrame(Frame ahead, int index) {
        Booster booster = stance.boosters().get(index);
        Frame hanging = boosterAt(ahead, index, ahead.pitchRad() + booster.hingeUpRad());
        if (boosterExcessM(hanging, index) <= 0) {
            return hanging;
        }
        Frame carrying = boosterAt(ahead, index, ahead.pitchRad() - booster.hingeDownRad());
        if (boosterExcessM(carrying, index) >= 0) {
            return carrying;
        }
        return boosterAt(ahead, index, largestPitch(p -> boosterExcessM(boosterAt(ahead, index, p), index)));
    }

    private Frame boosterAt(Frame ahead, int index, double pitchRad) {
        FramePoint hinge = index == 0
                ? stance.trailer().boosterHinge().orElseThrow()
                : stance.boosters().get(index - 1).nextHinge().orElseThrow().at();
        return Frame.through(
                stance.boosters().get(index).hingeXM(),
                hinge.hM(),
                ahead.worldXM(hinge.xM(), hinge.hM()),
                ahead.worldZM(hinge.xM(), hinge.hM()),
                pitchRad);
    }

    /**
     * How deep a single wheel is; of several, that share their load, by how much they travel up in all, as a jeep's.
     */
    private double boosterInGroundM(Frame frame, int index) {
        Booster booster = stance.boosters().get(index);
        List<Axle> axles = booster.axles().axles();
        if (axles.size() == 1) {
            Axle axle = axles.get(0);
            return ground.wheelCenterM(frame.worldXM(axle.xM(), axle.radiusM()), axle.radiusM())
                    - frame.worldZM(axle.xM(), axle.radiusM());
        }
        double[] travels = travelsM(frame, axles);
        double rebound = booster.axles().reboundM();
        return Math.max(
                Math.min(sumM(travels, rebound), largestM(travels) + rebound),
                largestM(travels) - booster.axles().jounceM());
    }

    private double[] travelsM(Frame frame, List<Axle> axles) {
        double[] travels = new double[axles.size()];
        for (int i = 0; i < travels.length; i++) {
            travels[i] = travelM(frame, axles.get(i));
        }
        return travels;
    }

    /** Sum of the travels, an axle that hangs counting as at its stop. */
    private static double sumM(double[] travelsM, double reboundM) {
        double sum = 0;
        for (double travel : travelsM) {
            sum += Math.max(travel, -reboundM);
        }
        return sum;
    }

    private static double largestM(double[] travelsM) {
        double largest = Double.NEGATIVE_INFINITY;
        for (double travel : travelsM) {
            largest = Math.max(largest, travel);
        }
        return largest;
    }

    /**
     * How far up its frame's up axis an axle must travel for its wheel to stand on the ground, limits apart. Every step
     * closes the vertical miss; what is left is the miss times slope times pitch, so it dies out geometrically, and the
     * last step is the proof.
     */
    private double travelM(Frame frame, Axle axle) {
        double travel = 0;
        for (int step = 0; step < 200; step++) {
            double h = axle.radiusM() + travel;
            double miss =
                    ground.wheelCenterM(frame.worldXM(axle.xM(), h), axle.radiusM()) - frame.worldZM(axle.xM(), h);
            travel += miss / frame.cos();
            if (Math.abs(miss) < 1e-11) {
                return travel;
            }
        }
        throw new IllegalStateException("no wheel travel at pitch " + frame.pitchRad() + " for " + axle);
    }

    /** The largest pitch with {@code excess} at most zero, for an excess that never falls as the pitch grows. */
    private static double largestPitch(DoubleUnaryOperator excess) {
        double lo = -STEEPEST_PITCH_RAD;
        double hi = STEEPEST_PITCH_RAD;
        double atLo = excess.applyAsDouble(lo);
        double atHi = excess.applyAsDouble(hi);
        if (!(atLo <= 0 && atHi > 0)) {
            throw new IllegalStateException("no pitch between -0.5 and 0.5 rad: " + atLo + ", " + atHi);
        }
        while (hi - lo > PITCH_CLOSE_RAD) {
            double width = hi - lo;
            // A look along the chord and one just across the root; when they do not pay, plain halving does.
            double chord = lo + width * Math.min(0.99, Math.max(0.01, -atLo / (atHi - atLo)));
            double value = excess.applyAsDouble(chord);
            double across;
            if (value <= 0) {
                lo = chord;
                atLo = value;
                across = Math.min(chord + width * 0.01, hi - width * 0.001);
            } else {
                hi = chord;
                atHi = value;
                across = Math.max(chord - width * 0.01, lo + width * 0.001);
            }
            if (across > lo && across < hi) {
                value = excess.applyAsDouble(across);
                if (value <= 0) {
                    lo = across;
                    atLo = value;
                } else {
                    hi = across;
                    atHi = value;
                }
            }
            if (hi - lo > width / 2) {
                double middle = lo + (hi - lo) / 2;
                value = excess.applyAsDouble(middle);
                if (value <= 0) {
                    lo = middle;
                    atLo = value;
                } else {
                    hi = middle;
                    atHi = value;
                }
            }
        }
        return lo;
    }

    /** How a wheel stands. */
    public enum Stand {
        RIDING,
        HANGING,
        SOLID,
        LIFTED
    }

    /**
     * A wheel as it stands.
     *
     * @param xM world position of its center
     * @param zM world height of its center
     * @param marginM how far it is from standing otherwise, meters: near zero the state is a matter of rounding
     */
    public record Wheel(double xM, double zM, double radiusM, Stand stand, double marginM) {}

    /** Every wheel: steer, drive, trailer (the lifted one too), booster. */
    public List<Wheel> wheels(Standing standing) {
        List<Wheel> wheels = new ArrayList<>();
        Tractor tractor = stance.tractor();
        Trailer trailer = stance.trailer();
        wheels.add(wheelAt(standing.tractor(), tractor.steer(), 0, Stand.RIDING, Double.POSITIVE_INFINITY));
        for (Axle axle : tractor.drive().axles()) {
            wheels.add(sprung(
                    standing.tractor(),
                    axle,
                    tractor.drive().jounceM(),
                    tractor.drive().reboundM()));
        }
        for (int j = 0; j < stance.jeeps().size(); j++) {
            for (Axle axle : stance.jeeps().get(j).axles().axles()) {
                wheels.add(sprung(
                        standing.jeeps().get(j),
                        axle,
                        stance.jeeps().get(j).axles().jounceM(),
                        stance.jeeps().get(j).axles().reboundM()));
            }
        }
        for (Axle axle : downAxles) {
            wheels.add(sprung(
                    standing.trailer(),
                    axle,
                    trailer.axles().jounceM(),
                    trailer.axles().reboundM()));
        }
        for (RaisedAxles.Tire tire : RaisedAxles.tires(trailer, setting.lift())) {
            wheels.add(wheelAt(standing.trailer(), tire.axle(), tire.gapM(), Stand.LIFTED, Double.POSITIVE_INFINITY));
        }
        for (int i = 0; i < standing.boosters().size(); i++) {
            addBooster(standing, i, wheels);
        }
        return wheels;
    }

    private void addBooster(Standing standing, int index, List<Wheel> wheels) {
        Booster booster = stance.boosters().get(index);
        Frame frame = standing.boosters().get(index);
        Frame ahead = index == 0 ? standing.trailer() : standing.boosters().get(index - 1);
        double angle = frame.pitchRad() - ahead.pitchRad();
        double toUp = booster.hingeUpRad() - angle;
        double toDown = angle + booster.hingeDownRad();
        double air = -boosterExcessM(frame, index);
        boolean hangs = toUp < 1e-9 && air > 1e-8;
        boolean carries = !hangs && toDown < 1e-9;
        double margin = hangs ? air : carries ? carriedMarginM(standing, index) : Math.min(toUp, toDown);
        for (Axle axle : booster.axles().axles()) {
            Wheel own = booster.axles().axles().size() == 1
                    ? fixed(frame, axle, -boosterInGroundM(frame, index))
                    : sprung(
                            frame,
                            axle,
                            booster.axles().jounceM(),
                            booster.axles().reboundM());
            Stand stand = hangs ? Stand.HANGING : carries ? Stand.SOLID : own.stand();
            wheels.add(new Wheel(
                    own.xM(),
                    own.zM(),
                    own.radiusM(),
                    stand,
                    hangs || carries ? margin : Math.min(margin, own.marginM())));
        }
    }

    /** On an axle without travel, so high above the ground. */
    private static Wheel fixed(Frame frame, Axle axle, double highM) {
        boolean lifted = highM > 1e-6;
        return wheelAt(
                frame,
                axle,
                0,
                lifted ? Stand.HANGING : Stand.RIDING,
                lifted ? highM : highM > 1e-9 ? 0 : Double.POSITIVE_INFINITY);
    }

    /** How deep the booster's stop presses: how far the trailer is kept from the pitch it would have without it. */
    private double carriedMarginM(Standing standing, int index) {
        if (index > 0) {
            Booster holder = stance.boosters().get(index - 1);
            Frame before = index == 1 ? standing.trailer() : standing.boosters().get(index - 2);
            Frame nudged = boosterAt(
                    before, index - 1, standing.boosters().get(index - 1).pitchRad() + 1e-6);
            double bend = nudged.pitchRad() - before.pitchRad();
            return boosterInGroundM(nudged, index - 1) <= 0 && bend < holder.hingeUpRad() ? 1e-6 : 0;
        }
        FramePoint fifthWheel = lastFifthWheel();
        double x = standing.aheadOfTrailer().worldXM(fifthWheel.xM(), fifthWheel.hM());
        double z = standing.aheadOfTrailer().worldZM(fifthWheel.xM(), fifthWheel.hM());
        Frame nudged = Frame.through(
                kingpin.xM(), kingpin.hM(), x, z, standing.trailer().pitchRad() + 1e-6);
        return groupExcessM(nudged) <= 0 ? 1e-6 : 0;
    }

    private Wheel sprung(Frame frame, Axle axle, double jounceM, double reboundM) {
        double travel = travelM(frame, axle);
        Stand stand = travel < -reboundM ? Stand.HANGING : travel >= jounceM - 1e-9 ? Stand.SOLID : Stand.RIDING;
        double toHang = Math.abs(travel + reboundM);
        double margin = stand == Stand.RIDING ? Math.min(toHang, jounceM - travel) : toHang;
        return wheelAt(frame, axle, Math.max(travel, -reboundM), stand, margin);
    }

    private static Wheel wheelAt(Frame frame, Axle axle, double travelM, Stand stand, double marginM) {
        double h = axle.radiusM() + travelM;
        return new Wheel(frame.worldXM(axle.xM(), h), frame.worldZM(axle.xM(), h), axle.radiusM(), stand, marginM);
    }
}
