package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HumpLadder;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.TwoWheels;
import org.cresthaul.road.Approach;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.SurveyedPoint;
import org.cresthaul.route.Route;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How high a hump clears, against closed forms of a wheelbase over a plane between two grades (check value G3), and
 * against the independent solver on the sample rig.
 */
class HumpLadderTest {
    private static final double FOOT_M = 0.3048;
    private static final double INCH_M = 0.0254;
    private static final double STEP_M = 0.25 * INCH_M;
    /** What the engine promises, and the independent search is run finer than. */
    private static final double PROMISED_M = 0.001;

    private static final double BRUTE_M = 0.0002;
    private static final Uncertainty NONE = new Uncertainty(0, "invented: exact");

    /** A straight invented road with one crossing of so many tracks that nobody surveyed. */
    private static Route unsurveyed(int tracks) throws Exception {
        return RouteFile.parse("""
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "One crossing", "note": "Invented.",
                 "features": [
                  {"type": "Feature", "properties": {"route": "Straight"},
                   "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}},
                  {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.09, 44.6]},
                   "properties": {"id": "H1", "name": "Crossing", "hazard": "rail-crossing",
                    "candidate": {"source": "map", "object": "node 1", "state": "open", "tracks": %d}}}]}
                """.formatted(tracks));
    }

    private static HumpLadder ladder(int tracks, Rig rig, Margins margins) throws Exception {
        LevelStance stance = rig.stances().get(0);
        Report report = RouteCheck.check(new Haul(unsurveyed(tracks), rig, stance, margins), new Inputs("0", "0"));
        assertEquals(1, report.surveyFirst().humps().size());
        HumpLadder ladder = report.surveyFirst().humps().get(0);
        assertEquals(tracks, ladder.tracks());
        assertEquals(report.configurations().size(), ladder.rungs().size());
        return ladder;
    }

    /**
     * A wheelbase L over a plane p between two grades g loses g (2L - p)² / 8L with both axles on the slopes, where the
     * plane is shorter than L / 2, and g L / 4 with one of them on the plane, where it is longer than 2L / 3. So with h
     * under it, it passes a fall of 28 ft times the grade at which that is h; told is the quarter inch below.
     *
     * <p>36 ft, 5 in, 1 track: 336 · 8 · 36 · 5 / (72 - 9.1667)² / 12 = 10.21 in. 36 ft, 5 in, 3 tracks (35.17 ft of
     * plane): 336 · 4 · 5 / 36 / 12 = 15.56 in; 4 tracks the same. 50 ft, 6 in, 1 track: 336 · 8 · 50 · 6 / (100 -
     * 9.1667)² / 12 = 8.15 in; 2 tracks (22.1667 ft): 11.09 in.
     */
    @ParameterizedTest
    @CsvSource({"36, 5, 1, 10.0", "36, 5, 3, 15.5", "36, 5, 4, 15.5", "50, 6, 1, 8.0", "50, 6, 2, 11.0"})
    void aRigidWheelbaseClearsWhatTheClosedFormSays(double wheelbaseFt, double underIn, int tracks, double clearIn)
            throws Exception {
        Rig rig = TwoWheels.of(wheelbaseFt * FOOT_M, underIn * INCH_M);
        HumpLadder ladder = ladder(tracks, rig, new Margins(0, 0, 0, 0, 0, 0));

        assertEquals(clearIn, ladder.rungs().get(0).clearM() / INCH_M, 1e-9);
        // Nothing is wanted beyond the gap, so that what is not clear cannot be excluded to touch.
        assertEquals(clearIn + 0.25, ladder.rungs().get(0).contactM() / INCH_M, 1e-9);
    }

    @Test
    void aBodyThatTouchesALevelRoadClearsNothing() throws Exception {
        HumpLadder.Rung rung = ladder(1, TwoWheels.of(36 * FOOT_M, INCH_M), new Margins(2 * INCH_M, 0, 0, 0, 0, 0))
                .rungs()
                .get(0);

        assertEquals(null, rung.clearM());
        assertTrue(rung.contactM() > 0, "1 in over a level road touches nothing: " + rung);
    }

    /** The hump drawn by hand, in feet, not by the program. */
    private static RoadProfile drawn(int tracks, double fallM) {
        double half = (110.0 / 12 + 13 * (tracks - 1)) / 2 * FOOT_M;
        double end = half + 28 * FOOT_M;
        double grade = fallM / (28 * FOOT_M);
        return RoadProfile.of(
                "drawn",
                List.of(
                        new SurveyedPoint(-end, -fallM),
                        new SurveyedPoint(-half, 0),
                        new SurveyedPoint(half, 0),
                        new SurveyedPoint(end, -fallM)),
                Approach.declared(grade, 0),
                Approach.declared(-grade, 0));
    }

    private static double bruteM(LevelStance stance, Setting setting, int tracks, double fallM) {
        double least = Double.POSITIVE_INFINITY;
        for (Leveling leveling : setting.levelings()) {
            least = Math.min(
                    least,
                    BruteForceClearance.overGround(stance, setting, leveling, drawn(tracks, fallM))
                            .least(BRUTE_M)
                            .valueM());
        }
        return least;
    }

    private static Rig exactSample() throws Exception {
        Rig sample = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-loaded.rig.json")));
        return new Rig(sample.name(), sample.note(), NONE, NONE, sample.notches(), sample.stances(), sample.times());
    }

    /**
     * The sample rig taken as exact, so that 2 in is all that is wanted: at each rung the independent solver leaves
     * that or more, a step farther less; the same with nothing wanted for contact. And on the way up to the rung no
     * lower hump is worse.
     */
    @ParameterizedTest
    @CsvSource({
        "1, DOWN, NONE, 1",
        "1, UP, TRAILING, 5",
        "2, DOWN, TRAILING, 3",
        "2, UP, NONE, 7",
        "3, DOWN, CLOSE_COUPLED, 4",
        "4, UP, CLOSE_COUPLED, 7"
    })
    void theRungsOfTheSampleAreThoseOfTheIndependentSolver(int tracks, String axle, BoosterState booster, String notch)
            throws Exception {
        LiftState lift = axle.equals("UP") ? LiftState.UP : LiftState.DOWN;
        Rig rig = exactSample();
        LevelStance stance = rig.stances().get(0);
        double marginM = 2 * INCH_M;
        String key = lift.word() + "/" + booster.word() + "/" + notch;
        HumpLadder.Rung rung = ladder(tracks, rig, new Margins(marginM, 0, 0, 0, 0, 0)).rungs().stream()
                .filter(r -> r.configuration().equals(key))
                .findFirst()
                .orElseThrow();
        Setting setting = Setting.transport(
                lift,
                booster,
                rig.notches().stream()
                        .filter(n -> n.name().equals(notch))
                        .findFirst()
                        .orElseThrow());
        double clearM = rung.clearM();
        double contactM = rung.contactM();
        assertTrue(clearM > 0 && clearM < contactM, rung.toString());

        List<Double> below = new ArrayList<>();
        for (double fallM = 0; fallM < clearM; fallM += 2 * INCH_M) {
            below.add(fallM);
        }
        below.add(clearM);
        for (double fallM : below) {
            double gapM = bruteM(stance, setting, tracks, fallM);
            assertTrue(gapM >= marginM - PROMISED_M, "at " + fallM / INCH_M + " in: " + gapM);
        }
        assertTrue(bruteM(stance, setting, tracks, clearM + STEP_M) < marginM + PROMISED_M);
        assertTrue(bruteM(stance, setting, tracks, contactM - STEP_M) >= -PROMISED_M);
        assertTrue(bruteM(stance, setting, tracks, contactM) < PROMISED_M);
        // A step is worth several times what the engine may be off, so that the wrong rung would be seen.
        double stepWorthM = bruteM(stance, setting, tracks, clearM) - bruteM(stance, setting, tracks, clearM + STEP_M);
        assertTrue(stepWorthM > 2 * PROMISED_M, "a step is worth " + stepWorthM);
    }
}
