package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.server.TestServer;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.Revision;
import org.cresthaul.store.SqliteStore;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** Work that is kept: begun, saved by itself, found again, looked back at. */
class ProjectsPageTest {
    private static final long SAVED_WITHIN_MS = 2000;

    @TempDir
    private Path folder;

    private ProjectStore store;
    private TestServer server;
    private Browser browser;

    @BeforeEach
    void start() throws Exception {
        store = SqliteStore.in(folder);
        server = TestServer.keeping(store);
        browser = new Browser();
        open(server.url());
    }

    @AfterEach
    void stop() throws Exception {
        browser.close();
        server.close();
        store.close();
    }

    private void open(String url) {
        browser.open(url);
        browser.await(
                "the sheet is shown", b -> !b.list("#hazard-table tbody tr").isEmpty());
    }

    private void awaitStatus(String begins) {
        browser.await(
                "the project is " + begins,
                b -> b.find("#project-status").getText().startsWith(begins));
    }

    private void click(String selector) {
        browser.await(selector + " is there", b -> b.find(selector).isDisplayed());
        browser.find(selector).sendKeys(Keys.ENTER);
    }

    private void unfold() {
        browser.await("projects are offered", b -> b.find("#projects > details").isDisplayed());
        browser.run("document.querySelector('#projects > details').open = true");
    }

    private void begin(String name) {
        unfold();
        browser.await("it can be kept", b -> b.find("#project-new").isDisplayed());
        browser.find("#project-new").clear();
        browser.find("#project-new").sendKeys(name);
        browser.find("#project-author").sendKeys("A. Planner");
        click("#project-begin button");
        awaitStatus("saved, revision 1");
    }

    /** As a person changes a margin; to be checked with it. */
    private void setGroundMargin(String margin) {
        browser.run("document.querySelector('#inputs > details').open = true");
        browser.find("#margin-ground").clear();
        browser.find("#margin-ground").sendKeys(margin);
        click("#margins-apply");
    }

    private Revision latest() {
        return store.listProjects().get(0);
    }

    @Test
    void aChangeIsSavedByItselfAndFoundAfterReloading() throws Exception {
        assertTrue(browser.list("#project-list li").isEmpty());
        begin("Mill road move");
        assertEquals(1, store.listProjects().size());
        assertEquals("A. Planner", latest().author());
        assertEquals(List.of(), browser.accessibilityViolations());
        Files.write(Path.of("target/project.png"), browser.screen());

        // The least of a few, since the machine may be busy with something else.
        long leastMs = Long.MAX_VALUE;
        for (int change = 1; change <= 4; change++) {
            String margin = 7 - change + " in";
            int revision = 1 + change;
            setGroundMargin(margin);
            browser.await(
                    "the margin is in force",
                    b -> b.find("#title-block dd[data-field=margins]").getText().contains(margin.substring(0, 1)));
            long since = System.nanoTime();
            browser.await("it is saved", b -> latest().number() == revision);
            leastMs = Math.min(leastMs, (System.nanoTime() - since) / 1_000_000);
            awaitStatus("saved, revision " + revision);
            assertEquals("margins", latest().reason());
        }
        assertTrue(leastMs < SAVED_WITHIN_MS, leastMs + " ms");

        // The address follows what is in force, and a page that is opened by it is in that.
        String address = browser.await("the address has the last margin", b -> {
            String now = (String) b.run("return location.href");
            return now.contains("ground=3") ? now : null;
        });
        assertTrue(address.contains("#project=" + latest().project()), address);
        browser.open("about:blank");
        open(address);
        awaitStatus("saved, revision 5");
        assertEquals("Project Mill road move", browser.find("#project-name").getText());
        assertEquals("3 in", browser.find("#margin-ground").getDomProperty("value"));
        assertEquals(5, latest().number(), "opening saves nothing");
        assertEquals(List.of(), browser.errors());
    }

    /** 120 steps are in src/test/web/history.test.js; here that a browser keeps them. */
    @Test
    void undoOutlivesThePage() throws Exception {
        begin("Mill road move");
        byte[] begun = rigOf(latest());
        for (int change = 1; change <= 2; change++) {
            int revision = 1 + change;
            setHub((500 + change) + " mm");
            awaitStatus("saved, revision " + revision);
        }
        browser.await(
                "it is kept",
                b -> Boolean.TRUE.equals(
                        b.run("return Object.keys(localStorage).some(k => k.startsWith('cresthaul.history.'))")));
        String address = (String) browser.run("return location.href");
        browser.open("about:blank");
        open(address);
        awaitStatus("saved, revision 3");

        for (int undone = 1; undone <= 2; undone++) {
            int revision = 3 + undone;
            browser.await("it can be undone", b -> b.find("#route-undo").isEnabled());
            click("#route-undo");
            awaitStatus("saved, revision " + revision);
        }
        assertArrayEquals(begun, rigOf(latest()));
        assertTrue(browser.find("#route-redo").isDisplayed());
        assertEquals(List.of(), browser.errors());
    }

    private byte[] rigOf(Revision revision) {
        return store.findFile(revision.files().get(1).sha256()).orElseThrow();
    }

    @Test
    void aFreshStartListsWhatIsKeptAndOpensIt() throws Exception {
        begin("Mill road move");
        setGroundMargin("3 in");
        awaitStatus("saved, revision 2");
        browser.open("about:blank");

        open(server.url());
        assertEquals("", browser.find("#margin-ground").getDomProperty("value"));
        unfold();
        click("#project-list .project-open");

        awaitStatus("saved, revision 2");
        assertEquals("3 in", browser.find("#margin-ground").getDomProperty("value"));
        click("#project-close");
        browser.await("it is closed", b -> b.find("#project-name").getText().equals("Projects"));
        setGroundMargin("4 in");
        browser.await(
                "the margin is in force",
                b -> b.find("#title-block dd[data-field=margins]").getText().contains("4"));
        assertEquals(2, latest().number());
    }

    @Test
    void anEarlierRevisionIsLookedAtAndRestored() throws Exception {
        begin("Mill road move");
        setGroundMargin("3 in");
        awaitStatus("saved, revision 2");

        click("#project-revisions");
        click("#revision-list li[data-revision='1'] .revision-look");
        awaitStatus("looking at revision 1 of 2");
        assertEquals("", browser.find("#margin-ground").getDomProperty("value"));
        assertEquals(List.of(), browser.accessibilityViolations());
        click("#project-restore");

        awaitStatus("saved, revision 3");
        assertEquals("restored revision 1", latest().reason());
        assertEquals(3, store.listRevisions(latest().project()).size());
    }

    @Test
    void whatSomebodyElseSavedIsNeverSavedOver() throws Exception {
        begin("Mill road move");
        Revision first = latest();
        String body = "{\"name\": \"Mill road move\", \"reason\": \"from another window\", \"files\": ["
                + known(first, 0) + ", " + known(first, 1) + "]}";
        assertEquals(
                200,
                HttpClient.newHttpClient()
                        .send(
                                HttpRequest.newBuilder(URI.create(server.url() + "api/projects/" + first.project()))
                                        .header("Content-Type", "application/json")
                                        .header("If-Match", "\"1\"")
                                        .PUT(BodyPublishers.ofString(body))
                                        .build(),
                                BodyHandlers.ofString())
                        .statusCode());

        setGroundMargin("3 in");

        awaitStatus("somebody has saved since");
        assertEquals("from another window", latest().reason());
        assertTrue(
                browser.find("#projects").getText().contains("from another window"),
                browser.find("#projects").getText());
        assertEquals(List.of(), browser.accessibilityViolations());
        click("#project-copy");
        awaitStatus("saved, revision 1");
        assertEquals(2, store.listProjects().size());
        assertEquals("Mill road move (mine)", latest().name());
        assertTrue(latest().view().contains("ground=3"), latest().view());
    }

    @Test
    void twoWindowsArePutTogetherAndNothingIsLost() throws Exception {
        begin("Mill road move");
        String project = latest().project();
        String first = browser.window();
        String second = browser.openBeside(server.url() + "#project=" + project);
        awaitStatus("saved, revision 1");
        setGroundMargin("3 in");
        awaitStatus("saved, revision 2");

        browser.toWindow(first);
        setHub("502 mm");
        browser.await("both are shown", b -> b.list("#merge-table tbody tr").size() == 2);
        String shown = browser.find("#merge-table").getText();
        assertTrue(shown.contains("hub of steer axle") && shown.contains("margin over the ground"), shown);
        assertTrue(shown.contains("502 mm") && shown.contains("3 in"), shown);
        assertEquals(List.of(), browser.accessibilityViolations());
        look("merge");
        click("#merge-put");
        awaitStatus("saved, revision 3");
        assertEquals("put together with revision 2", latest().reason());
        assertTrue(latest().view().contains("ground=3"), latest().view());
        assertTrue(new String(rigOf(latest()), StandardCharsets.UTF_8).contains("\"radius\": \"502 mm\""));
        assertFalse(browser.find("#merge").isDisplayed());
        setGroundMargin("4 in");
        awaitStatus("saved, revision 4");

        browser.toWindow(second);
        setGroundMargin("5 in");
        browser.await(
                "both are shown", b -> !b.list("#merge-table tr[data-by=both]").isEmpty());
        assertFalse(browser.find("#merge-put").isEnabled());
        assertTrue(browser.find("#merge-left").getText().startsWith("Choose mine or theirs at 1 thing"));
        browser.find("#merge-table tr[data-by=both] input[value=theirs]").click();
        click("#merge-put");
        awaitStatus("saved, revision 6");
        assertEquals("4 in", browser.find("#margin-ground").getDomProperty("value"));
        List<Revision> all = store.listRevisions(project);
        assertEquals("as it was before revision 4 came to it", all.get(4).reason());
        assertTrue(all.get(4).view().contains("ground=5"), all.get(4).view());
        assertTrue(all.get(5).view().contains("ground=4"), all.get(5).view());
        assertArrayEquals(rigOf(all.get(3)), rigOf(all.get(5)));
    }

    private void setHub(String radius) {
        browser.run("document.querySelector('#rig-edit').open = true");
        String row = ".rig-input[data-row='tractor/steer/height']";
        browser.await("the rig is listed", b -> !b.list(row).isEmpty());
        browser.find(row).clear();
        browser.find(row).sendKeys(radius, Keys.ENTER);
    }

    private void look(String name) throws Exception {
        for (String scheme : List.of("light", "dark")) {
            for (int width : new int[] {1400, 390}) {
                browser.prefer(scheme);
                browser.resize(width, 900);
                browser.run("document.getElementById(arguments[0]).scrollIntoView()", name);
                assertEquals(
                        true,
                        browser.run("return document.documentElement.scrollWidth <= window.innerWidth"),
                        "no wider than " + width);
                assertEquals(List.of(), browser.accessibilityViolations(), name + ", " + width + " px, " + scheme);
                Files.write(Path.of("target/" + name + "-" + scheme + "-" + width + ".png"), browser.screen());
            }
        }
        browser.prefer("light");
        browser.resize(1280, 900);
    }

    private static String known(Revision revision, int place) {
        Revision.KeptFile file = revision.files().get(place);
        return "{\"kind\": \"" + file.kind().word() + "\", \"name\": \"" + file.name() + "\", \"sha256\": \""
                + file.sha256() + "\"}";
    }

    @Test
    void whileTheServerIsAwayThePageSaysSo() throws Exception {
        begin("Mill road move");
        server.close();
        browser.run("document.querySelector('#project-author').focus()");
        // What is asked of the plan needs no check to come into force.
        browser.await("a plan can be asked for", b -> b.find("#plan-no-raising").isEnabled());
        browser.run("document.querySelector('#plan-no-raising').click()");
        browser.run("document.querySelector('#plan-apply')?.click()");

        awaitStatus("offline");
        assertFalse(store.listProjects().isEmpty());
    }

    @Test
    void isNamedAnewRemovedAndBroughtBack() throws Exception {
        begin("Mill road move");
        browser.await("it is named", b -> {
            b.find("#project-rename").clear();
            b.find("#project-rename").sendKeys("Quarry move", Keys.ENTER);
            return true;
        });
        awaitStatus("saved, revision 2");
        assertEquals("Project Quarry move", browser.find("#project-name").getText());
        assertEquals("named", latest().reason());
        assertEquals("Quarry move", latest().name());

        click("#project-remove");
        browser.await(
                "it is listed as removed",
                b -> b.find("#project-removed summary").getText().equals("Removed projects: 1"));
        assertEquals(List.of(), store.listProjects());
        assertTrue(browser.find("#notice").getText().startsWith("Quarry move is removed."));
        click("#project-removed summary");
        assertEquals(List.of(), browser.accessibilityViolations());
        look("projects");
        click("#project-removed button");
        browser.await("it is back", b -> b.list("#project-list li").size() == 1);
        assertEquals("brought back", latest().reason());
        assertEquals("A. Planner", latest().author());
        click("#project-list .project-open");
        awaitStatus("saved, revision 3");
        assertEquals(List.of(), browser.errors());
    }

    @Test
    void papersAreKeptAsTheyWereIssued() throws Exception {
        begin("Mill road move");
        click("#project-papers");
        browser.await("there is none yet", b -> b.find("#paper-list").getText().contains("No paper"));
        click("#statement-pdf");
        browser.await(
                "the statement is made", b -> b.find("#papers-status").getText().contains("made"));
        assertEquals(1, store.listPapers(latest().project()).size());

        click("#project-papers");
        browser.await("it is listed", b -> !b.list("#paper-list li").isEmpty());
        assertTrue(
                browser.find("#paper-list").getText().startsWith("Statement, PDF issued"),
                browser.find("#paper-list").getText());
        click("#paper-list .paper-verify");
        browser.await("it is made again", b -> "true".equals(b.find("#verify").getDomAttribute("data-identical")));
        assertTrue(
                browser.find("#verify-outcome").getText().startsWith("Identical. Statement of revision 1"),
                browser.find("#verify-outcome").getText());
        assertEquals(List.of(), browser.errors());
        Path none = Files.writeString(folder.resolve("none.json"), RigTexts.RIG);
        browser.find("#verify-file").sendKeys(none.toString());
        browser.await(
                "it is told to be none",
                b -> b.find("#verify .problem").getText().contains("This is no record of a paper"));
        look("verify");
        assertEquals(List.of(), browser.accessibilityViolations());
        List<String> refused = browser.errors();
        assertTrue(refused.size() == 1 && refused.get(0).contains("422"), refused.toString());
    }

    @Test
    void filesOfOnesOwnAreSaidNotToBeKept() throws Exception {
        browser.await("projects are offered", b -> b.find("#projects > details").isDisplayed());
        assertEquals("", browser.find("#project-status").getText());
        Path own = Files.writeString(
                folder.resolve("own.rig.json"), RigTexts.RIG.replace("\"name\": \"", "\"name\": \"Own "));
        browser.find("#rig-file").sendKeys(own.toString());
        awaitStatus("what is open is on this page only");
        begin("Own move");
        assertEquals("own.rig.json", latest().files().get(1).name());
    }

    @Test
    void aServerThatKeepsNothingOffersNothing() throws Exception {
        try (TestServer none = TestServer.ofSmallFiles()) {
            open(none.url());
            assertFalse(browser.find("#projects").isDisplayed());
        }
    }
}
