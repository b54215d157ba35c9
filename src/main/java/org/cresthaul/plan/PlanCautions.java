package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.Report;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.route.StoppingPlace;

/** What must be said of a plan as a whole, besides what the report says. */
public final class PlanCautions {
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

    List<Sentence> list() {
        List<Sentence> cautions = new ArrayList<>();
        if (report.hazards().isEmpty()) {
            cautions.add(Sentence.of(Code.PLAN_NO_HAZARDS));
        }
        cautions.addAll(report.cautions());
        if (report.loads().counts()) {
            cautions.addAll(report.loads().cautions());
        } else {
            cautions.add(Sentence.of(Code.PLAN_NO_LOADS));
        }
        cautions.add(Sentence.of(Code.PLAN_TRANSPORT));
        if (!proven) {
            cautions.add(Sentence.of(Code.PLAN_OVERLAP));
        }
        for (RouteLayout.HeldStop held : layout.heldStops()) {
            cautions.add(at(Code.PLAN_STOP_HELD, held.stop()).with("place", held.hazard()));
        }
        double shortestM =
                changes.setUps().stream().mapToDouble(Plan.SetUp::lengthM).min().orElseThrow();
        for (StoppingPlace stop : layout.stops()) {
            if (stop.roomM() < shortestM) {
                cautions.add(at(Code.PLAN_STOP_SHORT, stop));
            }
        }
        layout.stops().stream()
                .flatMap(s -> changes.notOffered(s, usable).stream())
                .distinct()
                .forEach(cautions::add);
        for (int k = 1; k < way.configurations().size(); k++) {
            change(k, cautions);
        }
        return List.copyOf(cautions);
    }

    private void change(int k, List<Sentence> cautions) {
        Plan.SetUp from = changes.setUps().get(way.configurations().get(k - 1));
        Plan.SetUp to = changes.setUps().get(way.configurations().get(k));
        StoppingPlace stop = layout.stops().get(k - 1);
        if (from != to) {
            changes.passedInBetween(from, to, stop)
                    .ifPresent(why ->
                            cautions.add(at(Code.PLAN_PASSED_BETWEEN, stop).with("rule", why.named())));
        }
        boolean before = from.booster() != BoosterState.NONE;
        boolean after = to.booster() != BoosterState.NONE;
        if (before != after) {
            cautions.add(at(after ? Code.PLAN_BOOSTER_TAKEN : Code.PLAN_BOOSTER_LEFT, stop));
        }
    }

    /** Whether a caution is about what is done in a change: said where no step is told, it would be about nothing. */
    public static boolean isOfChange(Sentence caution) {
        return switch (caution.code()) {
            case PLAN_PASSED_BETWEEN, PLAN_BOOSTER_TAKEN, PLAN_BOOSTER_LEFT -> true;
            default -> false;
        };
    }

    private static Sentence at(Code code, StoppingPlace stop) {
        return Sentence.of(code)
                .with("stop", NamesOfPlan.place(stop.place().id(), stop.place().name()));
    }
}
