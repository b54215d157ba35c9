package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.cresthaul.check.LoadReport;
import org.cresthaul.check.LoadSheet;
import org.cresthaul.check.Margins;
import org.cresthaul.check.Report;
import org.cresthaul.check.Version;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;

/** Plans a route once for each configuration, kept all the way, and lays the plans side by side. */
public final class ConfigurationComparison {
    private final Route route;
    private final Rig rig;
    private final LevelStance stance;
    private final Margins margins;
    private final Report report;
    private final PlanOptions options;
    private final PlanAid aid;

    private ConfigurationComparison(
            Route route,
            Rig rig,
            LevelStance stance,
            Margins margins,
            Report report,
            PlanOptions options,
            PlanAid aid) {
        this.route = route;
        this.rig = rig;
        this.stance = stance;
        this.margins = margins;
        this.report = report;
        this.options = options;
        this.aid = aid;
    }

    /**
     * Every configuration of the report.
     *
     * @param report of the same route, rig, stance and margins
     * @param asked without mistakes; what it forbids or keeps does not count here
     */
    public static Comparison of(
            Route route, Rig rig, LevelStance stance, Margins margins, Report report, PlanOptions asked) {
        return of(route, rig, stance, margins, report, asked, PlanAid.none());
    }

    /** The same, with answers of earlier plans. */
    public static Comparison of(
            Route route, Rig rig, LevelStance stance, Margins margins, Report report, PlanOptions asked, PlanAid aid) {
        PlanOptions options = keeping(asked, null);
        return new ConfigurationComparison(route, rig, stance, margins, report, options, aid).compare();
    }

    private static PlanOptions keeping(PlanOptions options, String key) {
        return new PlanOptions(
                options.times(),
                List.of(),
                key,
                options.avoidRaising(),
                options.acceptTight(),
                options.setAside(),
                options.leastReserve(),
                options.fewestConditions(),
                List.of());
    }

    private Comparison compare() {
        Set<Sentence> met = ConcurrentHashMap.newKeySet();
        List<Comparison.Compared> all = report.configurations().parallelStream()
                .map(c -> compared(c, met))
                .toList();
        List<Sentence> cautions = new ArrayList<>(report.cautions());
        if (report.loads().counts()) {
            cautions.addAll(report.loads().cautions());
        }
        // In the order of the route, each once.
        report.hazards().stream()
                .flatMap(h -> h.cautions().stream())
                .filter(met::contains)
                .distinct()
                .filter(c -> !cautions.contains(c))
                .forEach(cautions::add);
        String best = all.stream()
                .min(Comparator.comparingInt(
                                (Comparison.Compared c) -> c.blocking().size())
                        .thenComparingLong(Comparison.Compared::seconds))
                .map(Comparison.Compared::configuration)
                .orElseThrow();
        return new Comparison(
                Comparison.FORM,
                Version.NUMBER,
                report.route(),
                report.rig(),
                report.margins(),
                options,
                best,
                all,
                cautions);
    }

    /** @param met gathers the cautions of every passage */
    private Comparison.Compared compared(Report.ConfigurationVerdict c, Set<Sentence> met) {
        Plan plan = RoutePlan.of(route, rig, stance, margins, report, keeping(options, c.key()), aid);
        List<Plan.Passage> passages = plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(Objects::nonNull)
                .toList();
        passages.forEach(p -> met.addAll(p.cautions()));
        Optional<LoadSheet> sheet = report.loads().states().stream()
                .filter(s -> s.lift().equals(c.lift()) && s.booster().equals(c.booster()))
                .findFirst()
                .map(LoadReport.StateLoads::sheet);
        return new Comparison.Compared(
                c.key(),
                c.label(),
                c.lift(),
                c.axles(),
                c.booster(),
                c.notch(),
                plan.steps().get(0).set().lengthM(),
                plan.outcome(),
                plan.blocking().stream().map(Plan.Block::hazard).toList(),
                plan.seconds(),
                (int) passages.stream().filter(p -> p.raise() != null).count(),
                sheet.map(LoadSheet::grossKg).orElse(null),
                sheet.map(LoadSheet::groups).orElse(List.of()).stream()
                        .map(g -> new Comparison.GroupLoad(g.group(), g.label(), g.axles(), g.loadKg(), g.perAxleKg()))
                        .toList(),
                plan.least(),
                worst(passages),
                passages.stream().map(this::along).toList());
    }

    private Comparison.Along along(Plan.Passage p) {
        return new Comparison.Along(
                p.hazard(), p.kind(), p.name(), chainageM(p), p.verdict(), p.raise(), p.blocked(), p.spare());
    }

    private double chainageM(Plan.Passage p) {
        return hazard(p.hazard()).map(Report.HazardFindings::chainageM).orElse(p.fromChainageM());
    }

    private Optional<Report.HazardFindings> hazard(String id) {
        return report.hazards().stream().filter(h -> h.id().equals(id)).findFirst();
    }

    /** Of every kind, in one order: also of the one that does not govern where two are judged. */
    private List<Comparison.Worst> worst(List<Plan.Passage> passages) {
        List<Comparison.Worst> worst = new ArrayList<>();
        for (SpareKind kind : SpareKind.values()) {
            passages.stream()
                    .flatMap(p -> spares(p).stream().map(s -> new Comparison.Worst(p.hazard(), s)))
                    .filter(w -> w.spare().kind() == kind)
                    .min(Comparator.comparingDouble(w -> w.spare().share()))
                    .ifPresent(worst::add);
        }
        return worst;
    }

    private List<Plan.Spare> spares(Plan.Passage p) {
        if (p.spare() == null) {
            return List.of();
        }
        Optional<Report.Cell> cell = p.raise() != null
                ? Optional.empty()
                : hazard(p.hazard())
                        .flatMap(h -> h.cells().stream()
                                .filter(c -> c.configuration().equals(p.set().configuration()))
                                .findFirst());
        return cell.map(CellSpares::of).orElse(List.of(p.spare()));
    }
}
