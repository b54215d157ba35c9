package org.cresthaul.whatif;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.CellSpares;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanAid;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoutePlan;
import org.cresthaul.plan.SpareKind;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Version;

/** Plans a route once for each configuration, kept all the way, and lays the plans side by side. */
public final class ConfigurationComparison {
    private final Haul haul;
    private final Report report;
    private final PlanOptions options;
    private final PlanAid aid;

    private ConfigurationComparison(Haul haul, Report report, PlanOptions options, PlanAid aid) {
        this.haul = haul;
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
    public static Comparison of(Haul haul, Report report, PlanOptions asked) {
        return of(haul, report, asked, PlanAid.none());
    }

    /** The same, with answers of earlier plans. */
    public static Comparison of(Haul haul, Report report, PlanOptions asked, PlanAid aid) {
        PlanOptions options = keeping(asked, null);
        return new ConfigurationComparison(haul, report, options, aid).compare();
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
    private Comparison.Compared compared(ConfigurationVerdict c, Set<Sentence> met) {
        Plan plan = RoutePlan.of(haul, report, keeping(options, c.key()), aid);
        List<Plan.HazardPassage> passages = plan.steps().stream()
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

    private Comparison.Along along(Plan.HazardPassage p) {
        return new Comparison.Along(
                p.hazard(), p.kind(), p.name(), chainageM(p), p.verdict(), p.raise(), p.blocked(), p.spare());
    }

    private double chainageM(Plan.HazardPassage p) {
        return hazard(p.hazard()).map(HazardFindings::chainageM).orElse(p.fromChainageM());
    }

    private Optional<HazardFindings> hazard(String id) {
        return report.hazards().stream().filter(h -> h.id().equals(id)).findFirst();
    }

    /** Of every kind, in one order: also of the one that does not govern where two are judged. */
    private List<Comparison.Worst> worst(List<Plan.HazardPassage> passages) {
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

    private List<Plan.Spare> spares(Plan.HazardPassage p) {
        if (p.spare() == null) {
            return List.of();
        }
        Optional<ReportCell> cell = p.raise() != null
                ? Optional.empty()
                : hazard(p.hazard())
                        .flatMap(h -> h.cells().stream()
                                .filter(c -> c.configuration().equals(p.set().configuration()))
                                .findFirst());
        return cell.map(CellSpares::of).orElse(List.of(p.spare()));
    }
}
