package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.cresthaul.axleload.AxleLoads;
import org.cresthaul.axleload.BoosterBeam;
import org.cresthaul.axleload.GaugeChart;
import org.cresthaul.axleload.Hydraulics;
import org.cresthaul.axleload.LoadBound;
import org.cresthaul.axleload.LoadGroup;
import org.cresthaul.axleload.LoadTest;
import org.cresthaul.axleload.LoadWindow;
import org.cresthaul.axleload.RatingBounds;
import org.cresthaul.axleload.Statics;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.Weights;

/** Makes the load sheet of a known case under sets of limits. */
public final class LoadSheets {
    /** The grade at which the shift of load is told: steep for a road a loaded lowbed takes. This program's choice. */
    static final double GRADE_SHOWN = 0.06;

    private LoadSheets() {}

    public static LoadSheet of(LoadCase loadCase, LoadJudge judge, List<WeightLimits> sets) {
        Statics statics = loadCase.statics();
        Weights weights = loadCase.weights().orElseThrow();
        AxleLoads loads = judge.loads();
        List<LoadTest> tests = judge.tests(sets);
        return new LoadSheet(
                axles(statics, loads),
                groups(judge, loads, tests),
                loads.grossKg(),
                loads.kingpinKg(),
                fifthWheels(loads),
                statics.deckFrontKg(loads),
                GRADE_SHOWN,
                gauges(loadCase, loads),
                regulator(loadCase, judge, sets),
                shims(loadCase, weights),
                lift(weights, statics.deckFrontKg(loads)),
                judge.governing(tests),
                judge.broken(tests));
    }

    private static List<LoadSheet.AxleLine> axles(Statics statics, AxleLoads loads) {
        AxleLoads uphill = statics.onGrade(GRADE_SHOWN);
        AxleLoads downhill = statics.onGrade(-GRADE_SHOWN);
        List<LoadSheet.AxleLine> lines = new ArrayList<>();
        for (int i = 0; i < loads.axles().size(); i++) {
            AxleLoads.AxleLoad axle = loads.axles().get(i);
            OptionalDouble right = axle.rightKg();
            lines.add(new LoadSheet.AxleLine(
                    axle.place().label().toString(),
                    axle.place().group().word(),
                    axle.place().kind(),
                    axle.place().xM(),
                    axle.loadKg(),
                    right.isPresent() ? right.getAsDouble() : null,
                    uphill.axles().get(i).loadKg(),
                    downhill.axles().get(i).loadKg()));
        }
        return lines;
    }

    private static List<LoadSheet.GroupLine> groups(LoadJudge judge, AxleLoads loads, List<LoadTest> tests) {
        List<LoadSheet.GroupLine> lines = new ArrayList<>();
        for (LoadGroup group : loads.groups()) {
            List<Integer> members = Stream.iterate(0, i -> i < loads.axles().size(), i -> i + 1)
                    .filter(i -> loads.axles().get(i).place().group().equals(group))
                    .toList();
            int first = members.get(0);
            int last = members.get(members.size() - 1);
            List<LoadTest> about = tests.stream()
                    .filter(t -> t.bound().part() == LoadBound.Part.AXLES
                            && t.bound().first() >= first
                            && t.bound().last() <= last)
                    .toList();
            lines.add(new LoadSheet.GroupLine(
                    group.word(),
                    label(group, members.size()),
                    members.size(),
                    loads.sumKg(first, last),
                    loads.axles().get(first).loadKg(),
                    judge.verdictOf(about),
                    about.isEmpty() ? null : judge.governing(about)));
        }
        return lines;
    }

    private static List<LoadSheet.FifthWheel> fifthWheels(AxleLoads loads) {
        List<LoadSheet.FifthWheel> wheels = new ArrayList<>();
        for (int i = 0; i < loads.fifthWheelsKg().size(); i++) {
            wheels.add(new LoadSheet.FifthWheel(
                    RatingBounds.owner(i), loads.fifthWheelsKg().get(i)));
        }
        return List.copyOf(wheels);
    }

    public static String label(LoadGroup group, int axles) {
        return axles == 1 ? group.word() + " axle" : group.word() + " group, " + axles + " axles";
    }

    private static List<LoadSheet.GaugeLine> gauges(LoadCase loadCase, AxleLoads loads) {
        List<LoadSheet.GaugeLine> lines = new ArrayList<>();
        loadCase.trailerChart()
                .ifPresent(chart -> lines.add(gauge(
                        new LoadGroup(AxleKind.TRAILER),
                        chart,
                        loads.perAxleKg(AxleKind.TRAILER).orElseThrow())));
        if (loadCase.booster() == BoosterState.TRAILING) {
            Weights weights = loadCase.weights().orElseThrow();
            lines.add(gauge(
                    new LoadGroup(AxleKind.BOOSTER), weights.gauges().booster().orElseThrow(), loadCase.boosterKg()));
            int number = 2;
            for (Weights.BoosterBehind behind : weights.boostersBehind()) {
                lines.add(gauge(new LoadGroup(AxleKind.BOOSTER, number++), behind.gauge(), Statics.setKg(behind)));
            }
        }
        return lines;
    }

    private static LoadSheet.GaugeLine gauge(LoadGroup name, ChartPoints points, double loadKg) {
        GaugeChart chart = new GaugeChart(points);
        OptionalDouble pressure = chart.pressurePa(loadKg);
        Sentence note = pressure.isPresent()
                ? null
                : Sentence.of(loadKg < chart.leastKg() ? Code.GAUGE_LIGHTER : Code.GAUGE_HEAVIER);
        return new LoadSheet.GaugeLine(name, pressure.isPresent() ? pressure.getAsDouble() : null, loadKg, note);
    }

    private static LoadSheet.RegulatorLine regulator(LoadCase loadCase, LoadJudge judge, List<WeightLimits> sets) {
        Weights weights = loadCase.weights().orElseThrow();
        if (loadCase.booster() != BoosterState.TRAILING || weights.regulator().isEmpty()) {
            return null;
        }
        Weights.Regulator regulator = weights.regulator().get();
        GaugeChart chart = new GaugeChart(weights.gauges().booster().orElseThrow());
        LoadWindow window = regulatorWindow(loadCase, judge, sets);
        double setPa = chart.pressurePa(loadCase.boosterKg()).orElseThrow();
        return new LoadSheet.RegulatorLine(
                setPa,
                regulator.leastPa(),
                regulator.mostPa(),
                loadCase.boosterKg(),
                window.allowed()
                        .map(r -> List.of(pressure(chart, r.from()), pressure(chart, r.to())))
                        .orElse(null),
                window.best().map(b -> pressure(chart, b.at())).orElse(null),
                window.conflict().map(c -> conflict(judge, c, "on the booster")).orElse(null));
    }

    /** A load that the window found between loads of the chart, back on it. */
    static Double pressure(GaugeChart chart, double kg) {
        return chart.pressurePa(Math.max(chart.leastKg(), Math.min(chart.mostKg(), kg)))
                .orElseThrow();
    }

    /**
     * Loads that the regulator can set and every limit is kept with, also when any booster's chart is off by its
     * accuracy.
     */
    public static LoadWindow regulatorWindow(LoadCase loadCase, LoadJudge judge, List<WeightLimits> sets) {
        Weights weights = loadCase.weights().orElseThrow();
        Weights.Regulator regulator = weights.regulator().orElseThrow();
        GaugeChart chart = new GaugeChart(weights.gauges().booster().orElseThrow());
        return LoadWindow.ofAll(
                loadCase.behindRangesKg().stream()
                        .<DoubleFunction<AxleLoads>>map(behind ->
                                kg -> loadCase.statics(Stream.concat(Stream.of(kg), behind.stream())
                                                .toList())
                                        .level())
                        .toList(),
                chart.loadKg(regulator.leastPa()).orElseThrow(),
                chart.loadKg(regulator.mostPa()).orElseThrow(),
                Stream.concat(judge.ownBounds().stream(), judge.boundsOf(sets).stream())
                        .toList(),
                chart.accuracy());
    }

    /** Why there is no place, in words. */
    public static String conflict(LoadJudge judge, LoadWindow.Conflict conflict, String where) {
        if (conflict.isOne()) {
            return "nowhere: " + rule(judge, conflict.low()) + " is broken whatever is set";
        }
        return "nowhere: " + rule(judge, conflict.low()) + " wants more " + where + " than "
                + rule(judge, conflict.high()) + " allows";
    }

    public static String rule(LoadJudge judge, LoadBound bound) {
        return bound.rule() + " (" + judge.axles(bound) + ")";
    }

    private static List<LoadSheet.ShimLine> shims(LoadCase loadCase, Weights weights) {
        if (loadCase.booster() != BoosterState.TRAILING || weights.shims().isEmpty()) {
            return List.of();
        }
        String fitted = weights.shims().get().fitted();
        return new BoosterBeam(weights.shims().get())
                .pairings(loadCase.boosterKg()).stream()
                        .map(p -> new LoadSheet.ShimLine(
                                p.plate().name(),
                                p.plate().thicknessM(),
                                p.plate().name().equals(fitted),
                                p.plate().leastKg(),
                                p.plate().mostKg(),
                                p.angleRad(),
                                p.allowed(),
                                p.allowed() ? null : p.trouble()))
                        .toList();
    }

    private static LoadSheet.LiftLine lift(Weights weights, double frontKg) {
        Optional<Weights.FrontLift> lift = weights.frontLift();
        return lift.map(l -> new LoadSheet.LiftLine(
                        frontKg, Hydraulics.neededPa(l, frontKg), l.takeOffPa(), Hydraulics.raises(l, frontKg)))
                .orElse(null);
    }
}
