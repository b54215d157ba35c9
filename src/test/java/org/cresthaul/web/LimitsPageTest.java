package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.server.TestServer;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.SqliteStore;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/**
 * A clerk opens the permit's limits, sees them in force, changes them, keeps them with the project, leaves them out.
 */
class LimitsPageTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String FORCE = "#limits";

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
        open();
    }

    @AfterEach
    void stop() throws Exception {
        browser.close();
        server.close();
        store.close();
    }

    private void open() {
        browser.open(server.url());
        browser.await(
                "the sheet is shown", b -> !b.list("#hazard-table tbody tr").isEmpty());
        unfold();
    }

    private void unfold() {
        browser.run("document.querySelector('#limits > details').open = true;"
                + "document.querySelector('#limits-edit').open = true;");
    }

    private void openFile(String text) throws Exception {
        Path file = Files.writeString(folder.resolve("permit.limits.json"), text);
        browser.find("#limits-file").sendKeys(file.toString());
    }

    private void awaitForce(String force) {
        browser.await(force + " is in force", b -> force.equals(b.find(FORCE).getDomAttribute("data-force")));
    }

    private void press(String selector) {
        browser.await(selector + " can be pressed", b -> b.find(selector).isEnabled());
        browser.find(selector).sendKeys(Keys.ENTER);
    }

    private void fill(String path, String text) {
        WebElement field = browser.find("[data-path='" + path + "']");
        field.clear();
        field.sendKeys(text);
    }

    private String hashOnSheet() {
        List<WebElement> shown = browser.list("#title-block dd[data-field='limits-sha256']");
        return shown.isEmpty() ? "" : shown.get(0).getText();
    }

    private static String sha256(String text) throws Exception {
        return HexFormat.of()
                .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    /** The limits file that the project has now, or null. */
    private JsonNode kept() {
        return store.listProjects().get(0).files().stream()
                .filter(f -> f.kind().word().equals("limits"))
                .findFirst()
                .map(f -> json(store.findFile(f.sha256()).orElseThrow()))
                .orElse(null);
    }

    private static JsonNode json(byte[] document) {
        try {
            return JSON.readTree(document);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void aFileIsOpenedChangedKeptWithTheProjectAndLeftOut() throws Exception {
        awaitForce("federal");
        assertEquals("", hashOnSheet());
        openFile(LimitsTexts.LIMITS);
        awaitForce("file");
        assertTrue(browser.find("#limits-in-force").getText().contains("trial permit (permit 0, 2026-11-02)"));
        // What the sheet is made of is the file to the last byte.
        assertEquals(sha256(LimitsTexts.LIMITS), hashOnSheet());
        assertEquals(List.of(), browser.accessibilityViolations());

        browser.run("document.querySelector('#projects > details').open = true");
        browser.await("it can be kept", b -> b.find("#project-new").isDisplayed());
        browser.find("#project-new").clear();
        browser.find("#project-new").sendKeys("Mill road move");
        press("#project-begin button");
        browser.await("it is saved", b -> !store.listProjects().isEmpty());
        assertEquals("140,000 lb", kept().path("gross").textValue());

        fill("/gross", "150,000 lb");
        press("#limits-add-groups");
        fill("/groups/2/axles", "4");
        fill("/groups/2/weight", "70,000 lb");
        press("#limits-put");
        browser.await("it is in force", b -> b.find("#limits-said").getText().equals("trial permit is in force."));
        browser.await("it is saved", b -> kept().path("gross").textValue().equals("150,000 lb"));
        assertEquals(
                "{\"axles\":4,\"weight\":\"70,000 lb\"}", kept().at("/groups/2").toString());
        assertEquals("limits of the whole route", store.listProjects().get(0).reason());

        browser.reload();
        awaitForce("file");
        assertEquals("150,000 lb", browser.find("[data-path='/gross']").getDomProperty("value"));
        assertFalse(hashOnSheet().isEmpty());
        unfold();
        // What was changed before the page was left is undone as well.
        press("#route-undo");
        String before = sha256(LimitsTexts.LIMITS);
        browser.await("the file as it was opened is back", b -> before.equals(hashOnSheet()));
        press("#limits-remove");
        awaitForce("federal");
        browser.await("it is saved without", b -> kept() == null);
        assertEquals("", hashOnSheet());
        assertEquals(List.of(), browser.errors());
    }

    @Test
    void aWrongFileIsToldWithPlaceAndRemedyAndWhatIsInForceStays() throws Exception {
        openFile(LimitsTexts.LIMITS.replace("\"140,000 lb\"", "\"140,000\""));
        WebElement told = browser.await("it is told", b -> b.find(".problem-item[data-pointer='/limits/gross']"));
        assertTrue(told.findElement(By.className("problem-remedy")).getText().length() > 0);
        awaitForce("federal");
        press("#problem-dismiss");
        openFile("{\"cresthaul\":\"rig/1\"}");
        browser.await("a rig is no limits file", b -> b.find(".problem-item[data-pointer='/limits/cresthaul']"));
        awaitForce("federal");
        press("#problem-dismiss");

        // Written by hand: what is refused stands at its field.
        fill("/name", "trial permit");
        fill("/source", "permit 0");
        fill("/date", "2026-11-02");
        fill("/axle", "heavy");
        press("#limits-put");
        WebElement field = browser.await("it is told at its field", b -> b.find("#limits-form [aria-invalid]"));
        assertEquals("/axle", field.getDomAttribute("data-path"));
        assertTrue(browser.find("#" + field.getDomAttribute("aria-describedby"))
                .getText()
                .contains("heavy"));
        assertEquals(field, browser.run("return document.activeElement"));
        assertEquals("heavy", field.getDomProperty("value"));
        assertEquals(List.of(), browser.accessibilityViolations());
        awaitForce("federal");
        fill("/axle", "24,000 lb");
        press("#limits-put");
        awaitForce("file");
    }
}
