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
            new Coordinate(-500, 0),
            new Coordinate(500, 0),
            new Coordinate(500, widthM),
            new Coordinate(-500, widthM),
            new Coordinate(-500, 0)
        };
        RoadEnd road = new RoadEnd(0, 0, 0, widthM, 0, widthM, 0);
        Geometry none = GEOMETRY.createPolygon();
        Corner corner =
                new Corner(GEOMETRY.createPolygon(ring).difference(hole), Optional.empty(), none, none, road, road, 0);
        var guide = GEOMETRY.createLineString(
                new Coordinate[] {new Coordinate(-100, 1), new Coordinate(0, 1), new Coordinate(100, 1)});
        return new RandomCorners.Case(0, "strip", corner, guide, CornerCases.lowbed(11, 0), false);
    }

    /** The trailer's tires are 2.56 m wide: half of what the strip is wider is the most there can be. */
    @Test
    void findsTheMiddleOfAStrip() {
        double least = new RicherSearch(strip(6.56, GEOMETRY.createPolygon()), 1)
                .best(1.95)
                .orElseThrow()
                .leastM();
        assertTrue(least > 1.95 && least <= 2.0 + 1e-9, "" + least);
        RandomCorners.Case strip = strip(2.36, GEOMETRY.createPolygon());
        double narrow =
                new RicherSearch(strip, 1).best(-1).orElseThrow().judgment().leastM();
        assertTrue(narrow < -0.09, "narrower than the tires: " + narrow);
    }

    /** Front wheels within limit and rate by the judge's own following, whatever is asked; turned by what is asked. */
    @Test
    void steersOnlyWhatADriverCan() {
        SplittableRandom random = new SplittableRandom(5);
        TurningCombination tractor = CornerCases.tractorAlone();
        for (int i = 0; i < 20; i++) {
            double[] asked = new double[32];
            for (int k = 0; k < 30; k++) {
                asked[k] = random.nextDouble(-0.8, 0.8);
            }
            double turn = random.nextDouble(-2.5, 2.5);
            LeadPath path = new RicherLine(asked, 3, 4, 0.3, turn, RicherLine.Steering.of(tractor))
                    .path()
                    .orElseThrow();
            assertEquals(0.3 + turn, path.at(path.lengthM())[2], 1e-6);
            ReferencePassage passage = new ReferencePassage(tractor, path);
            assertTrue(passage.mostSteerRad <= tractor.steerLimitRad(), "" + passage.mostSteerRad);
            assertTrue(
                    passage.mostWheelRatePerM <= tractor.steerLimitRad() / tractor.lockDistanceM(),
                    "" + passage.mostWheelRatePerM);
        }
    }

    /** A rough passage leads the search only if it says nearly what the judge says. */
    @Test
    void theRoughPassageSaysNearlyWhatTheJudgeSays() {
        int compared = 0;
        for (long seed = 0; compared < 6; seed++) {
            RandomCorners.Case c = RandomCorners.of(seed);
            RicherTracks tracked = new RicherTracks(c);
            RicherLine line = tracked.line(tracked.starts().get(0));
            Optional<RicherLine.Steered> steered = line.steered();
            if (steered.isEmpty()) {
                continue;
            }
            RicherField field = new RicherField(c.corner(), c.escorts(), c.guide());
            double rough = RicherPassage.leastM(RicherPassage.gapsM(c.combination(), steered.get(), field), 0);
            if (rough < 0.1) {
                continue;
            }
            var judgment = new IndependentCornerJudge(c.corner(), c.escorts(), Optional.of(c.guide()))
                    .of(c.combination(), line.path().orElseThrow());
            assertTrue(judgment.withinLimits(), c + ": " + judgment);
            assertEquals(judgment.leastM(), rough, 0.15, c.toString());
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
        assertTrue(
                kinds.containsAll(Set.of(
                        "junction",
                        "roundabout",
                        "surveyed",
                        "three-centered",
                        "apron",
                        "island",
                        "two bends",
                        "opposing")),
                kinds.toString());
    }
}
