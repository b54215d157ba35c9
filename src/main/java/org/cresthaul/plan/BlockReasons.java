package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.ReportCell;

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

    private Sentence why(PlanPlace place) {
        List<Sentence> passing = new ArrayList<>();
        Set<Sentence> verdicts = new LinkedHashSet<>();
        Set<Sentence> reasons = new LinkedHashSet<>();
        usable.stream().forEach(c -> {
            ReportCell cell = place.cells().get(c);
            if (admission.asksMore(place, c)) {
                verdicts.add(Sentence.of(Code.BLOCK_LESS_RESERVE));
            } else if (admission.lets(place, cell.verdict()) || raises && cell.raise() != null) {
                passing.add(NamesOfPlan.setUp(changes.setUps().get(c)));
            } else {
                verdicts.add(Sentence.word(cell.verdict()));
                reasons.addAll(cell.reasons());
            }
        });
        if (!passing.isEmpty()) {
            return Sentence.of(Code.BLOCK_ONLY_WITH).with("states", some(passing));
        }
        boolean one = usable.cardinality() == 1;
        Sentence either = verdicts.stream()
                .reduce((a, b) -> Sentence.of(Code.OR).with("first", a).with("second", b))
                .orElseThrow();
        if (reasons.isEmpty()) {
            return Sentence.of(one ? Code.BLOCK_VERDICT : Code.BLOCK_VERDICTS).with("verdicts", either);
        }
        return Sentence.of(one ? Code.BLOCK_VERDICT_REASONS : Code.BLOCK_VERDICTS_REASONS)
                .with("verdicts", either)
                .with("reasons", some(List.copyOf(reasons)));
    }

    private static Sentence some(List<Sentence> all) {
        Sentence first = Sentence.listed(all.subList(0, Math.min(MOST_NAMED, all.size())), "; ");
        return all.size() > MOST_NAMED
                ? Sentence.of(Code.MORE).with("first", first).with("count", all.size() - MOST_NAMED)
                : first;
    }
}
