package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.cresthaul.units.Length;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** A printed figure is never on the safe-looking side of the number. Expected values: 1 in = 25.4 mm, by definition. */
class PrintedFiguresTest {
    private static final PrintedFigures US = new PrintedFigures(UnitSystem.US_CUSTOMARY);
    private static final PrintedFigures METRIC = new PrintedFigures(UnitSystem.METRIC);

    @ParameterizedTest
    @CsvSource({
        // meters,    clearance,    the same in mm, needed,      the same in mm
        "0.0508,      2 in,         50 mm,   2 in,         51 mm",
        "0.050799,    1 7/8 in,     50 mm,   2 in,         51 mm",
        "-0.0254,     -1 in,        -26 mm,  -1 in,        -25 mm",
        "-0.025654,   -1 1/8 in,    -26 mm,  -1 in,        -25 mm",
        "0,           0 in,         0 mm,    0 in,         0 mm",
        "-0.0001,     -1/8 in,      -1 mm,   0 in,         0 mm",
        "4.1148,      13 ft 6 in,   4.114 m, 13 ft 6 in,   4.115 m",
        "0.3,         11 3/4 in,    300 mm,  11 7/8 in,    300 mm",
    })
    void clearanceRoundsDownAndNeedsRoundUp(double meters, String us, String metric, String usNeed, String metricNeed) {
        assertEquals(us, US.clearance(meters));
        assertEquals(metric, METRIC.clearance(meters));
        assertEquals(usNeed, US.required(meters));
        assertEquals(metricNeed, METRIC.required(meters));
    }

    /** By hand: 9 1/4 in is 234.95 mm, 9 17/64 in is 235.347 mm, 9 3/8 in is 238.125 mm; 235 mm is 9.25197 in. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // raise, as far as it goes, in US customary, in mm
                "0.2340  | 0.23495 | 9 1/4 in                     | 234 mm",
                "0.23495 | 0.23495 | 9 1/4 in                     | 234.9 mm, as far as it goes",
                "0.2350  | 0.2354  | 9 17/64 in                   | 235 mm",
                "0.2350  | 0.2350  | 9 1/4 in, as far as it goes  | 235 mm",
                "0.2350  |         | 9 3/8 in                     | 235 mm"
            })
    void aRaiseIsNeverToldFartherThanItGoes(double meters, Double endM, String us, String metric) {
        assertEquals(us, US.raise(meters, endM));
        assertEquals(metric, METRIC.raise(meters, endM));
    }

    /** Closer axles are allowed less: 4 ft 7 in is 1.397 m, 54.99 in are 54, 55 in but for noise are 55. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1.3970       | 4 ft 7 in | 1.39 m",
                "1.396999999999 | 4 ft 7 in | 1.39 m",
                "1.3967 | 4 ft 6 in | 1.39 m",
                "1.4          | 4 ft 7 in | 1.40 m",
                "0.3048         | 1 ft      | 0.30 m"
            })
    void spacingsOfAxlesRoundDown(double meters, String us, String metric) {
        assertEquals(us, US.spacing(meters));
        assertEquals(metric, METRIC.spacing(meters));
    }

    /** By hand: 65.6 mm is 2.5827 in and 66.6 mm 2.6220 in; 2 19/32 in is 2.59375 in, 2 5/8 in is 2.625 in. */
    @ParameterizedTest
    @CsvSource({
        // gap,  need,    in US customary,             the same in mm
        "0.0666, 0.0656, 2 19/32 in, 2 19/32 in, 66 mm,   66 mm",
        "0.0665, 0.0656, 2 19/32 in, 2 19/32 in, 66 mm,   66 mm",
        "0.0678, 0.0672, 2 21/32 in, 2 21/32 in, 67.8 mm, 67.2 mm",
        "0.0656, 0.0656, 65.6 mm,    65.6 mm,    65.6 mm, 65.6 mm",
        "0.0675, 0.0665, 2 5/8 in,   2 5/8 in,   67 mm,   67 mm",
        "0.0974, 0.0656, 3 3/4 in,   2 5/8 in,   97 mm,   66 mm",
        "0.0655, 0.0656, 2 1/2 in,   2 5/8 in,   65 mm,   66 mm",
        "-0.01,  0.0656, -1/2 in,    2 5/8 in,   -10 mm,  66 mm",
    })
    void aGapThatMeetsItsNeedReadsSo(
            double gapM, double needM, String us, String usNeed, String metric, String metricNeed) {
        assertEquals(new RoundedFigures.GapAndNeed(us, usNeed), US.against(gapM, needM));
        assertEquals(new RoundedFigures.GapAndNeed(metric, metricNeed), METRIC.against(gapM, needM));
    }

    /** Figures as reports have them, to 0.1 mm, often close together. */
    @ParameterizedTest
    @EnumSource(UnitSystem.class)
    void aPairNeverLooksSaferAndNeverContradictsItsNumbers(UnitSystem units) throws Exception {
        PrintedFigures figures = new PrintedFigures(units);
        RandomGenerator random = new SplittableRandom(20_261_125);
        int met = 0;
        for (int i = 0; i < 20_000; i++) {
            double needM = random.nextInt(4000) / 1e4;
            double gapM = needM + random.nextInt(-30, 30) / 1e4;
            RoundedFigures.GapAndNeed pair = figures.against(gapM, needM);
            double gap = Length.parse(pair.gap()).meters();
            double need = Length.parse(pair.need()).meters();

            assertTrue(gap <= gapM + 1e-9 && need >= needM - 1e-9, gapM + " against " + needM + " reads " + pair);
            assertEquals(gapM >= needM - 1e-9, gap >= need - 1e-9, gapM + " against " + needM + " reads " + pair);
            met += gapM >= needM ? 1 : 0;
        }
        assertTrue(met > 9_000, "both were put to the test: " + met);
    }

    @ParameterizedTest
    @EnumSource(UnitSystem.class)
    void neverLooksSaferThanItIs(UnitSystem units) throws Exception {
        PrintedFigures figures = new PrintedFigures(units);
        double step = units == UnitSystem.METRIC ? 0.001 : 0.0254 / 8;
        long start = 20_261_125;
        System.out.println("PrintedFiguresTest: random values from " + start);
        RandomGenerator random = new SplittableRandom(start);
        double worst = 0;
        for (int i = 0; i < 20_000; i++) {
            double meters = random.nextDouble(-0.4, 0.9);
            double shown = Length.parse(figures.clearance(meters)).meters();
            double need = Length.parse(figures.required(meters)).meters();

            assertTrue(shown <= meters + 1e-9 && shown > meters - step - 1e-9, meters + " reads " + shown);
            assertTrue(need >= meters - 1e-9 && need < meters + step + 1e-9, meters + " reads " + need);
            worst = Math.max(worst, meters - shown);
        }
        assertTrue(worst > 0.9 * step, "the rounding was put to the test: " + worst);
    }

    @ParameterizedTest
    @CsvSource({
        // meters,   whole feet, 0.1 m
        "91.44,      300 ft,     91.4 m",
        "91.4399,    299 ft,     91.4 m",
        "6.1,        20 ft,      6.1 m",
        "6.0999,     20 ft,      6.0 m",
        "0.3047,     0 ft,       0.3 m",
        "0,          0 ft,       0.0 m",
    })
    void howFarSomethingGoesIsRoundedDown(double meters, String us, String metric) {
        assertEquals(us, US.way(meters));
        assertEquals(metric, METRIC.way(meters));
    }

    @Test
    void placesAlongTheRoadSayWhichWay() {
        assertEquals("1 ft 3 in past the point", US.alongRoad(15 * 0.0254));
        assertEquals("1 ft 3 in before the point", US.alongRoad(-15 * 0.0254));
        assertEquals("0.38 m before the point", METRIC.alongRoad(-0.381));
        assertEquals("at the point", METRIC.alongRoad(-0.001));
    }

    @Test
    void chainageIsTheSameUnderEveryLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertEquals("12.67 mi", US.chainage(12.67 * 1609.344));
            assertEquals("20.39 km", METRIC.chainage(20_390));
            assertEquals("1 1/8 in", US.required(0.0285));
        } finally {
            Locale.setDefault(before);
        }
    }
}
