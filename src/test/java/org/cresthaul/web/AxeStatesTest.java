package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cresthaul.server.TestServer;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.SqliteStore;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/**
 * Whatever the page can be brought to show is without faults that axe-core knows, on a phone and at a desk, light and
 * dark: a list of states, one after the other. Merging and verifying are in {@code ProjectsPageTest}.
 */
class AxeStatesTest {
    private static final String TRACK = """
            <gpx version="1.1" creator="hand" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Levee road</name><trkseg>
            <trkpt lat="44.60" lon="-93.10"/><trkpt lat="44.601" lon="-93.09"/><trkpt lat="44.602" lon="-93.08"/>
            </trkseg></trk></gpx>
            """;

    @TempDir
    private Path folder;

    private ProjectStore store;
    private TestServer server;
    private Browser browser;

    @BeforeEach
    void start() throws Exception {
        store = SqliteStore.in(folder.resolve("store"));
        server = TestServer.keeping(store);
        browser = new Browser();
        browser.resize(1400, 900);
        browser.open(server.url());
        awaitSheet();
    }

    @AfterEach
    void stop() throws Exception {
        browser.close();
        server.close();
        store.close();
    }

    private void awaitSheet() {
        browser.await(
                "the plan is there",
                b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status"))
                        && b.list("#busy:not(:empty)").isEmpty());
    }

    private void press(String selector) {
        browser.await(
                selector + " can be pressed",
                b -> b.find(selector).isDisplayed() && b.find(selector).isEnabled());
        browser.find(selector).sendKeys(Keys.ENTER);
    }

    private void unfoldAll() {
        browser.run("document.querySelectorAll('details').forEach(one => { one.open = true; })");
    }

    private void sendFile(String input, String name, String text) throws Exception {
        browser.find(input)
                .sendKeys(Files.writeString(folder.resolve(name), text).toString());
    }

    private void isSound(String state) throws Exception {
        for (int width : new int[] {1400, 390}) {
            browser.resize(width, 900);
            for (String scheme : List.of("light", "dark")) {
                browser.prefer(scheme);
                assertEquals(List.of(), browser.accessibilityViolations(), state + ", " + width + " px, " + scheme);
            }
            assertTrue(
                    (Boolean) browser.run("return document.documentElement.scrollWidth <= innerWidth"),
                    state + " does not scroll sideways at " + width + " px");
        }
        browser.resize(1400, 900);
        browser.prefer("light");
    }

    private void show(String hazard) {
        browser.run(
                "document.querySelector(`#hazard-table tr[data-hazard=${arguments[0]}] .hazard-open`).click()", hazard);
        browser.await(
                hazard + " is on show", b -> hazard.equals(b.find("#detail").getDomAttribute("data-hazard")));
    }

    @Test
    void everyFormIsOpen() throws Exception {
        show("H01");
        unfoldAll();
        isSound("every form at a crossing");
        show("H05");
        unfoldAll();
        isSound("every form at a corner");
        press(".line-mode[data-mode=points]");
        isSound("points of the line");
        press(".line-mode[data-mode=new]");
        browser.find("#line-typed [name=coordinates]").sendKeys("nowhere", Keys.ENTER);
        browser.await(
                "it is refused", b -> !b.list("#line [aria-invalid='true']").isEmpty());
        isSound("a line being drawn, a point refused");
    }

    @Test
    void projectsAreOpenNamedLookedBackAtAndRemoved() throws Exception {
        browser.run("document.querySelector('#projects > details').open = true");
        browser.find("#project-new").clear();
        browser.find("#project-new").sendKeys("Mill road move", Keys.ENTER);
        browser.await("it is saved", b -> b.find("#project-status").getText().startsWith("saved, revision 1"));
        press("#project-revisions");
        browser.await("revisions are listed", b -> !b.list("#revision-list li").isEmpty());
        isSound("a project open, to be named anew");
        browser.await("it is named", b -> {
            b.find("#project-rename").clear();
            b.find("#project-rename").sendKeys("Mill road move, second try", Keys.ENTER);
            return true;
        });
        browser.await("it is saved", b -> b.find("#project-status").getText().startsWith("saved, revision 2"));
        press("#project-revisions");
        browser.await("revisions are listed", b -> b.list("#revision-list li").size() == 2);
        press("#revision-list li[data-revision='1'] .revision-look");
        browser.await("it is looked at", b -> b.find("#project-restore").isDisplayed());
        awaitSheet();
        isSound("an earlier revision");
    }

    @Test
    void anImportIsPreviewedAndOneFails() throws Exception {
        sendFile("#import-files", "levee.gpx", TRACK);
        browser.await("it is previewed", b -> "ready".equals(b.find("#import").getDomAttribute("data-status")));
        unfoldAll();
        isSound("a preview of an import");
        press("#import-discard");
        sendFile("#import-files", "permit.gpx", "%PDF-1.7");
        browser.await("it failed", b -> "failed".equals(b.find("#import").getDomAttribute("data-status")));
        isSound("an import that failed");
        sendFile("#route-file", "wrong.route.geojson", "{\"cresthaul\": \"route/1\"}");
        browser.await("it is refused", b -> !b.list(".problem-item").isEmpty());
        isSound("a route that is refused");
    }
}
