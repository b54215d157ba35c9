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
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.language.English;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.CornerFinding;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.UnitSwing;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Notch;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Trailer;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The sample haul tells the stories it was drawn to tell. The tables are what a planner would expect at these places,
 * and a change of the engine that alters one of them shows here; they are no source of truth.
 * {@link SampleRouteSumsTest} is.
 */
class SampleRouteTest {
    private static final Path FOLDER = Path.of("sample-routes");
    private static final double INCH = 0.0254;
    private static final double FOOT = 0.3048;

    private static final Route ROUTE = route();
    private static final Rig LOADED_RIG = rig("lowbed-loaded");
    private static final Rig EMPTY_RIG = rig("lowbed-empty");
    private static final Report LOADED =
            SampleHaul.of("alder-county", "lowbed-loaded").report();
    private static final Report EMPTY =
            SampleHaul.of("alder-county", "lowbed-empty").report();

    /** As {@link RouteStory} writes it. */
    private static final String LOADED_STORY = """
            # Pikesend siding: nearly flat, clears at every notch in every state
            H01 any                 CCCCCCC ....... 1
            # Creamery pipe bridge: posted 2 ft 6 in over the load
            H02 any                 CCCCCCC ....... 1
            # Windlass Hill: a crest long enough for the deck
            H03 any                 CCCCCCC ....... 1
            # Tallow branch line: only the higher notches clear; a higher rear (two axles) or a shorter group helps
            H04 down/none           tttttCC fffff.. 6
            H04 up/none             tCCCCCC f...... 2
            H04 down/close-coupled  tttttCC fffff.. 6
            H04 up/close-coupled    tttCCCC fff.... 4
            # Little Marrow ford: the raised tire meets the rim, worse at every higher notch; three axles clear
            H05 down/none           CCCCCCC ....... 1
            H05 up/none             tttttXX rrrrrrr -
            H05 down/close-coupled  CCCCCCC ....... 1
            H05 up/close-coupled    CCCCCCC ....... 1
            # Oxbow gravel spur: nobody has surveyed it
            H06 any                 ??????? ------- -
            # Fernholt underpass: a bridge on a sag; the higher notches strike, the lower are free without margin
            H07 down/none           ttttXXX ------- -
            H07 up/none             ttXXXXX ------- -
            H07 down/close-coupled  ttttXXX ------- -
            H07 up/close-coupled    ttXXXXX ------- -
            # Fernholt mill lead: two axles clear, three do not
            H08 down/none           Xtttttt fffffff -
            H08 up/none             ttttCCC ffff... 5
            H08 down/close-coupled  Xtttttt fffffff -
            H08 up/close-coupled    tttttCC fffff.. 6
            # Seed works conveyor: posted 7 in over the load, road under it unknown
            H09 any                 ttttttt ------- -
            # Two-track main line: the second track stands higher
            H10 down/none           ttttCCC ffff... 5
            H10 up/none             ttCCCCC ff..... 3
            H10 down/close-coupled  tttttCC fffff.. 6
            H10 up/close-coupled    tttCCCC fff.... 4
            # River bottoms crossing: an airborne scan cannot decide it
            H11 any                 XXXXXXX ------- -
            # Irrigation flume: high enough, if one knew who measured it
            H12 any                 ttttttt ------- -
            # Quillby elevator track: gentle, but the survey is short and the approach grades are not declared
            H13 any                 ttttttt ------- -
            # Saddleback: a short crest; close-coupling the booster takes the last notch away
            H14 down/none           tttttCC fffff.. 6
            H14 up/none             ttCCCCC ff..... 3
            H14 down/close-coupled  ttttttt fffffff -
            H14 up/close-coupled    ttttCCC ffff... 5
            # Stonefold junction: clears only raised, with three axles down by the front alone
            H15 down/none           XXXXXXX fffffff -
            H15 up/none             XXXtttt bbbbbbb -
            H15 down/close-coupled  XXXXXXX fffffff -
            H15 up/close-coupled    XXXXXXt bbbbbbb -
            # Quarry spur: clears only with front and rear raised
            H16 any                 XXXXXXX bbbbbbb -
            # Stonefold belt gallery: the lower notches keep the margin overhead
            H17 down/none           CCCCCtt .....-- 1
            H17 up/none             CCCtttt ...---- 1
            H17 down/close-coupled  CCCCCtt .....-- 1
            H17 up/close-coupled    CCCtttt ...---- 1
            """;

    /** The way back: the empty deck rides higher and nothing stands on it. */
    private static final String EMPTY_STORY = """
            H01 any                 CCCCCCC ....... 1
            H02 any                 CCCCCCC ....... 1
            H03 any                 CCCCCCC ....... 1
            H04 any                 CCCCCCC ....... 1
            # the raised tire is no higher than when loaded: lower the lift axle before the ford
            H05 down/none           CCCCCCC ....... 1
            H05 up/none             tttttXX rrrrrrr -
            H06 any                 ??????? ------- -
            H07 any                 CCCCCCC ....... 1
            H08 any                 CCCCCCC ....... 1
            H09 any                 CCCCCCC ....... 1
            H10 any                 CCCCCCC ....... 1
            H11 any                 XXXXXXX ------- -
            H12 any                 ttttttt ------- -
            H13 any                 ttttttt ------- -
            H14 any                 CCCCCCC ....... 1
            H15 down/none           tttttCC fffff.. 6
            H15 up/none             ttCCCCC ff..... 3
            H16 down/none           XXXXXtt fffffff -
            H16 up/none             XXttttt fffffff -
            H17 any                 CCCCCCC ....... 1
            """;

    @Test
    void loadedHaulTellsItsStory() {
        assertTells(LOADED_STORY, LOADED, List.of("none", "close-coupled"));
    }

    @Test
    void emptyHaulTellsItsStory() {
        assertTells(EMPTY_STORY, EMPTY, List.of("none"));
    }

    /** A trailing booster carries its own wheel and here never drags; one on the empty deck stands below the stack. */
    @Test
    void trailingAndCarriedBoostersChangeNoVerdict() {
        assertSameAsWithout(LOADED, "trailing");
        assertSameAsWithout(EMPTY, "trailing");
        assertSameAsWithout(EMPTY, "carried");
    }

    /** Corners, by axle and booster state: verdict, and whether it needs escorts on the opposing lane. */
    private static final String CORNER_STORY = """
            # Pikesend turn: nobody gets round on the own lanes; everybody does with escorts on the opposing lane
            C1 down/none t escorts
            C1 up/none t escorts
            C1 down/trailing t escorts
            C1 up/trailing t escorts
            C1 down/close-coupled t escorts
            C1 up/close-coupled t escorts
            # Fernholt square, a roundabout: the trailing booster's pivot does not bend far enough
            C2 down/none C own
            C2 up/none C own
            C2 down/trailing t own
            C2 up/trailing t own
            C2 down/close-coupled C own
            C2 up/close-coupled C own
            # Mill Street: close-coupled, no room is left to begin the turn early or late
            C3 down/none C own
            C3 up/none C own
            C3 down/trailing C own
            C3 up/trailing C own
            C3 down/close-coupled t own
            C3 up/close-coupled t own
            # Stonefold road end: room for everybody
            C4 down/none C own
            C4 up/none C own
            C4 down/trailing C own
            C4 up/trailing C own
            C4 down/close-coupled C own
            C4 up/close-coupled C own
            """;

    @Test
    void cornersTellTheirStory() {
        Set<String> expected =
                CORNER_STORY.lines().filter(l -> !l.startsWith("#")).collect(Collectors.toCollection(TreeSet::new));
        Set<String> found = new TreeSet<>();
        for (HazardFindings hazard : LOADED.hazards()) {
            for (ReportCell cell : hazard.cells()) {
                if (cell.corner() != null) {
                    found.add(hazard.id() + " " + cell.configuration().replaceAll("/[^/]*$", "") + " "
                            + letter(cell.verdict()) + " " + (cell.corner().escorts() ? "escorts" : "own"));
                }
            }
        }
        assertEquals(expected, found);
        CornerFinding wide = cell(LOADED, "C1", "up/trailing/4").corner();
        assertTrue(wide.trailsWideM() > 0.08 && wide.trailsWideAt() != null, wide.toString());
    }

    /** What is told of the whole is the greatest of what is told of the units. */
    @Test
    void theSwingsByUnitAreWhatTheWholeIsToldBy() {
        int told = 0;
        for (HazardFindings hazard : LOADED.hazards()) {
            for (ReportCell cell : hazard.cells()) {
                CornerFinding c = cell.corner();
                if (c == null) {
                    continue;
                }
                told++;
                String where = hazard.id() + " " + cell.configuration();
                boolean booster = cell.configuration().contains("trailing");
                assertEquals(
                        booster ? List.of("tractor", "trailer", "booster") : List.of("tractor", "trailer"),
                        c.swings().stream().map(UnitSwing::unit).toList(),
                        where);
                assertEquals(
                        c.tailSwingM(),
                        c.swings().stream()
                                .mapToDouble(s -> Math.max(s.tailOutsideM(), s.tailInsideM()))
                                .max()
                                .orElseThrow(),
                        0,
                        where);
                assertEquals(
                        c.frontalSwingM(),
                        c.swings().stream()
                                .mapToDouble(s -> Math.max(s.frontOutsideM(), s.frontInsideM()))
                                .max()
                                .orElseThrow(),
                        0,
                        where);
                UnitSwing last = c.swings().get(c.swings().size() - 1);
                assertEquals(c.offtrackingM(), last.offtrackingM(), 0, where);
                assertEquals(c.trailsWideM(), booster ? last.trailsOutsideM() : null, where);
                assertEquals(null, c.swings().get(0).trailsOutsideM(), where);
                // Whatever the corner, the trailer's tires run well inside of the tractor's.
                assertTrue(
                        c.swings().get(1).trailsInsideM() > 0.3,
                        where + ": " + c.swings().get(1));
            }
        }
        assertEquals(4 * 42, told);
    }

    /** Fernholt square with three feet less around it: where one state does not get round, those that do are told. */
    @Test
    void aCornerThatBlocksTellsWhatWouldMakeTheTurn() throws IOException, InputRejected {
        String narrow = Files.readString(FOLDER.resolve("alder-county.route.geojson"))
                .replace("\"roundabout\": {\"outer\": \"64 ft\"", "\"roundabout\": {\"outer\": \"61 ft\"");
        Route route = RouteFile.parse(narrow.getBytes(StandardCharsets.UTF_8));
        RouteCorner square = route.hazards().stream()
                .filter(h -> h.place().id().equals("C2"))
                .map(RouteCorner.class::cast)
                .findFirst()
                .orElseThrow();
        LevelStance stance = LOADED_RIG.stances().iterator().next();
        List<ReportCell> cells = new CornerCells(
                        new JoinedCorners(route, stance).of(square), LOADED_RIG, stance, Margins.defaults())
                .cells(CheckedConfiguration.listOf(LOADED_RIG, stance));
        ReportCell blocked = cells.stream()
                .filter(c -> c.configuration().equals("up/trailing/4"))
                .findFirst()
                .orElseThrow();
        assertEquals(Verdict.CONTACT, blocked.verdict());
        assertTrue(
                blocked.reasons().stream()
                        .anyMatch(r -> r.toString().startsWith("corner: would make the turn: ")
                                && r.toString().contains("2 axles · no booster")),
                blocked.reasons().toString());
    }

    @ParameterizedTest
    @CsvSource({
        "H05, up/none/1, raised tire",
        "H08, down/none/4, outrigger step",
        "H14, down/none/4, outrigger step",
        "H16, up/none/1, main beam",
    })
    void groundIsTightestWhereADriverWouldLook(String hazard, String configuration, String part) {
        assertEquals(part, cell(LOADED, hazard, configuration).ground().part());
    }

    @ParameterizedTest
    @CsvSource({"H02", "H07", "H09", "H12", "H17"})
    void theLoadsCabIsHighest(String hazard) {
        assertEquals(
                "loader cab roof",
                cell(LOADED, hazard, "down/none/4").overhead().part());
    }

    @ParameterizedTest
    @CsvSource({
        "H06, no survey data",
        "H07, overhead: it touches",
        "H09, road profile is unknown",
        "H11, survey is too coarse",
        "H11, more than 3 m (10 ft) apart",
        "H12, how the height was measured is unknown",
        "H13, approach grade",
    })
    void reasonsSayWhatIsWrong(String hazard, String words) {
        List<String> reasons = finding(LOADED, hazard).cells().stream()
                .filter(c -> c.configuration().startsWith("down/none/"))
                .flatMap(c -> English.of(c.reasons()).stream())
                .toList();
        assertTrue(reasons.stream().anyMatch(r -> r.contains(words)), reasons.toString());
    }

    @Test
    void aHaulOfThreeLegsWithHazardsOfEveryKindSaidToBeInvented() {
        assertTrue(ROUTE.note().startsWith("Invented"));
        assertEquals(3, ROUTE.legs().size());
        assertEquals(60_000, ROUTE.lengthM(), 5_000);
        Map<String, Long> kinds = ROUTE.hazards().stream()
                .collect(Collectors.groupingBy(h -> h.kind().word(), Collectors.counting()));
        assertEquals(
                Map.of(
                        "rail-crossing",
                        9L,
                        "low-structure",
                        5L,
                        "crest",
                        2L,
                        "dip",
                        1L,
                        "posted-bridge",
                        2L,
                        "stretch",
                        1L,
                        "corner",
                        4L),
                kinds);
        assertTrue(ROUTE.hazards().stream().allMatch(h -> h.place().landmark().isPresent()));
    }

    /**
     * The sample's own figures: seven notches of 5/8 in, secondary valve 1 1/4 in, raised tire 4 1/4 in. Of the order
     * that check-values W10 (common practice, no source) calls plausible, and none of them.
     */
    @Test
    void rigsAreOfTradeProportionsAndSaidToBeInvented() {
        for (Rig rig : List.of(LOADED_RIG, EMPTY_RIG)) {
            assertTrue(rig.note().startsWith("Invented"));
            List<Double> offsets = rig.notches().stream().map(Notch::offsetM).toList();
            assertEquals(7, offsets.size());
            for (int i = 1; i < offsets.size(); i++) {
                assertEquals(0.625 * INCH, offsets.get(i) - offsets.get(i - 1), 1e-9);
            }
            LevelStance stance = rig.stances().get(0);
            Trailer trailer = stance.trailer();
            assertEquals(3, trailer.axles().axles().size());
            assertEquals(1.25 * INCH, trailer.lift().raised().get(0).secondaryRiseM(), 1e-9);
            assertEquals(4.25 * INCH, trailer.lift().axles().get(0).gapM(), 1e-9);
            assertEquals(
                    25 * FOOT, trailer.deckFront().xM() - trailer.deckRear().xM(), FOOT);
            double frontFt = (stance.tractor().underside().frontXM()
                            - stance.tractor().fifthWheel().xM())
                    / FOOT;
            double rearFt = (trailer.boosterHinge().orElseThrow().xM()
                            + stance.booster().orElseThrow().underside().rearXM())
                    / FOOT;
            assertEquals(80, frontFt - rearFt, 5, "overall length with the booster trailing, feet");
        }
        assertEquals(14, LOADED_RIG.stances().get(0).trailer().load().get(0).highestM() / FOOT, 0.5);
        assertTrue(EMPTY_RIG.stances().get(0).trailer().load().isEmpty());
    }

    @Test
    void placesThatAreNotSurveyedAreCountedInEveryRouteVerdict() {
        for (Report report : List.of(LOADED, EMPTY)) {
            for (ConfigurationVerdict c : report.configurations()) {
                assertEquals(1, c.notSurveyed());
                assertFalse(c.verdict() == Verdict.CLEAR);
            }
        }
    }

    private static Route route() {
        try {
            return RouteFile.parse(Files.readAllBytes(FOLDER.resolve("alder-county.route.geojson")));
        } catch (InputRejected | IOException e) {
            throw new IllegalArgumentException(e);
        }
    }

    private static Rig rig(String name) {
        try {
            return RigFile.parse(Files.readAllBytes(FOLDER.resolve(name + ".rig.json")));
        } catch (InputRejected | IOException e) {
            throw new IllegalArgumentException(e);
        }
    }
}
