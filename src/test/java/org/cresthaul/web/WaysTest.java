package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.cresthaul.server.Sample;
import org.cresthaul.server.Samples;
import org.cresthaul.server.ServerOptions;
import org.cresthaul.server.TestServer;
import org.cresthaul.store.IssuedPaper;
import org.cresthaul.store.PaperKind;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.Revision;
import org.cresthaul.store.SqliteStore;
import org.cresthaul.web.Walk.Hand;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The ways of those who use the page, from an empty data folder to the paper: each by mouse or finger and by keys
 * alone, judged by what is kept at the end, and counted.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class WaysTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private static Path folder;

    private static Path route;
    private static Path rig;
    private static ProjectStore store;
    private static TestServer server;
    private static Browser browser;
    private static final Map<String, Effort> counted = new TreeMap<>();

    @BeforeAll
    static void start() throws Exception {
        store = SqliteStore.in(Files.createDirectory(folder.resolve("data")));
        rig = Path.of("sample-routes/lowbed-loaded.rig.json").toAbsolutePath();
        route = Files.writeString(folder.resolve("mill.route.geojson"), WayFiles.mill());
        server = TestServer.remembering(new ServerOptions(
                Optional.empty(),
                0,
                Optional.empty(),
                new Samples(
                        List.of(new Sample(
                                "short.route.geojson", WayFiles.SHORT_ROAD.getBytes(StandardCharsets.UTF_8))),
                        List.of(new Sample("lowbed-loaded.rig.json", Files.readAllBytes(rig)))),
                Optional.of(store)));
        browser = new Browser();
    }

    @AfterAll
    static void stop() throws Exception {
        browser.close();
        server.close();
        store.close();
    }

    @AfterEach
    void oneWindow() {
        browser.closeOthers();
    }

    @BeforeEach
    void nothingIsKeptByTheBrowser() {
        browser.open("about:blank");
        browser.forget(server.url());
        browser.errors();
    }

    private static Walk arrive(Hand hand, int width, String name) {
        browser.resize(width, width < 500 ? 844 : 900);
        browser.touch(hand == Hand.FINGER);
        browser.open(server.url());
        awaitPlan();
        return new Walk(browser, hand, name + "-" + hand.name().toLowerCase(java.util.Locale.ROOT) + "-" + width);
    }

    private static void awaitPlan() {
        browser.await(
                "the plan is there",
                b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status"))
                        && b.find("#busy").getText().isEmpty());
    }

    private static void awaitStatus(String begins) {
        browser.await(
                "the project is " + begins,
                b -> b.find("#project-status").getText().startsWith(begins));
    }

    private static void done(Walk walk, String who, Hand hand) {
        assertEquals(List.of(), walk.lostAfter(), "the focus is lost");
        assertEquals(List.of(), browser.errors());
        counted.put(who + " " + hand, new Effort(walk.presses(), walk.fields()));
    }

    /** What a way takes. */
    private record Effort(int presses, int fields) {}

    private static JsonNode file(Revision revision, int index) throws Exception {
        return JSON.readTree(
                store.findFile(revision.files().get(index).sha256()).orElseThrow());
    }

    /**
     * The permit clerk has a route file and a rig file in hand, and one place in them that a map reported. It is not on
     * the road (the clerk knows), so it is dismissed; then the statement is issued and made again.
     */
    @ParameterizedTest
    @CsvSource({"MOUSE, 1400", "KEYS, 1400", "FINGER, 390"})
    @Order(1)
    void theClerkIssuesAStatement(Hand hand, int width) throws Exception {
        int before = store.listProjects().size();
        Walk walk = arrive(hand, width, "clerk");
        walk.unfold("#inputs > details");
        walk.file("#rig-file", rig);
        awaitPlan();
        walk.file("#route-file", route);
        browser.await(
                "the route is open",
                b -> b.find("#title-block [data-field=route]").getText().contains("Mill lead"));
        awaitPlan();
        assertEquals("no way through", browser.find("#answer").getDomAttribute("data-outcome"));
        walk.look("blocked", "html");

        walk.press("#sections a[data-part=candidates]");
        walk.unfold("#candidate-table tr[data-id=M01] details.candidate-dismiss");
        walk.fill("#candidate-table tr[data-id=M01] [name=by]", "R. Clerk");
        walk.fill("#candidate-table tr[data-id=M01] [name=why]", "Filled in 2024");
        walk.enter();
        browser.await(
                "it is dismissed",
                b -> !b.list("tr[data-id=M01][data-state=dismissed]").isEmpty());
        awaitPlan();
        assertEquals("way through", browser.find("#answer").getDomAttribute("data-outcome"));
        assertEquals(
                List.of("H02"),
                browser.run(
                        "return [...document.querySelectorAll('#profile [data-hazard]')].map(n => n.dataset.hazard)"),
                "the strip map is of this route");
        assertEquals(
                browser.run("return document.querySelectorAll('.strip-legend li').length"),
                browser.run("return document.querySelectorAll('#profile .strip-bar').length"),
                "set-ups over the profile are of this plan");

        walk.unfold("#projects > details");
        walk.fill("#project-new", "Mill lead " + hand);
        walk.fill("#project-author", "R. Clerk");
        walk.enter();
        awaitStatus("saved, revision 1");
        walk.press("#sections a[data-part=route-plan]");
        walk.press("#statement-pdf");
        browser.await(
                "the statement is made", b -> b.find("#papers-status").getText().contains("Statement made"));
        walk.look("statement", "#route-plan");
        walk.press("#project-papers");
        walk.press("#paper-list .paper-verify");
        browser.await("it is made again", b -> "true".equals(b.find("#verify").getDomAttribute("data-identical")));
        walk.look("verified", "#projects, #verify");

        assertEquals(before + 1, store.listProjects().size());
        Revision kept = store.listProjects().get(0);
        assertEquals("Mill lead " + hand, kept.name());
        assertEquals("R. Clerk", kept.author());
        JsonNode features = file(kept, 0).path("features");
        JsonNode candidate = features.get(features.size() - 1).at("/properties/candidate");
        assertEquals("dismissed", candidate.path("state").textValue());
        assertEquals("R. Clerk", candidate.path("by").textValue());
        assertEquals("Filled in 2024", candidate.path("why").textValue());
        List<IssuedPaper> papers = store.listPapers(kept.project());
        assertEquals(1, papers.size());
        assertEquals(PaperKind.STATEMENT, papers.get(0).kind());
        assertEquals(kept.number(), papers.get(0).revision());
        done(walk, "clerk", hand);
    }

    /**
     * The driver opens the newest project on a phone, keeps the run sheet for the cab, goes through it, ticks what is
     * done, and looks whom to call when stuck. What was ticked is there after the page was loaded again.
     */
    @ParameterizedTest
    @CsvSource({"FINGER, 390", "KEYS, 390"})
    @Order(2)
    void theDriverGoesByTheCabPage(Hand hand, int width) throws Exception {
        Walk walk = arrive(hand, width, "driver");
        String page = browser.window();
        walk.unfold("#projects > details");
        walk.press("#project-list li:first-child .project-open");
        awaitStatus("saved, revision 1");
        awaitPlan();
        walk.press("#sections a[data-part=route-plan]");
        walk.press("#runsheet-cab");
        browser.await("the sheet is kept", b -> b.find("#runsheet-cab-link").isDisplayed());
        walk.look("kept", "#papers");
        walk.press("#runsheet-cab-link");
        browser.toOtherWindow(page);
        browser.resize(width, 844);
        browser.touch(hand == Hand.FINGER);
        walk.onAnotherPage();
        browser.await("what comes next is shown", b -> b.find("#cab-next").isDisplayed());
        walk.look("next", "html");
        walk.press("#cab-open");
        browser.await("the place is shown", b -> b.find("#cab-place").isDisplayed());
        String first = browser.find("#cab-place [data-tick]").getDomAttribute("data-tick");
        walk.press("[data-tick='" + first + "']");
        walk.look("place", "html");
        browser.reload();
        walk.onAnotherPage();
        browser.await(
                "the tick is kept", b -> b.find("[data-tick='" + first + "']").isSelected());
        assertEquals(1, browser.list("[data-tick]:checked").size());
        walk.press("#cab-passed");
        browser.await("the next step", b -> "1".equals(b.find("#cab-next").getDomAttribute("data-step")));
        walk.press("#cab-stuck-open");
        browser.await("whom to call", b -> b.find("#cab-call").isDisplayed());
        assertEquals("000021X", browser.find("#cab-stuck [data-number]").getDomAttribute("data-number"));
        assertEquals("tel:8005550121", browser.find("#cab-call").getDomAttribute("href"));
        walk.look("stuck", "html");
        assertEquals(
                List.of(first),
                browser.run("return Object.keys(localStorage).filter(key => key.includes('.ticks.'))"
                        + ".flatMap(key => JSON.parse(localStorage[key]))"));
        done(walk, "driver", hand);
    }

    /**
     * The planner tapes a rig that begins as a copy, weighs its piece by scale tickets, draws a road, puts five hazards
     * on it, levels one of them, compares two configurations and makes the run sheet.
     */
    @ParameterizedTest
    @CsvSource({"MOUSE, 1400", "KEYS, 1400", "FINGER, 390"})
    @Order(3)
    void thePlannerMakesAHaul(Hand hand, int width) throws Exception {
        Walk walk = arrive(hand, width, "planner");
        walk.unfold("#projects > details");
        walk.fill("#project-new", "Own haul " + hand);
        walk.fill("#project-author", "P. Planner");
        walk.enter();
        awaitStatus("saved, revision 1");
        tapeARig(walk);
        drawARoad(walk, hand);
        addHazards(walk);
        levelTheDip(walk);
        compare(walk);
        walk.press("#sections a[data-part=route-plan]");
        walk.press("#runsheet-pdf");
        browser.await(
                "the run sheet is made", b -> b.find("#papers-status").getText().contains("Run sheet made"));
        walk.look("paper", "html");

        Revision kept = store.listProjects().get(0);
        assertEquals("Own haul " + hand, kept.name());
        haveTheRigAsTaped(file(kept, 1));
        haveTheRoadAsDrawn(file(kept, 0));
        List<IssuedPaper> papers = store.listPapers(kept.project());
        assertEquals(
                List.of(PaperKind.RUN_SHEET),
                papers.stream().map(IssuedPaper::kind).toList());
        assertEquals(kept.number(), papers.get(0).revision());
        done(walk, "planner", hand);
        if (hand == Hand.KEYS) {
            takeBackByKeys();
        }
    }

    /**
     * By mouse and finger the document says the very numbers. By keys it says the most: how many Tabs lead somewhere
     * depends on what the page has drawn by then.
     */
    @Test
    @Order(4)
    void theDocumentSaysWhatTheWaysTake() throws Exception {
        Map<String, Hand> hands = Map.of("mouse", Hand.MOUSE, "finger", Hand.FINGER, "keys alone", Hand.KEYS);
        Matcher row = Pattern.compile("\\| (clerk|driver|planner) \\| (mouse|finger|keys alone) \\|[^|]*\\| (at most )?"
                        + "(\\d+) \\| (\\d+) \\|")
                .matcher(Files.readString(Path.of("docs/workbench.md")));
        Map<String, Effort> told = new TreeMap<>();
        while (row.find()) {
            String way = row.group(1) + " " + hands.get(row.group(2));
            Effort real = counted.getOrDefault(way, new Effort(0, 0));
            int most = Integer.parseInt(row.group(4));
            boolean isMost = row.group(3) != null && real.presses() <= most && real.presses() > 0.8 * most;
            told.put(way, new Effort(isMost ? real.presses() : most, Integer.parseInt(row.group(5))));
        }
        assertEquals(told, counted);
    }

    /** What is pressed is drawn anew each time; whoever presses it by keys stays there. */
    private static void takeBackByKeys() {
        Walk walk = new Walk(browser, Hand.KEYS, "undo");
        for (String button : List.of("#route-undo", "#route-undo", "#route-redo", "#route-redo")) {
            String before = browser.find("#revisions").getText();
            walk.press(button);
            browser.await(
                    "it is taken back", b -> !b.find("#revisions").getText().equals(before));
            awaitPlan();
        }
        assertEquals(List.of(), walk.lostAfter());
    }

    private static void tapeARig(Walk walk) throws Exception {
        walk.press("#sections a[data-part=rig]");
        walk.unfold("#rig-edit");
        walk.unfold("#rig-changes");
        walk.fill("#rig-begin [name=name]", "Yard lowbed");
        walk.enter();
        browser.await(
                "the rig has begun",
                b -> b.find("#title-block [data-field=rig]").getText().contains("Yard lowbed"));
        awaitPlan();
        walk.fill(".rig-input[data-row='trailer/deckRear/along']", "26 ft");
        walk.enter();
        awaitChange("deck front to deck rear, 26 ft");
        walk.unfold("#rig-tickets");
        String[][] tickets = {
            {"steer", "11,000 lb", "12,500 lb"}, {"drive", "16,000 lb", "43,000 lb"},
            {"trailer", "19,000 lb", "49,500 lb"}, {"booster-0", "5,000 lb", "14,000 lb"}
        };
        for (String[] ticket : tickets) {
            walk.fill("#rig-tickets [name='" + ticket[0] + "/empty']", ticket[1]);
            walk.fill("#rig-tickets [name='" + ticket[0] + "/loaded']", ticket[2]);
        }
        walk.press("#rig-tickets-put");
        awaitChange("wheel loader from scale tickets");
        walk.look("rig", "#rig");
    }

    private static void awaitChange(String what) {
        browser.await(what + " is in force", b -> b.find("#revisions").getText().contains(what));
        awaitPlan();
    }

    /** East along a parallel: by two presses on the map, or by two coordinates. */
    private static void drawARoad(Walk walk, Hand hand) throws Exception {
        walk.press("#sections a[data-part=line]");
        walk.unfold("#line-edit");
        walk.press(".line-mode[data-mode=new]");
        for (String at : List.of("44.6, -93.1", "44.6, -93.05")) {
            walk.fill("#line-typed [name=coordinates]", at);
            walk.enter();
        }
        browser.await("both are drawn", b -> b.find("#line-point").getText().startsWith("2 points drawn"));
        walk.fill("#line-name", "Pit road");
        walk.press("#line-finish");
        browser.await(
                "it is the route",
                b -> b.find("#title-block [data-field=route]").getText().contains("Pit road"));
        awaitPlan();
        walk.look("line", "#line");
    }

    private static void addHazards(Walk walk) throws Exception {
        walk.press("#sections a[data-part=places]");
        walk.unfold("#place-edit");
        String[][] hazards = {
            {"dip", "Ford", "0.5 mi"},
            {"crest", "Levee", "1 mi"},
            {"rail", "Pit spur", "1.5 mi"},
            {"low", "Conveyor", "2 mi"},
            {"overhead", "Farm wire", "2.2 mi"}
        };
        for (String[] hazard : hazards) {
            walk.choose("#place-kind", hazard[0]);
            walk.fill("#place-add [name=name]", hazard[1]);
            walk.fill("#place-add [name=at]", hazard[2]);
            walk.enter();
            browser.await(
                    hazard[1] + " is added",
                    b -> b.find("#place-said").getText().equals(hazard[1] + " is added."));
        }
        awaitPlan();
        walk.look("places", "#places");
    }

    private static void levelTheDip(Walk walk) throws Exception {
        walk.press("#sections a[data-part=hazards]");
        walk.press("#hazard-table tr[data-hazard=H01] .hazard-open");
        browser.await("the ford is shown", b -> "H01".equals(b.find("#detail").getDomAttribute("data-hazard")));
        walk.unfold("#survey-edit");
        walk.choose("#survey-unit-distance", "m");
        walk.fill("#survey-accuracy", "5 mm");
        walk.fill("#survey-source", "level and rod");
        walk.unfold("#survey-notes");
        walk.choose("#notes-unit", "m");
        walk.fill("#notes-start", "100");
        String[][] readings = {
            {"", "", "1.500"},
            {"-20", "c", "", "1.500"},
            {"0", "c", "", "1.520"},
            {"20", "c", "", "1.500"},
            {"", "", "", "", "1.500"}
        };
        for (int row = 0; row < readings.length; row++) {
            for (int column = 0; column < readings[row].length; column++) {
                if (!readings[row][column].isEmpty()) {
                    walk.fill("#notes-rows [data-note='" + row + "," + column + "']", readings[row][column]);
                }
            }
        }
        walk.press("#notes-take");
        browser.await(
                "the ford is judged",
                b -> "same".equals(b.find("#survey").getDomAttribute("data-status"))
                        && !b.list("#hazard-table tr[data-hazard=H01]:not([data-verdict='not surveyed'])")
                                .isEmpty());
        awaitPlan();
        walk.look("survey", "#survey");
    }

    private static void compare(Walk walk) throws Exception {
        walk.press("#sections a[data-part=comparison]");
        for (String configuration : List.of("down/none/4", "down/trailing/4")) {
            walk.press("#configuration-table tr[data-configuration='" + configuration + "'] [name=pick]");
        }
        browser.await(
                "both are plotted", b -> !b.list("#margin-plot [data-pick='1']").isEmpty());
        walk.look("compared", "#comparison");
    }

    /**
     * The deck begins 10 ft 6 in behind the kingpin; what the four tickets gained is 1,500 + 27,000 + 30,500 + 9,000.
     */
    private static void haveTheRigAsTaped(JsonNode taped) {
        assertEquals("Yard lowbed", taped.path("name").textValue());
        assertEquals("-36 ft 6 in", taped.at("/stances/0/trailer/deckRear/x").textValue());
        assertEquals("68,000 lb", taped.at("/stances/0/weights/pieces/0/weight").textValue());
    }

    /** Heights by hand: the instrument stands at 100 + 1.500; 101.500 − 1.500, − 1.520, − 1.500. */
    private static void haveTheRoadAsDrawn(JsonNode drawn) {
        assertEquals("Pit road", drawn.path("name").textValue());
        TreeMap<String, JsonNode> hazards = new TreeMap<>();
        drawn.path("features").forEach(feature -> {
            if (feature.at("/properties/hazard").isTextual()) {
                hazards.put(feature.at("/properties/name").textValue(), feature);
            }
        });
        assertEquals(
                "[Conveyor, Farm wire, Ford, Levee, Pit spur]", hazards.keySet().toString());
        hazards.values()
                .forEach(hazard ->
                        assertEquals(44.6, hazard.at("/geometry/coordinates/1").doubleValue(), 1e-4));
        List<Double> leveled = new ArrayList<>();
        hazards.get("Ford")
                .at("/properties/profile/0/points")
                .forEach(point -> point.forEach(
                        length -> leveled.add(Double.valueOf(length.textValue().replace(" m", "")))));
        assertEquals(List.of(-20.0, 100.0, 0.0, 99.98, 20.0, 100.0), leveled);
        assertTrue(hazards.get("Levee").at("/properties/profile").isMissingNode());
    }
}
