package org.cresthaul.whatif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.RoadCase;
import org.cresthaul.plan.Robustness;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/** Margins when things are off, against what geometry, error propagation and the lever rule give. */
class RobustnessCheckTest {
    private static final double LB = 0.45359237;
    private static final double INCH = 0.0254;
    private static final String KEY = "down/none/3";
    /** Everything in a report is rounded to this. */
    private static final double STEP = 1.01e-4;

    private static final String PIPE = "\"hazard\": \"low-structure\", \"measured\": \"surveyed\","
            + " \"clearance\": \"4.9 m\", \"extent\": [\"0 m\", \"2 m\"],";
    private static final String WIDE_LIMITS =
            "{\"name\":\"wide\",\"source\":\"x\",\"date\":\"2026-01-01\",\"gross\":\"300,000 lb\"}";

    private static Robustness robustness(RoadCase c) {
        return c.plan(c.keeping(KEY)).robustness();
    }

    private static Robustness.Row row(Robustness r, String hazard, String kind) {
        return r.rows().stream()
                .filter(x -> x.hazard().equals(hazard) && x.kind().word().equals(kind))
                .findFirst()
                .orElseThrow();
    }

    /** On level ground the gap is the underside's height: a deck that rides lower loses just that. */
    @Test
    void onLevelGroundALowerRideCostsJustThat() {
        RoadCase c = RoadCase.of(RoadCase.road(RoadCase.crest("2 mm", s -> 0)), RigTexts.RIG);
        Robustness r = robustness(c);
        Robustness.Row row = row(r, "H1", "ground");
        // The rig declares 15 mm for its ride: once more that, being more than 1/2 in.
        assertEquals(0.015, r.assumed().get(1).amount());
        assertEquals(row.spare() - 0.015, row.left().get(1), STEP);
        assertNull(row.left().get(2), "the load is no underside");
        assertEquals(List.of(true, true, false, false), row.bears());
        assertEquals(List.of(), r.notKnown());
        assertNull(row.left().get(3), "without a raise weights bear on nothing here");
    }

    /** Error propagation: u² = other² + (survey · factor)², and the factor does not change with the accuracy. */
    @Test
    void aCoarserSurveyCostsWhatErrorPropagationGives() {
        RoadCase c = RoadCase.of(RoadCase.road(RoadCase.crest("10 mm", s -> 0)), RigTexts.RIG);
        GapFinding gap = c.report().hazards().get(0).cells().stream()
                .filter(x -> x.configuration().equals(KEY))
                .findFirst()
                .orElseThrow()
                .ground();
        double other = Math.hypot(0.010, 0.015);
        double survey = Math.sqrt(Math.pow(gap.uncertaintyM(), 2) - other * other);
        Robustness r = robustness(c);
        Robustness.Row row = row(r, "H1", "ground");
        assertEquals(
                row.spare() - (Math.hypot(other, 2 * survey) - Math.hypot(other, survey)),
                row.left().get(0),
                2 * STEP);
        assertEquals(Math.hypot(other, survey) - other, r.resurvey().gainM(), 2 * STEP);
        // Together: the lower ride, and the coarser survey.
        assertEquals(row.left().get(0) - 0.015, row.worst(), 2 * STEP);
    }

    /** Under a level soffit over a level road ride and load height count in full, and add up. */
    @Test
    void overheadRideAndLoadAddUp() {
        String route = RoadCase.road(PIPE + RoadCase.surveyed("2 mm", s -> 0));
        RoadCase c = RoadCase.of(route, RigTexts.RIG);
        Robustness.Row row = row(robustness(c), "H1", "overhead");
        assertEquals(row.spare() - 0.015, row.left().get(1), STEP);
        assertEquals(row.spare() - INCH, row.left().get(2), STEP);
        assertEquals(row.left().get(0) - 0.015 - INCH, row.worst(), 3 * STEP);
        assertNotNull(row(robustness(c), "H1", "ground"), "the road under it is judged as well");
    }

    /** The tractor, trailer, gooseneck and loader of the small rig weigh 83,900 lb; 2 % more is 85,578 lb. */
    @Test
    void heavierWeightsCostTheirShare() {
        String route = JsonEdit.edit(RoadCase.road(RoadCase.bridge("90,000 lb")), "/limits", WIDE_LIMITS);
        Robustness r = robustness(RoadCase.of(route, WeightsTexts.RIG));
        Robustness.Row row = row(r, "H1", "load");
        assertEquals((90_000 - 83_900) * LB, row.spare(), 0.2);
        assertEquals((90_000 - 85_578) * LB, row.left().get(3), 0.2);
        assertEquals(row.left().get(3), row.worst(), 0.2);
        assertTrue(row.left().subList(0, 3).stream().allMatch(Objects::isNull));
        assertEquals(Verdict.CLEAR, row.verdict());
    }

    /** The line found stays; the survey enters as √(survey² + tape²): 50 mm twice as coarse. */
    @Test
    void cornersDependOnTheirSurveyAlone() {
        String corner = "\"hazard\": \"corner\", \"survey\": {\"accuracy\": \"50 mm\", \"source\": \"tape\"},"
                + " \"template\": {\"turn\": \"left\", \"angle\": \"60 deg\", \"approach\": {\"own\": \"9 m\", \"opposing\":"
                + " \"4 m\"}, \"exit\": {\"own\": \"9 m\", \"opposing\": \"4 m\"}, \"curb\": {\"radius\": \"40 m\"}}";
        RoadCase c = RoadCase.of(bent(corner), RigTexts.RIG);
        Robustness.Row row = row(robustness(c), "H1", "corner");
        double costs = Math.hypot(0.100, 0.010) - Math.hypot(0.050, 0.010);
        // A farther search may find a better line, never count as a gain; it cannot cost more than that.
        assertTrue(
                row.left().get(0) >= row.spare() - costs - 2 * STEP
                        && row.left().get(0) <= row.spare(),
                row.toString());
        assertEquals(row.left().get(0), row.worst());
        assertEquals(Arrays.asList(null, null, null), row.left().subList(1, 4));
    }

    private static String bent(String corner) {
        return """
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Bend", "note": "Invented.", "features": [
                  {"type": "Feature", "properties": {"route": "Bend"}, "geometry": {"type": "LineString",
                   "coordinates": [[-93.1, 44.6], [-93.09, 44.6], [-93.0865, 44.6043]]}},
                  {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.09, 44.6]},
                   "properties": {"id": "H1", "name": "Bend", %s}}]}
                """.formatted(corner);
    }

    /** A coarse survey of level ground among fine ones: the weakest point, and the one to survey anew. */
    @Test
    void namesTheWeakestPointAndTheReSurvey() {
        RoadCase c = RoadCase.of(
                RoadCase.road(
                        RoadCase.crest("2 mm", s -> 0),
                        RoadCase.crest("40 mm", s -> 0),
                        RoadCase.crest("2 mm", s -> 0)),
                RigTexts.RIG);
        Robustness r = robustness(c);
        assertEquals("H2", r.weakest().hazard());
        assertEquals("H2", r.resurvey().hazard());
        assertEquals(row(r, "H2", "ground").worst(), r.weakest().worst());
        assertTrue(
                r.weakest().text().startsWith("Place 2, over the ground"),
                r.weakest().text());
    }

    /** A place that is passed raised is judged at that raise again, not in transport, and not at a new raise. */
    @Test
    void aRaisedPassageIsJudgedAtThePlansRaise() {
        RoadCase c = RoadCase.of(
                RoadCase.road(RoadCase.crest("1 mm", s -> Math.max(0, 0.24 - 0.05 * Math.abs(s)))), RigTexts.RIG);
        Plan plan = c.plan(c.keeping(KEY));
        Plan.HazardPassage passage = plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(Objects::nonNull)
                .findFirst()
                .orElseThrow();
        assertNotNull(passage.raise());
        Robustness.Row row = row(plan.robustness(), "H1", "ground");
        assertEquals(passage.spare().left(), row.spare());
        assertTrue(row.spare() >= 0 && row.spare() < 0.005, "the least raise leaves hardly anything: " + row);
        assertEquals(row.spare() - 0.015, row.left().get(1), 3 * STEP);
        assertEquals(Verdict.TIGHT, row.verdict());
    }

    /** Where nothing was surveyed there is no number, and no survey that would free more. */
    @Test
    void nothingSurveyedHasNoRow() {
        RoadCase c = RoadCase.of(RoadCase.road("\"hazard\": \"crest\""), RigTexts.RIG);
        Robustness r = robustness(c);
        assertEquals(List.of(), r.rows());
        assertNull(r.weakest());
        assertNull(r.resurvey());
    }

    @Test
    void everyAssumptionAloneCostsNoMoreThanAllTogether() throws Exception {
        RoadCase c = RoadCase.sample();
        Robustness r = robustness(c);
        assertTrue(r.rows().size() > 15, "" + r.rows().size());
        for (Robustness.Row row : r.rows()) {
            for (Double left : row.left()) {
                assertTrue(left == null || left <= row.spare() + STEP, row.toString());
                assertTrue(left == null || row.worst() <= left + 2 * STEP, row.toString());
            }
            assertTrue(row.worst() <= row.spare() + STEP, row.toString());
        }
    }
}
