package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.CrossSection;
import org.cresthaul.road.RoadProfile;
import org.junit.jupiter.api.Test;

/** Units are placed once for every way of driving: a road of ninety places had them placed ninety times. */
class WayPlacesTest {
    @Test
    void placesAcrossTheRoadOfOneWayShareWhereUnitsStand() {
        RandomRoads c = RandomRoads.of(RandomCase.SEED);
        double from = c.lines().stream().mapToDouble(RoadProfile::startM).min().orElseThrow();
        double to = c.lines().stream().mapToDouble(RoadProfile::endM).max().orElseThrow();
        List<RoadPlace> places = new AcrossRoad(CrossSection.of(c.lines()).orElseThrow(), c.stance()).underUnits();
        Map<Double, Passage> ways = new HashMap<>();
        List<Passage> passages = new ArrayList<>();
        for (RoadPlace place : places) {
            passages.add(ways.computeIfAbsent(place.drivenRightM(), d -> new Passage(c.stance(), place, from, to))
                    .at(place));
        }
        Map<UnitPlaces, Integer> made = new IdentityHashMap<>();
        for (Passage passage : passages) {
            for (Leveling leveling : Leveling.values()) {
                made.merge(passage.places(c.setting(), leveling), 1, Integer::sum);
            }
        }
        assertTrue(passages.size() > 2 * ways.size(), passages.size() + " places on " + ways.size() + " ways");
        assertEquals(2 * ways.size(), made.size());
        assertEquals(
                2 * passages.size(),
                made.values().stream().mapToInt(Integer::intValue).sum());
    }

    /** Only the setting asked about last is kept, and nothing is told of another. */
    @Test
    void anotherSettingHasPlacesOfItsOwn() {
        RandomCase c = RandomCase.of(RandomCase.SEED + 3);
        Passage passage = new Passage(c.stance(), c.profile());
        Setting other = c.setting().raised(0.01, 0);
        UnitPlaces held = passage.places(c.setting(), Leveling.HELD);
        assertSame(held, passage.places(c.setting(), Leveling.HELD));
        assertNotSame(held, passage.places(c.setting(), Leveling.SETTLED));
        assertNotSame(held, passage.places(other, Leveling.HELD));
        passage.places(other, Leveling.SETTLED);
        UnitPlaces again = passage.places(c.setting(), Leveling.HELD);
        assertNotSame(held, again, "kept longer than is said");
        for (int i = 0; i < held.first.size(); i++) {
            PlacedUnit before = held.first.get(i).unit(1);
            PlacedUnit anew = again.first.get(i).unit(1);
            assertEquals(before.pose.pitchRad(), anew.pose.pitchRad(), 0);
            assertEquals(before.pivotX, anew.pivotX, 0);
            assertEquals(before.pivotZ, anew.pivotZ, 0);
        }
    }
}
