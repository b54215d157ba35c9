package org.cresthaul.turning;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cresthaul.road.Corner;
import org.locationtech.jts.geom.Geometry;
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
 * Following three units round a corner with a state every 0.25 m within 2 mm, against Hipparchus' Dormand–Prince 8(5,3)
 * with dense output at the loosest tolerance that keeps 2 mm; a corner's search; and swept areas over paths of one, two
 * and four lengths. Compare only numbers of one run on one machine.
 */
@State(Scope.Benchmark)
@Fork(1)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class TurningBenchmark {
    /** Found by trying powers of ten: the loosest that keeps 2 mm on this path, see the check in the constructor. */
    private static final double TOLERANCE = 1e-4;

    private final List<TurningUnit> chain =
            List.of(new TurningUnit(5.8, -0.3), new TurningUnit(12.5, 2.2), new TurningUnit(2.4, 0));
    private final LeadPath path = LeadPath.from(0, 0, 0)
            .line(20)
            .turn(Math.PI / 2, 1 / 12.0, 0.015)
            .line(35)
            .build();
    private final double[] stations;
    private final Corner corner = CornerCases.junction(-90, 4, 4, 25, true);
    private final TurningCombination lowbed = CornerCases.lowbed(12.5, 2.4);
    private final Track[] tracks = new Track[3];

    public TurningBenchmark() {
        Track track = Following.along(chain, path);
        stations = new double[track.size()];
        for (int i = 0; i < stations.length; i++) {
            stations[i] = track.stationM(i);
        }
        double[][] exact = new ReferenceFollowing(chain, path, 1e-12).headingsAt(stations, new double[3]);
        double[][] loose = new ReferenceFollowing(chain, path, TOLERANCE).headingsAt(stations, new double[3]);
        double worst = 0;
        double own = 0;
        for (int i = 0; i < stations.length; i++) {
            double reach = 0;
            double ours = 0;
            for (int k = 0; k < 3; k++) {
                double arm = chain.get(k).hitchToAxleM() + Math.abs(chain.get(k).couplingBehindM());
                reach += arm * Math.abs(exact[i][k] - loose[i][k]);
                ours += arm * Math.abs(exact[i][k] - track.headingRad(i, k));
            }
            worst = Math.max(worst, reach);
            own = Math.max(own, ours);
        }
        System.out.printf("within: integrator %.6f m, steps %.6f m, %d states%n", worst, own, stations.length);
        if (worst > 0.002 || own > 0.002) {
            throw new IllegalStateException("not the same accuracy: " + worst + " and " + own);
        }
        for (int i = 0; i < 3; i++) {
            LeadPath.Builder longer = LeadPath.from(0, 0, 0);
            for (int j = 0; j < 1 << i; j++) {
                longer.line(20).turn(1, 0.06, 0.015).line(20).turn(-1, 0.06, 0.015);
            }
            tracks[i] = Following.along(lowbed.chain(), longer.build());
        }
    }

    @Benchmark
    public Track steps() {
        return Following.along(chain, path);
    }

    @Benchmark
    public double[][] integrator() {
        return new ReferenceFollowing(chain, path, TOLERANCE).headingsAt(stations, new double[3]);
    }

    @Benchmark
    public CornerFit search() {
        return CornerFit.of(
                new CornerSpace(corner, false), lowbed, java.util.List.of(), new CornerFit.Wanted(0.36, 0.06, 0.61));
    }

    @Benchmark
    public Geometry sweptOnce() {
        return SweptArea.ofBodies(tracks[0], 1, lowbed.units().get(1));
    }

    @Benchmark
    public Geometry sweptTwice() {
        return SweptArea.ofBodies(tracks[1], 1, lowbed.units().get(1));
    }

    @Benchmark
    public Geometry sweptFourTimes() {
        return SweptArea.ofBodies(tracks[2], 1, lowbed.units().get(1));
    }
}
