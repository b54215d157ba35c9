package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.cresthaul.check.Report;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.route.StoppingPlace;

/** What must be said of a plan as a whole, besides what the report says. */
final class PlanCautions {
    private final Report report;
    private final RouteLayout layout;
    private final ConfigurationChanges changes;
    private final Way way;
    private final BitSet usable;
    private final boolean proven;

    /** @param proven whether no smaller set of places opens a way */
    PlanCautions(
            Report report, RouteLayout layout, ConfigurationChanges changes, Way way, BitSet usable, boolean proven) {
        this.report = report;
        this.layout = layout;
        this.changes = changes;
        this.way = way;
        this.usable = usable;
        this.proven = proven;
    }

    List<String> list() {
        List<String> cautions = new ArrayList<>();
        if (report.hazards().isEmpty()) {
            cautions.add("The route file names no hazards: no place was judged, and no way is called open.");
        }
        cautions.addAll(report.cautions());
        if (report.loads().counts()) {
            cautions.addAll(report.loads().cautions());
        } else {
            cautions.add("The rig's weights are not declared and the route has no limits: loads were not judged.");
        }
        cautions.add("Transport stance and leveling in auto between places; times count changes and crawling only, not"
                + " driving at road speed.");
        if (!proven) {
            cautions.add(
                    "So many places overlap that not every combination was tried: fewer than those named may block.");
        }
        for (RouteLayout.HeldStop held : layout.heldStops()) {
            cautions.add(name(held.stop()) + " cannot be used: the combination is still held by " + held.hazard()
                    + " there.");
        }
        double shortestM =
                changes.setUps().stream().mapToDouble(Plan.SetUp::lengthM).min().orElseThrow();
        for (StoppingPlace stop : layout.stops()) {
            if (stop.roomM() < shortestM) {
                cautions.add(name(stop) + " is shorter than the combination: nothing can be changed there.");
            }
        }
        layout.stops().stream()
                .flatMap(s -> changes.notOffered(s, usable).stream())
                .distinct()
                .forEach(cautions::add);
        for (int k = 1; k < way.configurations().size(); k++) {
            Plan.SetUp from = changes.setUps().get(way.configurations().get(k - 1));
            Plan.SetUp to = changes.setUps().get(way.configurations().get(k));
            BoosterState none = BoosterState.NONE;
            if (from != to) {
                StoppingPlace at = layout.stops().get(k - 1);
                changes.passedInBetween(from, to, at)
                        .ifPresent(
                                why -> cautions.add(
                                        "During the change at " + name(at)
                                                + ", off the road, no order of its steps keeps this limit of the road: "
                                                + why.named()
                                                + ". Ratings and brakes are kept. Nobody moves the combination before the change is done."));
            }
            if (from.booster() == none && to.booster() != none) {
                cautions.add("The booster is taken on at " + name(layout.stops().get(k - 1))
                        + ": somebody must have brought it there.");
            } else if (to.booster() == none && from.booster() != none) {
                cautions.add("The booster is left at " + name(layout.stops().get(k - 1)) + ".");
            }
        }
        return List.copyOf(cautions);
    }

    private static String name(StoppingPlace stop) {
        return stop.place().id() + " " + stop.place().name();
    }
}
