package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.NamesOfPlan;
import org.cresthaul.plan.Outcome;
import org.cresthaul.plan.Plan;

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

    public Banner {
        lines = List.copyOf(lines);
    }

    public static Banner of(Plan plan, Catalog catalog) {
        List<String> lines = new ArrayList<>();
        AlikeBlocks.of(plan.blocking())
                .forEach(b -> lines.add(Sentence.of(Code.BANNER_BLOCKS)
                        .with("place", b.places())
                        .with("why", b.first().why())
                        .in(catalog)));
        Map<List<Object>, List<Sentence>> places = new LinkedHashMap<>();
        Map<List<Object>, Plan.Condition> first = new LinkedHashMap<>();
        for (Plan.Condition c : plan.conditions()) {
            List<Object> told = List.of(c.what(), c.told());
            first.putIfAbsent(told, c);
            places.computeIfAbsent(told, t -> new ArrayList<>()).add(NamesOfPlan.place(c.hazard(), c.name()));
        }
        first.forEach((told, c) -> lines.add(Sentence.of(Code.BANNER_CONDITION)
                .with("place", Sentence.listed(places.get(told), ", "))
                .with("kind", Sentence.word(c.what()))
                .with("told", c.told())
                .in(catalog)));
        List<String> open = plan.conditions().stream()
                .filter(Plan.Condition::isOpen)
                .map(Plan.Condition::hazard)
                .distinct()
                .toList();
        List<String> blocked = plan.blocking().stream().map(Plan.Block::hazard).toList();
        boolean drivable = plan.outcome() == Outcome.THROUGH || plan.outcome() == Outcome.CONDITIONAL && open.isEmpty();
        Sentence headline =
                switch (plan.outcome()) {
                    case THROUGH -> Sentence.of(Code.BANNER_THROUGH);
                    case CONDITIONAL ->
                        open.isEmpty()
                                ? Sentence.of(Code.BANNER_SETTLED)
                                : Sentence.of(Code.BANNER_CONDITIONS).with("places", named(open));
                    case BLOCKED -> Sentence.of(Code.BANNER_BLOCKED).with("places", named(blocked));
                    case UNJUDGED -> Sentence.of(Code.BANNER_UNJUDGED);
                };
        return new Banner(plan.outcome(), drivable, headline.in(catalog), lines);
    }

    private static Sentence named(List<String> ids) {
        String first = ids.stream().limit(MOST_NAMED).collect(Collectors.joining(", "));
        return ids.size() > MOST_NAMED
                ? Sentence.of(Code.BANNER_MORE).with("places", first).with("count", ids.size() - MOST_NAMED)
                : Sentence.verbatim(first);
    }
}
