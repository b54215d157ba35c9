package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.NamesOfPlan;
import org.cresthaul.plan.Plan;
import org.cresthaul.route.HazardKind;

/**
 * Places that block for the same reason and are opened by the same, told once: fifty crossings that nobody surveyed are
 * one block with a list of places.
 *
 * @param blocks of one kind, at least one, in the order of travel
 */
public record AlikeBlocks(List<Plan.Block> blocks) {
    /** What is told of a block besides its place. */
    private record Told(HazardKind kind, Sentence why, List<Opening> relaxations) {}

    private record Opening(boolean enough, Sentence text) {}

    public AlikeBlocks {
        blocks = List.copyOf(blocks);
    }

    /** All blocks, those alike together where the first of them stands. */
    public static List<AlikeBlocks> of(List<Plan.Block> all) {
        Map<Told, List<Plan.Block>> alike = new LinkedHashMap<>();
        for (Plan.Block block : all) {
            alike.computeIfAbsent(
                            new Told(
                                    block.kind(),
                                    block.why(),
                                    block.relaxations().stream()
                                            .map(r -> new Opening(r.enough(), r.text()))
                                            .toList()),
                            t -> new ArrayList<>())
                    .add(block);
        }
        return alike.values().stream().map(AlikeBlocks::new).toList();
    }

    /** The first, which tells for all. */
    public Plan.Block first() {
        return blocks.get(0);
    }

    /** "H06 Gravel spur", or "3 places alike: H06 Gravel spur, H07 Mill lead, H08 Siding". */
    public Sentence places() {
        Sentence listed = Sentence.listed(
                blocks.stream()
                        .map(b -> NamesOfPlan.place(b.hazard(), b.name()))
                        .toList(),
                ", ");
        return blocks.size() == 1
                ? listed
                : Sentence.of(Code.PLACES_ALIKE).with("count", blocks.size()).with("places", listed);
    }
}
