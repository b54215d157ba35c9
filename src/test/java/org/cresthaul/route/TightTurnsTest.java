package org.cresthaul.route;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines laid from straights and arcs whose turns are known, with positions at any spacing, exact and wavering. */
class TightTurnsTest {
    private static final RoadFrame EAST = new RoadFrame(new LonLat(-93.1, 44.6), Math.PI / 2);

    /** A line of straights and arcs, laid from the west. */
    private static final class Laid {
        final List<double[]> at = new ArrayList<>(List.of(new double[] {0, 0}));
        double heading;
        double length;

        Laid straight(double m, double spacing) {
            return arc(m, 0, spacing);
        }

        Laid turn(double degrees, double radius, double spacing) {
            return arc(Math.abs(Math.toRadians(degrees)) * radius, Math.signum(degrees) / radius, spacing);
        }

        Laid corner(double degrees) {
            heading += Math.toRadians(degrees);
            return this;
        }

        private Laid arc(double m, double curvature, double spacing) {
            int steps = Math.max(1, (int) Math.round(m / spacing));
            double step = m / steps;
            for (int i = 0; i < steps; i++) {
                double half = 0.5 * curvature * step;
                double chord = half == 0 ? step : step * Math.sin(half) / half;
                double[] last = at.get(at.size() - 1);
                at.add(new double[] {
                    last[0] + chord * Math.cos(heading + half), last[1] + chord * Math.sin(heading + half)
                });
                heading += 2 * half;
            }
            length += m;
            return this;
        }

        RouteLine line(double noiseM, long seed) {
            Random random = new Random(seed);
            return RouteLine.through(at.stream()
                    .map(p -> EAST.at(p[0] + noiseM * random.nextGaussian(), -p[1] - noiseM * random.nextGaussian()))
                    .toList());
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 3, 10, 15})
    void anArcIsFoundWhateverTheSpacingOfItsPositions(double spacing) {
        for (double radius : new double[] {8, 15, 30, 50, 60}) {
            for (double degrees : new double[] {-135, -90, -60, 60, 90, 180}) {
                Laid laid = new Laid()
                        .straight(300, 50)
                        .turn(degrees, radius, spacing)
                        .straight(300, 50);
                List<TightTurns.Turn> turns = TightTurns.find(laid.line(0, 0));
                String at = degrees + " r" + radius + " every " + spacing + ": " + turns;
                assertEquals(1, turns.size(), at);
                double middle = 300 + Math.abs(Math.toRadians(degrees)) * radius / 2;
                assertEquals(middle, turns.get(0).chainageM(), 4, at);
                assertTrue(turns.get(0).turnRad() * degrees > 0, at);
                assertTrue(Math.abs(Math.toDegrees(turns.get(0).turnRad())) > 0.8 * Math.abs(degrees), at);
                assertTrue(turns.get(0).radiusM() <= 72 && turns.get(0).radiusM() > 12, at);
            }
        }
    }

    @Test
    void aSharpCornerIsFoundAndAWideBendIsNot() {
        for (double degrees : new double[] {-90, -45, 45, 120}) {
            Laid laid = new Laid().straight(200, 100).corner(degrees).straight(200, 100);
            assertEquals(1, TightTurns.find(laid.line(0, 0)).size(), "corner of " + degrees);
        }
        for (double radius : new double[] {85, 150, 400}) {
            for (double spacing : new double[] {1, 10, 25}) {
                Laid laid =
                        new Laid().straight(200, 40).turn(90, radius, spacing).straight(200, 40);
                assertEquals(List.of(), TightTurns.find(laid.line(0, 0)), "bend of " + radius + " every " + spacing);
            }
        }
        Laid kink = new Laid().straight(200, 100).corner(25).straight(200, 100);
        assertEquals(List.of(), TightTurns.find(kink.line(0, 0)));
    }

    /** Two lefts, and a left and a right, the straight between them from 40 m on: two turns, each in its place. */
    @Test
    void turnsOneAfterTheOtherAreTwo() {
        for (double apart : new double[] {40, 60, 80, 120}) {
            for (double second : new double[] {90, -90}) {
                for (double spacing : new double[] {1, 5, 40}) {
                    Laid laid = new Laid()
                            .straight(300, spacing)
                            .turn(90, 12, 2)
                            .straight(apart, spacing)
                            .turn(second, 12, 2)
                            .straight(300, spacing);
                    List<TightTurns.Turn> turns = TightTurns.find(laid.line(0, 0));
                    String at = apart + " apart, " + second + " every " + spacing + ": " + turns;
                    assertEquals(2, turns.size(), at);
                    double arc = Math.PI / 2 * 12;
                    assertEquals(300 + arc / 2, turns.get(0).chainageM(), 6, at);
                    assertEquals(300 + 1.5 * arc + apart, turns.get(1).chainageM(), 6, at);
                    assertTrue(turns.get(1).turnRad() * second > 0, at);
                }
            }
        }
    }

    /** 20 km straight, every position off by a receiver's error: nothing is found; the turn among them is. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 5, 10, 20})
    void aWaveringLineHasNoTurnsButItsOwn(double spacing) {
        for (double noise : new double[] {0.5, 1.5, 3}) {
            Laid straight = new Laid().straight(20_000, spacing);
            assertEquals(List.of(), TightTurns.find(straight.line(noise, 7)), noise + " m every " + spacing);
            Laid laid = new Laid().straight(400, spacing).turn(90, 20, spacing).straight(400, spacing);
            for (long seed = 0; seed < 20; seed++) {
                List<TightTurns.Turn> turns = TightTurns.find(laid.line(noise, seed));
                assertEquals(1, turns.size(), noise + " m every " + spacing + ": " + turns);
                assertTrue(turns.get(0).turnRad() > Math.toRadians(60), turns.toString());
            }
        }
    }

    /** Standing at a light, the receiver wanders within 3 m for a hundred positions. */
    @Test
    void aReceiverThatStandsMakesNoTurn() {
        Laid laid = new Laid().straight(300, 5);
        double[] stand = laid.at.get(laid.at.size() - 1);
        Random random = new Random(5);
        for (int i = 0; i < 100; i++) {
            laid.at.add(
                    new double[] {stand[0] + 3 * (random.nextDouble() - 0.5), stand[1] + 3 * (random.nextDouble() - 0.5)
                    });
        }
        laid.at.add(stand);
        laid.straight(300, 5);
        assertEquals(List.of(), TightTurns.find(laid.line(0, 0)));
    }

    @Test
    void anOffsetCrossroadsIsARightAndALeft() {
        Laid laid = new Laid()
                .straight(200, 5)
                .turn(-90, 10, 2)
                .straight(25, 5)
                .turn(90, 10, 2)
                .straight(200, 5);
        List<TightTurns.Turn> turns = TightTurns.find(laid.line(0, 0));
        assertEquals(2, turns.size(), turns.toString());
        assertTrue(turns.get(0).turnRad() < 0 && turns.get(1).turnRad() > 0);
    }

    /** A described corner covers its own turn, not the next one 80 m on, nor one 50 m on. */
    @Test
    void theNextTurnIsListedThoughTheFirstIsDescribed() {
        for (double apart : new double[] {50, 80}) {
            Laid laid = new Laid()
                    .straight(300, 20)
                    .corner(90)
                    .straight(apart, 20)
                    .corner(90)
                    .straight(300, 20);
            RouteLine line = laid.line(0, 0);
            RouteCorner first = new RouteCorner(
                    new HazardPlace(
                            "C1", "First", Optional.empty(), line.frameAt(300).origin(), 300, 0),
                    Optional.empty(),
                    Optional.empty(),
                    line.frameAt(300),
                    CornerSource.NOT_SURVEYED,
                    Optional.empty());
            List<Hazard> listed = TightTurns.listUnsurveyed(line, List.of(first));
            assertEquals(1, listed.size(), "apart " + apart);
            assertEquals(300 + apart, listed.get(0).place().chainageM(), 5);
        }
    }

    /** A route of 120 km: parts are joined without a turn lost or doubled where they meet. */
    @Test
    void aLongRouteHasEveryTurnOnce() {
        Laid laid = new Laid();
        for (int i = 0; i < 240; i++) {
            laid.straight(500, 250).corner(i % 4 < 2 ? 90 : -90);
        }
        laid.straight(500, 250);
        List<TightTurns.Turn> turns = TightTurns.find(laid.line(0, 0));
        assertEquals(240, turns.size());
        for (int i = 0; i < 240; i++) {
            assertEquals(500 * (i + 1), turns.get(i).chainageM(), 20);
        }
    }
}
