package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListSet;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.Route;
import org.cresthaul.server.LongRouteMeasure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is refused before a place is judged is what the whole judgment of it refuses: told of no other place, and no
 * figure of any cell is otherwise for it. Held to judgments of every cell by itself, which know of no first look.
 */
class FirstLookTest {
    private static final Inputs INPUTS = new Inputs("route", "rig");

    /** Takes what is told before a place is judged. */
    private static final class Told implements CheckFollower {
        private final Set<String> refused = new ConcurrentSkipListSet<>();
        private final Set<String> judged = new ConcurrentSkipListSet<>();
        private final Set<String> early = new ConcurrentSkipListSet<>();

        @Override
        public void begins(int places, int configurations) {}

        @Override
        public void judges(String hazard) {}

        @Override
        public void refused(Hazard place) {
            assertTrue(refused.add(place.place().id()), "told once");
            if (!judged.contains(place.place().id())) {
                early.add(place.place().id());
            }
        }

        @Override
        public void judged(HazardFindings place) {
            judged.add(place.id());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "alder-county, lowbed-loaded",
        "sorrel-valley, lowbed-loaded",
        "tern-flats, lowbed-with-jeep",
        "heron-bend, lowbed-with-two-boosters"
    })
    void refusesWhatTheWholeJudgmentRefuses(String route, String rig) {
        SampleHaul sample = SampleHaul.of(route, rig);
        holds(sample.whole());
    }

    /** Thirty places, no two of the same heights. */
    @Test
    void refusesAlikeOnARouteOfManyPlaces() throws Exception {
        SampleHaul sample = SampleHaul.of("alder-county", "lowbed-loaded");
        Told told = holds(new Haul(manyPlaces(), sample.rig(), sample.stance(), sample.margins()));
        assertTrue(told.refused.size() > 5, told.refused.toString());
        assertTrue(told.early.size() > 5, "before they are judged: " + told.early);
    }

    private static Route manyPlaces() throws Exception {
        String sample = Files.readString(Path.of("sample-routes/alder-county.route.geojson"));
        return RouteFile.parse(LongRouteMeasure.longRoute(sample, 30, false));
    }

    private static Told holds(Haul haul) {
        Told told = new Told();
        KeptFindings kept = new KeptFindings();
        Report report = RouteCheck.check(haul, INPUTS, kept, told);
        List<CheckedConfiguration> configurations = CheckedConfiguration.listOf(haul.rig(), haul.stance());
        RouteLoads loads = new RouteLoads(haul.route(), haul.stance());
        LevelUnits level = new LevelUnits(haul.rig(), haul.stance(), haul.margins());
        Set<String> expected = new TreeSet<>();
        for (Hazard hazard : haul.route().hazards()) {
            if (!hazard.kind().isRaisable()) {
                continue;
            }
            HazardCheck check = new HazardCheck(hazard, haul.rig(), haul.stance(), haul.margins());
            List<ReportCell> cells = new ArrayList<>();
            for (CheckedConfiguration c : configurations) {
                cells.add(check.cell(c));
            }
            boolean first = hazard == haul.route().hazards().get(0);
            if (!first && cells.stream().allMatch(c -> c.verdict() != Verdict.CLEAR && c.raise() == null)) {
                expected.add(hazard.place().id());
            }
            for (int i = 0; i < cells.size(); i++) {
                CheckedConfiguration c = configurations.get(i);
                cells.set(i, level.under(RouteCheck.deliverable(cells.get(i), c, loads), c));
            }
            assertEquals(
                    cells,
                    report.hazards().get(haul.route().hazards().indexOf(hazard)).cells());
        }
        assertEquals(expected, told.refused);

        Told again = new Told();
        assertEquals(report, RouteCheck.check(haul, INPUTS, kept, again));
        assertEquals(Set.of(), again.refused, "what is kept is not looked at again");
        return told;
    }
}
