package org.cresthaul.exchange.osm;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Measures what candidates and base map of {@link BigExtract} take: {@code docs/benchmarks.md} says how it is run. */
public final class MapMeasure {
    private MapMeasure() {}

    public static void main(String[] arguments) throws Exception {
        Path file = Path.of(arguments[0]);
        boolean xml = arguments[0].endsWith(".osm");
        if (!Files.exists(file)) {
            BigExtract.write(file, xml, Integer.parseInt(arguments[1]));
            System.out.printf("written: %,d bytes%n", Files.size(file));
            return;
        }
        List<MapExtract> extracts = List.of(MapExtract.of(file));
        double cpu = cpuS();
        long start = System.nanoTime();
        MapAlong along = MapAlong.of(extracts, List.of(BigExtract.track()), MapProgress.UNTOLD);
        told("candidates", cpu, start);
        long crossings = along.candidates().stream()
                .filter(c -> c.kind() == MapCandidate.Kind.RAIL_CROSSING)
                .count();
        long bridges = along.candidates().stream()
                .filter(c -> c.kind() == MapCandidate.Kind.STRUCTURE_OVER)
                .count();
        System.out.printf(
                Locale.ROOT,
                "  %.1f km, %d of %d crossings, %d of %d bridges%n",
                along.line().lengthM() / 1000,
                crossings,
                BigExtract.CROSSINGS,
                bridges,
                BigExtract.BRIDGES);
        cpu = cpuS();
        start = System.nanoTime();
        BaseMap map = BaseMapCut.of(extracts, BigExtract.track(), MapProgress.UNTOLD);
        told("base map", cpu, start);
        System.out.println("  " + map.shapes().size() + " shapes, whole " + map.whole());
        System.exit(crossings == BigExtract.CROSSINGS && bridges == BigExtract.BRIDGES ? 0 : 1);
    }

    private static double cpuS() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                        .getProcessCpuTime()
                * 1e-9;
    }

    private static void told(String what, double cpuFromS, long from) {
        System.out.printf(
                Locale.ROOT, "%s: %.1f s CPU, %.1f s%n", what, cpuS() - cpuFromS, (System.nanoTime() - from) * 1e-9);
    }
}
