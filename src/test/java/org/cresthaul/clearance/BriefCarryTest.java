package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.Approach;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Something that happens only while one wheel is on a short bump, between positions that both know nothing of it: a
 * booster at its hinge stop lifts the tail of the trailer toward a long flat soffit.
 */
class BriefCarryTest {
    private static final Soffit LONG_AND_FLAT =
            Soffit.of(List.of(new SurveyedPoint(-40, 4.5), new SurveyedPoint(40, 4.5)));

    @ParameterizedTest
    @ValueSource(doubles = {-3.1, -0.7, 0, 0.35, 1.9})
    void aBoosterThatCarriesOverAShortBumpIsNotMissed(double bumpAtM) {
        LevelStance stiff = stance(0.001, 0.1);
        RoadProfile bump = bumpAt(bumpAtM);
        for (Leveling leveling : Leveling.values()) {
            Setting trailing = new Setting(LiftState.DOWN, BoosterState.TRAILING, 0, 0, 0);
            Clearance engine = OverheadClearance.least(stiff, trailing, leveling, bump, LONG_AND_FLAT)
                    .orElseThrow();
            double truth = BruteForceClearance.underSoffit(stiff, trailing, leveling, bump, LONG_AND_FLAT)
                    .least(1e-5)
                    .valueM();
            assertTrue(engine.proven());
            assertTrue(engine.valueM() - engine.provenWithinM() <= truth, engine + " against " + truth);
            assertEquals(truth, engine.valueM(), 0.001);
            if (leveling == Leveling.HELD) {
                // With a free hinge the same bump takes far less: it is the carrying that governs here.
                Clearance free = OverheadClearance.least(stance(0.3, 0.1), trailing, leveling, bump, LONG_AND_FLAT)
                        .orElseThrow();
                assertTrue(free.valueM() > engine.valueM() + 0.01, free + " against " + engine);
            }
        }
    }

    /** The trailer alone on the same bump: its wheels one by one at their upper stops. */
    @ParameterizedTest
    @EnumSource(Leveling.class)
    void anAxleThatIsSolidOverAShortBumpIsNotMissed(Leveling leveling) {
        Setting alone = new Setting(LiftState.DOWN, BoosterState.NONE, 0, 0, 0);
        LevelStance stance = stance(0.3, 0.01);
        RoadProfile bump = bumpAt(0.2);
        Clearance engine = OverheadClearance.least(stance, alone, leveling, bump, LONG_AND_FLAT)
                .orElseThrow();
        double truth = BruteForceClearance.underSoffit(stance, alone, leveling, bump, LONG_AND_FLAT)
                .least(1e-5)
                .valueM();
        assertTrue(engine.proven());
        assertTrue(engine.valueM() - engine.provenWithinM() <= truth, engine + " against " + truth);
        assertEquals(truth, engine.valueM(), 0.001);
    }

    /** Level but for a bump 5 cm high and a meter long. */
    private static RoadProfile bumpAt(double sM) {
        return RoadProfile.of(
                "bump",
                List.of(
                        new SurveyedPoint(sM - 20, 0),
                        new SurveyedPoint(sM - 0.5, 0),
                        new SurveyedPoint(sM, 0.05),
                        new SurveyedPoint(sM + 0.5, 0),
                        new SurveyedPoint(sM + 20, 0)),
                Approach.declared(0, 0),
                Approach.declared(0, 0));
    }

    /** Invented: three trailer axles and a booster; the load is highest at its tail. */
    private static LevelStance stance(double hingeDownRad, double jounceM) {
        Tractor tractor = new Tractor(
                new Axle(0, 0.5),
                new AxleGroup(List.of(new Axle(-5, 0.5), new Axle(-6.3, 0.5)), 0.1, 0.1),
                new FramePoint(-5.6, 1.2),
                TwoWheelBody.line(-7, 1, 0.4),
                TwoWheelBody.line(-7, 1, 3));
        Trailer trailer = new Trailer(
                0,
                new FramePoint(-3, 0.6),
                new FramePoint(-10.5, 0.6),
                new AxleGroup(List.of(new Axle(-12, 0.42), new Axle(-13.4, 0.42), new Axle(-14.8, 0.42)), jounceM, 0.1),
                1,
                LiftAxles.NONE,
                0.25,
                0.08,
                0,
                TwoWheelBody.line(-15.5, 0.4, 0.4),
                TwoWheelBody.line(-15.5, 0.4, 1),
                List.of(new Outline(List.of(new FramePoint(-13, 4.3), new FramePoint(-6, 3.8)))),
                Optional.of(new FramePoint(-15.5, 0.7)));
        Booster booster = new Booster(
                0,
                new Axle(-2, 0.42),
                TwoWheelBody.line(-2.6, 0, 0.4),
                TwoWheelBody.line(-2.6, 0, 1),
                List.of(BoosterState.NONE, BoosterState.TRAILING),
                0.3,
                hingeDownRad,
                OptionalDouble.empty(),
                Optional.empty());
        return new LevelStance("loaded", tractor, trailer, Optional.of(booster));
    }
}
