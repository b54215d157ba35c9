package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.units.InputProblem;

/** Finds what is wrong with the options of a plan, seen beside the report they are about. */
public final class PlanOptionsCheck {
    private static final String SEE = "See the report for the names.";

    private final Report report;
    private final PlanOptions options;
    private final List<InputProblem> problems = new ArrayList<>();

    private PlanOptionsCheck(Report report, PlanOptions options) {
        this.report = report;
        this.options = options;
    }

    /** Every mistake, each with a pointer from the options: "/forbid/0"; empty when there is none. */
    public static List<InputProblem> problems(Report report, PlanOptions options) {
        PlanOptionsCheck check = new PlanOptionsCheck(report, options);
        check.configurations();
        check.places();
        check.settled();
        return List.copyOf(check.problems);
    }

    private void configurations() {
        Set<String> keys =
                report.configurations().stream().map(ConfigurationVerdict::key).collect(Collectors.toSet());
        for (int i = 0; i < options.forbid().size(); i++) {
            requireKnown(keys, options.forbid().get(i), "/forbid/" + i, "configuration");
        }
        if (options.fix() != null) {
            requireKnown(keys, options.fix(), "/fix", "configuration");
            if (options.forbid().contains(options.fix())) {
                add(
                        "fixed-and-forbidden",
                        "The configuration to keep, " + options.fix() + ", is forbidden.",
                        "/fix",
                        "Forbid another, or keep another.");
            }
        } else if (new HashSet<>(options.forbid()).containsAll(keys)) {
            add("all-forbidden", "Every configuration is forbidden.", "/forbid", "Leave one that may be used.");
        }
    }

    private void places() {
        if (options.acceptTight().isEmpty() && options.setAside().isEmpty()) {
            return;
        }
        Map<String, List<Verdict>> verdicts = new LinkedHashMap<>();
        report.hazards()
                .forEach(h -> verdicts.put(
                        h.id(), h.cells().stream().map(ReportCell::verdict).toList()));
        if (report.loads().counts()) {
            verdicts.put(
                    Plan.WHOLE_ROUTE,
                    report.configurations().stream()
                            .map(ConfigurationVerdict::loads)
                            .toList());
        }
        for (int i = 0; i < options.acceptTight().size(); i++) {
            String id = options.acceptTight().get(i);
            String at = "/acceptTight/" + i;
            if (requireKnown(verdicts.keySet(), id, at, "hazard")
                    && !verdicts.get(id).contains(Verdict.TIGHT)) {
                add(
                        "not-tight",
                        id + " is not tight in any configuration: there is nothing to accept.",
                        at,
                        "Only what the report calls tight can be accepted.");
            }
        }
        for (int i = 0; i < options.setAside().size(); i++) {
            requireKnown(verdicts.keySet(), options.setAside().get(i), "/setAside/" + i, "hazard");
        }
    }

    private void settled() {
        Set<String> known =
                new HashSet<>(report.hazards().stream().map(HazardFindings::id).toList());
        known.add(Plan.WHOLE_ROUTE);
        for (int i = 0; i < options.settled().size(); i++) {
            PlanOptions.Settled s = options.settled().get(i);
            requireKnown(known, s.hazard(), "/settled/" + i + "/hazard", "hazard");
        }
    }

    private boolean requireKnown(Set<String> known, String name, String at, String what) {
        if (!known.contains(name)) {
            add(
                    "unknown-name",
                    "There is no " + what + " \"" + (name.length() > 80 ? name.substring(0, 80) + "..." : name) + "\".",
                    at,
                    SEE);
            return false;
        }
        return true;
    }

    private void add(String code, String message, String pointer, String remedy) {
        problems.add(new InputProblem(code, message, pointer, remedy));
    }
}
