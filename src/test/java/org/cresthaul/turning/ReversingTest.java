package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.cresthaul.rig.UnitName;
import org.cresthaul.turning.Reversing.Reach;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;
import org.junit.jupiter.api.Test;

/** The way back to a coupling's limit against the closed form of one unit and an independent integrator. */
class ReversingTest {
    private static final double BEND_RAD = Math.toRadians(1);
    private static final double FAR_M = 400;
    private static final Reach NONE = new Reach(FAR_M, OptionalInt.empty());

    /** The closed form: dψ/ds = sin ψ / L behind a straight push, so ln tan(ψ/2) grows by s/L. */
    private static double closedFormM(double lengthM, double bendRad, double limitRad) {
        return lengthM * Math.log(Math.tan(limitRad / 2) / Math.tan(bendRad / 2));
    }

    private static TurningCombination chain(List<TurningUnit> chain, List<Double> limits) {
        List<PlanUnit> units = new ArrayList<>();
        List<UnitName> names = List.of(UnitName.TRACTOR, UnitName.TRAILER, UnitName.BOOSTER);
        for (int k = 0; k < chain.size(); k++) {
            units.add(new PlanUnit(
                    names.get(k),
                    List.of(new AxleLine(0, 1.2, 0.66, 0.25)),
                    List.of(new Body(UnitPart.BODY.of(UnitName.TRAILER), -1, 1, 1.2))));
        }
        return new TurningCombination(chain, units, Math.toRadians(38), 6, limits);
    }

    private static TurningCombination random(SplittableRandom random) {
        return chain(
                List.of(
                        new TurningUnit(random.nextDouble(4, 7), random.nextDouble(-1, 0.5)),
                        new TurningUnit(random.nextDouble(7, 16), random.nextDouble(0.5, 4)),
                        new TurningUnit(random.nextDouble(1, 9), 0)),
                List.of(random.nextDouble(0.1, 1.5), random.nextDouble(0.2, 1.2)));
    }

    @Test
    void oneUnitGoesAsFarAsTheClosedForm() {
        double worst = 0;
        int cases = 0;
        for (double lengthM : new double[] {2, 6.5, 12.5, 19}) {
            for (double limitDeg : new double[] {5, 30, 85, 120}) {
                for (double bendDeg : new double[] {0.2, 1, -3}) {
                    TurningCombination trailer = chain(
                            List.of(new TurningUnit(5.8, -0.3), new TurningUnit(lengthM, 0)),
                            List.of(Math.toRadians(limitDeg)));
                    Reversing reversing = Reversing.of(trailer, Math.toRadians(bendDeg), FAR_M);
                    double exact = closedFormM(lengthM, Math.toRadians(Math.abs(bendDeg)), Math.toRadians(limitDeg));
                    assertEquals(OptionalInt.of(0), reversing.free().coupling());
                    assertEquals(Optional.empty(), reversing.locked());
                    worst = Math.max(worst, Math.abs(exact - reversing.free().wayM()));
                    cases++;
                }
            }
        }
        assertEquals(48, cases);
        assertTrue(worst < 0.001, "worst " + worst);
    }

    /**
     * With two boosters all pivots are locked: trailer axles 11.12, 12.5 and 13.88 m behind the kingpin, the first
     * booster's 17.1 and 18.48, the second's 22.6; the hinges at 15 and 20 m.
     */
    @Test
    void lockedPivotsMakeTrailerAndBoostersOneUnit() {
        double[] axlesM = {11.12, 12.5, 13.88, 17.1, 18.48, 22.6};
        double squares = 0;
        double sum = 0;
        for (double x : axlesM) {
            squares += x * x;
            sum += x;
        }
        TurningCombination chain = new TurningCombination(
                List.of(
                        new TurningUnit(5.8, -0.3),
                        new TurningUnit(12.6, 15 - 12.6),
                        new TurningUnit(2.8, 20 - 17.8),
                        new TurningUnit(2.6, 0)),
                List.of(
                        unit(UnitName.TRACTOR, 0),
                        unit(UnitName.TRAILER, 12.6 - 11.12, 12.6 - 12.5, 12.6 - 13.88),
                        unit(UnitName.booster(1), 17.8 - 17.1, 17.8 - 18.48),
                        unit(UnitName.booster(2), 0)),
                Math.toRadians(38),
                6,
                List.of(Math.toRadians(85), Math.toRadians(22), Math.toRadians(22)));

        Reversing reversing = Reversing.of(chain, BEND_RAD, FAR_M);

        assertEquals(2, chain.pivotLocked().chain().size());
        assertEquals(squares / sum, chain.pivotLocked().chain().get(1).hitchToAxleM(), 1e-12);
        Reach locked = reversing.locked().orElseThrow();
        assertEquals(OptionalInt.of(0), locked.coupling());
        assertEquals(closedFormM(squares / sum, BEND_RAD, Math.toRadians(85)), locked.wayM(), 0.001);
        // The last one is the shortest and swings first.
        assertEquals(OptionalInt.of(2), reversing.free().coupling());
    }

    private static PlanUnit unit(UnitName name, double... axlesAheadM) {
        List<AxleLine> tires = new ArrayList<>();
        for (double aheadM : axlesAheadM) {
            tires.add(new AxleLine(aheadM, 1.2, 0.66, 0.25));
        }
        return new PlanUnit(name, tires, List.of(new Body(UnitPart.BODY.of(UnitName.TRAILER), -1, 1, 1.2)));
    }

    /** One unit on axles at x behind the kingpin turns about Σx²/Σx, by hand here: 11.12, 12.5, 13.88 and 17.1 m. */
    @Test
    void aLockedPivotMakesTrailerAndBoosterOneUnit() {
        double all = (11.12 * 11.12 + 12.5 * 12.5 + 13.88 * 13.88 + 17.1 * 17.1) / (11.12 + 12.5 + 13.88 + 17.1);
        double limit = Math.toRadians(85);

        Reversing reversing = Reversing.of(CornerCases.lowbed(12.5, 2.4), BEND_RAD, FAR_M);

        assertEquals(OptionalInt.of(0), reversing.locked().orElseThrow().coupling());
        assertEquals(
                closedFormM(all, BEND_RAD, limit),
                reversing.locked().orElseThrow().wayM(),
                0.001);
        assertEquals(
                closedFormM(12.5, BEND_RAD, limit),
                reversing.lockedLight().orElseThrow().wayM(),
                0.001);
        assertEquals(OptionalInt.of(1), reversing.free().coupling(), "the short booster's pivot goes first");
        assertTrue(
                reversing.lockedLight().orElseThrow().wayM()
                        > 2 * reversing.free().wayM(),
                reversing.toString());
        TurningCombination none = CornerCases.lowbed(12.5, 0);
        assertEquals(none, none.pivotLocked());
    }

    /** Hipparchus on the headings, every 2 mm, both ways of bending. */
    @Test
    void aFreeChainGoesAsFarAsAnIndependentIntegratorSays() {
        double worst = 0;
        int opposed = 0;
        int pivots = 0;
        int cases = 300;
        for (int seed = 0; seed < cases; seed++) {
            TurningCombination any = random(new SplittableRandom(seed));
            Reach found = Reversing.of(any, BEND_RAD, FAR_M).free();
            Reach alike = reference(any, new double[] {0, BEND_RAD, 2 * BEND_RAD}, found.wayM() + 1);
            Reach other = reference(any, new double[] {0, BEND_RAD, 0}, found.wayM() + 1);
            Reach least = other.wayM() < alike.wayM() ? other : alike;
            assertEquals(least.coupling(), found.coupling(), "seed " + seed);
            worst = Math.max(worst, Math.abs(least.wayM() - found.wayM()));
            opposed += least == other ? 1 : 0;
            pivots += found.coupling().getAsInt();
        }
        assertTrue(worst < 0.005, "worst " + worst);
        assertTrue(opposed > cases / 2, "bends to opposite sides are the worse ones: " + opposed);
        assertTrue(pivots > cases / 2 && pivots < cases, "pivots " + pivots);
    }

    private static Reach reference(TurningCombination any, double[] headings, double mostM) {
        LeadPath back = LeadPath.from(0, 0, Math.PI).line(mostM).build();
        double[] stations = new double[(int) (mostM / 0.002)];
        for (int i = 0; i < stations.length; i++) {
            stations[i] = 0.002 * i;
        }
        double[][] at = new ReferenceFollowing(any.chain(), back, 1e-11).headingsAt(stations, headings);
        for (int i = 0; i < stations.length; i++) {
            for (int k = 0; k < 2; k++) {
                if (Math.abs(at[i][k + 1] - at[i][k])
                        >= any.articulationLimitRad().get(k)) {
                    return new Reach(stations[i], OptionalInt.of(k));
                }
            }
        }
        return new Reach(mostM, OptionalInt.empty());
    }

    @Test
    void mirroredBendsGoAsFar() {
        for (int seed = 0; seed < 50; seed++) {
            TurningCombination any = random(new SplittableRandom(seed));
            Reversing left = Reversing.of(any, BEND_RAD, FAR_M);
            Reversing right = Reversing.of(any, -BEND_RAD, FAR_M);
            assertEquals(left.free().wayM(), right.free().wayM(), 1e-9, "seed " + seed);
            assertEquals(
                    left.locked().orElseThrow().wayM(),
                    right.locked().orElseThrow().wayM(),
                    1e-9,
                    "seed " + seed);
        }
    }

    @Test
    void whatIsLongerGoesFarther() {
        double trailer = 0;
        double locked = 0;
        double booster = 0;
        for (double lengthM = 7; lengthM < 16; lengthM += 1.5) {
            double now = Reversing.of(CornerCases.lowbed(lengthM, 0), BEND_RAD, FAR_M)
                    .free()
                    .wayM();
            Reversing coupled = Reversing.of(CornerCases.lowbed(lengthM, 2.4), BEND_RAD, FAR_M);
            double short2 = Reversing.of(CornerCases.lowbed(12.5, lengthM / 5), BEND_RAD, FAR_M)
                    .free()
                    .wayM();
            assertTrue(now > trailer && short2 > booster, "at " + lengthM);
            assertTrue(coupled.locked().orElseThrow().wayM() > locked, "locked at " + lengthM);
            trailer = now;
            locked = coupled.locked().orElseThrow().wayM();
            booster = short2;
        }
    }

    @Test
    void aSmallerBendOrAWiderLimitGoesFarther() {
        TurningCombination lowbed = CornerCases.lowbed(12.5, 2.4);
        double last = Double.POSITIVE_INFINITY;
        for (double bendDeg : new double[] {0.1, 0.5, 1, 2, 5, 20}) {
            double now =
                    Reversing.of(lowbed, Math.toRadians(bendDeg), FAR_M).free().wayM();
            assertTrue(now < last, bendDeg + " deg: " + now);
            last = now;
        }
    }

    @Test
    void aBendAsLargeAsTheLimitIsAtItAtOnce() {
        TurningCombination lowbed = CornerCases.lowbed(12.5, 2.4);
        Reversing reversing = Reversing.of(lowbed, Math.toRadians(41), FAR_M);

        assertEquals(new Reach(0, OptionalInt.of(1)), reversing.free(), "the pivot goes to 40 degrees");
        assertTrue(reversing.locked().orElseThrow().wayM() > 1, "the kingpin to 85");
    }

    @Test
    void nothingIsMetWithinWhatIsNotFarEnough() {
        TurningCombination lowbed = CornerCases.lowbed(12.5, 2.4);
        double metM = Reversing.of(lowbed, BEND_RAD, FAR_M).free().wayM();

        assertEquals(
                new Reach(metM - 0.01, OptionalInt.empty()),
                Reversing.of(lowbed, BEND_RAD, metM - 0.01).free());
        assertEquals(
                OptionalInt.of(1),
                Reversing.of(lowbed, BEND_RAD, metM + 0.01).free().coupling());
        assertEquals(
                new Reversing(NONE, Optional.empty(), Optional.empty()),
                Reversing.of(CornerCases.tractorAlone(), BEND_RAD, FAR_M),
                "nothing is coupled");
    }

    @Test
    void refusesWhatIsNoQuestion() {
        TurningCombination lowbed = CornerCases.lowbed(12.5, 2.4);
        for (double bend : new double[] {0, Double.NaN, Math.PI / 2, -2}) {
            assertThrows(IllegalArgumentException.class, () -> Reversing.of(lowbed, bend, FAR_M), "bend " + bend);
        }
        for (double most : new double[] {0, -5, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> Reversing.of(lowbed, BEND_RAD, most), "most " + most);
        }
        assertThrows(IllegalArgumentException.class, () -> new Reach(-1, OptionalInt.empty()));
    }
}
