package org.cresthaul.whatif;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.cresthaul.check.CheckedConfiguration;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.CellSpares;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.Plan.Relaxation;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RelaxationKind;
import org.cresthaul.plan.Reserves;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.route.HazardKind;

/**
 * What would open a place that blocks a plan. Every proposal called enough was put to the check as it is told: with the
 * limit lifted, the notch added, the piece lighter or moved.
 */
public final class Relaxations {

    private final Haul haul;
    private final Report report;
    private final PlanOptions options;

    /** What was found for one place. */
    record Found(List<Relaxation> all) {
        Found {
            all = List.copyOf(all);
        }
    }

    /** @param report of the check of all of these */
    public Relaxations(Haul haul, Report report, PlanOptions options) {
        this.haul = haul;
        this.report = report;
        this.options = options;
    }

    /** For a hazard of the report, or {@link Plan#WHOLE_ROUTE}; the mildest first, empty when nothing was found. */
    public List<Relaxation> at(String hazardId) {
        List<Relaxation> found = new ArrayList<>();
        if (hazardId.equals(Plan.WHOLE_ROUTE)) {
            otherLoads(found);
            loads(found, Optional.empty());
            return List.copyOf(found);
        }
        HazardFindings hazard = report.hazards().stream()
                .filter(h -> h.id().equals(hazardId))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no hazard " + hazardId + " in the report"));
        otherConfiguration(found, hazard.cells());
        if (hazard.kind() == HazardKind.OVERHEAD_WIRE) {
            nearWire(found, hazard.cells());
        } else {
            tight(found, hazard.cells());
        }
        switch (hazard.kind().judged()) {
            case LOADS -> loads(found, Optional.of(hazardId));
            case ROOM -> survey(found, hazard);
            case GAPS -> {
                found.addAll(new RaiseRelaxations(haul, options.avoidRaising()).at(hazard, allowed(hazard.cells())));
                survey(found, hazard);
            }
        }
        return List.copyOf(found);
    }

    private boolean isAllowed(String key) {
        return !options.forbid().contains(key)
                && (options.fix() == null || options.fix().equals(key));
    }

    private List<ReportCell> allowed(List<ReportCell> cells) {
        return cells.stream().filter(c -> isAllowed(c.configuration())).toList();
    }

    /** Clear in transport, or with its raise where raising is not to be avoided. */
    private boolean opens(ReportCell cell) {
        return cell.verdict() == Verdict.CLEAR || cell.raise() != null && !options.avoidRaising();
    }

    private void otherConfiguration(List<Relaxation> found, List<ReportCell> cells) {
        List<String> open = cells.stream()
                .filter(this::opens)
                .map(ReportCell::configuration)
                .toList();
        configuration(found, open);
    }

    private void otherLoads(List<Relaxation> found) {
        configuration(
                found,
                report.configurations().stream()
                        .filter(c -> c.loads() == Verdict.CLEAR)
                        .map(ConfigurationVerdict::key)
                        .toList());
        report.configurations().stream()
                .filter(c -> isAllowed(c.key()) && c.loads() == Verdict.TIGHT)
                .findFirst()
                .ifPresent(c -> found.add(new Relaxation(
                        RelaxationKind.SPOTTER, c.key(), null, true, Sentence.of(Code.OPEN_WEIGH_LIMITS))));
    }

    /** @param open configurations in which the place is passed, taken or not by the options */
    private void configuration(List<Relaxation> found, List<String> open) {
        open.stream()
                .filter(c -> isAllowed(c) && !isWithoutBooster(c))
                .findFirst()
                .ifPresent(c -> found.add(new Relaxation(
                        RelaxationKind.CONFIGURATION,
                        c,
                        null,
                        true,
                        Sentence.of(Code.OPEN_STOP).with("state", label(c)))));
        open.stream()
                .filter(c -> !isAllowed(c) && !isWithoutBooster(c))
                .findFirst()
                .ifPresent(c -> found.add(new Relaxation(
                        RelaxationKind.CONFIGURATION,
                        c,
                        null,
                        true,
                        Sentence.of(Code.OPEN_NOT_USED).with("state", label(c)))));
        boolean hasBooster = report.configurations().stream().anyMatch(c -> !isWithoutBooster(c.key()));
        open.stream()
                .filter(c -> hasBooster && isWithoutBooster(c))
                .findFirst()
                .ifPresent(c -> found.add(new Relaxation(
                        RelaxationKind.NO_BOOSTER,
                        c,
                        null,
                        true,
                        Sentence.of(Code.OPEN_NO_BOOSTER).with("state", label(c)))));
    }

    private boolean isWithoutBooster(String key) {
        return configurationOf(key).booster() == BoosterState.NONE;
    }

    private Sentence label(String key) {
        ConfigurationVerdict c = configurationOf(key);
        return CheckedConfiguration.label(c.axles(), c.lift(), c.booster(), c.notch());
    }

    private ConfigurationVerdict configurationOf(String key) {
        return report.configurations().stream()
                .filter(c -> c.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    /** Tight places are a person's decision: in the configuration that leaves the most. */
    private void tight(List<Relaxation> found, List<ReportCell> cells) {
        Predicate<ReportCell> escorted = c -> c.corner() != null && c.corner().escorts();
        List<ReportCell> tight = allowed(cells).stream()
                .filter(c -> c.verdict() == Verdict.TIGHT)
                .sorted(Comparator.comparingDouble(
                        (ReportCell c) -> -Reserves.least(CellSpares.of(c)).orElse(0)))
                .toList();
        tight.stream()
                .filter(escorted.negate())
                .findFirst()
                .ifPresent(c -> found.add(new Relaxation(
                        RelaxationKind.SPOTTER,
                        c.configuration(),
                        null,
                        true,
                        Sentence.of(c.load() != null ? Code.OPEN_WEIGH : Code.OPEN_SPOTTER))));
        tight.stream()
                .filter(escorted)
                .findFirst()
                .ifPresent(c -> found.add(new Relaxation(
                        RelaxationKind.ESCORTS, c.configuration(), null, true, Sentence.of(Code.OPEN_ESCORTS))));
    }

    /** How near a wire one comes is its owner's decision, not a planner's. */
    private void nearWire(List<Relaxation> found, List<ReportCell> cells) {
        allowed(cells).stream()
                .filter(c -> c.verdict() == Verdict.TIGHT)
                .max(Comparator.comparingDouble(
                        c -> Reserves.least(CellSpares.of(c)).orElse(0)))
                .ifPresent(c -> found.add(new Relaxation(
                        RelaxationKind.OWNER, c.configuration(), null, true, Sentence.of(Code.OPEN_OWNER))));
    }

    private void survey(List<Relaxation> found, HazardFindings hazard) {
        if (!hazard.surveyed()) {
            found.add(new Relaxation(RelaxationKind.SURVEY, null, null, false, Sentence.of(Code.OPEN_SURVEY)));
            return;
        }
        boolean open = haul.route().findHazard(hazard.id()).orElseThrow().lines().stream()
                .anyMatch(l -> !l.before().isDeclared() || !l.after().isDeclared());
        if (open) {
            found.add(new Relaxation(RelaxationKind.SURVEY, null, null, false, Sentence.of(Code.OPEN_GRADES)));
        }
        hazard.limits()
                .forEach(l -> found.add(new Relaxation(
                        RelaxationKind.SURVEY,
                        null,
                        null,
                        false,
                        Sentence.of(
                                        hazard.kind() == HazardKind.OVERHEAD_WIRE
                                                ? Code.OPEN_ASK_OWNER
                                                : Code.OPEN_SURVEY_ANEW)
                                .with("limit", l))));
        if (!hazard.limits().isEmpty() || hazard.uncertainties().isEmpty()) {
            return;
        }
        new SurveyRelaxation(haul).at(hazard, allowed(hazard.cells())).ifPresent(found::add);
    }

    private void loads(List<Relaxation> found, Optional<String> place) {
        found.addAll(new LoadRelaxations(haul)
                .at(
                        place,
                        report.configurations().stream()
                                .filter(c -> isAllowed(c.key()))
                                .toList()));
    }
}
