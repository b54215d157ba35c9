package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.axleload.GaugeChart;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.LimitsFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.LiftAxle;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.view.LoadAnswer;
import org.cresthaul.view.LoadQuestion;
import org.cresthaul.view.LoadsView;
import org.junit.jupiter.api.Test;

/** Loads along a route: verdict, rule, margin and axles in every configuration, and what is not known stays unknown. */
class LoadVerdictTest {
    private static final double LB = 0.45359237;
    private static final double PSI = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

    private static Report check(String route, String rig) throws Exception {
        Rig parsed = RigFile.parse(rig);
        return RouteCheck.check(
                new Haul(RouteFile.parse(route), parsed, parsed.stances().get(0), Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));
    }

    private static ReportCell cell(Report report, String hazard, String configuration) {
        return report.hazards().stream()
                .filter(h -> h.id().equals(hazard))
                .flatMap(h -> h.cells().stream())
                .filter(c -> c.configuration().equals(configuration))
                .findFirst()
                .orElseThrow();
    }

    private static ConfigurationVerdict verdict(Report report, String configuration) {
        return report.configurations().stream()
                .filter(c -> c.key().equals(configuration))
                .findFirst()
                .orElseThrow();
    }

    private static String withGross(String pounds) {
        return JsonEdit.edit(
                LimitsTexts.ROUTE,
                "/features/0/properties/limits",
                "{\"source\":\"sign\",\"date\":\"2026-10-01\",\"gross\":\"" + pounds + " lb\"}");
    }

    /** The small rig's parts weigh 19,000 + 17,000 + 5,900 + 42,000 lb; the booster 5,000 lb more. */
    @Test
    void namesTheRuleTheMarginAndTheAxles() throws Exception {
        String wide = JsonEdit.edit(
                withGross("80,000"),
                "/limits",
                "{\"name\":\"wide\",\"source\":\"x\",\"date\":\"2026-01-01\",\"gross\":\"300,000 lb\"}");
        ReportCell cell = cell(check(wide, WeightsTexts.RIG), "B01", "down/none/3");

        assertEquals(Verdict.OUTSIDE_LIMITS, cell.verdict());
        assertEquals("gross weight", cell.load().rule().toString());
        assertEquals("sign", cell.load().source().toString());
        assertEquals("steer axle to trailer axle 3", cell.load().axles().toString());
        assertEquals(83_900 * LB, cell.load().loadKg(), 0.06);
        assertEquals(-3_900 * LB, cell.load().marginKg(), 0.11);
        assertTrue(
                cell.reasons().get(0).toString().startsWith("over: gross weight, steer axle to trailer axle 3 (sign)"),
                cell.reasons().toString());
        assertNull(cell.ground());
        assertNull(cell.overhead());
    }

    @Test
    void isTightWhenTheWeightsAreNotAccurateEnough() throws Exception {
        // 83,900 lb, 2 % accurate, may be 85,578 lb.
        assertEquals(Verdict.OUTSIDE_LIMITS, bridge("83,899"));
        assertEquals(Verdict.TIGHT, bridge("83,901"));
        assertEquals(Verdict.TIGHT, bridge("85,577"));
        assertEquals(Verdict.CLEAR, bridge("85,579"));
    }

    private static Verdict bridge(String pounds) throws Exception {
        String route = JsonEdit.edit(
                withGross(pounds),
                "/limits",
                "{\"name\":\"wide\",\"source\":\"x\",\"date\":\"2026-01-01\",\"gross\":\"300,000 lb\"}");
        return cell(check(route, WeightsTexts.RIG), "B01", "down/none/3").verdict();
    }

    @Test
    void withoutWeightsNothingIsWithinLimits() throws Exception {
        Report report = check(LimitsTexts.ROUTE, RigTexts.RIG);

        assertFalse(report.loads().known());
        for (ConfigurationVerdict c : report.configurations()) {
            assertEquals(Verdict.LOADS_NOT_KNOWN, c.loads());
            assertEquals(2, c.loadsNotKnown());
            assertEquals(Verdict.LOADS_NOT_KNOWN, cell(report, "B01", c.key()).verdict());
            assertEquals(Verdict.LOADS_NOT_KNOWN, cell(report, "S01", c.key()).verdict());
            assertFalse(c.verdict() == Verdict.CLEAR);
        }
        report.loads().states().forEach(s -> assertNull(s.sheet()));
        report.loads().advice().forEach(a -> assertEquals("unknown", a.text()));
    }

    @Test
    void withoutLimitsOrWeightsTheGapsAloneDecide() throws Exception {
        Report report = check(RouteTexts.ROUTE, RigTexts.RIG);

        assertFalse(report.loads().counts());
        report.configurations().forEach(c -> assertEquals(Verdict.LOADS_NOT_KNOWN, c.loads()));
        assertTrue(report.configurations().stream().noneMatch(c -> c.verdict() == Verdict.LOADS_NOT_KNOWN));
    }

    @Test
    void federalLimitsHoldWhereTheRouteGivesNone() throws Exception {
        Report report = check(RouteTexts.ROUTE, WeightsTexts.RIG);

        assertEquals("23 CFR 658.17", report.loads().limits().get(0).source());
        // 83,900 lb gross.
        assertEquals(Verdict.OUTSIDE_LIMITS, verdict(report, "down/none/3").loads());
        assertTrue(Verdict.CLEAR.orWorse(Verdict.OUTSIDE_LIMITS) == Verdict.OUTSIDE_LIMITS);
        assertTrue(List.of("outside limits", "contact")
                .contains(verdict(report, "down/none/3").verdict().word()));
    }

    @Test
    void limitsAskedForTakeThePlaceOfTheRoutes() throws Exception {
        Rig rig = RigFile.parse(WeightsTexts.RIG);
        Route route = RouteFile.parse(RouteTexts.ROUTE)
                .withLimits(
                        LimitsFile.parse(
                                "{\"cresthaul\":\"limits/1\",\"name\":\"n\",\"source\":\"s\",\"date\":\"2026-01-01\",\"gross\":\"100,000 lb\"}"));
        Report report = RouteCheck.check(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));

        assertEquals(Verdict.CLEAR, verdict(report, "down/none/3").loads());
        assertTrue(report.loads().counts());
    }

    @Test
    void aSignNobodyReadIsNotSurveyed() throws Exception {
        Report report =
                check(JsonEdit.edit(LimitsTexts.ROUTE, "/features/0/properties/limits", "absent"), WeightsTexts.RIG);

        assertEquals(Verdict.NOT_SURVEYED, cell(report, "B01", "down/none/3").verdict());
        assertTrue(report.loads().advice().stream()
                .filter(a -> a.places().contains("B01"))
                .allMatch(a -> a.text().equals("unknown")));
    }

    @Test
    void aTrailingBoosterWithoutItsRegulatorIsNotKnown() throws Exception {
        Report report =
                check(LimitsTexts.ROUTE, JsonEdit.edit(WeightsTexts.RIG, "/stances/0/weights/regulator", "absent"));

        assertEquals(
                Verdict.LOADS_NOT_KNOWN, cell(report, "B01", "down/trailing/3").verdict());
        assertFalse(cell(report, "B01", "down/none/3").verdict() == Verdict.LOADS_NOT_KNOWN);
    }

    @Test
    void anAxleThatWouldHaveToBeHeldDownIsFound() throws Exception {
        // A booster that presses with far more than the rear weighs takes the trailer off its axles.
        Rig rig = RigFile.parse(JsonEdit.edit(
                JsonEdit.edit(WeightsTexts.RIG.replace("42,000 lb", "1,000 lb"), "/stances/0/weights/gross", "absent"),
                "/stances/0/weights/regulator",
                "{\"least\": \"11 psi\", \"most\": \"100 psi\", \"set\": \"100 psi\"}"));
        Report report = RouteCheck.check(
                new Haul(RouteFile.parse(LimitsTexts.ROUTE), rig, rig.stances().get(0), Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));
        LoadReport.StateLoads state = report.loads().states().stream()
                .filter(s ->
                        s.booster().word().equals("trailing") && s.lift().word().equals("down"))
                .findFirst()
                .orElseThrow();

        assertEquals(Verdict.OUTSIDE_LIMITS, state.verdict());
        assertTrue(state.sheet().axles().stream().anyMatch(a -> a.group().equals("trailer") && a.loadKg() < 0));
        assertTrue(state.sheet().broken().stream()
                .anyMatch(f -> f.least() && f.axles().toString().startsWith("trailer axle")));
    }

    @Test
    void aRaiseThatThePowerTakeOffCannotGiveIsNone() throws Exception {
        String route = Files.readString(Path.of("sample-routes/alder-county.route.geojson"));
        String rig = Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"));
        Report strong = check(route, rig);
        Report report = check(route, JsonEdit.edit(rig, "/stances/0/weights/frontLift/takeOff", "\"300 psi\""));
        int without = 0;
        for (HazardFindings hazard : report.hazards()) {
            for (ReportCell cell : hazard.cells()) {
                assertTrue(cell.raise() == null || cell.raise().frontM() == 0, hazard.id());
                ReportCell before = cell(strong, hazard.id(), cell.configuration());
                if (before.raise() != null && before.raise().frontM() > 0) {
                    assertTrue(cell.raiseNote().contains("power take-off"), cell.raiseNote());
                    without++;
                }
            }
        }
        assertTrue(without > 0);
    }

    @Test
    void theSampleSaysWhereTwoAndThreeAxlesRun() throws Exception {
        Report report = check(
                Files.readString(Path.of("sample-routes/alder-county.route.geojson")),
                Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json")));
        Map<String, String> trailing = new java.util.TreeMap<>();
        report.loads().advice().stream()
                .filter(a -> a.booster().word().equals("trailing"))
                .forEach(
                        a -> trailing.put(a.places().isEmpty() ? "" : a.places().get(0), a.text()));

        assertEquals(
                Map.of(
                        "",
                        "2 or 3 axles down allowed",
                        "B01",
                        "3 axles down only",
                        "B02",
                        "2 or 3 axles down allowed",
                        "S01",
                        "3 axles down only"),
                trailing);
        assertEquals(Verdict.OUTSIDE_LIMITS, cell(report, "B02", "down/none/3").verdict());
        assertEquals(Verdict.CLEAR, cell(report, "B02", "down/trailing/3").verdict());
        assertTrue(report.loads().advice().stream()
                .filter(a -> a.text().equals("3 axles down only"))
                .allMatch(a -> a.reasons().stream().anyMatch(r -> r.toString().startsWith("2 axles: over: "))));
    }

    private static LoadsView ask(LoadQuestion question) throws Exception {
        Rig rig = RigFile.parse(Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json")));
        Route route = RouteFile.parse(Files.readString(Path.of("sample-routes/alder-county.route.geojson")));
        return LoadAnswer.of(route, rig, rig.stances().get(0), question);
    }

    private static LoadQuestion question(String configuration, OptionalDouble at, Map<AxleKind, Double> readings) {
        return new LoadQuestion(
                configuration, Optional.empty(), Optional.empty(), at, OptionalDouble.empty(), readings);
    }

    @Test
    void theWindowsEndsAreWhereALimitIsJustKept() throws Exception {
        LoadsView now = ask(question("up/trailing/3", OptionalDouble.empty(), Map.of()));
        LoadsView.Plot plot = now.regulator();
        assertNotNull(plot.allowed());
        assertTrue(plot.allowed().get(0) > plot.from(), "the window ends inside");
        // Where the chart reads too much by all of its accuracy: that load is just kept.
        GaugeChart chart =
                new GaugeChart(RigFile.parse(Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json")))
                        .stances()
                        .get(0)
                        .weights()
                        .orElseThrow()
                        .gauges()
                        .booster()
                        .orElseThrow());
        double endPa = chart.pressurePa(chart.loadKg(plot.allowed().get(0)).orElseThrow() * (1 - chart.accuracy()))
                .orElseThrow();
        assertTrue(endPa < plot.allowed().get(0) - 5e3, "the chart of the sample has an accuracy");
        for (double step : new double[] {-1e3, 1e3}) {
            LoadsView at = ask(new LoadQuestion(
                    "up/trailing/3",
                    Optional.empty(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.of(endPa + step),
                    Map.of()));
            assertEquals(step < 0, at.verdict() == Verdict.OUTSIDE_LIMITS, step + " Pa");
        }
    }

    @Test
    void aReadingTellsAMisDeclaredMachine() throws Exception {
        // 19,130 lb on each of three axles is declared. The chart runs straight from 40 psi and 11,900 lb to 75 psi and
        // 21,600 lb: 66 psi stands for 19,106 lb; from there to 100 psi and 28,700 lb: 80 psi stands for 23,020 lb.
        LoadsView right = ask(question("down/none/3", OptionalDouble.empty(), Map.of(AxleKind.TRAILER, 66 * PSI)));
        assertEquals(true, right.readings().get(0).agrees());
        LoadsView wrong = ask(question("down/none/3", OptionalDouble.empty(), Map.of(AxleKind.TRAILER, 80 * PSI)));
        LoadsView.ReadingView reading = wrong.readings().get(0);
        assertEquals(false, reading.agrees());
        assertTrue(reading.note().contains("heavier than declared"), reading.note());
        // The group gains 3 × 3,890 lb; the loader 27 ft behind the kingpin gives it 27 / 44.54 of its own weight.
        assertEquals(3 * (23_020 - 19_130) * 44.5417 / 27, reading.pieceOffKg() / LB, 60);
        LoadsView beyond = ask(question("down/none/3", OptionalDouble.empty(), Map.of(AxleKind.TRAILER, 150 * PSI)));
        assertNull(beyond.readings().get(0).agrees());
        assertTrue(beyond.readings().get(0).note().contains("beyond the chart"));
    }

    @Test
    void movingThePieceMovesTheLoad() throws Exception {
        LoadsView now = ask(question("down/none/3", OptionalDouble.empty(), Map.of()));
        LoadsView.Plot plot = now.position();
        LoadsView rear = ask(question("down/none/3", OptionalDouble.of(plot.to()), Map.of()));
        double gained = rear.sheet().groups().get(2).loadKg()
                - now.sheet().groups().get(2).loadKg();

        assertEquals(70_000 * LB * (plot.to() - plot.at()) / (44.5417 * 0.3048), gained, 1);
        assertThrows(
                UnknownNameException.class,
                () -> ask(question("down/none/3", OptionalDouble.of(plot.to() + 0.1), Map.of())));
    }

    @Test
    void saysWhatLeavesNoPlaceForTheLoad() throws Exception {
        LoadsView none = ask(question("up/none/3", OptionalDouble.empty(), Map.of()));

        assertNull(none.position().allowed());
        assertTrue(
                none.position().note().startsWith("nowhere: group of 2 axles (trailer axle 1 to trailer axle 2)"),
                none.position().note());
    }

    @Test
    void unknownNamesAreRefused() {
        for (LoadQuestion wrong : List.of(
                question("down/none/9", OptionalDouble.empty(), Map.of()),
                new LoadQuestion(
                        "down/none/3",
                        Optional.of("H99"),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Map.of()),
                new LoadQuestion(
                        "down/none/3",
                        Optional.of("H01"),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Map.of()),
                new LoadQuestion(
                        "down/none/3",
                        Optional.empty(),
                        Optional.of("crane"),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Map.of()))) {
            assertThrows(UnknownNameException.class, () -> ask(wrong));
        }
    }

    /** W12: common practice, no source: air left in the empty booster; a plate only under load, frames level. */
    @Test
    void theSamplesPlatesAreRightAndTheOthersAreToldToBeWrong() throws Exception {
        String route = Files.readString(Path.of("sample-routes/alder-county.route.geojson"));
        for (String[] stance : new String[][] {{"lowbed-loaded", "3/8 in plate"}, {"lowbed-empty", "no plate"}}) {
            Report report = check(route, Files.readString(Path.of("sample-routes/" + stance[0] + ".rig.json")));
            LoadReport.StateLoads trailing = report.loads().states().stream()
                    .filter(s -> s.booster().word().equals("trailing")
                            && s.lift().word().equals("down"))
                    .findFirst()
                    .orElseThrow();
            assertEquals(3, trailing.sheet().shims().size());
            for (LoadSheet.ShimLine shim : trailing.sheet().shims()) {
                assertEquals(shim.shim().equals(stance[1]), shim.fitted());
                assertEquals(shim.fitted(), shim.allowed(), shim.toString());
                assertEquals(shim.allowed(), shim.trouble() == null);
            }
            assertEquals(stance[1].equals("3/8 in plate"), shimOf(trailing).hasThickness());
            if (shimOf(trailing).hasThickness()) {
                assertEquals(0, trailing.sheet().shims().get(2).angleRad(), Math.toRadians(0.1));
            } else {
                assertEquals(14, trailing.sheet().regulator().setPa() / PSI, 1e-6);
                assertTrue(
                        trailing.sheet().axles().get(6).loadKg() > 3_000 * LB,
                        "the empty booster's tires stay on the road");
            }
        }
    }

    private static LoadSheet.ShimLine shimOf(LoadReport.StateLoads loads) {
        return loads.sheet().shims().stream()
                .filter(LoadSheet.ShimLine::fitted)
                .findFirst()
                .orElseThrow();
    }

    /** W10: common practice, no source: the sample's figures are its own, of the order the trade's are. */
    @Test
    void theSamplesNotchesAndLiftAxleAreOfTheTradesOrder() throws Exception {
        Rig empty = RigFile.parse(Files.readString(Path.of("sample-routes/lowbed-empty.rig.json")));
        assertEquals(7, empty.notches().size());
        for (int i = 1; i < 7; i++) {
            assertEquals(
                    0.625 * 0.0254,
                    empty.notches().get(i).offsetM()
                            - empty.notches().get(i - 1).offsetM(),
                    1e-9);
        }
        LiftAxles lifts = empty.stances().get(0).trailer().lift();
        assertEquals(1.5 * 0.0254, lifts.raised().get(0).secondaryRiseM(), 0.5 * 0.0254);
        LiftAxle lift = lifts.axles().get(0);
        assertTrue(lift.gapM() >= 3.5 * 0.0254 - 1e-9 && lift.gapM() <= 5 * 0.0254, "" + lift.gapM() / 0.0254);
    }
}
