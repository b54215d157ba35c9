package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** The richer search and the random corners themselves: what they must find is known beforehand. */
class RicherSearchTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private static RandomCorners.Case strip(double widthM, Geometry hole) {
        Coordinate[] ring = {
            new Coordinate(-500, 0), new Coordinate(500, 0), new Coordinate(500, widthM), new Coordinate(-500, widthM),
            new Coordinate(-500, 0)
        };
        RoadEnd road = new RoadEnd(0, 0, 0, widthM, 0, widthM, 0);
        Corner corner = new Corner(GEOMETRY.createPolygon(ring).difference(hole), Optional.empty(), GEOMETRY.createPolygon(),
                GEOMETRY.createPolygon(), road, road, 0);
        var guide = GEOMETRY.createLineString(new Coordinate[] {
            new Coordinate(-100, 1), new Coordinate(0, 1), new Coordinate(100, 1)
        });
        return new RandomCorners.Case(0, "strip", corner, guide, CornerCases.lowbed(11, 0), false);
    }

    /** The trailer's tires are 2.56 m wide: half of what the strip is wider is the most there can be. */
    @Test
    void findsTheMiddleOfAStrip() {
        double least = new RicherSearch(strip(6.56, GEOMETRY.createPolygon()), 1).best(1.95).orElseThrow().leastM();
        assertTrue(least > 1.95 && least <= 2.0 + 1e-9, "" + least);
        double narrow = new RicherSearch(strip(2.36, GEOMETRY.createPolygon()), 1).best(-1).orElseThrow().judgment().leastM();
        assertTrue(narrow < -0.09, "narrower than the tires: " + narrow);
    }

    /** Curvature within the rate, from zero to zero, turning by the angle asked for. */
    @Test
    void steersOnlyWhatADriverCan() {
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 50; i++) {
            double[] asked = new double[32];
            for (int k = 0; k < 30; k++) {
                asked[k] = random.nextDouble(-0.15, 0.15);
            }
            double turn = random.nextDouble(-2.5, 2.5);
            LeadPath path = new SteeredLine(asked, 3, 4, 0.3, turn, 0.12, 0.02).path().orElseThrow();
            assertEquals(0.3 + turn, path.at(path.lengthM())[2], 1e-6);
            for (int p = 0; p < path.pieces(); p++) {
                assertTrue(path.curvatureRate(p) <= 0.02);
                assertTrue(path.mostCurvature(p) <= 0.12 + 1e-12);
                double before = p == 0 ? 0 : path.curvatureAt(p - 1, path.stationM(p));
                assertEquals(before, path.curvatureAt(p, path.stationM(p)), 1e-9);
            }
        }
    }

    /** A rough passage leads the search only if it says nearly what the judge says. */
    @Test
    void theRoughPassageSaysNearlyWhatTheJudgeSays() {
        int compared = 0;
        for (long seed = 0; compared < 6; seed++) {
            RandomCorners.Case c = RandomCorners.of(seed);
            TrackedLines tracked = new TrackedLines(c);
            SteeredLine line = tracked.line(tracked.starts().get(0));
            Optional<SteeredLine.Steered> steered = line.steered();
            if (steered.isEmpty()) {
                continue;
            }
            double loss = new QuickPassage(c.combination(), steered.get(), new RoomField(c.corner(), c.escorts(), c.guide()))
                    .lossM();
            if (loss > -0.1) {
                continue;
            }
            var judgment = new IndependentCornerJudge(c.corner(), c.escorts(), Optional.of(c.guide()))
                    .of(c.combination(), line.path().orElseThrow());
            assertTrue(judgment.withinLimits(), c + ": " + judgment);
            assertEquals(judgment.leastM(), -loss, 0.15, c.toString());
            compared++;
        }
    }

    @Test
    void seedsGiveTheSameCornerAgainAndAllKinds() {
        Set<String> kinds = new HashSet<>();
        int rights = 0;
        for (long seed = 0; seed < 150; seed++) {
            RandomCorners.Case c = RandomCorners.of(seed);
            kinds.addAll(List.of(c.kind().split(", ")));
            rights += c.corner().turnRad() < 0 ? 1 : 0;
            assertTrue(c.corner().pavement().isValid() && c.guide().isValid());
            if (seed % 15 == 0) {
                RandomCorners.Case again = RandomCorners.of(seed);
                assertEquals(c.corner().pavement(), again.corner().pavement());
                assertEquals(c.combination(), again.combination());
                assertNotEquals(c.combination(), RandomCorners.of(seed + 1).combination());
            }
        }
        assertTrue(rights > 40 && rights < 110, "" + rights);
        assertTrue(kinds.containsAll(Set.of("junction", "roundabout", "surveyed", "three-centered", "apron", "island",
                "two bends", "opposing")), kinds.toString());
    }
}
