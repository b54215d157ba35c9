package org.cresthaul.check;

import static org.cresthaul.check.RouteStory.cell;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.DoubleUnaryOperator;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Report;
import org.cresthaul.rig.Rig;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Clearances of the sample haul against sums done by hand. */
class SampleRouteSumsTest {
    private static final Path FOLDER = Path.of("sample-routes");
    private static final double INCH = 0.0254;
    private static final double FOOT = 0.3048;

    private static final Route ROUTE = route();
    private static final Report LOADED =
            SampleHaul.of("alder-county", "lowbed-loaded").report();

    /**
     * Steer axle at 0; drive axles, fifth wheel; and of the trailer, from the kingpin: axles, valve axle, deck front.
     */
    private static final double[] DRIVE_FT = {-(16 + 10 / 12.0), -(21 + 2 / 12.0)};

    private static final double FIFTH_WHEEL_FT = -18;
    private static final double[] AXLES_FT = {-40, -(44 + 6.5 / 12), -(49 + 1 / 12.0)};
    private static final double VALVE_FT = -40;
    private static final double DECK_FRONT_FT = -10.5;

    /**
     * A load 14 ft high under a height posted 16 ft 6 in on a level road. A notch turns the trailer about its valve
     * axle, by its offset at the deck front; the cab roof reaches from 23 ft 9 in to 19 ft 9 in behind the kingpin.
     * With two axles down the secondary valve lifts the valve axle by 1 1/4 in about the kingpin. Within 0.3 mm: the
     * turns are below 0.005 rad, 1 − cos of that is 2 mm in 160 m; figures are rounded to 0.1 mm.
     */
    @ParameterizedTest
    @CsvSource({
        // roof point, notch, lift: the end that stands higher then
        "-23.75, 1, -1.875, down",
        "-23.75, 2, -1.25, down",
        "-23.75, 3, -0.625, down",
        "-19.75, 5, 0.625, down",
        "-19.75, 6, 1.25, down",
        "-19.75, 7, 1.875, down",
        "-23.75, 4, 0, up",
    })
    void loadUnderAPostedHeightOnTheLevel(double roofFt, String notch, double notchIn, String lift) {
        double up = notchIn * (roofFt - VALVE_FT) / (DECK_FRONT_FT - VALVE_FT);
        if (lift.equals("up")) {
            up += 1.25 * roofFt / VALVE_FT;
        }
        double gapIn = (16.5 - 14) * 12 - up;
        GapFinding gap = cell(LOADED, "H02", lift + "/none/" + notch).overhead();
        assertEquals(gapIn * INCH, gap.valueM(), 0.0003);
    }

    /**
     * On one straight grade everything stays parallel: gallery 4.390 m over the left wheel path, 0.012 m less over the
     * center, load 14 ft. Within 4 mm: elevations were leveled with σ = 1 mm, the gap takes √1.5 of that, and the
     * search finds the worst of three lines and many positions, some three times that; heights at 1 % lose 0.2 mm.
     */
    @Test
    void loadUnderAGalleryOnASteadyGrade() {
        double gapM = 4.390 - 0.012 - 14 * FOOT;
        assertEquals(gapM, cell(LOADED, "H17", "down/none/4").overhead().valueM(), 0.004);
    }

    /**
     * The crest of Windlass Hill is a parabola (+3.4 % to −3.0 % in 200 ft), so how far a point of the deck comes down
     * between its supports does not depend on where the truck stands, as long as all of it is on the curve. Supports:
     * the steer axle; the mean of the drive axles; the mean of the trailer axles (leveling held). The mean of a
     * parabola over a group lies below it at the group's middle by k/2 times the mean square spread. Within 5 mm:
     * leveling noise as above (4 mm), and wheels between two points 10 ft apart stand up to k·(10 ft)²/8 = 1.2 mm low.
     */
    @Test
    void deckOverAParabolicCrest() {
        double k = (0.034 + 0.030) / 200;
        DoubleUnaryOperator crest = s -> -k / 2 * s * s;
        double stepFt = -25;
        double loss = -riseOfDeck(crest, 0, stepFt) * 12;
        // 1.6e-4 per ft times 506 ft² (worked in full: 0.97 in)
        assertEquals(0.972, loss, 0.001);
        double gapIn = stepOnTheLevelIn() - loss;
        GapFinding gap = cell(LOADED, "H03", "down/none/4").ground();
        assertEquals("outrigger step", gap.part());
        assertEquals(gapIn * INCH, gap.valueM(), 0.005);
        double rearmostFt = gap.steerM() / FOOT + FIFTH_WHEEL_FT + AXLES_FT[2];
        assertTrue(gap.steerM() / FOOT < 100 && rearmostFt > -100, "the whole combination is on the curve");
    }

    /**
     * Tallow branch line, three axles, notch 4, leveling held: with the truck where the report has it tightest, the
     * heights of the surveyed line under each wheel and the rule of the lever give the same gap. Within 1 mm: a wheel
     * rolls over a grade break of 1.5 % by r·A²/8, 0.01 mm; turns of 0.5 % at 4 ft height shift places by 6 mm along a
     * 1.5 % grade, 0.1 mm; the rest is what a deck sagging in tangents and small angles leave out.
     */
    @Test
    void deckOverACrossingByTheRuleOfTheLever() {
        GapFinding gap = cell(LOADED, "H04", "down/none/4").ground();
        assertEquals("held", gap.leveling());
        assertEquals("outrigger step", gap.part());
        RoadProfile line = ROUTE.hazards().stream()
                .filter(h -> h.place().id().equals("H04"))
                .flatMap(h -> h.lines().stream())
                .filter(l -> l.name().equals(gap.line()))
                .findFirst()
                .orElseThrow();
        DoubleUnaryOperator ground = s -> line.heightAt(s * FOOT) / FOOT;
        double rise = riseOfDeck(ground, gap.steerM() / FOOT, gap.xM() / FOOT) * 12;
        assertEquals((stepOnTheLevelIn() + rise) * INCH, gap.valueM(), 0.001);
    }

    /**
     * How far a point of the deck rises over the ground right below it, feet, compared with level ground: steer axle
     * and drive axles carry the fifth wheel, fifth wheel and trailer axles carry the deck.
     */
    private static double riseOfDeck(DoubleUnaryOperator ground, double steerFt, double pointFt) {
        double steer = ground.applyAsDouble(steerFt);
        double drive = 0;
        for (double x : DRIVE_FT) {
            drive += ground.applyAsDouble(steerFt + x) / 2;
        }
        double driveMiddle = (DRIVE_FT[0] + DRIVE_FT[1]) / 2;
        double kingpin = steer + (drive - steer) * FIFTH_WHEEL_FT / driveMiddle;
        double kingpinFt = steerFt + FIFTH_WHEEL_FT;
        double group = 0;
        double groupMiddle = 0;
        for (double x : AXLES_FT) {
            group += ground.applyAsDouble(kingpinFt + x) / 3;
            groupMiddle += x / 3;
        }
        double deck = kingpin + (group - kingpin) * pointFt / groupMiddle;
        return deck - ground.applyAsDouble(kingpinFt + pointFt);
    }

    /** The outrigger step, 6 in over the ground, less what the deck sags there: 4 · 1/2 in · t (1 − t). */
    private static double stepOnTheLevelIn() {
        double t = (35.5 - 25) / 25;
        return 6 - 4 * 0.5 * t * (1 - t);
    }

    private static Route route() {
        try {
            return RouteFile.parse(Files.readAllBytes(FOLDER.resolve("alder-county.route.geojson")));
        } catch (InputRejected | IOException e) {
            throw new IllegalArgumentException(e);
        }
    }

    private static Rig rig(String name) {
        try {
            return RigFile.parse(Files.readAllBytes(FOLDER.resolve(name + ".rig.json")));
        } catch (InputRejected | IOException e) {
            throw new IllegalArgumentException(e);
        }
    }
}
