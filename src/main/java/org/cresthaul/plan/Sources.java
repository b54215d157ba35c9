package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.cresthaul.check.LoadReport;
import org.cresthaul.check.LoadSheet;
import org.cresthaul.check.Report;
import org.cresthaul.posture.StandingHeight;
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
    private final List<Report.ConfigurationVerdict> configurations;

    private final UnitSystem units;
    private final Route route;
    private final LevelStance stance;
    private final Equipment equipment;
    private final Map<String, String> letters = new LinkedHashMap<>();
    private final List<Plan.SetUp> setUps = new ArrayList<>();

    Sources(Plan plan, Report report, Route route, LevelStance stance, UnitSystem units) {
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
        if (set != null && letters.putIfAbsent(set.configuration(), letter(letters.size())) == null) {
            setUps.add(set);
        }
    }

    private static String letter(int index) {
        return index < 26 ? String.valueOf((char) ('A' + index)) : "A" + index;
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
    Stream<Plan.Passage> raised(Plan.SetUp set) {
        return plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(p -> p != null && p.raise() != null && p.set().equals(set));
    }

    /** How far up the front may be as a place is passed: the end of its band, or as the plan has it. */
    double mostFrontM(Plan.Passage p) {
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

    Say say() {
        return new Say(units);
    }

    Say say(String words) {
        return new Say(units).words(words);
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
    String named(Plan.SetUp set) {
        return "set-up " + letterOf(set) + " (" + set.label() + ")";
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

    record Found(Report.HazardFindings hazard, String pointer) {
        Cell cell(Plan.SetUp set) {
            int i = IntStream.range(0, hazard.cells().size())
                    .filter(k -> hazard.cells().get(k).configuration().equals(set.configuration()))
                    .findFirst()
                    .orElseThrow();
            return new Cell(hazard.cells().get(i), pointer + "/cells/" + i);
        }
    }

    record Cell(Report.Cell cell, String pointer) {}

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

    /** What the gauges should read in a set-up. */
    List<SheetLine> gauges(Plan.SetUp set) {
        Optional<Loads> loads = loads(set);
        if (loads.isEmpty()) {
            return List.of(SheetLine.plain("Gauge readings are unknown: the rig's weights are not declared."));
        }
        List<SheetLine> lines = new ArrayList<>();
        List<LoadSheet.GaugeLine> gauges = loads.get().sheet().gauges();
        for (int i = 0; i < gauges.size(); i++) {
            LoadSheet.GaugeLine gauge = gauges.get(i);
            String at = loads.get().pointer() + "/gauges/" + i;
            Say say = say(capital(gauge.gauge()) + " gauge: ");
            if (gauge.pressurePa() == null) {
                lines.add(
                        say.words("no reading to expect, " + gauge.note() + ".").plain());
            } else {
                lines.add(say.words("about ")
                        .pressure(gauge.pressurePa(), at + "/pressurePa")
                        .words(", ")
                        .weight(gauge.loadKg(), at + "/loadKg")
                        .words(" on each axle.")
                        .plain());
            }
        }
        return lines.isEmpty()
                ? List.of(SheetLine.plain("The rig file has no gauge charts: no reading to expect."))
                : lines;
    }

    static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
