package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Notch;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Setting;

/** One configuration of a rig in transport: lift axle, booster and notch. */
public record CheckedConfiguration(LiftState lift, BoosterState booster, Notch notch, int axles) {
    /** Every configuration of a stance: by booster state, lift state, then notch from the lowest. */
    public static List<CheckedConfiguration> listOf(Rig rig, LevelStance stance) {
        List<CheckedConfiguration> all = new ArrayList<>();
        for (BoosterState booster : stance.boosterStates()) {
            for (LiftState lift : stance.liftStates()) {
                for (Notch notch : rig.notches()) {
                    all.add(new CheckedConfiguration(lift, booster, notch, stance.axlesDown(lift)));
                }
            }
        }
        return all;
    }

    /** Short name, unique within the rig: "down/none/3". */
    public String key() {
        return lift.word() + "/" + booster.word() + "/" + notch.name();
    }

    /** For people, without the notch: "3 axles · booster trailing". */
    Sentence stateLabel() {
        return Sentence.of(Code.LABEL_STATE).with("axles", axles(axles, lift)).with("booster", said(booster));
    }

    /** For people: "3 axles · booster trailing · notch 2". */
    public Sentence label() {
        return label(axles, lift, booster, notch.name());
    }

    /** The same of a configuration that is known by these alone. */
    public static Sentence label(int axles, LiftState lift, BoosterState booster, String notch) {
        return Sentence.of(Code.LABEL)
                .with("axles", axles(axles, lift))
                .with("booster", said(booster))
                .with("notch", notch);
    }

    /** "3 axles" */
    public static Sentence axles(int count) {
        return Sentence.of(count == 1 ? Code.AXLES_ONE : Code.AXLES_MANY).with("count", count);
    }

    /** "3 axles", or "3 axles, axle 4 up" where there are several lift axles. */
    public static Sentence axles(int count, LiftState lift) {
        return lift.named().isEmpty()
                ? axles(count)
                : Sentence.of(Code.AXLES_RAISED).with("axles", axles(count)).with("raised", numbered(lift.named()));
    }

    /** "axle 4", "axles 3, 4" */
    public static Sentence numbered(List<Integer> numbers) {
        return Sentence.of(numbers.size() == 1 ? Code.NUMBERED_ONE : Code.NUMBERED_MANY)
                .with("numbers", numbers.stream().map(String::valueOf).collect(Collectors.joining(", ")));
    }

    private static Sentence said(BoosterState state) {
        return Sentence.of(
                switch (state) {
                    case NONE -> Code.LABEL_BOOSTER_NONE;
                    case TRAILING -> Code.LABEL_BOOSTER_TRAILING;
                    case CLOSE_COUPLED -> Code.LABEL_BOOSTER_CLOSE_COUPLED;
                    case CARRIED -> Code.LABEL_BOOSTER_CARRIED;
                });
    }

    /** The same state at another notch. */
    public CheckedConfiguration at(Notch other) {
        return new CheckedConfiguration(lift, booster, other, axles);
    }

    public Setting transport() {
        return Setting.transport(lift, booster, notch);
    }
}
