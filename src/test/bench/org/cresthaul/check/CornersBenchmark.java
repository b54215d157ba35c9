package org.cresthaul.check;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.TimeUnit;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Margins;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.units.InputRejected;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * All four corners of the sample in every configuration, on all processors, side by side as a check has them. Each turn
 * asks for a margin some nanometers larger, so that none is answered by what the turn before found.
 */
@State(Scope.Benchmark)
@Fork(1)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 10)
@Measurement(iterations = 10)
public class CornersBenchmark {
    private final Route route;
    private final Rig rig;
    private final LevelStance stance;
    private int turn;

    public CornersBenchmark() {
        try {
            Path folder = Path.of("sample-routes");
            route = RouteFile.parse(Files.readAllBytes(folder.resolve("alder-county.route.geojson")));
            rig = RigFile.parse(Files.readAllBytes(folder.resolve("lowbed-loaded.rig.json")));
        } catch (IOException | InputRejected e) {
            throw new IllegalStateException(e);
        }
        stance = rig.stances().iterator().next();
    }

    @Benchmark
    public List<ReportCell> corners() {
        Margins usual = Margins.defaults();
        turn++;
        Margins margins = new Margins(
                usual.groundM(),
                usual.overheadM(),
                usual.sideM() + 2e-9 * turn,
                usual.lineM(),
                usual.turnInM(),
                usual.unitM());
        JoinedCorners joined = new JoinedCorners(route, stance);
        List<CheckedConfiguration> configurations = CheckedConfiguration.listOf(rig, stance);
        List<ForkJoinTask<List<ReportCell>>> tasks = new ArrayList<>();
        for (Hazard hazard : route.hazards()) {
            if (hazard instanceof RouteCorner corner) {
                tasks.add(ForkJoinTask.adapt(
                        () -> new CornerCells(joined.of(corner), rig, stance, margins).cells(configurations)));
            }
        }
        return ForkJoinTask.invokeAll(tasks).stream()
                .flatMap(task -> task.join().stream())
                .toList();
    }
}
