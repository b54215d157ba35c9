package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.check.CheckedConfiguration;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.NamesOfPlan;
import org.cresthaul.plan.Plan;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.UnitName;

/** A card for each configuration the plan uses: everything that is set, pinned or looked at before road speed. */
final class SetUpCards {
    static final String NO_PLATE = "none";
    private static final Sentence SECUREMENT = SheetLine.cited("49 CFR 392.9");

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
                        Sentence.of(Code.CARD_SET_UP)
                                .with("letter", sources.letterOf(s))
                                .with("label", NamesOfPlan.setUp(s))
                                .in(sources.catalog()),
                        sources.letterOf(s),
                        s.configuration(),
                        lines(s)))
                .toList();
    }

    private List<SheetLine> lines(Plan.SetUp set) {
        List<SheetLine> lines = new ArrayList<>();
        String at = sources.pointer(set);
        lines.add(sources.say(Code.SET_LENGTH)
                .at("length")
                .distance(set.lengthM(), at + "/lengthM")
                .plain()
                .as(SheetTopic.MEASURE));
        lines.add(sources.say(Code.SET_HEIGHT)
                .at("height")
                .required(sources.heightM(set, 0, 0), "rig:highest point at this set-up")
                .plain()
                .as(SheetTopic.MEASURE));
        lines.add(sources.gross(set).as(SheetTopic.MEASURE));
        lines.add(sources.practice(Code.SET_LOCK_PIN));
        if (rig.hasJeep()) {
            lines.add(sources.practice(Code.SET_JEEP));
        }
        lines.add(sources.say(Code.SET_NOTCH).with("notch", set.notch()).toDo().as(SheetTopic.NOTCH, set.notch()));
        lines.add(sources.practice(Code.SET_POWER_OUT).as(SheetTopic.POWER_TAKE_OFF, "out"));
        lines.add(sources.toDo(Code.SET_LEVELING).as(SheetTopic.LEVELING, "auto"));
        Say axles = sources.say(axles(set)).at("count").count(set.axles(), at + "/axles");
        if (!set.lift().named().isEmpty()) {
            axles = axles.with(
                    "raised", CheckedConfiguration.numbered(set.lift().named()));
        }
        lines.add(
                rig.hasLiftAxle()
                        ? axles.toDo().as(SheetTopic.LIFT_AXLE, set.lift().word())
                        : axles.plain());
        if (rig.hasBooster()) {
            lines.addAll(booster(set, at));
        }
        lines.addAll(sources.gauges(set));
        boolean carried = set.booster() == BoosterState.CARRIED;
        if (rig.isLoaded() || carried) {
            lines.addAll(securement(carried));
        }
        lines.add(sources.practice(Code.SET_AIR_UP));
        lines.add(sources.practice(Code.SET_WHEELS));
        return lines;
    }

    private Code axles(Plan.SetUp set) {
        boolean one = set.axles() == 1;
        if (!rig.hasLiftAxle()) {
            return one ? Code.SET_AXLE : Code.SET_AXLES;
        }
        if (!set.lift().named().isEmpty()) {
            return one ? Code.SET_AXLE_RAISED : Code.SET_AXLES_RAISED;
        }
        if (rig.hasLiftAxles()) {
            return Code.SET_AXLES_ALL_DOWN;
        }
        return set.lift().isUp()
                ? one ? Code.SET_AXLE_UP : Code.SET_AXLES_UP
                : one ? Code.SET_AXLE_DOWN : Code.SET_AXLES_DOWN;
    }

    /** Securement and when it is looked at again. */
    private List<SheetLine> securement(boolean carried) {
        List<SheetLine> lines = new ArrayList<>();
        Code what = rig.isLoaded() ? carried ? Code.SET_CHAINS_BOTH : Code.SET_CHAINS_LOAD : Code.SET_CHAINS_BOOSTER;
        lines.add(sources.required(what, SECUREMENT).as(SheetTopic.CHAINS, "tight"));
        if (rig.isHeavyLoaded()) {
            lines.add(sources.required(Code.SET_MACHINE, SheetLine.cited("49 CFR 393.130")));
        }
        lines.add(sources.rule(Code.SET_LOOK_AGAIN, SECUREMENT));
        return lines;
    }

    private List<SheetLine> booster(Plan.SetUp set, String at) {
        if (set.booster() == BoosterState.TRAILING) {
            return trailing(set, at);
        }
        List<SheetLine> lines = new ArrayList<>();
        if (set.booster() == BoosterState.CLOSE_COUPLED) {
            lines.add(sources.toDo(Code.SET_CLOSE_COUPLED)
                    .as(SheetTopic.BOOSTER, set.booster().word()));
            lines.add(sources.practice(Code.SET_CLOSE_LINES).as(SheetTopic.BOOSTER_LINES, "connected"));
            return lines;
        }
        boolean carried = set.booster() == BoosterState.CARRIED;
        lines.add(sources.toDo(carried ? Code.SET_CARRIED : Code.SET_NO_BOOSTER)
                .as(SheetTopic.BOOSTER, set.booster().word()));
        lines.add(sources.practice(Code.SET_LINES_CAPPED).as(SheetTopic.BOOSTER_LINES, "capped"));
        return lines;
    }

    private List<SheetLine> trailing(Plan.SetUp set, String at) {
        List<SheetLine> lines = new ArrayList<>();
        lines.add(sources.toDo(Code.SET_TRAILING)
                .as(SheetTopic.BOOSTER, set.booster().word()));
        lines.add(sources.practice(Code.SET_TRAILING_LINES).as(SheetTopic.BOOSTER_LINES, "connected"));
        lines.add(
                set.regulatorPa() == null
                        ? sources.toDo(Code.SET_AIR_UNKNOWN)
                        : sources.say(Code.SET_REGULATOR)
                                .at("pressure")
                                .pressure(set.regulatorPa(), at + "/regulatorPa")
                                .toDo()
                                .as(SheetTopic.REGULATOR, "on"));
        if (set.shim() != null) {
            lines.add(
                    set.shim().hasThickness()
                            ? sources.say(Code.SET_SHIM)
                                    .with("plate", set.shim().name())
                                    .toDo()
                                    .as(SheetTopic.PLATE, set.shim().name())
                            : sources.toDo(Code.SET_NO_PLATE).as(SheetTopic.PLATE, NO_PLATE));
        }
        lines.add(sources.practice(Code.SET_PIVOT_OFF).as(SheetTopic.PIVOT_LOCK, "off"));
        for (UnitName behind : rig.boostersBehind()) {
            lines.add(sources.say(Code.SET_TRAILING_BEHIND)
                    .with("unit", Names.of(behind.word()))
                    .toDo()
                    .from(SheetLine.PRACTICE));
        }
        return lines;
    }
}
