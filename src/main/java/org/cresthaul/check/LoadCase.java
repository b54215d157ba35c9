package org.cresthaul.check;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.cresthaul.axleload.GaugeChart;
import org.cresthaul.axleload.Statics;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Weights;

/**
 * A stance in one state of lift axle and booster, its loads known or not.
 *
 * @param weights empty when nothing is known
 * @param boosterKg what the regulator sets on a trailing booster's axle; zero in other states
 * @param unknown why its loads are not known; empty when they are
 */
public record LoadCase(
        LevelStance stance,
        LiftState lift,
        BoosterState booster,
        Optional<Weights> weights,
        double boosterKg,
        Optional<Sentence> unknown) {
    public static LoadCase of(LevelStance stance, LiftState lift, BoosterState booster) {
        return of(stance, lift, booster, OptionalDouble.empty());
    }

    /** @param setPa what the regulator is set to instead of the rig file's */
    public static LoadCase of(LevelStance stance, LiftState lift, BoosterState booster, OptionalDouble setPa) {
        if (stance.weights().isEmpty()) {
            return unknown(stance, lift, booster, Code.LOADS_NO_WEIGHTS);
        }
        Weights weights = stance.weights().get();
        if (booster == BoosterState.CARRIED
                && weights.booster().flatMap(Weights.BoosterWeight::carried).isEmpty()) {
            return unknown(stance, lift, booster, Code.LOADS_CARRIED_BOOSTER);
        }
        if (booster != BoosterState.TRAILING) {
            return new LoadCase(stance, lift, booster, stance.weights(), 0, Optional.empty());
        }
        if (weights.gauges().booster().isEmpty() || weights.regulator().isEmpty() && setPa.isEmpty()) {
            return unknown(stance, lift, booster, Code.LOADS_REGULATOR);
        }
        double pascals = setPa.isPresent()
                ? setPa.getAsDouble()
                : weights.regulator().orElseThrow().setPa();
        OptionalDouble kg = new GaugeChart(weights.gauges().booster().get()).loadKg(pascals);
        if (kg.isEmpty()) {
            return unknown(stance, lift, booster, Code.LOADS_CHART);
        }
        return new LoadCase(stance, lift, booster, stance.weights(), kg.getAsDouble(), Optional.empty());
    }

    private static LoadCase unknown(LevelStance stance, LiftState lift, BoosterState booster, Code why) {
        return new LoadCase(stance, lift, booster, Optional.empty(), 0, Optional.of(Sentence.of(why)));
    }

    public boolean isKnown() {
        return unknown.isEmpty();
    }

    /** Only when known. */
    public Statics statics() {
        return statics(weights.orElseThrow(), boosterKg);
    }

    public Statics statics(Weights others, double onBoosterKg) {
        return new Statics(stance, others, lift, booster, onBoosterKg);
    }

    /** On each axle of every booster, front to rear. */
    public Statics statics(List<Double> onBoostersKg) {
        return new Statics(stance, weights.orElseThrow(), lift, booster, onBoostersKg);
    }

    /**
     * What stands on each axle of trailing boosters, front to rear, at both ends of the accuracy of every chart: every
     * load is least and greatest at one of these. Empty where no chart is off.
     */
    List<List<Double>> boosterRangesKg() {
        if (booster != BoosterState.TRAILING || weights.isEmpty()) {
            return List.of();
        }
        double off = weights.get().gauges().booster().map(ChartPoints::accuracy).orElse(0.0);
        List<List<Double>> all = behindRangesKg().stream()
                .flatMap(behind -> ends(boosterKg, off).stream()
                        .map(first ->
                                Stream.concat(Stream.of(first), behind.stream()).toList()))
                .toList();
        return all.size() == 1 ? List.of() : all;
    }

    /** Of the boosters behind the first alone, one list for each combination of ends; without any, one empty list. */
    List<List<Double>> behindRangesKg() {
        List<List<Double>> all = List.of(List.of());
        for (Weights.BoosterBehind behind : weights.orElseThrow().boostersBehind()) {
            List<Double> ends = ends(Statics.setKg(behind), behind.gauge().accuracy());
            all = all.stream()
                    .flatMap(ahead -> ends.stream()
                            .map(end -> Stream.concat(ahead.stream(), Stream.of(end))
                                    .toList()))
                    .toList();
        }
        return all;
    }

    private static List<Double> ends(double kg, double off) {
        return off == 0 || kg == 0 ? List.of(kg) : List.of(kg * (1 - off), kg * (1 + off));
    }

    public Optional<ChartPoints> trailerChart() {
        // A close-coupled booster breathes the trailer's air: its pressure stands for every axle of the group.
        return weights.flatMap(w -> lift.isUp()
                ? stance.trailer()
                        .lift()
                        .find(lift)
                        .flatMap(LiftAxles.Raised::gauge)
                        .or(() -> lift.equals(LiftState.UP) ? w.gauges().trailerUp() : Optional.empty())
                : w.gauges().trailerDown());
    }

    int axles() {
        return stance.axlesDown(lift);
    }

    /** Every state of a stance, in the order of its configurations. */
    static List<LoadCase> listOf(LevelStance stance) {
        return stance.boosterStates().stream()
                .flatMap(b -> stance.liftStates().stream().map(l -> of(stance, l, b)))
                .toList();
    }
}
