package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Notch;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RouteLine;
import org.cresthaul.route.StoppingPlace;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The plan of a route in 100 configurations, with a stop between each two hazards: the most changes there can be. Each
 * hazard lets four configurations of five through.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 8, time = 1)
public class PlanBenchmark {
    private static final double APART_M = 70;
    private static final int NOTCHES = 25;

    @Param({"250", "500", "1000", "2000"})
    public int hazards;

    private PlanCase open;
    private PlanCase blocked;

    @Setup
    public void invent() {
        open = invented(0);
        blocked = invented(10);
        if (open.plan().outcome() == Outcome.BLOCKED
                || blocked.plan().blocking().size() != 10) {
            throw new IllegalStateException("not the cases that were meant");
        }
    }

    /** So many of the hazards, evenly spread, let no configuration through. */
    private PlanCase invented(int shut) {
        SplittableRandom random = new SplittableRandom(20260308);
        RouteLine.Builder builder = new RouteLine.Builder();
        for (double lon = -93.1; lon < -91.2; lon += 0.1) {
            builder.add(new LonLat(lon, 44.6));
        }
        Rig four = PlanCase.rig("none", "trailing", "close-coupled", "carried");
        List<Notch> notches = new ArrayList<>();
        for (int i = 0; i < NOTCHES; i++) {
            notches.add(new Notch("" + i, 0.01 * i));
        }
        Rig rig = new Rig(four.name(), "", four.measurement(), four.ride(), notches, four.stances());
        List<ConfigurationVerdict> configurations = PlanCase.configurations(rig, List.of());
        List<Hazard> met = new ArrayList<>();
        List<HazardFindings> findings = new ArrayList<>();
        List<StoppingPlace> stops = new ArrayList<>();
        for (int i = 0; i < hazards; i++) {
            Hazard hazard = PlanCase.crossing("H" + i, APART_M * i + 10);
            boolean none = shut > 0 && i % (hazards / shut) == 5;
            met.add(hazard);
            findings.add(PlanCase.findings(
                    hazard,
                    List.of(-2.0, 2.0),
                    configurations.stream()
                            .map(c -> PlanCase.cell(c, none || random.nextInt(5) == 0 ? "contact" : "clear", null))
                            .toList()));
            stops.add(PlanCase.stop("P" + i, APART_M * i + 60, true, 80));
        }
        LevelStance stance = rig.stances().get(0);
        return new PlanCase(
                PlanCase.routeOf(builder.build(), met, stops),
                stance,
                PlanCase.report(rig, findings, List.of()),
                PlanOptions.defaults(),
                (h, c, f, r) -> Optional.empty());
    }

    /** From the report to the plan with its steps. */
    @Benchmark
    public Plan wayThrough() {
        return open.plan();
    }

    /** The same where ten hazards let nothing through: the smallest block, then the way past it. */
    @Benchmark
    public Plan noWayThrough() {
        return blocked.plan();
    }
}
