package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;
import org.junit.jupiter.api.Test;

/**
 * Lever weights worked out on paper, on round dimensions: each is how much a point rises when one support does by one.
 *
 * <p>Tractor: steer axle at 0, drive axles 4 m and 5 m behind it, fifth wheel 4.5 m behind. By the lever rule a fifth
 * wheel on the first drive axle alone takes 4.5/4 = 1.125 of its height and 1 − 1.125 = −0.125 of the steer axle's; on
 * the second 0.9 and 0.1. The heavier counts, without its sign: drive 1.125, steer 0.125.
 */
class LeverageTest {
    private static final double EXACT = 1e-12;

    /** Behind the fifth wheel: 0.125 of the steer axle and 1.125 of the drive group for each of the kingpin. */
    private static double[] weights(double kingpin, double group, double booster) {
        return new double[] {0.125 * kingpin, 1.125 * kingpin, group, booster};
    }

    /** 4 m behind the kingpin, axles 8 m and 10 m behind: 4/8 and 4/10 of the group, 1/2 and 6/10 of the kingpin. */
    @Test
    void aPointOfTheTrailerRidesOnKingpinAndGroup() {
        Leverage leverage = leverage(LiftState.DOWN, BoosterState.NONE);
        assertArrayEquals(weights(0.6, 0.5, 0), leverage.weights(UnitName.TRAILER, -4), EXACT);
        // √(1 + 0.075² + 0.675² + 0.5²) = √1.71125
        assertEquals(Math.sqrt(1.71125), leverage.surveyFactor(UnitName.TRAILER, -4), EXACT);
    }

    /** With the last axle up only 8 m are left: half of either. */
    @Test
    void aLiftedAxleHasNoWeight() {
        assertArrayEquals(
                weights(0.5, 0.5, 0), leverage(LiftState.UP, BoosterState.NONE).weights(UnitName.TRAILER, -4), EXACT);
    }

    /** Its axle is one more of the group, 12 m behind: 4/12 of it leave 2/3 of the kingpin, the most of the three. */
    @Test
    void aCloseCoupledBoosterIsOneMoreAxleOfTheGroup() {
        assertArrayEquals(
                weights(2.0 / 3, 0.5, 0),
                leverage(LiftState.DOWN, BoosterState.CLOSE_COUPLED).weights(UnitName.TRAILER, -4),
                EXACT);
    }

    /**
     * 4 m behind a hinge whose axle is 5 m behind: 0.8 of the booster's axle, 0.2 of the hinge. The hinge, 11 m behind
     * the kingpin, takes 11/8 = 1.375 of the group and −0.375 of the kingpin, or 1.1 and −0.1: 0.2 times 1.375 and 0.2
     * times 0.375.
     */
    @Test
    void aPointOfTheBoosterRidesOnItsAxleAndTheHinge() {
        Leverage leverage = leverage(LiftState.DOWN, BoosterState.TRAILING);
        assertArrayEquals(weights(0.075, 0.275, 0.8), leverage.weights(UnitName.BOOSTER, -4), EXACT);
        // 0.009375² + 0.084375² + 0.275² + 0.8² = 0.72283203: 0.00008789 + 0.00711914 + 0.075625 + 0.64
        assertEquals(Math.sqrt(1.72283203125), leverage.surveyFactor(UnitName.BOOSTER, -4), EXACT);
    }

    /** Behind its axle: 6 m of 5 are 1.2 of the axle and −0.2 of the hinge. */
    @Test
    void weightsCountWithoutTheirSign() {
        assertArrayEquals(
                weights(0.075, 0.275, 1.2),
                leverage(LiftState.DOWN, BoosterState.TRAILING).weights(UnitName.BOOSTER, -6),
                EXACT);
    }

    private static Leverage leverage(LiftState lift, BoosterState booster) {
        return new Leverage(stance(), new Setting(lift, booster, 0, 0, 0));
    }

    private static LevelStance stance() {
        Tractor tractor = new Tractor(
                new Axle(0, 0.5),
                new AxleGroup(List.of(new Axle(-4, 0.5), new Axle(-5, 0.5)), 0.08, 0.1),
                new FramePoint(-4.5, 1.2),
                line(-6, 0.5, 1),
                line(-6, 2, 1));
        Trailer trailer = new Trailer(
                0,
                new FramePoint(-2, 0.8, "deck front"),
                new FramePoint(-7, 0.8, "deck rear"),
                new AxleGroup(List.of(new Axle(-8, 0.4), new Axle(-10, 0.4)), 0.08, 0.1),
                0,
                LiftAxles.one(1, 0.06, 0.038),
                0.25,
                0.075,
                0,
                line(-11, 0.5, 0.5),
                line(-11, 1.5, 0.5),
                List.of(),
                Optional.of(new FramePoint(-11, 0.8)));
        Booster booster = new Booster(
                0,
                new Axle(-5, 0.4),
                line(-6, 0.5, 0),
                line(-6, 1.5, 0),
                List.of(BoosterState.NONE, BoosterState.TRAILING, BoosterState.CLOSE_COUPLED),
                0.2,
                0.2,
                OptionalDouble.of(-12),
                Optional.empty());
        return new LevelStance("by hand", tractor, trailer, Optional.of(booster));
    }

    private static Outline line(double rearXM, double heightM, double frontXM) {
        return new Outline(List.of(new FramePoint(rearXM, heightM), new FramePoint(frontXM, heightM)));
    }
}
