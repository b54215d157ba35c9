package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.function.DoublePredicate;
import javax.imageio.ImageIO;
import org.cresthaul.server.Requests;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The truck over a hazard, on the page: it stands where the API has it, and is moved by keyboard. */
class PassagePageTest {
    @RegisterExtension
    static final SampleSite SITE = new SampleSite();

    private static SamplePage page;
    private static Browser browser;

    @BeforeAll
    static void start() throws Exception {
        page = new SamplePage(SITE);
        browser = page.browser();
    }

    @AfterAll
    static void stop() throws IOException {
        if (page != null) {
            page.close();
        }
    }

    @BeforeEach
    void openTheSample() throws IOException {
        page.open();
    }

    @Test
    void opensAHazardAndMovesTheTruckByKeyboard() throws Exception {
        String hazard = page.drawnHazard();
        browser.run("document.body.focus()");
        browser.tabTo(".hazard-open", 60);
        for (int i = 0;
                i < page.report().path("hazards").size() && !focusedHazard().equals(hazard);
                i++) {
            browser.press(Keys.ARROW_DOWN);
        }
        assertEquals(hazard, focusedHazard());
        browser.press(Keys.ENTER);
        browser.await(
                "the truck is drawn", b -> "ready".equals(b.find("#passage").getDomAttribute("data-status")));
        assertEquals(hazard, browser.find("#detail").getDomAttribute("data-hazard"));
        String configuration = browser.find("#detail").getDomAttribute("data-configuration");
        JsonNode passage = passage(hazard, configuration);

        // It opens at the tightest position, which is the report's clearance.
        int tightest = passage.path("tightest").intValue();
        assertShown(passage, tightest);
        assertEquals(SamplePage.governingM(page.cell(hazard, configuration)), page.shownM("#passage-clearance"));

        browser.tabTo("#passage-slider", 200);
        browser.press(Keys.ARROW_RIGHT);
        assertShown(passage, tightest + 1);
        browser.press(Keys.ARROW_LEFT, Keys.ARROW_LEFT);
        assertShown(passage, tightest - 1);
        browser.press(Keys.HOME);
        assertShown(passage, 0);
        browser.press(Keys.END);
        assertShown(passage, passage.path("positions").size() - 1);
    }

    /** Counted on the screen: where the truck is drawn in the road it is hatched, and nowhere else. */
    /**
     * The page writes its address 200 ms after a choice. What is put there is told to it by an event behind; when the
     * writing falls between, which is brought about here, it must not undo what was put there.
     */
    @Test
    void anAddressPutInWhileThePageIsAboutToWriteItsOwnIsFollowed() {
        String address = cellWith(groundM -> groundM < -0.02);
        browser.run(
                "const own = window.setTimeout; let write = null;"
                        + "window.setTimeout = (call, after) => (after === 200 ? (write = call, 0) : own(call, after));"
                        + "const notch = document.querySelector('#configuration-notch');"
                        + "notch.selectedIndex = (notch.selectedIndex + 1) % notch.options.length;"
                        + "notch.dispatchEvent(new Event('change', { bubbles: true }));"
                        + "window.setTimeout = own; location.hash = arguments[0]; write();",
                address);
        browser.await(
                address,
                b -> address.contains("=" + b.find("#detail").getDomAttribute("data-hazard") + "&")
                        && address.endsWith("=" + b.find("#detail").getDomAttribute("data-configuration")));
    }

    @Test
    void whereTheTruckReachesIntoTheRoadItIsHatched() throws Exception {
        String deep = cellWith(groundM -> groundM < -0.02);
        String free = cellWith(groundM -> groundM > 0.05);
        assertEquals(0, hatchedPixels(free));
        assertTrue(hatchedPixels(deep) > 20, deep);
    }

    /**
     * However tall a view is asked for, all of the truck is in it, its wheels are round, what overlaps is hatched, the
     * tightest point stays marked, and the scale upward has a bar of its own.
     */
    @Test
    void anExaggeratedViewHoldsTheWholeTruckOnRoundWheels() throws Exception {
        String deep = cellWith(groundM -> groundM < -0.02);
        assertTrue(hatchedPixels(deep) > 20, deep);
        assertEquals(0, browser.list("#side-view .vertical-scale").size(), "equal scales need one bar");
        for (int width : new int[] {1280, 390}) {
            browser.resize(width, 900);
            for (String times : new String[] {"exaggerated × 2", "exaggerated × 10"}) {
                browser.choose(browser.find("#passage-exaggeration"), times);
                assertEquals(List.of(), browser.run("""
                        const view = document.querySelector('#side-view').getBoundingClientRect();
                        const wrong = [];
                        const seen = parts => [...document.querySelectorAll(`#side-view ${parts}`)]
                          .filter(p => p.getClientRects().length > 0 && p.closest('[display=none]') === null)
                          .map(p => p.getBoundingClientRect());
                        const inside = b => b.left >= view.left - 1 && b.right <= view.right + 1
                          && b.top >= view.top - 1 && b.bottom <= view.bottom + 1;
                        const bodies = seen('.unit path');
                        const tires = seen('.tire');
                        if (bodies.length < 4 || tires.length < 5) { wrong.push(`${bodies.length}, ${tires.length} parts`); }
                        bodies.filter(b => !inside(b)).forEach(b => wrong.push(`cut at ${b.left} ${b.top}`));
                        tires.filter(b => Math.abs(b.width - b.height) > 1)
                          .forEach(b => wrong.push(`a wheel of ${b.width} by ${b.height}`));
                        if (document.querySelectorAll('#side-view .detail-circle').length !== 1) { wrong.push('no mark'); }
                        if (document.querySelectorAll('#side-view .vertical-scale').length !== 1) { wrong.push('no bar'); }
                        return wrong;"""), times + " at " + width);
            }
        }
        browser.resize(1280, 900);
        assertTrue(hatchedPixels(deep) > 20, deep);
        browser.choose(browser.find("#passage-exaggeration"), "equal scales");
    }

    /** The address of the first crossing and configuration with such a ground clearance. */
    private static String cellWith(DoublePredicate such) {
        for (JsonNode hazard : page.report().path("hazards")) {
            for (JsonNode cell : hazard.path("cells")) {
                if (hazard.path("kind").textValue().equals("rail-crossing")
                        && cell.path("ground").isObject()
                        && such.test(cell.at("/ground/valueM").doubleValue())) {
                    return "#hazard=" + hazard.path("id").textValue() + "&configuration="
                            + cell.path("configuration").textValue();
                }
            }
        }
        throw new AssertionError("the sample has no such crossing");
    }

    private static int hatchedPixels(String address) throws Exception {
        browser.run("location.hash = arguments[0]", address);
        browser.await(
                address,
                b -> address.contains("=" + b.find("#detail").getDomAttribute("data-hazard") + "&")
                        && address.endsWith("=" + b.find("#detail").getDomAttribute("data-configuration"))
                        && "ready".equals(b.find("#passage").getDomAttribute("data-status")));
        browser.run("document.querySelector('#side-view').scrollIntoView({block: 'center'})");
        BufferedImage screen = ImageIO.read(new ByteArrayInputStream(browser.screen()));
        List<?> box = (List<?>) browser.run("const r = document.querySelector('#side-view').getBoundingClientRect();"
                + "return [r.left, r.top, r.right, r.bottom].map(Math.round)");
        int hatched = 0;
        for (int x = at(box, 0); x < Math.min(screen.getWidth(), at(box, 2)); x++) {
            for (int y = Math.max(0, at(box, 1)); y < Math.min(screen.getHeight(), at(box, 3)); y++) {
                // --contact of the light paper.
                hatched += (screen.getRGB(x, y) & 0xffffff) == 0xad1f1b ? 1 : 0;
            }
        }
        return hatched;
    }

    private static int at(List<?> box, int index) {
        return ((Number) box.get(index)).intValue();
    }

    private static String focusedHazard() {
        return (String) browser.run("return document.activeElement.closest('[data-hazard]')?.dataset.hazard ?? ''");
    }

    private static JsonNode passage(String hazard, String configuration) throws Exception {
        return TestServer.json(SITE.server()
                .post(
                        "/api/passage",
                        Requests.check(
                                page.route(),
                                page.rig(),
                                ",\"hazard\":\"" + hazard + "\",\"configuration\":\"" + configuration + "\"")));
    }

    private static void assertShown(JsonNode passage, int index) {
        JsonNode position = passage.path("positions").path(index);
        WebElement slider = browser.find("#passage-slider");

        assertEquals(Integer.toString(index), slider.getDomAttribute("data-index"));
        assertEquals(position.path("steerM").doubleValue(), SamplePage.number(slider, "data-steer-m"));
        assertEquals(position.path("groundM").doubleValue(), page.shownM("#passage-clearance"));
    }
}
