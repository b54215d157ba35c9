package org.cresthaul.check;

import static org.cresthaul.check.RouteStory.assertSameAsWithout;
import static org.cresthaul.check.RouteStory.assertTells;
import static org.cresthaul.check.RouteStory.cell;
import static org.cresthaul.check.RouteStory.finding;
import static org.cresthaul.check.RouteStory.letter;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Margins;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The second sample haul: no configuration gets through all of it, but there is a way through with changes. The tables
 * say what each place is meant to show; they are no source of truth (see {@link SampleRouteTest}).
 */
class SorrelValleyTest {
    private static final Path FOLDER = Path.of("sample-routes");
    private static final double INCH = 0.0254;
    private static final double FOOT = 0.3048;
    private static final Route ROUTE = route();
    private static final Report LOADED =
            SampleHaul.of("sorrel-valley", "lowbed-loaded").report();
    private static final Report EMPTY =
            SampleHaul.of("sorrel-valley", "lowbed-empty").report();

    private static final String LOADED_STORY = """
            # Lower ford: three axles clear; the raised tire meets the rim
            H01 down/none           CCCCCCC ....... 1
            H01 up/none             tttttXX rrrrrrr -
            H01 down/close-coupled  CCCCCCC ....... 1
            H01 up/close-coupled    CCCCCCC ....... 1
            # Sorrel main line: with three axles down the front must be raised at every notch
            H02 down/none           XXttttt fffffff -
            H02 up/none             ttttCCC ffff... 5
            H02 down/close-coupled  XXXtttt fffffff -
            H02 up/close-coupled    Xtttttt fffffff -
            # Canal hump, 165 ft on: only the higher notches clear, or the raise of the main line
            H03 down/none           ttttCCC ffff... 5
            H03 up/none             tCCCCCt f.....r 2
            H03 down/close-coupled  tttttCC fffff.. 6
            H03 up/close-coupled    ttCCCCC ff..... 3
            # Mosswick mill lead: the lowest notches do not clear
            H04 down/none           ttCCCCC ff..... 3
            H04 up/none             CCCCCCC ....... 1
            H04 down/close-coupled  tttCCCC fff.... 4
            H04 up/close-coupled    CCCCCCC ....... 1
            # Mill conveyor, 85 ft on: the highest do not; with the booster close-coupled notch 4 alone is left
            H05 down/none           ttCCttt ff..--- 3
            H05 up/none             CCttttt ..----- 1
            H05 down/close-coupled  tttCttt fff.--- 4
            H05 up/close-coupled    CCttttt ..----- 1
            # Slate spur, Ambermoor rise, Works siding: three raises at notch 4, none at notch 6
            H06 down/none           tttttCC fffff.. 6
            H06 up/none             ttCCCCC ff..... 3
            H06 down/close-coupled  tttttCC fffff.. 6
            H06 up/close-coupled    tttCCCC fff.... 4
            H07 down/none           tttCCCC fff.... 4
            H07 up/none             CCCCCCC ....... 1
            H07 down/close-coupled  ttttCCC ffff... 5
            H07 up/close-coupled    tCCCCCC f...... 2
            H08 down/none           tttttCC fffff.. 6
            H08 up/none             ttCCCCC ff..... 3
            H08 down/close-coupled  tttttCC fffff.. 6
            H08 up/close-coupled    tttCCCC fff.... 4
            """;

    /** The way back: nothing but the raised tire is in the way, and the main line at the lowest notch. */
    private static final String EMPTY_STORY = """
            H01 down/none           CCCCCCC ....... 1
            H01 up/none             tttttXX rrrrrrr -
            H02 down/none           tCCCCCC f...... 2
            H02 up/none             CCCCCCC ....... 1
            H03 down/none           CCCCCCC ....... 1
            H03 up/none             CCCCCCt ......r 1
            H04 any                 CCCCCCC ....... 1
            H05 any                 CCCCCCC ....... 1
            H06 any                 CCCCCCC ....... 1
            H07 any                 CCCCCCC ....... 1
            H08 any                 CCCCCCC ....... 1
            """;

    /** Corners and loads, where the notch does not matter; C clear, t tight, X contact, % outside limits. */
    private static final String STATES_STORY = """
            # Tansy Bend turn: loaded, only two axles keep their margin, and the close-coupled booster does not
            C1 down/none t, up/none C, down/trailing t, up/trailing C, down/close-coupled t, up/close-coupled t
            # Valley road on peat: seven axles on the road
            S01 down/none %, up/none %, down/trailing C, up/trailing %, down/close-coupled C, up/close-coupled %
            # Sorrel Creek bridge: the booster's axle must not count with the trailer's
            B01 down/none %, up/none %, down/trailing C, up/trailing C, down/close-coupled %, up/close-coupled %
            # Mosswick circle: the trailing booster keeps no margin there, its pivot at its limit
            C2 down/none C, up/none C, down/trailing t, up/trailing t, down/close-coupled C, up/close-coupled C
            """;

    @Test
    void loadedHaulTellsItsStory() {
        assertTells(LOADED_STORY, LOADED, List.of("none", "close-coupled"));
        assertSameAsWithout(LOADED, "trailing");
    }

    @Test
    void emptyHaulTellsItsStory() {
        assertTells(EMPTY_STORY, EMPTY, List.of("none"));
        assertSameAsWithout(EMPTY, "trailing");
        assertSameAsWithout(EMPTY, "carried");
    }

    @Test
    void cornersAndLoadsTellTheirStory() {
        Set<String> expected = STATES_STORY
                .lines()
                .filter(l -> !l.startsWith("#"))
                .flatMap(l -> List.of(l.substring(l.indexOf(' ') + 1).split(", ")).stream()
                        .map(s -> l.substring(0, l.indexOf(' ')) + " " + s))
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> found = new TreeSet<>();
        for (HazardFindings hazard : LOADED.hazards()) {
            if (Set.of("corner", "posted-bridge", "stretch")
                    .contains(hazard.kind().word())) {
                for (ReportCell cell : hazard.cells()) {
                    found.add(hazard.id() + " " + cell.configuration().replaceAll("/[^/]*$", "") + " "
                            + letter(cell.verdict()));
                }
            }
        }
        assertEquals(expected, found);
    }

    @Test
    void everyPlaceIsSurveyedAndClearSomehowWithoutEscorts() {
        assertEquals(12, LOADED.hazards().size());
        for (HazardFindings hazard : LOADED.hazards()) {
            assertTrue(hazard.cells().stream().noneMatch(c -> c.verdict() == Verdict.NOT_SURVEYED), hazard.id());
            assertTrue(
                    hazard.cells().stream()
                            .noneMatch(c -> c.corner() != null && c.corner().escorts()),
                    hazard.id());
            assertTrue(
                    hazard.cells().stream()
                            .anyMatch(c -> c.verdict() == Verdict.CLEAR && within(c.configuration())
                                    || c.raise() != null && within(c.configuration())),
                    hazard.id());
        }
    }

    /** Whether the permit lets a configuration on the road at all. */
    private static boolean within(String configuration) {
        return LOADED.configurations().stream()
                .anyMatch(c -> c.key().equals(configuration) && c.loads() == Verdict.CLEAR);
    }

    @Test
    void noConfigurationGetsThroughWithoutAChangeButTheEmptyRigDoes() {
        for (ConfigurationVerdict c : LOADED.configurations()) {
            assertTrue(
                    LOADED.hazards().stream()
                            .map(h -> cell(h, c.key()))
                            .anyMatch(cell -> cell.verdict() != Verdict.CLEAR && cell.raise() == null),
                    c.key());
        }
        for (String notch : List.of("2", "3", "4", "5", "6", "7")) {
            assertEquals(
                    Verdict.CLEAR,
                    EMPTY.configurations().stream()
                            .filter(c -> c.key().equals("down/none/" + notch))
                            .findFirst()
                            .orElseThrow()
                            .verdict());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "H01, up/trailing/4, raised tire",
        "H02, down/trailing/4, outrigger step",
        "H03, down/trailing/4, outrigger step",
        "H06, down/close-coupled/4, outrigger step",
    })
    void groundIsTightestWhereADriverWouldLook(String hazard, String configuration, String part) {
        assertEquals(part, cell(LOADED, hazard, configuration).ground().part());
    }

    /**
     * The conveyor hangs 14 ft 4 in over the road (soffit 1445.165 ft to 1445.141 ft, center line surveyed there at
     * 1430.822 ft), the cab roof stands 14 ft high: 4 in. Grades under the truck change by at most 0.9 % between the
     * mill lead and the conveyor, which over the 20 ft from the rear axles to the roof is less than 2 in, one way or
     * the other.
     */
    @Test
    void theCabRoofPassesTheConveyorByAboutFourInches() {
        GapFinding gap = cell(LOADED, "H05", "down/trailing/4").overhead();
        assertEquals("loader cab roof", gap.part());
        assertEquals(4 * INCH, gap.valueM(), 2 * INCH);
    }

    // ------------------------------------------------------------------ what the sample is made of

    @Test
    void aHaulOfThreeLegsSaidToBeInvented() {
        assertTrue(ROUTE.note().startsWith("Invented"));
        assertEquals(3, ROUTE.legs().size());
        assertEquals(32_000, ROUTE.lengthM(), 1_000);
        Map<String, Long> kinds = ROUTE.hazards().stream()
                .collect(Collectors.groupingBy(h -> h.kind().word(), Collectors.counting()));
        assertEquals(
                Map.of(
                        "rail-crossing",
                        4L,
                        "low-structure",
                        1L,
                        "crest",
                        2L,
                        "dip",
                        1L,
                        "posted-bridge",
                        1L,
                        "stretch",
                        1L,
                        "corner",
                        2L),
                kinds);
        assertTrue(ROUTE.hazards().stream().allMatch(h -> h.place().landmark().isPresent()));
        assertFalse(
                ROUTE.hazards().stream().anyMatch(h -> h.place().id().startsWith("turn-")), "tight turns described");
    }

    @Test
    void everyCrossingIsSurveyedAlongThreeWheelPaths() {
        for (Hazard hazard : ROUTE.hazards()) {
            if (hazard instanceof RailCrossing crossing) {
                assertEquals(3, crossing.lines().size());
                assertTrue(crossing.crossingNumber().isPresent());
                assertFalse(crossing.tracksM().isEmpty());
            }
        }
    }

    /** Two pairs of places lie so close together that the combination, 80 ft long, is at both at once. */
    @ParameterizedTest
    @CsvSource({"H02, H03, 165", "H04, H05, 85"})
    void placesLieCloseTogether(String first, String second, double apartFt) {
        double apart =
                finding(LOADED, second).chainageM() - finding(LOADED, first).chainageM();
        assertEquals(apartFt * FOOT, apart, 0.5);
    }

    private static Route route() {
        try {
            return RouteFile.parse(Files.readAllBytes(FOLDER.resolve("sorrel-valley.route.geojson")));
        } catch (InputRejected | IOException e) {
            throw new IllegalArgumentException(e);
        }
    }

    /** The check at the raise itself is the origin: what is needed where the gap is least then, not in transport. */
    @Test
    void aRaiseTellsTheGapAndTheNeedOfItsOwnPosition() throws Exception {
        Rig rig = RigFile.parse(Files.readAllBytes(FOLDER.resolve("lowbed-loaded.rig.json")));
        PlaceCheck check = new PlaceCheck(new Haul(ROUTE, rig, rig.stances().get(0), Margins.defaults()));
        int told = 0;
        for (String id : List.of("H02", "H05")) {
            for (ReportCell cell : finding(LOADED, id).cells()) {
                RaiseFinding raise = cell.raise();
                if (raise == null) {
                    continue;
                }
                ReportCell raised = check.raised(id, cell.configuration(), raise.frontM(), raise.rearM());
                boolean above = raised.overhead() != null
                        && raised.overhead().valueM() < raised.ground().valueM();
                GapFinding least = above ? raised.overhead() : raised.ground();
                // Two searches, each proven within what it says; figures are rounded to 0.1 mm.
                assertEquals(
                        least.valueM(),
                        raise.clearanceM(),
                        least.provenWithinM() + 1e-4,
                        id + " " + cell.configuration());
                assertEquals(least.requiredM(), raise.requiredM(), 2e-4, id + " " + cell.configuration());
                assertTrue(raise.clearanceM() >= raise.requiredM(), id + " " + cell.configuration());
                told++;
            }
        }
        assertTrue(told > 10, "" + told);
    }
}
