package org.cresthaul.axleload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.cresthaul.exchange.routefile.LimitsFile;
import org.cresthaul.rig.AxleKind;
import org.junit.jupiter.api.Test;

/** Limits that a combination could slip through by having fewer axles, closer axles, narrow tires or a light front. */
class LimitsWithoutLoopholesTest {
    private static final double LB = 0.45359237;
    private static final double FOOT = 0.3048;

    private static WeightLimits limits(String what) throws Exception {
        return LimitsFile.parse(
                "{\"cresthaul\":\"limits/1\",\"name\":\"n\",\"source\":\"s\",\"date\":\"2026-01-01\"," + what + "}");
    }

    /** Steer, two drive axles, and trailer axles 5 ft apart. */
    private static List<AxlePlace> places(int trailerAxles) {
        List<AxlePlace> places = new ArrayList<>();
        places.add(new AxlePlace(AxleKind.STEER, AxleKind.STEER, 1, 0));
        places.add(new AxlePlace(AxleKind.DRIVE, AxleKind.DRIVE, 1, -15 * FOOT));
        places.add(new AxlePlace(AxleKind.DRIVE, AxleKind.DRIVE, 2, -19 * FOOT));
        for (int i = 0; i < trailerAxles; i++) {
            places.add(new AxlePlace(AxleKind.TRAILER, AxleKind.TRAILER, i + 1, -(55 + 5 * i) * FOOT));
        }
        return places;
    }

    private static double leastLb(WeightLimits limits, List<AxlePlace> places, int first, int last) {
        return limits.boundsOn(places, 100_000 * LB, Map.of()).stream()
                        .filter(b -> b.part() == LoadBound.Part.AXLES
                                && b.first() == first
                                && b.last() == last
                                && !b.least())
                        .mapToDouble(LoadBound::limitKg)
                        .min()
                        .orElse(Double.POSITIVE_INFINITY)
                / LB;
    }

    @Test
    void aGroupOfFewerAxlesThanListedTakesTheLeastListedInProportion() throws Exception {
        WeightLimits limits = limits("\"axle\":\"24,000 lb\",\"groups\":[{\"axles\":3,\"weight\":\"60,000 lb\"}]");
        assertEquals(60_000, leastLb(limits, places(3), 3, 5), 1e-6);
        assertEquals(60_000, leastLb(limits, places(4), 3, 6), 1e-6);
        assertEquals(40_000, leastLb(limits, places(2), 3, 4), 1e-6);
        assertEquals(40_000, leastLb(limits, places(2), 1, 2), 1e-6);
        // A lone axle has the limit of a single axle, not a third of a group's.
        assertEquals(24_000, leastLb(limits, places(1), 3, 3), 1e-6);
    }

    @Test
    void aSpanMayAskForANumberOfAxlesAsWell() throws Exception {
        WeightLimits limits = limits(
                "\"spans\":[{\"name\":\"three close\",\"over\":\"8 ft\",\"upTo\":\"12 ft\",\"axles\":3,"
                        + "\"weight\":\"50,000 lb\"},{\"name\":\"close\",\"over\":\"3 ft\",\"upTo\":\"12 ft\",\"weight\":\"55,000 lb\"}]");
        assertEquals(50_000, leastLb(limits, places(3), 3, 5), 1e-6);
        assertEquals(55_000, leastLb(limits, places(3), 3, 4), 1e-6);
        WeightLimits two = limits("\"spans\":[{\"name\":\"two\",\"over\":\"8 ft\",\"upTo\":\"12 ft\",\"axles\":2,"
                + "\"weight\":\"50,000 lb\"}]");
        assertEquals(Double.POSITIVE_INFINITY, leastLb(two, places(3), 3, 5));
    }

    @Test
    void tiresCarryByTheirWidthAndAnUnmeasuredOneIsNotKnown() throws Exception {
        WeightLimits limits = limits("\"tireWidth\":{\"weight\":\"600 lb\",\"per\":\"1 in\"}");
        Map<AxleKind, Double> widths = Map.of(AxleKind.STEER, 25 * 0.0254, AxleKind.DRIVE, 44 * 0.0254);
        assertTrue(limits.unknownOf(places(2), widths).orElseThrow().toString().contains("trailer"));
        Map<AxleKind, Double> all =
                Map.of(AxleKind.STEER, 25 * 0.0254, AxleKind.DRIVE, 44 * 0.0254, AxleKind.TRAILER, 36 * 0.0254);
        assertTrue(limits.unknownOf(places(2), all).isEmpty());
        List<LoadBound> bounds = limits.boundsOn(places(2), 1, all);
        assertEquals(5, bounds.size());
        assertEquals(15_000, bounds.get(0).limitKg() / LB, 1e-6);
        assertEquals(26_400, bounds.get(2).limitKg() / LB, 1e-6);
        assertEquals(21_600, bounds.get(4).limitKg() / LB, 1e-6);
    }

    @Test
    void steerAndDriveMustCarryTheirShareOfTheWhole() throws Exception {
        WeightLimits limits = limits("\"leastShares\":{\"steer\":\"11 %\",\"drive\":\"25 %\"}");
        List<LoadBound> bounds = limits.boundsOn(places(3), 100_000 * LB, Map.of());
        assertEquals(2, bounds.size());
        assertTrue(bounds.stream().allMatch(LoadBound::least));
        assertEquals(11_000, bounds.get(0).limitKg() / LB, 1e-6);
        assertEquals(25_000, bounds.get(1).limitKg() / LB, 1e-6);
        assertEquals(List.of(1, 2), List.of(bounds.get(1).first(), bounds.get(1).last()));
    }

    /**
     * The federal formula written out as a table, a row for every foot, allows what the formula allows, wherever axles
     * stand on whole feet (23 CFR 658.17(e)); between rows the shorter one counts, and below the first the first in
     * proportion.
     */
    @Test
    void aTableStandsForAFormula() throws Exception {
        StringBuilder rows = new StringBuilder();
        for (int axles = 2; axles <= 9; axles++) {
            for (int feet = 4; feet <= 90; feet++) {
                long steps =
                        Math.round(Math.ceil(((double) feet * axles / (axles - 1) + 12 * axles + 36) - 0.5 - 1e-9));
                rows.append(rows.isEmpty() ? "" : ",")
                        .append("{\"axles\":" + axles + ",\"length\":\"" + feet + " ft\",\"weight\":\"" + 500 * steps
                                + " lb\"}");
            }
        }
        WeightLimits table = limits("\"bridgeTables\":[{\"name\":\"written out\",\"rows\":[" + rows + "]}]");
        WeightLimits formula = limits("\"bridgeFormula\":\"federal\"");
        int compared = 0;
        for (int trailer = 1; trailer <= 6; trailer++) {
            List<AxlePlace> places = places(trailer);
            for (int first = 0; first < places.size(); first++) {
                for (int last = first + 1; last < places.size(); last++) {
                    assertEquals(
                            leastLb(formula, places, first, last),
                            leastLb(table, places, first, last),
                            1e-6,
                            first + " to " + last + " of " + places.size());
                    compared++;
                }
            }
        }
        assertEquals(6 + 10 + 15 + 21 + 28 + 36, compared);
        WeightLimits coarse = limits(
                "\"bridgeTables\":[{\"name\":\"coarse\",\"rows\":["
                        + "{\"axles\":3,\"length\":\"10 ft\",\"weight\":\"42,000 lb\"},{\"axles\":3,\"length\":\"20 ft\",\"weight\":\"50,000 lb\"}]}]");
        assertEquals(42_000, leastLb(coarse, places(3), 3, 5), 1e-6);
        // 19 ft: the row of 10 ft. Two axles are fewer than any listed: two thirds, and 4 ft and 5 ft are shorter than
        // any.
        assertEquals(42_000, leastLb(coarse, places(3), 0, 2), 1e-6);
        assertEquals(42_000 * 2 / 3 * 0.4, leastLb(coarse, places(3), 1, 2), 1e-6);
        // More axles than any listed: the most listed.
        assertEquals(50_000, leastLb(coarse, places(3), 0, 5), 1e-6);
    }
}
