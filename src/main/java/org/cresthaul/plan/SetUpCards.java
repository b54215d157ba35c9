package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;

/** A card for each configuration the plan uses: everything that is set, pinned or looked at before road speed. */
final class SetUpCards {
    static final String LIFT_AXLE = "lift axle";
    static final String NOTCH = "notch";
    static final String LEVELING = "leveling";
    static final String BOOSTER = "booster";
    static final String BOOSTER_LINES = "booster air and light lines";
    static final String PIVOT_LOCK = "pivot lock";
    static final String REGULATOR = "booster regulator";
    static final String PLATE = "plate at the booster joint";
    static final String NO_PLATE = "none";
    static final String POWER_TAKE_OFF = "power take-off";
    static final String CHAINS = "chains";

    private final Sources sources;
    private final Equipment rig;

    SetUpCards(Sources sources) {
        this.sources = sources;
        rig = sources.equipment();
    }

    List<RunSheet.Card> list() {
        return sources.setUps().stream()
                .map(s -> new RunSheet.Card(
                        CardKind.SET_UP,
                        "Set-up " + sources.letterOf(s) + ": " + s.label(),
                        sources.letterOf(s),
                        s.configuration(),
                        lines(s)))
                .toList();
    }

    private List<SheetLine> lines(Plan.SetUp set) {
        List<SheetLine> lines = new ArrayList<>();
        String at = sources.pointer(set);
        lines.add(sources.say("Length ")
                .distance(set.lengthM(), at + "/lengthM")
                .words(". ")
                .plain());
        lines.add(SheetLine.practice("Gooseneck lock pin in and its keeper on: seen by a second person."));
        lines.add(SheetLine.toDo("Transport stops at notch " + set.notch() + ", deck down on them, both sides.")
                .as(NOTCH, set.notch()));
        lines.add(SheetLine.practice("Power take-off out.").as(POWER_TAKE_OFF, "out"));
        lines.add(SheetLine.toDo("Leveling valve in auto.").as(LEVELING, "auto"));
        Say axles = sources.say("")
                .count(set.axles(), at + "/axles")
                .words((set.axles() == 1 ? " trailer axle" : " trailer axles") + " on the road");
        if (rig.hasLiftAxle()) {
            boolean up = set.lift() == LiftState.UP;
            lines.add(axles.words(up ? ": lift axle up, tires clear of the road." : ": lift axle down.")
                    .toDo()
                    .as(LIFT_AXLE, set.lift().word()));
        } else {
            lines.add(axles.words(".").plain());
        }
        if (rig.hasBooster()) {
            lines.addAll(booster(set, at));
        }
        lines.addAll(sources.gauges(set));
        boolean carried = set.booster() == BoosterState.CARRIED;
        if (rig.isLoaded() || carried) {
            lines.addAll(securement(carried));
        }
        lines.add(SheetLine.practice(
                "Air up, brakes tried on every axle; lights, strobes, flags and signs, front to rear."));
        lines.add(SheetLine.practice("Wheel nuts, hub oil, tires: look and feel at every stop."));
        return lines;
    }

    /** Securement and when it is looked at again. */
    private List<SheetLine> securement(boolean carried) {
        List<SheetLine> lines = new ArrayList<>();
        String what = rig.isLoaded() ? carried ? "load and the carried booster" : "load" : "carried booster";
        lines.add(SheetLine.required("Chains and binders on the " + what + " tight.", "49 CFR 392.9")
                .as(CHAINS, "tight"));
        if (rig.isHeavyLoaded()) {
            lines.add(SheetLine.required(
                    "Machine of 10,000 lb or more: attachments lowered and secured to the deck, articulation"
                            + " locked; at least four tie-downs, front and rear, each side.",
                    "49 CFR 393.130"));
        }
        lines.add(SheetLine.rule(
                "Look at them again within the first 50 miles, then every 150 miles or 3 hours, whichever comes"
                        + " first, and at every change of duty status.",
                "49 CFR 392.9"));
        return lines;
    }

    private List<SheetLine> booster(Plan.SetUp set, String at) {
        if (set.booster() == BoosterState.TRAILING) {
            return trailing(set, at);
        }
        List<SheetLine> lines = new ArrayList<>();
        if (set.booster() == BoosterState.CLOSE_COUPLED) {
            lines.add(SheetLine.toDo("Booster close-coupled: pinned as the maker says.")
                    .as(BOOSTER, set.booster().word()));
            lines.add(SheetLine.practice(
                            "Booster's air, brake, spring-air and light lines connected: its axle carries and brakes"
                                    + " with the trailer's.")
                    .as(BOOSTER_LINES, "connected"));
            return lines;
        }
        boolean carried = set.booster() == BoosterState.CARRIED;
        lines.add(SheetLine.toDo(
                        carried ? "Booster carried on the deck, its wheels chocked." : "No booster behind the trailer.")
                .as(BOOSTER, set.booster().word()));
        lines.add(SheetLine.practice(
                        "Lines to the booster off and capped at the trailer, joint pins stowed; the trailer's own tail"
                                + " lights and plate show.")
                .as(BOOSTER_LINES, "capped"));
        return lines;
    }

    private List<SheetLine> trailing(Plan.SetUp set, String at) {
        List<SheetLine> lines = new ArrayList<>();
        lines.add(SheetLine.toDo("Booster trailing: joint pinned, keepers on.")
                .as(BOOSTER, set.booster().word()));
        lines.add(SheetLine.practice("Booster's air, brake and light lines connected.")
                .as(BOOSTER_LINES, "connected"));
        if (set.regulatorPa() == null) {
            lines.add(SheetLine.toDo("Booster air as the maker's plate says; unknown what its axle carries."));
        } else {
            lines.add(sources.say("Booster regulator at ")
                    .pressure(set.regulatorPa(), at + "/regulatorPa")
                    .words(".")
                    .toDo()
                    .as(REGULATOR, "on"));
        }
        if (set.shim() != null) {
            lines.add(
                    set.shim().hasThickness()
                            ? SheetLine.toDo("Shim at the booster joint: "
                                            + set.shim().name() + ".")
                                    .as(PLATE, set.shim().name())
                            : SheetLine.toDo("No plate at the booster joint.").as(PLATE, NO_PLATE));
        }
        lines.add(SheetLine.practice("Pivot lock off: the booster must steer freely going ahead.")
                .as(PIVOT_LOCK, "off"));
        return lines;
    }
}
