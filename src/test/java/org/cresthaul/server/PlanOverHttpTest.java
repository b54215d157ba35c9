package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Plans over HTTP: answered as described, refused with the place of the mistake. */
class PlanOverHttpTest {
    private static TestServer server;

    @BeforeAll
    static void start() {
        server = new TestServer(TestServer.small());
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    private static JsonNode plan(String route, String more) throws Exception {
        HttpResponse<String> response = server.post("/api/plan", Requests.check(route, RigTexts.RIG, more));
        assertEquals(200, response.statusCode(), response.body());
        JsonNode plan = TestServer.json(response);
        OpenApi.requireValid("Plan", plan);
        return plan;
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "a plan that is a text     | \"cheap\"                          | /plan                 | wrong-type",
                "an unknown option         | {\"hurry\": true}                  | /plan/hurry           | unknown-key",
                "an unknown time           | {\"times\": {\"lunch\": \"1 h\"}}    | /plan/times/lunch     | unknown-key",
                "a bare time               | {\"times\": {\"notch\": 15}}       | /plan/times/notch     | unit-missing",
                "a time of a week          | {\"times\": {\"notch\": \"168 h\"}}  | /plan/times/notch     | out-of-range",
                "a crawl in knots          | {\"times\": {\"crawl\": \"3 kn\"}}   | /plan/times/crawl     | unit-unknown",
                "an unknown configuration  | {\"forbid\": [\"up/none/1\", \"x\"]} | /plan/forbid/1        | unknown-name",
                "a number for a name       | {\"forbid\": [7]}                  | /plan/forbid/0        | wrong-type",
                "a name for a list         | {\"forbid\": \"up/none/1\"}        | /plan/forbid          | wrong-type",
                "keeping what there is not | {\"fix\": \"up/none/9\"}           | /plan/fix             | unknown-name",
                "a word for yes            | {\"avoidRaising\": \"yes\"}        | /plan/avoidRaising    | wrong-type",
                "accepting nowhere         | {\"acceptTight\": [\"H99\"]}       | /plan/acceptTight/0   | unknown-name",
                "accepting the unsurveyed  | {\"acceptTight\": [\"H04\"]}       | /plan/acceptTight/0   | not-tight",
                "setting nothing aside     | {\"setAside\": [\"H01\", \"P01\"]}   | /plan/setAside/1      | unknown-name"
            })
    void tellsTheMistakeAndWhereItIs(String what, String options, String pointer, String code) throws Exception {
        HttpResponse<String> response = server.post("/api/plan", Requests.check(",\"plan\":" + options));
        JsonNode problem = TestServer.json(response).at("/problems/0");

        assertEquals(422, response.statusCode(), response.body());
        assertEquals(pointer, problem.path("pointer").textValue(), response.body());
        assertEquals(code, problem.path("code").textValue(), response.body());
    }

    @Test
    void whatNobodySurveyedBlocksUntilItIsSetAside() throws Exception {
        JsonNode plan = plan(RouteTexts.ROUTE, "");
        assertEquals("no way through", plan.path("outcome").textValue());
        assertTrue(plan.path("stopsAtBlocks").booleanValue());
        assertTrue(
                plan.path("blocking").findValuesAsText("hazard").contains("H04"),
                plan.path("blocking").toString());

        String ids = String.join("\",\"", plan.path("blocking").findValuesAsText("hazard"));
        JsonNode opened = plan(RouteTexts.ROUTE, ",\"plan\":{\"setAside\":[\"" + ids + "\"]}");
        assertEquals("way through under conditions", opened.path("outcome").textValue());
        assertEquals(plan.path("seconds"), opened.path("seconds"), "the same way");
    }

    @Test
    void timesOfTheRequestStandBeforeThoseOfTheRigAndThoseBeforeTheDefaults() throws Exception {
        String rig = JsonEdit.edit(RigTexts.RIG, "/times", "{\"notch\": \"20 min\", \"shim\": \"5 min\"}");
        HttpResponse<String> response = server.post(
                "/api/plan",
                Requests.check(
                        RouteTexts.ROUTE, rig, ",\"plan\":{\"times\":{\"notch\":\"90 s\",\"crawl\":\"1 m/s\"}}"));
        JsonNode times = TestServer.json(response).at("/options/times");

        assertEquals(90, times.path("notch").longValue());
        assertEquals(300, times.path("shim").longValue());
        assertEquals(180, times.path("liftAxle").longValue());
        assertEquals(1.0, times.path("crawlMps").doubleValue());
    }

    @Test
    void aRouteWithoutHazardsIsNowhereCalledClear() throws Exception {
        String route =
                "{\"type\": \"FeatureCollection\", \"cresthaul\": \"route/1\", \"name\": \"Bare\", \"features\": ["
                        + "{\"type\": \"Feature\", \"properties\": {\"route\": \"Only leg\"}, \"geometry\": {\"type\":"
                        + " \"LineString\", \"coordinates\": [[-93.1, 44.6], [-93.09, 44.6]]}}]}";

        assertEquals("nothing judged", plan(route, "").path("outcome").textValue());
        JsonNode report = TestServer.json(server.post("/api/check", Requests.check(route, RigTexts.RIG, "")));
        assertTrue(report.path("configurations").size() > 0);
        report.path("configurations")
                .forEach(c -> assertEquals("not surveyed", c.path("verdict").textValue()));
    }
}
