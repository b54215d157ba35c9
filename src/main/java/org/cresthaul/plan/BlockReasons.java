package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.cresthaul.check.Report;

/** Says in words why a place blocks. */
final class BlockReasons {
    private static final int MOST_NAMED = 3;

    private final Admission admission;
    private final ConfigurationChanges changes;
    private final BitSet usable;
    private final boolean raises;

    /**
     * @param admission in which the blocking places are set aside: it is not asked about that
     * @param usable configurations that may be used
     * @param raises whether hazards may be passed raised
     */
    BlockReasons(Admission admission, ConfigurationChanges changes, BitSet usable, boolean raises) {
        this.admission = admission;
        this.changes = changes;
        this.usable = usable;
        this.raises = raises;
    }

    Plan.Block of(PlanPlace place) {
        return new Plan.Block(place.id(), place.kind(), place.name(), place.chainageM(), why(place), List.of());
    }

    private String why(PlanPlace place) {
        List<String> passing = new ArrayList<>();
        Set<String> verdicts = new LinkedHashSet<>();
        Set<String> reasons = new LinkedHashSet<>();
        usable.stream().forEach(c -> {
            Report.Cell cell = place.cells().get(c);
            if (admission.asksMore(place, c)) {
                verdicts.add("less reserve than asked for");
            } else if (admission.lets(place, cell.verdict()) || raises && cell.raise() != null) {
                passing.add(changes.setUps().get(c).label());
            } else {
                verdicts.add(cell.verdict().word());
                reasons.addAll(cell.reasons());
            }
        });
        if (!passing.isEmpty()) {
            return "passed only with " + some(passing)
                    + ", which the rest of the route, its stops or a place close by do" + " not allow here";
        }
        return String.join(" or ", verdicts)
                + (usable.cardinality() == 1 ? "" : " in every configuration")
                + (reasons.isEmpty() ? "" : ": " + some(List.copyOf(reasons)));
    }

    private static String some(List<String> all) {
        return String.join("; ", all.subList(0, Math.min(MOST_NAMED, all.size())))
                + (all.size() > MOST_NAMED ? " and " + (all.size() - MOST_NAMED) + " more" : "");
    }
}
