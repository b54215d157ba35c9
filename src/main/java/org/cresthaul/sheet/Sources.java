package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.cresthaul.axleload.LoadGroup;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Letters;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.NamesOfPlan;
import org.cresthaul.plan.Plan;
import org.cresthaul.posture.StandingHeight;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Setting;
import org.cresthaul.route.Route;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;

/**
 * A plan and the report it was made from as they are written, and where in them things stand: a paper's figures are
 * theirs.
 */
final class Sources {
    private final Plan plan;
    private final Report report;
    /** As they were checked: what is set goes into an engine. */
    private final List<ConfigurationVerdict> configurations;

    private final UnitSystem units;
    private final Catalog catalog;
    private final Route route;
    private final LevelStance stance;
    private final Equipment equipment;
    private final Map<String, String> letters = new LinkedHashMap<>();
    private final List<Plan.SetUp> setUps = new ArrayList<>();

    Sources(Plan plan, Report report, Route route, LevelStance stance, UnitSystem units, Catalog catalog) {
        this.catalog = catalog;
        this.plan = RoundedRecords.of(plan);
        this.report = RoundedRecords.of(report);
        configurations = report.configurations();
        this.route = route;
        this.stance = stance;
        equipment = new Equipment(stance);
        this.units = units;
        for (Plan.Step step : plan.steps()) {
            use(step.set());
            use(step.change() == null ? null : step.change().to());
        }
    }

    private void use(Plan.SetUp set) {
        if (set != null && letters.putIfAbsent(set.configuration(), Letters.of(letters.size())) == null) {
            setUps.add(set);
        }
    }

    Plan plan() {
        return plan;
    }

    Report report() {
        return report;
    }

    Route route() {
        return route;
    }

    /** What is set in one of the plan's configurations, raised so far. */
    Setting setting(Plan.SetUp set, double frontM, double rearM) {
        double offsetM = configurations.stream()
                .filter(c -> c.key().equals(set.configuration()))
                .findFirst()
                .orElseThrow()
                .notchOffsetM();
        return new Setting(set.lift(), set.booster(), offsetM, frontM, rearM);
    }

    /** The whole combination above level ground, meters. */
    double heightM(Plan.SetUp set, double frontM, double rearM) {
        return StandingHeight.meters(stance, setting(set, frontM, rearM));
    }

    /** What stands on its deck above level ground, meters. */
    double loadHeightM(Plan.SetUp set, double frontM, double rearM) {
        return StandingHeight.ofLoadMeters(stance, setting(set, frontM, rearM));
    }

    /** Every place that the plan passes raised in a set-up. */
    Stream<Plan.HazardPassage> raised(Plan.SetUp set) {
        return plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(p -> p != null && p.raise() != null && p.set().equals(set));
    }

    /** How far up the front may be as a place is passed: the end of its band, or as the plan has it. */
    double mostFrontM(Plan.HazardPassage p) {
        return p.raise() == null
                ? 0
                : plan.steps().stream()
                        .map(Plan.Step::lift)
                        .filter(l ->
                                l != null && l.band() != null && l.hazards().contains(p.hazard()))
                        .mapToDouble(l -> l.band().toM())
                        .max()
                        .orElse(p.raise().frontM());
    }

    Equipment equipment() {
        return equipment;
    }

    UnitSystem units() {
        return units;
    }

    Catalog catalog() {
        return catalog;
    }

    Say say() {
        return new Say(units, catalog);
    }

    Say say(String words) {
        return say().words(words);
    }

    Say say(Code code) {
        return say().and(code);
    }

    /** In the sheet's language. */
    List<String> said(List<Sentence> sentences) {
        return sentences.stream().map(s -> s.in(catalog)).toList();
    }

    /** A condition to be ticked off. */
    SheetLine resolved(Plan.Condition condition) {
        return say(Code.RESOLVED).with("condition", condition.told()).toDo();
    }

    /** What is only to be read. */
    SheetLine plain(Code code) {
        return say(code).plain();
    }

    SheetLine toDo(Code code) {
        return say(code).toDo();
    }

    /** Something to be done that the trade does so. */
    SheetLine practice(Code code) {
        return toDo(code).from(SheetLine.PRACTICE);
    }

    /** Something a rule asks for, to be read. */
    SheetLine rule(Code code, Sentence source) {
        return plain(code).from(source);
    }

    /** Something a rule asks for, to be done. */
    SheetLine required(Code code, Sentence source) {
        return toDo(code).from(source);
    }

    /** "S01 Valley road on peat", or the limits of the whole route by their name. */
    static Sentence placeOf(Plan.HazardPassage p) {
        return p.hazard().equals(Plan.WHOLE_ROUTE)
                ? Sentence.of(Code.WHOLE_ROUTE_LIMITS)
                : NamesOfPlan.place(p.hazard(), p.name());
    }

    /** What it is called on a sheet: as its file has it, but for the limits of the whole route. */
    String nameOf(Plan.HazardPassage p) {
        return p.hazard().equals(Plan.WHOLE_ROUTE) ? catalog.text(Code.WHOLE_ROUTE_LIMITS) : p.name();
    }

    /** Every configuration the plan uses, in the order of use. */
    List<Plan.SetUp> setUps() {
        return setUps;
    }

    /** "Set-up A" */
    String letterOf(Plan.SetUp set) {
        return letters.get(set.configuration());
    }

    /** "set-up A (3 axles · no booster · notch 4)" */
    Sentence named(Plan.SetUp set) {
        return Sentence.of(Code.SET_UP_NAMED).with("letter", letterOf(set)).with("label", NamesOfPlan.setUp(set));
    }

    /** A pointer to a set-up's own entry: the first step that holds it. */
    String pointer(Plan.SetUp set) {
        for (int i = 0; i < plan.steps().size(); i++) {
            Plan.Step step = plan.steps().get(i);
            if (step.set() != null && step.set().equals(set)) {
                return "plan:/steps/" + i + "/set";
            }
            if (step.change() != null && step.change().to().equals(set)) {
                return "plan:/steps/" + i + "/change/to";
            }
        }
        throw new IllegalArgumentException("the plan does not use " + set.configuration());
    }

    /** A hazard of the report with its index; empty for the limits of the whole route. */
    Optional<Found> hazard(String id) {
        return IntStream.range(0, report.hazards().size())
                .filter(i -> report.hazards().get(i).id().equals(id))
                .mapToObj(i -> new Found(report.hazards().get(i), "report:/hazards/" + i))
                .findFirst();
    }

    record Found(HazardFindings hazard, String pointer) {
        Cell cell(Plan.SetUp set) {
            int i = IntStream.range(0, hazard.cells().size())
                    .filter(k -> hazard.cells().get(k).configuration().equals(set.configuration()))
                    .findFirst()
                    .orElseThrow();
            return new Cell(hazard.cells().get(i), pointer + "/cells/" + i);
        }
    }

    record Cell(ReportCell cell, String pointer) {}

    /** The loads of a set-up's state of booster and lift axle; empty when they are not known. */
    Optional<Loads> loads(Plan.SetUp set) {
        List<LoadReport.StateLoads> states = report.loads().states();
        return IntStream.range(0, states.size())
                .filter(i -> states.get(i).lift().equals(set.lift())
                        && states.get(i).booster().equals(set.booster())
                        && states.get(i).sheet() != null)
                .mapToObj(i -> new Loads(states.get(i).sheet(), "report:/loads/states/" + i + "/sheet"))
                .findFirst();
    }

    record Loads(LoadSheet sheet, String pointer) {}

    /** What a set-up weighs. */
    SheetLine gross(Plan.SetUp set) {
        Optional<Loads> loads = loads(set);
        return loads.isEmpty()
                ? plain(Code.SET_GROSS_UNKNOWN)
                : say(Code.SET_GROSS)
                        .at("gross")
                        .weight(loads.get().sheet().grossKg(), loads.get().pointer() + "/grossKg")
                        .plain();
    }

    /** What the gauges should read in a set-up. */
    List<SheetLine> gauges(Plan.SetUp set) {
        Optional<Loads> loads = loads(set);
        if (loads.isEmpty()) {
            return List.of(plain(Code.GAUGES_UNKNOWN));
        }
        List<SheetLine> lines = new ArrayList<>();
        List<LoadSheet.GaugeLine> gauges = loads.get().sheet().gauges();
        for (int i = 0; i < gauges.size(); i++) {
            LoadSheet.GaugeLine gauge = gauges.get(i);
            String at = loads.get().pointer() + "/gauges/" + i;
            Sentence name = gaugeName(gauge.gauge());
            lines.add(
                    gauge.pressurePa() == null
                            ? say(Code.GAUGE_NO_READING)
                                    .with("gauge", name)
                                    .with("note", gauge.note())
                                    .plain()
                            : say(Code.GAUGE_READS)
                                    .with("gauge", name)
                                    .at("pressure")
                                    .pressure(gauge.pressurePa(), at + "/pressurePa")
                                    .at("load")
                                    .weight(gauge.loadKg(), at + "/loadKg")
                                    .plain());
        }
        return lines.isEmpty() ? List.of(plain(Code.GAUGE_NO_CHARTS)) : lines;
    }

    private static Sentence gaugeName(LoadGroup of) {
        if (of.number() > 1) {
            return Sentence.of(Code.GAUGE_OF).with("unit", Names.of(of.word()));
        }
        return Sentence.of(of.kind() == AxleKind.BOOSTER ? Code.GAUGE_BOOSTER : Code.GAUGE_TRAILER);
    }

    static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
