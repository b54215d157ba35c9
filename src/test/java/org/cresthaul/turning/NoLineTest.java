package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import org.cresthaul.language.Sentence;
import org.cresthaul.road.Corner;
import org.cresthaul.road.CornerTemplate;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.CornerTemplate.Layout;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.cresthaul.road.UTurn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Widths of the road below which there is shown to be no line, against widths worked out here by other means. */
class NoLineTest {
    private static final double TIRES_M = 2 * 1.28;

    private static Corner corner(double degrees, double ownM, Layout layout) {
        RoadWidths road = new RoadWidths(ownM, 0, 0, false);
        return new CornerTemplate(
                        Math.toRadians(degrees),
                        road,
                        road,
                        layout,
                        0,
                        List.of(),
                        List.of(),
                        OptionalDouble.empty(),
                        false)
                .corner();
    }

    private static Optional<String> proof(Corner corner, TurningCombination combination) {
        return NoLine.find(new CornerSpace(corner, false), combination).map(Sentence::toString);
    }

    /** The width below which there is a proof, by halving; the reason just below it has to hold a word. */
    private static double provenBelowM(DoubleFunction<Corner> corner, TurningCombination combination, String word) {
        double lo = 2;
        double hi = 40;
        while (hi - lo > 0.001) {
            double middle = 0.5 * (lo + hi);
            if (proof(corner.apply(middle), combination).isPresent()) {
                lo = middle;
            } else {
                hi = middle;
            }
        }
        String reason = proof(corner.apply(lo), combination).orElseThrow();
        assertTrue(reason.contains(word), reason);
        return lo;
    }

    @Test
    void aStraightRoadAsWideAsTheTires() {
        assertEquals(
                TIRES_M,
                provenBelowM(w -> corner(90, w, CurbReturn.single(60)), CornerCases.lowbed(6, 0), "narrower"),
                0.001);
    }

    /** Back to where it came from: 2 R and its tires, R = L / tan of the front wheels' angle, L = 5.8 m, 38°. */
    @Test
    void turningBackNeedsTwiceTheTightestRadius() {
        double least = 2 * 5.8 / Math.tan(Math.toRadians(38)) + 2 * 1.22;
        assertEquals(
                least / 2,
                provenBelowM(
                        w -> corner(180, w, new UTurn(0, 100, 0, 0, 0)),
                        CornerCases.tractorAlone(),
                        "front wheels at their limit"),
                0.006);
    }

    /** A kingpin that bends by 30°, on a fifth wheel 0.3 m ahead of an axle that runs on R = 5.8 m / tan 38°. */
    @Test
    void turningBackWithAKingpinThatBendsLittle() {
        TurningCombination rig = CornerCases.lowbed(10, 0);
        TurningCombination stiff = new TurningCombination(
                rig.chain(), rig.units(), rig.steerLimitRad(), rig.lockDistanceM(), List.of(Math.toRadians(30)));
        double off = Math.toRadians(30) + Math.atan(0.3 * Math.tan(Math.toRadians(38)) / 5.8);
        assertEquals(
                (2 * 10 / Math.tan(off) + TIRES_M) / 2,
                provenBelowM(w -> corner(180, w, new UTurn(0, 150, 0, 0, 0)), stiff, "kingpin at its limit"),
                0.006);
    }

    /**
     * Round a square corner: the trailer dragged, a millimeter at a time, by a kingpin that runs along the outer edge
     * of the exit, 0.35 m beyond it (its nearest axle stands on the edge), from where it stands square to it along the
     * outer edge of the approach. Wherever it is it may then be swung farther round on the spot, until the kingpin is
     * 1.57 m over the inside (an axle 0.35 m away has one of its tires, 1.22 m from its middle, on the edge). The least
     * width is that of the corner which the inner tire of an axle just touches, and the most of its three axles. (The
     * kingpin of a shorter one could be back over the approach while its axles are past the corner, which the proof
     * does not rule out.)
     */
    @ParameterizedTest
    @ValueSource(doubles = {12, 14, 16})
    void aTrailerLedAlongTheOuterEdgeOfTheExit(double lengthM) {
        double[] ahead = {1.38, 0, -1.38};
        double[] narrowest = {99, 99, 99};
        double axleAcross = lengthM - 0.35;
        double axleAlong = 1.28;
        double kingpinAlong = axleAlong;
        while (axleAcross > 0) {
            kingpinAlong += 0.002;
            double across = axleAcross + 0.35;
            double along = kingpinAlong - axleAlong;
            double far = Math.hypot(across, along);
            axleAcross -= across * (far - lengthM) / far;
            axleAlong += along * (far - lengthM) / far;
            for (double heading = Math.atan2(along, across); heading < Math.PI; heading += 0.002) {
                double cos = Math.cos(heading);
                double sin = Math.sin(heading);
                for (int i = 0; i < 3; i++) {
                    double tireAlong = axleAlong + ahead[i] * sin + 1.28 * cos;
                    double tireAcross = axleAcross - ahead[i] * cos + 1.28 * sin;
                    double kingpinInside = axleAcross - lengthM * cos - tireAcross;
                    if (tireAlong <= tireAcross && kingpinInside < 0.35 + 1.22) {
                        narrowest[i] = Math.min(narrowest[i], tireAcross);
                    }
                }
            }
        }
        double least = Arrays.stream(narrowest).max().orElseThrow();
        for (double degrees : new double[] {90, -90}) {
            double proven = provenBelowM(
                    w -> corner(degrees, w, CurbReturn.single(0)), CornerCases.lowbed(lengthM, 0), "kingpin led");
            assertTrue(proven <= least, proven + " of " + least);
            assertEquals(least, proven, 0.05);
        }
    }

    /** Rights and lefts; the chords of their returns differ by centimeters. */
    @ParameterizedTest
    @CsvSource({"60", "75", "90", "120", "140"})
    void aMirroredCornerHasTheSameProof(double degrees) {
        double left = provenBelowM(w -> corner(degrees, w, CurbReturn.single(3)), CornerCases.lowbed(11, 2.4), "");
        double right = provenBelowM(w -> corner(-degrees, w, CurbReturn.single(3)), CornerCases.lowbed(11, 2.4), "");
        assertEquals(left, right, 0.02);
        assertTrue(left > TIRES_M + 0.5, "more than the straight road's width: " + left);
    }
}
