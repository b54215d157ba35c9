package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.cresthaul.server.Requests;
import org.cresthaul.server.Sample;
import org.cresthaul.server.Samples;
import org.cresthaul.server.TestServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The route plan in a real browser: what is read there is what the API answers, by keyboard and on a phone's width. */
class PlanPageTest {
    private static final String VALLEY = "#route=sorrel-valley&rig=lowbed-loaded";
    private static final String COUNTY = "#route=alder-county&rig=lowbed-loaded";

    private static Samples samples;
    private static TestServer server;
    private static Browser browser;

    @BeforeAll
    static void start() throws Exception {
        samples = Samples.bundled();
        server = TestServer.remembering(samples);
        browser = new Browser();
    }

    @AfterAll
    static void stop() throws IOException {
        if (browser != null) {
            browser.close();
        }
        if (server != null) {
            server.close();
        }
    }

    @BeforeEach
    void begin() {
        browser.resize(1280, 900);
        browser.prefer("light");
        browser.open("about:blank");
        browser.errors();
    }

    private static void open(String fragment) {
        browser.open(server.url() + fragment);
        awaitPlan();
    }

    private static void awaitPlan() {
        browser.await(
                "the plan is there", b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
    }

    private static JsonNode ask(String path, String route, String plan) throws Exception {
        return TestServer.json(server.post(
                path, Requests.check(text(samples.routes(), route), text(samples.rigs(), "lowbed-loaded"), plan)));
    }

    private static String text(List<Sample> among, String id) {
        return among.stream()
                .filter(s -> s.id().equals(id))
                .map(s -> new String(s.document(), StandardCharsets.UTF_8))
                .findFirst()
                .orElseThrow();
    }

    private static String attribute(String selector, String name) {
        return browser.find(selector).getDomAttribute(name);
    }

    /** A number as a browser writes it, 0.0008 rather than 8.0E-4; nothing where there is none. */
    private static String figure(JsonNode number) {
        return number.isNumber() ? number.decimalValue().stripTrailingZeros().toPlainString() : "";
    }

    /** The page's steps are those of a plan: kind, place, verdict, chainage, what is left and what is done. */
    private static void assertSteps(JsonNode plan) {
        List<String> expected = new ArrayList<>();
        plan.path("steps").forEach(s -> {
            JsonNode passage = s.path("passage");
            JsonNode actions = s.at("/change/actions");
            List<String> done = new ArrayList<>();
            actions.forEach(a ->
                    done.add(a.path("action").asText() + " " + a.path("seconds").asLong()));
            expected.add(String.join(
                    "|",
                    s.path("step").asText(),
                    passage.path("hazard").asText(""),
                    passage.path("verdict").asText(""),
                    figure(s.path("chainageM")),
                    figure(passage.at("/spare/left")),
                    passage.path("blocked").asBoolean() ? "true" : "",
                    String.join(",", done)));
        });
        Object shown = browser.run("const n = v => v ?? '';"
                + "return [...document.querySelectorAll('#plan-steps > li')].map(li => [li.dataset.step, n(li.dataset.hazard),"
                + " n(li.dataset.verdict), li.dataset.chainageM, n(li.querySelector('.step-spare')?.dataset.left),"
                + " n(li.dataset.blocked), [...li.querySelectorAll('[data-action]')]"
                + " .map(a => a.dataset.action + ' ' + a.dataset.seconds).join(',')].join('|'))");
        assertTrue(expected.size() > 10, "the plan has steps");
        assertEquals(expected, shown);
    }

    @Test
    void readsThePlanOfTheApi() throws Exception {
        open(VALLEY);
        JsonNode plan = ask("/api/plan", "sorrel-valley", "");

        assertEquals(plan.path("outcome").asText(), attribute("#route-plan", "data-outcome"));
        assertTrue(browser.find("#plan-outcome")
                .getText()
                .contains(plan.path("outcome").asText()));
        assertEquals(plan.path("seconds").asText(), attribute("#plan-figures", "data-seconds"));
        assertTrue(plan.path("changes").asInt() > 0, "the sample changes on the way");
        assertEquals(plan.path("changes").asText(), attribute("#plan-figures", "data-changes"));
        assertSteps(plan);
        int passives = 0;
        for (JsonNode crossing : plan.path("crossings")) {
            assertEquals(
                    crossing.path("clearSeconds").asDouble(),
                    Double.parseDouble(attribute(
                            "#crossing-table tr[data-hazard='"
                                    + crossing.path("hazard").asText() + "']",
                            "data-clear-seconds")));
            String row = browser.find("#crossing-table tr[data-hazard='"
                            + crossing.path("hazard").asText() + "']")
                    .getText();
            // No devices and so no warning, which is not a warning that nobody knows.
            boolean passive = crossing.path("warning").asText().equals("passive");
            passives += passive ? 1 : 0;
            assertEquals(passive, row.contains("signs only"), row);
            assertEquals(crossing.path("sightM").isNumber(), row.contains("seen "), row);
        }
        assertTrue(passives > 0, "a crossing of the sample has signs only");
        List<WebElement> rows = browser.list("#robustness-table tbody tr");
        assertEquals(plan.at("/robustness/rows").size(), rows.size());
        for (int i = 0; i < rows.size(); i++) {
            assertEquals(
                    plan.at("/robustness/rows/" + i + "/worst").asDouble(),
                    Double.parseDouble(rows.get(i).getDomAttribute("data-worst")));
        }
        assertTrue(browser.find("#plan-robustness")
                .getText()
                .contains(plan.at("/robustness/weakest/text").asText()));
        plan.path("cautions")
                .forEach(c -> assertTrue(browser.find("#plan-answer").getText().contains(c.asText())));
        assertEquals(List.of(), browser.errors());
    }

    /** Before anything else, and in the tab: how the plan ends; then what to do, or every place that blocks. */
    @Test
    void opensOnTheAnswerOfThePlan() throws Exception {
        open(VALLEY);
        JsonNode way = ask("/api/plan", "sorrel-valley", "");
        String answer = browser.find("#answer").getText();
        assertTrue(
                answer.contains(way.at("/outcome").asText())
                        && answer.contains(
                                "Depart with " + way.at("/steps/0/set/label").asText()),
                answer);
        assertTrue(title().startsWith(way.at("/outcome").asText() + ": Sorrel Valley sample haul"), title());
        open(COUNTY);
        JsonNode blocked = ask("/api/plan", "alder-county", "");
        browser.await("the answer is of this route", b -> title().startsWith("no way through: Alder County"));
        String blocks = browser.find("#answer").getText();
        assertTrue(blocks.contains("NOT FOR DRIVING"), blocks);
        for (JsonNode block : blocked.path("blocking")) {
            assertTrue(
                    blocks.contains(block.path("hazard").asText() + " "
                            + block.path("name").asText()),
                    blocks);
        }
        browser.find("#answer a").click();
        assertEquals("plan-outcome", browser.run("return document.activeElement.id"));
    }

    private static String title() {
        return (String) browser.run("return document.title");
    }

    @Test
    void opensAStepInThePlansConfigurationByKeyboard() throws Exception {
        open(VALLEY);
        JsonNode raised = null;
        for (JsonNode step : ask("/api/plan", "sorrel-valley", "").path("steps")) {
            if (raised == null && step.at("/passage/raise").isObject()) {
                raised = step.path("passage");
            }
        }
        String hazard = raised.path("hazard").asText();
        browser.find("#plan-steps li[data-hazard='" + hazard + "'] .step-open").sendKeys(Keys.ENTER);
        browser.await("the hazard is open", b -> hazard.equals(b.find("#detail").getDomAttribute("data-hazard")));

        assertEquals(raised.at("/set/configuration").asText(), attribute("#detail", "data-configuration"));

        // A stop is chosen on the strip map and on the map alike.
        JsonNode stop = ask("/api/route", "sorrel-valley").path("stops").path(0);
        String id = stop.path("id").asText();
        for (String where : new String[] {"#profile .profile-stop", "#plan-map .plan-stop"}) {
            browser.find(where + "[data-stop='" + id + "']").sendKeys(Keys.ENTER);
            browser.await(
                    "told of " + id,
                    b -> b.find("#stop-facts")
                            .getText()
                            .contains(stop.path("name").asText()));
            assertEquals("true", attribute(where + "[data-stop='" + id + "']", "aria-pressed"));
            browser.find(where + "[data-stop='" + id + "']").sendKeys(Keys.ENTER);
            assertFalse(browser.find("#stop-facts")
                    .getText()
                    .contains(stop.path("name").asText()));
        }
    }

    private static JsonNode ask(String path, String route) throws Exception {
        return TestServer.json(server.post(path, text(samples.routes(), route)));
    }

    @Test
    void acceptsSetsAsideAndChangesTimes() throws Exception {
        open(COUNTY);
        assertEquals("no way through", attribute("#route-plan", "data-outcome"));
        assertTrue(browser.find("#papers-caveat").getText().contains("blocked"));
        String tight = browser.list(".plan-accept").get(0).getDomAttribute("data-accept");
        browser.find(".plan-accept[data-accept='" + tight + "']").sendKeys(Keys.ENTER);
        awaitPlan();
        List<String> aside = new ArrayList<>();
        while (!browser.list(".plan-aside").isEmpty()) {
            String id = browser.list(".plan-aside").get(0).getDomAttribute("data-aside");
            aside.add(id);
            browser.find(".plan-aside[data-aside='" + id + "']").sendKeys(Keys.ENTER);
            awaitPlan();
        }
        browser.find("#plan-options summary").sendKeys(Keys.ENTER);
        WebElement notch = browser.find("#plan-time-notch");
        notch.clear();
        notch.sendKeys("20", Keys.ENTER);
        browser.await(
                "the times are asked",
                b -> b.find("#route-plan summary .inputs-summary").getText().contains("times"));
        awaitPlan();

        String plan = ",\"plan\":{\"times\":{\"notch\":\"20 min\"},\"acceptTight\":[\"" + tight + "\"],\"setAside\":[\""
                + String.join("\",\"", aside) + "\"]}";
        JsonNode answer = ask("/api/plan", "alder-county", plan);
        assertEquals("way through under conditions", answer.path("outcome").asText());
        assertEquals(answer.path("outcome").asText(), attribute("#route-plan", "data-outcome"));
        assertEquals(answer.path("seconds").asText(), attribute("#plan-figures", "data-seconds"));
        assertSteps(answer);
        for (JsonNode condition : answer.path("conditions")) {
            String shown = browser.find("#plan-conditions li[data-hazard='"
                            + condition.path("hazard").asText() + "'][data-what='"
                            + condition.path("what").asText() + "']")
                    .getText();
            assertTrue(shown.contains(condition.path("text").asText()), shown);
        }
        assertTrue(browser.find("#papers-caveat").getText().contains("conditional"));
        // A link carries all of it.
        browser.await("the address follows", b -> ((String) b.run("return location.hash")).contains("time=notch"));
        String link = (String) browser.run("return location.hash");
        assertTrue(link.contains("accept=" + tight) && link.contains("aside=" + aside.get(0)), link);

        browser.find("#plan-conditions .plan-undo[data-undo='" + aside.get(0) + "']")
                .sendKeys(Keys.ENTER);
        browser.await(
                "the block is back",
                b -> "no way through".equals(b.find("#route-plan").getDomAttribute("data-outcome")));
        assertEquals(
                "plan-outcome", browser.run("return document.activeElement.id"), "the focus goes to the new answer");
    }

    @Test
    void tellsAWrongTimeAtItsPlace() throws Exception {
        open(VALLEY);
        browser.find("#plan-options summary").sendKeys(Keys.ENTER);
        WebElement notch = browser.find("#plan-time-notch");
        notch.clear();
        notch.sendKeys("soon", Keys.ENTER);
        WebElement item = browser.await(
                "the mistake is told", b -> b.find("#plan-problem .problem-item[data-pointer='/plan/times/notch']"));

        assertFalse(item.getText().isBlank());
        assertEquals("true", attribute("#plan-time-notch", "aria-invalid"));
        assertFalse(browser.find("#plan-answer").isDisplayed(), "no plan stands for a question that was refused");
    }

    @Test
    void comparesSortsAndPlotsWhatTheApiSays() throws Exception {
        open(VALLEY + "&compare=down/none/3&compare=down/trailing/3");
        browser.await("compared", b -> "ready".equals(b.find("#comparison").getDomAttribute("data-status")));
        assertTrue(browser.find("#comparison-trains").getText().contains("in time before a train"));
        JsonNode comparison = ask("/api/comparison", "sorrel-valley", "");
        for (JsonNode c : comparison.path("configurations")) {
            WebElement row = browser.find("#configuration-table tr[data-configuration='"
                    + c.path("configuration").asText() + "']");
            assertEquals(c.path("outcome").asText(), row.getDomAttribute("data-outcome"));
            assertEquals(c.path("seconds").asText(), row.getDomAttribute("data-seconds"));
            c.path("worst")
                    .forEach(w -> assertEquals(w.at("/spare/left").asDouble(), Double.parseDouble((String) browser.run(
                            "return arguments[0].querySelector(`[data-worst=${arguments[1]}]`).dataset.left",
                            row,
                            w.at("/spare/kind").asText()))));
        }

        browser.find("th[data-sort=seconds] .sort").sendKeys(Keys.ENTER);
        assertEquals("ascending", attribute("th[data-sort=seconds]", "aria-sort"));
        assertSorted(true);
        browser.find("th[data-sort=seconds] .sort").sendKeys(Keys.ENTER);
        assertEquals("descending", attribute("th[data-sort=seconds]", "aria-sort"));
        assertSorted(false);

        JsonNode first = find(comparison, "down/none/3");
        JsonNode second = find(comparison, "down/trailing/3");
        assertEquals(
                first.path("along").size() + second.path("along").size(),
                browser.list("#margin-plot .margin-place").size());
        for (JsonNode place : first.path("along")) {
            WebElement mark = browser.find("#margin-plot .margin-place[data-pick='0'][data-hazard='"
                    + place.path("hazard").asText() + "']");
            if (place.path("spare").isNull()) {
                assertEquals("not known", mark.getDomAttribute("data-kind"));
            } else {
                assertEquals(place.at("/spare/left").asDouble(), Double.parseDouble(mark.getDomAttribute("data-left")));
            }
        }
        List<String> differing = new ArrayList<>();
        for (int i = 0; i < first.path("along").size(); i++) {
            JsonNode a = first.path("along").path(i);
            for (JsonNode b : second.path("along")) {
                if (b.path("hazard").equals(a.path("hazard"))
                        && !(b.path("verdict").equals(a.path("verdict"))
                                && b.path("raise").equals(a.path("raise"))
                                && b.path("spare").equals(a.path("spare")))) {
                    differing.add(a.path("hazard").asText());
                }
            }
        }
        assertFalse(differing.isEmpty());
        assertEquals(
                differing,
                browser.list("#difference-table tbody tr").stream()
                        .map(r -> r.getDomAttribute("data-hazard"))
                        .toList());
    }

    private static void assertSorted(boolean ascending) {
        List<Integer> seconds = browser.list("#configuration-table tbody tr").stream()
                .map(r -> Integer.valueOf(r.getDomAttribute("data-seconds")))
                .toList();
        assertTrue(seconds.stream().distinct().count() > 1);
        for (int i = 1; i < seconds.size(); i++) {
            int before = seconds.get(i - 1);
            assertTrue(ascending ? before <= seconds.get(i) : before >= seconds.get(i), seconds.toString());
        }
    }

    private static JsonNode find(JsonNode comparison, String key) {
        for (JsonNode c : comparison.path("configurations")) {
            if (c.path("configuration").asText().equals(key)) {
                return c;
            }
        }
        throw new AssertionError("no " + key);
    }

    @ParameterizedTest
    @CsvSource({"light, 1280", "dark, 1280", "light, 320", "dark, 320"})
    void isAccessibleAndNeverWiderThanTheScreen(String scheme, int width) throws Exception {
        browser.prefer(scheme);
        browser.resize(width, 900);
        open(COUNTY + "&compare=down/none/3&compare=down/trailing/3");
        browser.await("compared", b -> "ready".equals(b.find("#comparison").getDomAttribute("data-status")));
        browser.run(
                "document.querySelectorAll('#route-plan details, #comparison details').forEach(d => { d.open = true; })");

        assertEquals(true, browser.run("return document.documentElement.scrollWidth <= window.innerWidth"));
        assertEquals(
                List.of(),
                browser.run(
                        "const right = n => n.getBoundingClientRect().right;"
                                + "return [...document.querySelectorAll('caption, #plan-options *')]"
                                + ".filter(n => right(n) > right(n.closest('.table-frame, details, .sheet')) + 1).map(n => n.outerHTML)"),
                "what is said is seen without scrolling");
        assertEquals(List.of(), browser.accessibilityViolations());
        assertEquals(List.of(), browser.errors());
    }

    /** The clerk: from opening the page to the statement on disk. */
    @Test
    void theClerkGetsAStatement() {
        open(VALLEY);
        browser.find("#statement-pdf").click();
        browser.await("the statement is made", b -> !b.list("#statement-link").isEmpty());
        WebElement link = browser.find("#statement-link");

        assertTrue(link.getDomAttribute("href").startsWith("blob:"), link.getDomAttribute("href"));
        assertTrue(link.getDomAttribute("download").startsWith("statement-"), link.getDomAttribute("download"));
        assertTrue(link.getDomAttribute("download").endsWith(".pdf"), link.getDomAttribute("download"));
        assertEquals(List.of(), browser.errors());
    }

    /** The driver, on a phone: the run sheet opens in a window of its own, and says when nobody may drive by it. */
    @ParameterizedTest
    @CsvSource({VALLEY + ", Way through", COUNTY + ", NOT FOR DRIVING"})
    void theDriverOpensARunSheet(String fragment, String headline) throws Exception {
        browser.resize(390, 800);
        open(fragment);
        browser.find("#runsheet-open").click();
        browser.await("the run sheet is made", b -> !b.list("#runsheet-link").isEmpty());

        String sheet = browser.textOfTheOtherWindow();
        JsonNode plan = ask("/api/plan", fragment.equals(VALLEY) ? "sorrel-valley" : "alder-county", "");
        assertTrue(sheet.contains(headline), sheet.substring(0, 300));
        // Who may drive needs every place on the way; who may not, every place that blocks it.
        int named = 0;
        for (JsonNode place : plan.path(fragment.equals(VALLEY) ? "steps" : "blocking")) {
            String name = place.has("passage")
                    ? place.at("/passage/name").asText()
                    : place.path("name").asText();
            assertTrue(sheet.contains(name), name);
            named += name.isEmpty() ? 0 : 1;
        }
        assertTrue(named > 3, named + " places");
        assertEquals(List.of(), browser.errors());
    }
}
