package org.cresthaul.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import org.openqa.selenium.WebElement;

/** The page with the sample open in a browser, and the report that it has to show. */
final class SamplePage implements AutoCloseable {
    private final SampleSite site;
    private final Browser browser;

    SamplePage(SampleSite site) throws IOException {
        this.site = site;
        browser = new Browser();
    }

    Browser browser() {
        return browser;
    }

    String route() {
        return site.route();
    }

    String rig() {
        return site.rig();
    }

    JsonNode report() {
        return site.report();
    }

    void open() throws IOException {
        browser.resize(1280, 900);
        browser.prefer("light");
        browser.open("about:blank");
        browser.requests();
        browser.errors();
        browser.open(site.url());
        browser.await(
                "the sample's report is shown",
                b -> b.find("#sheets").isDisplayed()
                        && !b.list("#hazard-table tbody tr").isEmpty());
        // The sheet then goes over to the configuration that the plan departs with, unless one was chosen.
        browser.await(
                "the sample's plan is shown",
                b -> "ready".equals(b.find("#route-plan").getDomAttribute("data-status")));
    }

    JsonNode hazard(String id) {
        for (JsonNode hazard : report().path("hazards")) {
            if (hazard.path("id").textValue().equals(id)) {
                return hazard;
            }
        }
        throw new AssertionError("the report has no hazard " + id);
    }

    JsonNode cell(String hazard, String configuration) {
        for (JsonNode cell : hazard(hazard).path("cells")) {
            if (cell.path("configuration").textValue().equals(configuration)) {
                return cell;
            }
        }
        throw new AssertionError("no cell " + configuration + " at " + hazard);
    }

    /** A hazard whose ground is judged, so that a truck can be seen to move over it. */
    String drawnHazard() {
        for (JsonNode hazard : report().path("hazards")) {
            if (hazard.at("/cells/0/ground").isObject()
                    && hazard.path("kind").textValue().equals("rail-crossing")) {
                return hazard.path("id").textValue();
            }
        }
        throw new AssertionError("the sample has no surveyed crossing");
    }

    /** The gap that governs a cell: the one with the least share of its need left; none when nothing is known. */
    static Double governingM(JsonNode cell) {
        Double least = null;
        double spare = Double.POSITIVE_INFINITY;
        for (String side : new String[] {"ground", "overhead", "corner"}) {
            JsonNode gap = cell.path(side);
            if (gap.isObject() && share(gap) < spare) {
                spare = share(gap);
                least = gap.path("valueM").doubleValue();
            }
        }
        return least;
    }

    private static double share(JsonNode gap) {
        double required = gap.path("requiredM").doubleValue();
        double here = (gap.path("valueM").doubleValue() - required) / Math.max(0.001, required);
        return gap.path("deciding").isObject() ? Math.min(here, share(gap.path("deciding"))) : here;
    }

    static Double number(WebElement element, String attribute) {
        String text = element.getDomAttribute(attribute);
        return text == null ? null : Double.valueOf(text);
    }

    Double shownM(String selector) {
        return number(browser.find(selector), "data-value-m");
    }

    String chosenConfiguration() {
        return browser.find("#route-verdict").getDomAttribute("data-configuration");
    }

    @Override
    public void close() throws IOException {
        browser.close();
    }
}
