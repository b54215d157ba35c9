package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cresthaul.exchange.osm.LongExtract;
import org.cresthaul.exchange.osm.SmallMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** From files that are dropped on the page to a route that is checked, and back. */
class ImportPageTest extends OnSmallFiles {
    /** A crossing at 200 m, a posted height at 600 m and a bridge at 800 m of a road on the equator; invented. */
    private static final SmallMap MAP = new SmallMap()
            .node(1, 0, 0)
            .node(2, 200, 0, "railway", "level_crossing")
            .node(3, 400, 0)
            .node(4, 600, 0)
            .node(5, 700, 0)
            .node(6, 1000, 0)
            .way(100, List.of(1L, 2L, 3L, 4L), "highway", "tertiary")
            .way(101, List.of(4L, 5L), "highway", "tertiary", "maxheight", "16'12\"")
            .way(102, List.of(5L, 6L), "highway", "tertiary")
            .node(30, 800, -100)
            .node(31, 800, 100)
            .way(300, List.of(30L, 31L), "highway", "primary", "bridge", "yes");

    /** The fourth point is a spike of 1100 m. */
    private static final String TRACK = """
            <gpx version="1.1" creator="hand" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Levee road</name><trkseg>
            <trkpt lat="0" lon="0"/>
            <trkpt lat="0" lon="0.001"/>
            <trkpt lat="0" lon="0.002"/>
            <trkpt lat="0.01" lon="0.0025"/>
            <trkpt lat="0" lon="0.003"/>
            <trkpt lat="0" lon="0.004"/>
            <trkpt lat="0" lon="0.005"/>
            <trkpt lat="0" lon="0.006"/>
            <trkpt lat="0" lon="0.007"/>
            <trkpt lat="0" lon="0.008"/>
            <trkpt lat="0" lon="0.0089"/>
            </trkseg></trk></gpx>
            """;

    @TempDir
    private static Path folder;

    @BeforeEach
    void open() {
        openPage(900);
        browser.errors();
    }

    /** As somebody drops files on the middle of the sheet: names and texts. */
    private static void drop(String... namesAndTexts) {
        browser.run(
                "const held = new DataTransfer();"
                        + "for (let i = 0; i < arguments.length; i += 2) {"
                        + "  held.items.add(new File([arguments[i + 1]], arguments[i]));"
                        + "}"
                        + "const on = document.querySelector('#hazards');"
                        + "for (const type of ['dragenter', 'dragover', 'drop']) {"
                        + "  on.dispatchEvent(new DragEvent(type, {bubbles: true, cancelable: true, dataTransfer: held}));"
                        + "}",
                (Object[]) namesAndTexts);
    }

    private static void awaitStatus(String status) {
        browser.await(
                "the import is " + status, b -> status.equals(b.find("#import").getDomAttribute("data-status")));
    }

    private static String route() {
        return browser.find("#title-block dd[data-field=route]").getText();
    }

    private static void press(String selector) {
        browser.find(selector).sendKeys(Keys.ENTER);
    }

    @Test
    void fromADropToACheckedRouteAndBack() throws Exception {
        String sample = route();

        drop("levee.gpx", TRACK, "county.osm", MAP.xml());
        awaitStatus("ready");

        // A preview, and nothing of it in force.
        assertEquals(sample, route());
        assertEquals(
                "Levee road, 0.62 mi: a preview, not in force yet",
                browser.find("#import-title").getText());
        assertEquals(
                "levee.gpx, line 5",
                browser.find("#import-notes li[data-code=spike] strong").getText());
        assertEquals(
                "3 candidates: 3 new; 1 of them doubtful. None is surveyed by this.",
                browser.find("#import-counts").getText());
        assertEquals(
                List.of("map-n2", "map-w101-maxheight", "map-w300-over-w102"),
                browser.list("#import-candidates tbody tr").stream()
                        .map(r -> r.getDomAttribute("data-id"))
                        .toList());
        assertTrue(
                browser.find("#import-candidates tr[data-doubtful]").getText().contains("16'12\""));
        assertTrue(browser.find("#import-attribution").getText().contains("OpenStreetMap contributors"));
        assertEquals(3, browser.list("#import-map .import-mark.import-new").size());
        assertEquals(1, browser.list("#import-map path.base-major-road").size());
        assertTrue(browser.list("#plan-map path.base-major-road").isEmpty());
        assertEquals(List.of(), browser.accessibilityViolations());
        browser.resize(320, 800);
        assertEquals(true, browser.run("return document.documentElement.scrollWidth <= window.innerWidth"));
        browser.resize(1280, 900);

        press("#import-keep");
        browser.await(
                "it is checked",
                b -> b.list("#hazard-table tbody tr[data-hazard=map-n2]").size() == 1);

        assertEquals("none", browser.find("#import").getDomAttribute("data-status"));
        assertTrue(route().contains("Levee road"), route());
        // The tertiary road that is driven, the primary one above it.
        assertEquals(1, browser.list("#plan-map path.base-middle-road").size());
        assertEquals(1, browser.list("#plan-map path.base-major-road").size());
        assertTrue(browser.find(".plan-credit").getText().contains("OpenStreetMap contributors"));
        assertEquals("Save its base map", browser.find("#basemap-save").getText());
        assertEquals(
                List.of("not surveyed", "not surveyed", "not surveyed"),
                browser.list("#hazard-table tbody tr").stream()
                        .map(r -> r.getDomAttribute("data-verdict"))
                        .toList());
        assertFalse("clear".equals(browser.find("#route-verdict").getDomAttribute("data-verdict")));
        assertEquals(List.of(), browser.accessibilityViolations());

        press("#route-undo");
        browser.await("the sample is back", b -> sample.equals(route()));
        assertTrue(browser.list("#plan-map path.base-major-road").isEmpty());
        browser.await("nothing is left to undo", b -> b.list("#route-undo").isEmpty());
        assertEquals(List.of(), browser.errors());
    }

    /** Level land, whatever the unit: cells of a third of an arc second around the road. */
    private static String levelLand() {
        return "ncols 140 nrows 20 xllcorner -0.001 yllcorner -0.0009 cellsize " + 1 / 10800.0 + "\n"
                + "7 ".repeat(140 * 20);
    }

    @Test
    void aRasterIsAskedWhatItIsInAndSketchesTheCrossing() throws Exception {
        drop("levee.gpx", TRACK, "county.osm", MAP.xml(), "land.asc", levelLand());
        awaitStatus("failed");
        String problems = browser.find("#import-outcome").getText();
        assertTrue(problems.contains("land.asc: The raster does not say in which coordinates it lies."), problems);
        assertTrue(problems.contains("in which unit its heights are"), problems);

        // Said in the two fields that the problems name.
        browser.find("#import-raster-crs").sendKeys("4326", Keys.TAB);
        awaitStatus("failed");
        browser.run("const unit = document.querySelector('#import-raster-unit'); unit.value = 'ft';"
                + "unit.dispatchEvent(new Event('change', {bubbles: true}));");
        awaitStatus("ready");
        assertTrue(browser.find("#import-rasters li")
                .getText()
                .startsWith(
                        "land.asc: 1 place sketched, cells up to 34 ft apart. ASCII grid, 140 by 20 cells, heights in"
                                + " ft; longitude and latitude on WGS 84."));
        assertEquals(List.of(), browser.accessibilityViolations());

        press("#import-keep");
        browser.await(
                "it is checked",
                b -> b.list("#survey-table tr[data-hazard=map-n2] [data-sketch-m]")
                                .size()
                        == 1);
        String told = browser.find("#survey-table tr[data-hazard=map-n2] [data-sketch-m]")
                .getText();
        assertTrue(told.endsWith(", 34 ft cells") && told.contains(" in"), told);
        assertTrue(browser.find("#survey-sketch-note").getText().contains("No survey and no verdict"));
        assertEquals(
                "not surveyed",
                browser.find("#hazard-table tbody tr[data-hazard=map-n2]").getDomAttribute("data-verdict"));
        assertEquals(List.of(), browser.accessibilityViolations());
        browser.resize(320, 800);
        assertEquals(true, browser.run("return document.documentElement.scrollWidth <= window.innerWidth"));
    }

    @Test
    void aCandidateIsDismissedWithNameAndReasonAndOpenedAgain() throws Exception {
        drop("levee.gpx", TRACK, "county.osm", MAP.xml());
        awaitStatus("ready");
        press("#import-keep");
        browser.await(
                "the candidates are listed",
                b -> b.list("#candidate-table tbody tr").size() == 3);
        assertTrue(browser.find("#candidates-count").getText().startsWith("3 open."));

        String row = "#candidate-table tr[data-id='map-n2'] ";
        press(row + ".candidate-dismiss summary");
        browser.find(row + "input[name=by]").sendKeys("J. Doe");
        browser.find(row + "input[name=why]").sendKeys("Track lifted, seen on foot", Keys.ENTER);
        browser.await(
                "it is dismissed", b -> "dismissed".equals(b.find(row.strip()).getDomAttribute("data-state")));

        assertTrue(browser.find(row).getText().contains("dismissed by J. Doe: Track lifted, seen on foot"));
        assertTrue(browser.list("#hazard-table tr[data-hazard='map-n2']").isEmpty());
        assertTrue(browser.find("#cautions").getText().contains("dismissed by J. Doe: Track lifted, seen on foot"));
        assertEquals(List.of(), browser.accessibilityViolations());

        // Brought up to date with the same map, it stays dismissed.
        browser.run("document.querySelector('#import details').open = true");
        browser.find("#import-update").sendKeys(Keys.SPACE);
        drop("county.osm", MAP.xml());
        awaitStatus("ready");
        assertEquals(
                "3 candidates: 2 known, 1 dismissed; 1 of them doubtful. None is surveyed by this.",
                browser.find("#import-counts").getText());
        assertTrue(browser.list("#import-missing").isEmpty());
        browser.list("#import-list .import-remove").get(0).sendKeys(Keys.ENTER);
        awaitStatus("none");

        // The map of another place has none of them; they stay.
        browser.run("document.querySelector('#import details').open = true");
        browser.find("#import-update").sendKeys(Keys.SPACE);
        drop("bare.osm", SmallMap.road().xml());
        awaitStatus("ready");
        assertEquals(
                "3 candidates of the open route not found in the map now",
                browser.find("#import-missing h3").getText());
        assertTrue(
                browser.find("#import-missing li[data-id='map-n2']").getText().endsWith("dismissed"));
        press("#import-discard");

        press(row + ".candidate-open");
        browser.await("it is open", b -> "open".equals(b.find(row.strip()).getDomAttribute("data-state")));
        assertEquals(
                1,
                browser.list("#hazard-table tr[data-hazard='map-n2'][data-verdict='not surveyed']")
                        .size());
        assertEquals(List.of(), browser.errors());
    }

    @Test
    void aRefusalNamesTheFileAndTheRestGoesOnWithoutIt() {
        drop("levee.gpx", TRACK, "permit.gpx", "%PDF-1.7");
        awaitStatus("failed");

        assertTrue(browser.find("#import .problem-item").getText().startsWith("permit.gpx: This is a PDF"));
        browser.list("#import-list .import-remove").get(1).sendKeys(Keys.ENTER);
        awaitStatus("ready");
        assertTrue(browser.find("#import-without-map").getText().contains("are not known"));

        press("#import-discard");
        awaitStatus("none");
        assertTrue(browser.list("#import-outcome > *").isEmpty());
    }

    @Test
    void aLongExtractTellsHowFarItIsAndIsStopped() throws Exception {
        Path map = Files.write(folder.resolve("long.osm.gz"), LongExtract.bytes());
        Path track = Files.writeString(folder.resolve("levee.gpx"), TRACK, StandardCharsets.UTF_8);
        browser.run("document.querySelector('#import details').open = true");

        browser.find("#import-files").sendKeys(track + "\n" + map);
        browser.await(
                "it says what is read",
                b -> b.find("#import-status").getText().startsWith("Reading long.osm.gz, pass 1,"));
        press("#import-stop");
        awaitStatus("stopped");

        long from = System.nanoTime();
        while (!server.get("/api/health").body().contains("\"running\":0")) {
            assertTrue(System.nanoTime() - from < 1_000_000_000L, "the server works on");
            Thread.sleep(20);
        }
        assertTrue(browser.find("#import-status").getText().startsWith("Stopped. Nothing was kept."));
    }

    /** Two tracks without times, chosen the wrong way round; half a mile lies between them. */
    @Test
    void tracksArePutInOrderByHandAndTheGapBetweenThemIsTold() throws Exception {
        String west = "lon,lat\n0,0\n0.002,0\n0.004,0\n";
        String east = "lon,lat\n0.012,0\n0.014,0\n0.016,0\n";
        drop("east.csv", east, "west.csv", west);
        awaitStatus("failed");
        assertTrue(
                browser.find("#import .problem-item[data-code=gap]").getText().contains("order of travel"));
        browser.find("#import-list li:last-child .import-move").sendKeys(Keys.ENTER);
        browser.await(
                "the list is in order", b -> b.find("#import-list li").getText().startsWith("west.csv"));
        assertEquals("BUTTON", browser.run("return document.activeElement.tagName"), "the focus stays in the list");
        // 0.008 degrees of the equator are 0.55 mi, more than is taken for granted.
        browser.await(
                "it is asked",
                b -> !b.list("#import .problem-item[data-code=gap]").isEmpty());
        browser.find("#import-longest-gap").sendKeys("3000 ft", Keys.ENTER);
        awaitStatus("ready");
        // From the first point to the last 0.016 degrees, 111320 m each (WGS 84): 1.11 mi.
        assertEquals("1.11 mi", browser.find("#import-title").getText().replaceAll(".*?, ([0-9.]+ mi):.*", "$1"));
        assertTrue(browser.find("#import-notes li[data-code=gap]").getText().contains("Nothing is known of"));
        assertEquals(List.of(), browser.accessibilityViolations());
        browser.find("#import-keep").sendKeys(Keys.ENTER);
        browser.await("it is in force", b -> b.find("#revisions").getText().startsWith("Last change: importing"));
        browser.find("#route-undo").sendKeys(Keys.ENTER);
        browser.await("the route before is back", b -> b.list("#route-undo").isEmpty());
    }
}
