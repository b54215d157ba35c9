package org.cresthaul.whatif;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.Haul;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Report;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.UnitName;

/**
 * Plans a route with every unit of a stance and without those that may be left off, and lays the plans side by side.
 */
public final class CombinationComparison {
    private CombinationComparison() {}

    /** Who checks and plans one combination. */
    public interface Planner {
        Report check(Haul haul);

        /** @param report of the same haul */
        Plan plan(Haul haul, Report report, PlanOptions options);
    }

    /**
     * Every combination of the stance that one of them belongs to.
     *
     * @param asked of this one route, rig, stance and margins are told
     * @param options what was decided for one combination does not count: nobody looked at the others
     */
    public static Combinations of(Haul asked, PlanOptions options, Planner planner) {
        PlanOptions plain = new PlanOptions(
                options.times(),
                List.of(),
                null,
                options.avoidRaising(),
                List.of(),
                List.of(),
                options.leastReserve(),
                options.fewestConditions(),
                List.of());
        List<Combinations.Combination> all = new ArrayList<>();
        Set<Sentence> cautions = new LinkedHashSet<>();
        Plan told = null;
        for (LevelStance stance : asked.rig().combinationsWith(asked.stance())) {
            Haul haul = asked.standing(stance);
            Report report = planner.check(haul);
            Plan plan = planner.plan(haul, report, plain);
            all.add(combination(stance, report, plan));
            cautions.addAll(plan.cautions());
            told = stance.name().equals(asked.stance().name()) ? plan : told;
        }
        Plan one = Objects.requireNonNull(told);
        return new Combinations(
                Combinations.FORM,
                one.version(),
                one.route(),
                one.rig(),
                one.margins(),
                plain,
                all,
                List.copyOf(cautions));
    }

    private static Combinations.Combination combination(LevelStance stance, Report report, Plan plan) {
        List<Plan.SetUp> used = plan.steps().stream()
                .map(Plan.Step::set)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        List<LoadSheet> sheets =
                used.stream().flatMap(s -> sheet(report, s).stream()).toList();
        return new Combinations.Combination(
                stance.name(),
                stance.units().stream().map(UnitName::word).toList(),
                used.stream().map(Plan.SetUp::label).distinct().toList(),
                plan.outcome(),
                plan.blocking().stream().map(Plan.Block::hazard).toList(),
                (int) plan.conditions().stream().filter(Plan.Condition::isOpen).count(),
                plan.seconds(),
                plan.changes(),
                used.stream().mapToDouble(Plan.SetUp::lengthM).max().orElseThrow(),
                // Of one of them it may be known and of another not: then it is not known.
                sheets.size() < used.size()
                        ? null
                        : sheets.stream().mapToDouble(LoadSheet::grossKg).max().orElseThrow(),
                sheet(report, used.get(0)).map(LoadSheet::groups).orElse(List.of()).stream()
                        .map(g -> new Comparison.GroupLoad(g.group(), g.label(), g.axles(), g.loadKg(), g.perAxleKg()))
                        .toList(),
                plan.least());
    }

    private static Optional<LoadSheet> sheet(Report report, Plan.SetUp set) {
        return report.loads().states().stream()
                .filter(s -> s.lift().equals(set.lift()) && s.booster() == set.booster())
                .findFirst()
                .map(LoadReport.StateLoads::sheet);
    }
}
