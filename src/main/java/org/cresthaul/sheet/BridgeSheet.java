package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Plan;
import org.cresthaul.report.BridgeFinding;

/**
 * A posted bridge as the driver and the permit office need it: which axles stand on it together, and how it is driven
 * over.
 */
final class BridgeSheet {
    private BridgeSheet() {}

    /** The heaviest axles that stand on it together as it is passed; none where nobody says how long it is. */
    static List<SheetLine> together(Sources sources, Plan.HazardPassage p) {
        List<SheetLine> lines = new ArrayList<>();
        sources.hazard(p.hazard()).filter(f -> f.hazard().bridge() != null).ifPresent(f -> {
            List<BridgeFinding.Together> all = f.hazard().bridge().together();
            for (int i = 0; i < all.size(); i++) {
                if (all.get(i).lift().equals(p.set().lift())
                        && all.get(i).booster().equals(p.set().booster())) {
                    lines.add(line(sources, all.get(i), f.pointer() + "/bridge/together/" + i));
                }
            }
        });
        return lines;
    }

    private static SheetLine line(Sources sources, BridgeFinding.Together t, String at) {
        if (t.axles() == null) {
            return sources.plain(Code.BRIDGE_AXLES_UNKNOWN);
        }
        boolean limited = t.limitKg() != null;
        Say say = sources.say(
                        t.count() == 1
                                ? limited ? Code.BRIDGE_ONE_LIMIT : Code.BRIDGE_ONE
                                : limited ? Code.BRIDGE_MANY_LIMIT : Code.BRIDGE_MANY)
                .with("axles", t.axles())
                .at("count")
                .count(t.count(), at + "/count");
        if (t.count() > 1) {
            say.at("spread").spacing(t.spreadM(), at + "/spreadM");
        }
        say.at("load").weight(t.loadKg(), at + "/loadKg");
        if (limited) {
            say.at("limit").weight(t.limitKg(), at + "/limitKg");
        }
        return say.plain();
    }

    /** The terms of the permit, each to be done. */
    static List<SheetLine> terms(Sources sources, Plan.HazardPassage p) {
        return sources
                .hazard(p.hazard())
                .map(f -> f.hazard().bridge())
                .map(BridgeFinding::terms)
                .orElse(List.of())
                .stream()
                .map(t -> sources.say(Code.SENTENCE)
                        .with("sentence", t.capital())
                        .plain()
                        .from(Sentence.of(Code.SOURCE_PERMIT)))
                .toList();
    }
}
