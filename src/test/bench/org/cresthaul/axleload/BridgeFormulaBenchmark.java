package org.cresthaul.axleload;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import org.cresthaul.rig.AxleKind;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Every rule of the federal limits on every run of 13 axles, at 1,000 positions of a load. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 10, time = 1)
public class BridgeFormulaBenchmark {
    private static final int AXLES = 13;
    private static final int POSITIONS = 1_000;

    private List<AxlePlace> places;
    private List<AxleLoads> loads;

    @Setup
    public void placeAxlesAndLoad() {
        places = new ArrayList<>();
        double xM = 0;
        for (int i = 0; i < AXLES; i++) {
            AxleKind kind = i == 0 ? AxleKind.STEER : i < 4 ? AxleKind.DRIVE : AxleKind.TRAILER;
            places.add(new AxlePlace(kind, kind, i + 1, xM));
            xM -= i == 0 ? 4.6 : i == 3 ? 9 : i == 8 ? 10 : 1.38;
        }
        loads = new ArrayList<>();
        for (int p = 0; p < POSITIONS; p++) {
            double share = p / (POSITIONS - 1.0);
            List<AxleLoads.AxleLoad> axles = new ArrayList<>();
            for (int i = 0; i < AXLES; i++) {
                double kg = i == 0 ? 6_000 : i < 4 ? 9_500 - 2_500 * share : 7_000 + 2_000 * share;
                axles.add(new AxleLoads.AxleLoad(places.get(i), kg, OptionalDouble.empty()));
            }
            loads.add(new AxleLoads(axles, List.of(20_000.0), Optional.empty()));
        }
    }

    /** Rules made once, then held against the loads of every position. */
    @Benchmark
    public double rulesOnce() {
        List<LoadBound> bounds = WeightLimits.federal().boundsOn(places);
        double least = Double.POSITIVE_INFINITY;
        for (AxleLoads at : loads) {
            for (LoadBound bound : bounds) {
                least = Math.min(least, bound.marginKg(bound.loadKg(at)));
            }
        }
        return least;
    }

    /** The formula alone, computed anew for all 78 runs at every position. */
    @Benchmark
    public double formulaEveryTime() {
        double least = Double.POSITIVE_INFINITY;
        for (AxleLoads at : loads) {
            for (int first = 0; first < AXLES; first++) {
                double sumKg = at.axles().get(first).loadKg();
                for (int last = first + 1; last < AXLES; last++) {
                    sumKg += at.axles().get(last).loadKg();
                    int feet = BridgeFormula.feet(
                            places.get(first).xM() - places.get(last).xM());
                    double limitKg = BridgeFormula.pounds(feet, last - first + 1) * WeightLimits.POUND_KG;
                    least = Math.min(least, limitKg - sumKg);
                }
            }
        }
        return least;
    }
}
