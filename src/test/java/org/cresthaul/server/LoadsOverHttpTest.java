package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.route.RouteTexts;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Loads over HTTP: answered as described, refused with the place of the mistake. */
class LoadsOverHttpTest {
    private static TestServer server;

    @BeforeAll
    static void start() {
        server = new TestServer(TestServer.small());
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    private static HttpResponse<String> loads(String route, String rig, String more) throws Exception {
        return server.post("/api/loads", Requests.check(route, rig, more));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "no configuration        | ,'x':1                                                        | /configuration | missing",
                "an unknown one          | ,'configuration':'down/none/9'                                 | /configuration | unknown-name",
                "an unknown place        | ,'configuration':'down/none/3','hazard':'H99'                  | /hazard        | unknown-name",
                "a place judged by gaps  | ,'configuration':'down/none/3','hazard':'H01'                  | /hazard        | unknown-name",
                "an unknown piece        | ,'configuration':'down/none/3','piece':'crane'                 | /piece         | unknown-name",
                "a piece off the deck    | ,'configuration':'down/none/3','pieceAt':'30 m'                | /pieceAt       | out-of-range",
                "a place without unit    | ,'configuration':'down/none/3','pieceAt':'3'                   | /pieceAt       | unit-missing",
                "a pressure in feet      | ,'configuration':'down/none/3','regulator':'3 ft'              | /regulator     | unit-unknown",
                "a gauge nobody has      | ,'configuration':'down/none/3','readings':{'steer':'62 psi'}   | /readings/steer| unknown-key",
                "limits of nothing       | ,'configuration':'down/none/3','limits':{'cresthaul':'limits/1','name':'n','source':'s','date':'2026-01-01'} | /limits | no-limit"
            })
    void tellsTheMistakeAndWhereItIs(String what, String more, String pointer, String code) throws Exception {
        HttpResponse<String> response = loads(LimitsTexts.ROUTE, WeightsTexts.RIG, more.replace('\'', '"'));
        JsonNode problem = TestServer.json(response).at("/problems/0");

        assertEquals(422, response.statusCode(), response.body());
        assertEquals(pointer, problem.path("pointer").textValue(), response.body());
        assertEquals(code, problem.path("code").textValue(), response.body());
    }

    @Test
    void answersAsDescribedEvenWhenNothingIsKnown() throws Exception {
        JsonNode answer = TestServer.json(loads(LimitsTexts.ROUTE, RigTexts.RIG, ",\"configuration\":\"down/none/3\""));

        OpenApi.requireValid("Loads", answer);
        assertEquals("loads not known", answer.path("verdict").textValue());
        assertTrue(answer.path("sheet").isNull() && answer.path("position").isNull());
        assertTrue(answer.path("units").size() >= 2);
    }

    @Test
    void holdsAgainstAPlacesLimitsAndReadings() throws Exception {
        JsonNode answer = TestServer.json(loads(
                LimitsTexts.ROUTE,
                WeightsTexts.RIG,
                ",\"configuration\":\"down/trailing/3\""
                        + ",\"hazard\":\"S01\",\"readings\":{\"trailer\":\"62 psi\",\"booster\":\"35 psi\"}"));

        OpenApi.requireValid("Loads", answer);
        assertEquals("S01", answer.path("hazard").textValue());
        assertEquals(2, answer.path("readings").size());
        assertTrue(answer.at("/readings/1/agrees").booleanValue(), "the booster carries what its regulator sets");
    }

    @Test
    void limitsOfTheRequestTakeThePlaceOfTheRoutes() throws Exception {
        String more =
                ",\"limits\":{\"cresthaul\":\"limits/1\",\"name\":\"wide\",\"source\":\"s\",\"date\":\"2026-01-01\","
                        + "\"gross\":\"300,000 lb\"}";
        JsonNode without =
                TestServer.json(server.post("/api/check", Requests.check(RouteTexts.ROUTE, WeightsTexts.RIG, "")));
        JsonNode with =
                TestServer.json(server.post("/api/check", Requests.check(RouteTexts.ROUTE, WeightsTexts.RIG, more)));

        OpenApi.requireValid("Report", with);
        assertEquals("23 CFR 658.17", without.at("/loads/limits/0/source").textValue());
        assertEquals("outside limits", without.at("/configurations/0/loads").textValue());
        assertEquals("wide", with.at("/loads/limits/0/name").textValue());
        assertEquals("clear", with.at("/configurations/0/loads").textValue());
    }

    @Test
    void theReportOfARouteWithPlacesIsAsDescribed() throws Exception {
        JsonNode report =
                TestServer.json(server.post("/api/check", Requests.check(LimitsTexts.ROUTE, WeightsTexts.RIG, "")));

        OpenApi.requireValid("Report", report);
        assertEquals(3, report.at("/loads/limits").size());
    }

    @Test
    void aPlaceJudgedByLoadsHasNoPassage() throws Exception {
        HttpResponse<String> response = server.post(
                "/api/passage",
                Requests.check(
                        LimitsTexts.ROUTE, WeightsTexts.RIG, ",\"hazard\":\"B01\",\"configuration\":\"down/none/3\""));

        assertEquals(422, response.statusCode());
        assertEquals(
                "/hazard", TestServer.json(response).at("/problems/0/pointer").textValue());
    }
}
