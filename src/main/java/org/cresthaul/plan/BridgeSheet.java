package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.check.BridgeFinding;

/**
 * A posted bridge as the driver and the permit office need it: which axles stand on it together, and how it is driven
 * over.
 */
final class BridgeSheet {
    private BridgeSheet() {}

    /** The heaviest axles that stand on it together as it is passed; none where nobody says how long it is. */
    static List<SheetLine> together(Sources sources, Plan.Passage p) {
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
            return SheetLine.plain("Which axles are the heaviest on the bridge together is unknown: so are the loads.");
        }
        Say say = sources.say("On the bridge together, the heaviest: " + t.axles() + ", ")
                .count(t.count(), at + "/count")
                .words(t.count() == 1 ? " axle" : " axles over ");
        if (t.count() > 1) {
            say.spacing(t.spreadM(), at + "/spreadM");
        }
        say.words(", ").weight(t.loadKg(), at + "/loadKg");
        return (t.limitKg() == null
                        ? say.words(".")
                        : say.words(" against ")
                                .weight(t.limitKg(), at + "/limitKg")
                                .words("."))
                .plain();
    }

    /** The terms of the permit, each to be done. */
    static List<SheetLine> terms(Sources sources, Plan.Passage p) {
        return sources
                .hazard(p.hazard())
                .map(f -> f.hazard().bridge())
                .map(BridgeFinding::terms)
                .orElse(List.of())
                .stream()
                .map(t -> SheetLine.rule(Sources.capital(t) + ".", "terms of the permit"))
                .toList();
    }
}
