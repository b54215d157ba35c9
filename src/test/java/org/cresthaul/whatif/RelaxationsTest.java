package org.cresthaul.whatif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.cresthaul.check.PlaceCheck;
import org.cresthaul.clearance.Clearance;
import org.cresthaul.clearance.GroundClearance;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.Plan.Relaxation;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoadCase;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Weights;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What would open a place: each proposal against trying it, or against sums by hand. */
class RelaxationsTest {
    private static final double LB = 0.45359237;
    private static final double INCH = 0.0254;
    private static final String KEY = "down/none/3";
    private static final String WIDE_LIMITS =
            "{\"name\":\"wide\",\"source\":\"x\",\"date\":\"2026-01-01\",\"gross\":\"300,000 lb\"}";
    /** Rig 10 mm and ride 15 mm; a survey of 1 mm adds less than 0.1 mm. */
    private static final double REQUIRED = 2 * INCH + Math.hypot(0.010, 0.015);

    private static Optional<Relaxation> of(String kind, List<Relaxation> all) {
        return all.stream().filter(r -> r.kind().word().equals(kind)).findFirst();
    }

    private static RoadCase hump(double height) {
        return RoadCase.of(
                RoadCase.road(RoadCase.crest("1 mm", s -> Math.max(0, height - 0.05 * Math.abs(s)))), RigTexts.RIG);
    }

    private static double worst(RoadCase c, double deckFrontM) {
        Setting setting = new Setting(LiftState.DOWN, BoosterState.NONE, deckFrontM, 0, 0);
        return setting.levelings().stream()
                .mapToDouble(l -> least(c, setting, l))
                .min()
                .orElseThrow();
    }

    private static double least(RoadCase c, Setting setting, Leveling leveling) {
        Clearance found = GroundClearance.least(
                c.stance(),
                setting,
                leveling,
                c.route().hazards().get(0).lines().get(0));
        assertTrue(found.proven());
        return found.valueM();
    }

    /**
     * A rig whose hydraulics reach 2 in, before a hump that asks for more: how much more the deck front would have to
     * go up, by trying each half millimeter.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.255, 0.265})
    void tellsByHowMuchTheRaiseIsBeyondTheLimit(double height) {
        String trailer = "/stances/0/trailer/";
        String weak = JsonEdit.edit(
                JsonEdit.edit(RigTexts.RIG, trailer + "hydraulicRaiseLimit", "\"2 in\""),
                trailer + "manualRaiseLimit",
                "\"0 in\"");
        RoadCase c =
                RoadCase.of(RoadCase.road(RoadCase.crest("1 mm", s -> Math.max(0, height - 0.05 * Math.abs(s)))), weak);
        double limit = 2 * INCH;
        double tried = limit;
        assertTrue(worst(c, tried) < REQUIRED, "the hydraulics do not reach it");
        while (worst(c, tried) < REQUIRED) {
            tried += 0.0005;
            assertTrue(tried < 24 * INCH);
        }
        Relaxation raise = of("raise", c.relaxations("H1", c.keeping(KEY))).orElseThrow();
        // The search asks for its own proof width more, which takes up to a few mm of raise.
        assertEquals(tried - limit, raise.amount(), 0.004);
        assertTrue(raise.amount() >= tried - limit - 0.0005);
        assertTrue(raise.enough());
        assertTrue(
                raise.text().toString().contains("beyond what the hydraulics reach"),
                raise.text().toString());
        assertEquals(KEY, raise.configuration());
    }

    /** A notch does what the same front raise does: the deck front must stand as high. */
    @Test
    void tellsTheNotchMore() {
        RoadCase c = hump(0.24);
        Relaxation notch = of("notch", c.relaxations("H1", c.keeping(KEY))).orElseThrow();
        double top = 0.75 * INCH;
        double below = notch.text().toString().contains("above notch 4, the top one") ? top : 0;
        assertTrue(worst(c, below + notch.amount()) >= REQUIRED, notch.toString());
        assertTrue(worst(c, below + notch.amount() - INCH / 4 - 0.004) < REQUIRED, "in quarters of an inch: " + notch);
        assertTrue(notch.enough());
    }

    @Test
    void noHeightIsEnoughForAWall() {
        RoadCase c = RoadCase.of(
                RoadCase.road(RoadCase.crest("1 mm", s -> Math.max(0, 2.0 - 0.1 * Math.abs(s)))), RigTexts.RIG);
        List<Relaxation> all = c.relaxations("H1", c.keeping(KEY));
        assertTrue(of("raise", all).isEmpty());
        assertTrue(of("notch", all).isEmpty());
    }

    /** Within the limits a raise is what to allow, if the planner avoids raising. */
    @Test
    void tellsToAllowTheRaiseThatIsAvoided() {
        RoadCase c = hump(0.24);
        PlanOptions avoiding = new PlanOptions(c.rig().times(), List.of(), KEY, true, List.of(), List.of());
        Relaxation raise = of("raise", c.relaxations("H1", avoiding)).orElseThrow();
        assertTrue(
                raise.text().toString().contains("within the limits"),
                raise.text().toString());
        assertTrue(worst(c, raise.amount()) >= REQUIRED);
        assertFalse(c.relaxations("H1", c.keeping(KEY)).stream()
                .anyMatch(r -> r.text().toString().contains("within the limits")));
    }

    /**
     * The load's top stands 4.1 m high at the reference notch: under 4.15 m not even the bottom notch, 1 1/4 in lower
     * at the deck front, leaves 3 in and the uncertainty. What a notch does is told by the check of a rig that has it.
     */
    @Test
    void tellsTheNotchBelowTheBottomOne() {
        String pipe = "\"hazard\": \"low-structure\", \"measured\": \"surveyed\", \"clearance\": \"4.15 m\","
                + " \"extent\": [\"0 m\", \"2 m\"], " + RoadCase.surveyed("2 mm", s -> 0);
        RoadCase c = RoadCase.of(RoadCase.road(pipe), RigTexts.RIG, new Margins(0.01, 3 * INCH));
        PlanOptions bottom = c.keeping("down/none/1");
        Optional<Relaxation> notch = of("notch", c.relaxations("H1", bottom));
        assertTrue(notch.isPresent(), c.report().hazards().get(0).cells().get(0).toString());
        assertTrue(
                notch.get().text().toString().contains("below notch 1, the bottom one"),
                notch.get().text().toString());
        double offset = -1.25 * INCH - notch.get().amount();
        assertEquals(Verdict.CLEAR, verdictAtNotch(c, offset));
        assertTrue(verdictAtNotch(c, offset + INCH / 4) != Verdict.CLEAR, "a quarter of an inch less is not enough");
    }

    private static Verdict verdictAtNotch(RoadCase c, double offsetM) {
        String rig = JsonEdit.edit(
                RigTexts.RIG,
                "/notches",
                "[{\"name\": \"low\", \"offset\": \"" + offsetM + " m\"}, {\"name\": \"ref\", \"offset\": \"0 m\"}]");
        RoadCase other = RoadCase.of(
                JsonEdit.edit(RoadCase.road("\"hazard\": \"crest\""), "/features/1", featureOf(c)), rig, c.margins());
        return other.report().hazards().get(0).cells().stream()
                .filter(x -> x.configuration().equals("down/none/low"))
                .findFirst()
                .orElseThrow()
                .verdict();
    }

    private static String featureOf(RoadCase c) {
        return "{\"type\": \"Feature\", \"geometry\": {\"type\": \"Point\", \"coordinates\": [-93.096, 44.6]},"
                + " \"properties\": {\"id\": \"H1\", \"name\": \"Place 1\", \"hazard\": \"low-structure\", \"measured\":"
                + " \"surveyed\", \"clearance\": \"4.15 m\", \"extent\": [\"0 m\", \"2 m\"], "
                + RoadCase.surveyed("2 mm", s -> 0) + "}}";
    }

    /**
     * 83,900 lb, known to 2 %, under a sign for 80,000 lb: (83,900 lb − x) · 1.02 = 80,000 lb, x = 5,468.6 lb = 2,480.5
     * kg, in steps of 50 kg 2,500 kg.
     */
    @Test
    void tellsTheLightestReduction() {
        RoadCase c = signed("80,000 lb");
        Relaxation lighter =
                of("lighter piece", c.relaxations("H1", c.keeping(KEY))).orElseThrow();
        assertEquals(2_500, lighter.amount());
        assertTrue(lighter.enough());
        assertTrue(
                lighter.text().toString().contains("\"wheel loader\" lighter by 2500 kg"),
                lighter.text().toString());
        assertEquals(Verdict.CLEAR, verdictLighterBy(c, 2_500));
        assertEquals(Verdict.TIGHT, verdictLighterBy(c, 2_450));
    }

    private static Verdict verdictLighterBy(RoadCase c, double lessKg) {
        Weights w = c.stance().weights().orElseThrow();
        Weights.Piece piece = w.pieces().get(0);
        Weights.Piece lighter =
                new Weights.Piece(piece.name(), piece.at().withMassKg(42_000 * LB - lessKg), piece.outline());
        return new PlaceCheck(new Haul(
                        c.route(), c.rig(), c.stance().withWeights(w.withPieces(List.of(lighter))), c.margins()))
                .inTransport("H1", KEY)
                .verdict();
    }

    private static RoadCase signed(String gross) {
        return RoadCase.of(
                JsonEdit.edit(RoadCase.road(RoadCase.bridge(gross)), "/limits", WIDE_LIMITS), WeightsTexts.RIG);
    }

    /** Without its load the rig weighs 41,900 lb: no piece is light enough for a sign of 40,000 lb. */
    @Test
    void noPieceIsLightEnoughForWhatTheRigAloneExceeds() {
        RoadCase c = signed("40,000 lb");
        List<Relaxation> all = c.relaxations("H1", c.keeping(KEY));
        assertTrue(of("lighter piece", all).isEmpty());
        assertTrue(of("load position", all).isEmpty(), "the gross weight does not depend on where it lies");
    }

    /**
     * Lever rule: between kingpin and group 13 m apart a piece moved back by d puts its weight times d / 13 m on the
     * group.
     */
    @Test
    void tellsWhereTheLoadWouldHaveToLie() {
        String steerLimit =
                "\"hazard\": \"posted-bridge\", \"limits\": {\"source\": \"sign\", \"date\": \"2026-10-01\","
                        // Two axles have a limit of their own: unlisted, two thirds of the three axles' would hold the
                        // drive group.
                        + " \"groups\": [{\"axles\": 2, \"weight\": \"60,000 lb\"}, {\"axles\": 3, \"weight\": \"%s lb\"}],"
                        + " \"axle\": \"30,000 lb\"}";
        RoadCase wide = RoadCase.of(
                JsonEdit.edit(RoadCase.road(steerLimit.formatted("150,000")), "/limits", WIDE_LIMITS),
                WeightsTexts.RIG);
        double group = wide.report().loads().states().get(0).sheet().groups().stream()
                .filter(g -> g.group().equals("trailer"))
                .findFirst()
                .orElseThrow()
                .loadKg();
        // Half a ton less than it carries now.
        double limit = group - 500;
        RoadCase c = RoadCase.of(
                JsonEdit.edit(RoadCase.road(steerLimit.formatted("" + Math.round(limit / LB))), "/limits", WIDE_LIMITS),
                WeightsTexts.RIG);
        Relaxation moved =
                of("load position", c.relaxations("H1", c.keeping(KEY))).orElseThrow();
        assertTrue(moved.enough());
        assertTrue(
                moved.text().toString().contains("farther forward"),
                moved.text().toString());
        double relieved = 42_000 * LB * moved.amount() / 13;
        assertTrue(relieved >= 500 + 0.02 * (group - relieved) - 5, relieved + " kg of the group's load");
    }

    @Test
    void unknownThingsAreToBeFoundOutAndNeverEnough() {
        RoadCase bare = RoadCase.of(RoadCase.road("\"hazard\": \"crest\""), RigTexts.RIG);
        List<Relaxation> survey = bare.relaxations("H1", bare.keeping(KEY));
        assertEquals(
                List.of("survey"), survey.stream().map(r -> r.kind().word()).toList());
        assertFalse(survey.get(0).enough());
        RoadCase unsigned = RoadCase.of(
                JsonEdit.edit(RoadCase.road("\"hazard\": \"posted-bridge\""), "/limits", WIDE_LIMITS),
                WeightsTexts.RIG);
        assertEquals(
                List.of("survey"),
                unsigned.relaxations("H1", unsigned.keeping(KEY)).stream()
                        .map(r -> r.kind().word())
                        .toList());
        RoadCase unweighed = RoadCase.of(
                JsonEdit.edit(RoadCase.road(RoadCase.bridge("80,000 lb")), "/limits", WIDE_LIMITS), RigTexts.RIG);
        List<Relaxation> weigh = unweighed.relaxations(Plan.WHOLE_ROUTE, unweighed.keeping(KEY));
        assertTrue(weigh.get(0).text().toString().contains("weigh the combination"), weigh.toString());
        assertFalse(weigh.get(0).enough());
    }

    /** 1 mm of spare needs a survey better than 200 mm: clear were it exact, contact as it is. */
    @Test
    void aCoarseSurveyIsToBeMadeAgain() {
        RoadCase c = RoadCase.of(RoadCase.road(RoadCase.crest("200 mm", s -> 0)), RigTexts.RIG);
        Relaxation survey = of("survey", c.relaxations("H1", c.keeping(KEY))).orElseThrow();
        assertTrue(
                survey.text().toString().contains("if the survey were exact"),
                survey.text().toString());
        assertFalse(survey.enough());
    }

    /** A tight place opens by accepting it; the plan with it accepted is the proof. */
    @Test
    void aTightPlaceAsksForASpotter() throws Exception {
        RoadCase c = RoadCase.sample();
        List<Relaxation> tight = c.relaxations("H13", PlanOptions.defaults());
        Relaxation spotter = of("spotter", tight).orElseThrow();
        assertTrue(spotter.enough());
        PlanOptions all =
                new PlanOptions(c.rig().times(), List.of(), spotter.configuration(), false, List.of("H13"), List.of());
        assertTrue(c.plan(all).blocking().stream().noneMatch(b -> b.hazard().equals("H13")));
        Relaxation escorts =
                of("escorts", c.relaxations("C1", PlanOptions.defaults())).orElseThrow();
        assertTrue(escorts.enough() && escorts.text().toString().contains("escorts"), escorts.toString());
        assertTrue(of("spotter", c.relaxations("C1", PlanOptions.defaults())).isEmpty());
    }

    /**
     * 12.5 kV, 20 ft over the road: 6.096 m where 4.1 m of load, 6 ft and some 0.4 m are wanted. How near one may come
     * is its owner's decision: nobody is told to accept it with a spotter.
     */
    @Test
    void aWireAsksForItsOwner() {
        RoadCase c = RoadCase.of(
                RoadCase.road("\"hazard\": \"overhead-wire\", \"measured\": \"declared\", \"carries\": \"power\","
                        + " \"voltage\": \"12.5 kV\", \"clearance\": \"20 ft\", \"extent\": [\"-1 m\", \"1 m\"]"),
                RigTexts.RIG);
        List<Relaxation> tight = c.relaxations("H1", PlanOptions.defaults());
        Relaxation owner = of("owner", tight).orElseThrow();
        assertTrue(of("spotter", tight).isEmpty());
        PlanOptions accepted =
                new PlanOptions(c.rig().times(), List.of(), owner.configuration(), false, List.of("H1"), List.of());
        assertTrue(
                c.plan(accepted).blocking().stream().noneMatch(b -> b.hazard().equals("H1")));
        assertTrue(
                c.plan(accepted).conditions().stream()
                        .anyMatch(k -> k.text().toString().contains("its owner")),
                c.plan(accepted).conditions().toString());
    }

    /** What blocks only a forbidden or kept configuration opens by another: the plan that may use it is the proof. */
    @Test
    void namesTheConfigurationAndTheBoosterThatAreInTheWay() throws Exception {
        RoadCase c = RoadCase.sample();
        PlanOptions keep = c.keeping("up/trailing/3");
        List<Relaxation> at = c.relaxations("C2", keep);
        Relaxation none = of("no booster", at).orElseThrow();
        assertTrue(none.enough());
        assertTrue(c.plan(c.keeping(none.configuration())).blocking().stream()
                .noneMatch(b -> b.hazard().equals("C2")));
        Relaxation other = of("configuration", c.relaxations("B01", keep)).orElseThrow();
        assertTrue(c.plan(c.keeping(other.configuration())).blocking().stream()
                .noneMatch(b -> b.hazard().equals("B01")));
    }
}
