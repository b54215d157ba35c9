package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What stands on top of every page: whether it may be driven from.
 *
 * @param outcome the plan's
 * @param drivable whether the plan is a way through without conditions, or with every condition settled
 * @param headline in one line
 * @param lines each condition or blocking place
 */
public record Banner(Outcome outcome, boolean drivable, String headline, List<String> lines) {
    private static final int MOST_NAMED = 8;
    private static final String BLOCKS = " blocks: ";

    /** Whether a line tells what blocks, and not a condition. */
    public static boolean isOfBlocks(String line, List<Plan.Block> blocking) {
        return AlikeBlocks.of(blocking).stream().anyMatch(b -> line.startsWith(b.places() + BLOCKS));
    }

    public Banner {
        lines = List.copyOf(lines);
    }

    static Banner of(Plan plan) {
        List<String> lines = new ArrayList<>();
        AlikeBlocks.of(plan.blocking())
                .forEach(b -> lines.add(b.places() + BLOCKS + b.first().why() + "."));
        Map<String, List<String>> places = new LinkedHashMap<>();
        plan.conditions()
                .forEach(c -> places.computeIfAbsent(" (" + c.what() + "): " + c.told(), t -> new ArrayList<>())
                        .add(c.hazard() + " " + c.name()));
        places.forEach((told, where) -> lines.add(String.join(", ", where) + told));
        List<String> open = plan.conditions().stream()
                .filter(Plan.Condition::isOpen)
                .map(Plan.Condition::hazard)
                .distinct()
                .toList();
        return switch (plan.outcome()) {
            case THROUGH ->
                new Banner(
                        plan.outcome(),
                        true,
                        "Way through, as declared and surveyed. The permit and the person at the wheel decide.",
                        lines);
            case CONDITIONAL ->
                open.isEmpty()
                        ? new Banner(
                                plan.outcome(),
                                true,
                                "Way through; every condition was settled by a person named below."
                                        + " This program judged none of that. The permit and the person at the wheel decide.",
                                lines)
                        : new Banner(
                                plan.outcome(),
                                false,
                                "NOT FOR DRIVING until every condition is resolved: " + named(open) + ".",
                                lines);
            case BLOCKED ->
                new Banner(
                        plan.outcome(),
                        false,
                        "NOT FOR DRIVING: no way through, blocked at "
                                + named(plan.blocking().stream()
                                        .map(Plan.Block::hazard)
                                        .toList()) + ".",
                        lines);
            case UNJUDGED ->
                new Banner(
                        plan.outcome(),
                        false,
                        "NOT FOR DRIVING: the route file names no hazards, so nothing was judged.",
                        lines);
        };
    }

    private static String named(List<String> ids) {
        return ids.stream().limit(MOST_NAMED).collect(Collectors.joining(", "))
                + (ids.size() > MOST_NAMED ? " and " + (ids.size() - MOST_NAMED) + " more" : "");
    }
}
