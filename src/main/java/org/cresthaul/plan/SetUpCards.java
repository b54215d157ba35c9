package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.LoadSheet;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;

/** A card for each configuration the plan uses: everything that is set, pinned or looked at before road speed. */
final class SetUpCards {
    private final Sources sources;

    SetUpCards(Sources sources) {
        this.sources = sources;
    }

    List<RunSheet.Card> list() {
        return sources.setUps().stream()
                .map(s -> new RunSheet.Card("Set-up " + sources.letterOf(s) + ": " + s.label(), sources.letterOf(s),
                        s.configuration(), lines(s)))
                .toList();
    }

    private List<SheetLine> lines(Plan.SetUp set) {
        List<SheetLine> lines = new ArrayList<>();
        String at = sources.pointer(set);
        lines.add(sources.say("Length ").distance(set.lengthM(), at + "/lengthM").words(". ").plain());
        lines.add(SheetLine.practice("Gooseneck lock pin in, and its keeper."));
        lines.add(SheetLine.toDo("Transport stops at notch " + set.notch() + ", deck down on them, both sides."));
        lines.add(SheetLine.toDo("Levelling valve in auto."));
        lines.add(sources.say("").count(set.axles(), at + "/axles").words(set.axles() == 1 ? " trailer axle" : " trailer axles")
                .words(" on the road: lift axle " + (set.lift().equals(LiftState.UP.word()) ? "up, tyre clear of the road."
                        : "down.")).toDo());
        lines.addAll(booster(set, at));
        lines.addAll(sources.gauges(set));
        lines.add(SheetLine.practice("Chains and binders tight; again after the first few miles."));
        lines.add(SheetLine.practice("Lights, strobes, flags and signs, front to rear."));
        lines.add(SheetLine.practice("Wheel nuts, hub oil, tyres: look and feel at every stop."));
        return lines;
    }

    private List<SheetLine> booster(Plan.SetUp set, String at) {
        List<SheetLine> lines = new ArrayList<>();
        if (set.booster().equals(BoosterState.TRAILING.word())) {
            if (set.regulatorPa() == null) {
                lines.add(SheetLine.toDo("Booster trailing: air as the maker's plate says; what it carries is not known here."));
            } else {
                lines.add(sources.say("Booster trailing: regulator at ").pressure(set.regulatorPa(), at + "/regulatorPa")
                        .words(".").toDo());
                window(set, lines);
            }
            if (set.shim() != null) {
                lines.add(SheetLine.toDo(set.shim().hasThickness()
                        ? "Shim at the booster joint: " + set.shim().name() + "."
                        : "No plate at the booster joint."));
            }
            lines.add(SheetLine.practice("Pivot lock off: the booster must steer freely going ahead."));
        } else if (set.booster().equals(BoosterState.NONE.word())) {
            lines.add(SheetLine.toDo("No booster: joint and lines capped, pins stowed."));
        } else {
            lines.add(SheetLine.toDo("Booster " + set.booster() + ": pinned and chained, air and electric lines stowed clear."));
        }
        return lines;
    }

    private void window(Plan.SetUp set, List<SheetLine> lines) {
        Optional<Sources.Loads> loads = sources.loads(set);
        LoadSheet.RegulatorLine regulator = loads.map(l -> l.sheet().regulator()).orElse(null);
        if (regulator != null && regulator.window() != null) {
            String at = loads.get().pointer() + "/regulator/window";
            lines.add(sources.say("Under the limits of the whole route between ")
                    .pressure(regulator.window().get(0), at + "/0").words(" and ")
                    .pressure(regulator.window().get(1), at + "/1").words(".").plain());
        }
    }
}
