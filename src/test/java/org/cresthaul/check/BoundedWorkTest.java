package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.geometry.WorkStopped;
import org.cresthaul.language.English;
import org.cresthaul.report.Margins;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.RangeRigs;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.RangeRoads;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;

/**
 * Whatever small files say within docs/file-formats.md, the work at a hazard ends; what the dearest setting costs of
 * one processor is printed: drawn at random, and from the worst drawn climbed to worse ones.
 */
class BoundedWorkTest {
    private static final long SEED = Long.getLong("cresthaul.seed", 20_261_128L);
    /** {@code -Dcresthaul.rigs=...} draws more. */
    private static final int RIGS = Integer.getInteger("cresthaul.rigs", 20);

    private static final int CLIMBS = Integer.getInteger("cresthaul.climbs", 8);
    /** Work that runs away takes minutes; what it takes is printed, and is no matter for a test. */
    private static final double MOST_S = 20;
    /** Work that runs away must not take the test with it. */
    private static final long GIVE_UP_MS = 20_000;

    /** Two files and what their dearest setting took. */
    private record Case(String rig, String route, double worstS, int cells, int undecided) {}

    @Test
    void everySettingEndsWhateverTheFilesSay() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(SEED);
        Case worst = null;
        int cells = 0;
        int undecided = 0;
        for (int i = 0; i < RIGS; i++) {
            Case drawn = measured(RangeRigs.text(random), route(random));
            cells += drawn.cells;
            undecided += drawn.undecided;
            worst = worst == null || drawn.worstS > worst.worstS ? drawn : worst;
        }
        double byChance = worst.worstS;
        for (int i = 0; i < CLIMBS; i++) {
            Optional<Case> next = changed(worst, random);
            if (next.isPresent() && next.get().worstS > worst.worstS) {
                worst = next.get();
            }
        }
        System.out.printf(
                Locale.ROOT,
                "bounded work, seed %d: %d rigs, %d settings, %d undecided; worst %.2f s by chance, %.2f s by search%n",
                SEED,
                RIGS,
                cells,
                undecided,
                byChance,
                worst.worstS);
        assertTrue(cells > RIGS && undecided > 0 && undecided < cells, "both must occur");
        assertTrue(
                worst.worstS <= MOST_S, worst.worstS + " s with seed " + SEED + "\n" + worst.rig + "\n" + worst.route);
    }

    /** Filed: a 528-byte route with one structure and a rig whose trailer a notch stood on end ran out of 1 GB. */
    @Test
    void aStructureOverAllTheRoadThatAFileMayTellOfIsCheap() {
        String route = """
                {"type":"FeatureCollection","cresthaul":"route/1","name":"r","features":[
                {"type":"Feature","properties":{"route":"a"},"geometry":{"type":"LineString","coordinates":
                [[-93.1,44.6],[-93.08,44.6]]}},{"type":"Feature","geometry":{"type":"Point","coordinates":[-93.09,44.6]},
                "properties":{"id":"H","name":"h","hazard":"low-structure","measured":"posted","clearance":"4 m",
                "extent":["-2000 m","2000 m"]}}]}
                """;
        assertTrue(route.length() < 528);
        Case worst = null;
        for (int seed = 0; seed < 30; seed++) {
            RandomGenerator random =
                    RandomGeneratorFactory.of("L64X128MixRandom").create(SEED + seed);
            Case drawn = measured(RangeRigs.text(random), route);
            worst = worst == null || drawn.worstS > worst.worstS ? drawn : worst;
        }
        assertTrue(worst.worstS <= MOST_S, worst.worstS + " s: " + worst.rig);
    }

    /** What is not decided says so, why, and what to change; it is never clear. */
    @Test
    void whatCannotBeDecidedSaysWhyAndWhatToChange() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(SEED + 1);
        int seen = 0;
        for (int i = 0; i < 30 && seen < 12; i++) {
            Rig rig = RangeRigs.read(RangeRigs.text(random)).orElseThrow();
            Hazard hazard = read(route(random)).orElseThrow().hazards().get(0);
            HazardCheck check = new HazardCheck(hazard, rig, rig.stances().get(0), Margins.defaults());
            CheckedConfiguration first =
                    CheckedConfiguration.listOf(rig, rig.stances().get(0)).get(0);
            ReportCell cell = check.cell(first);
            for (String reason : English.of(cell.reasons())) {
                if (reason.contains("could not be decided")) {
                    seen++;
                    assertEquals(Verdict.CONTACT, cell.verdict());
                    assertTrue(reason.contains("Check the") || reason.contains("leave out"), reason);
                }
            }
        }
        assertTrue(seen > 3, "seen " + seen);
    }

    private static String route(RandomGenerator random) {
        while (true) {
            String text = RangeRoads.text(random);
            if (read(text).isPresent()) {
                return text;
            }
        }
    }

    private static Optional<Route> read(String text) {
        try {
            return Optional.of(RouteFile.parse(text));
        } catch (InputRejected e) {
            return Optional.empty();
        }
    }

    private static final Pattern METERS = Pattern.compile("\"-?[0-9.]+ m\"");

    /** One length of one of the files changed to another; empty where the reader refuses that. */
    private static Optional<Case> changed(Case from, RandomGenerator random) {
        for (int trial = 0; trial < 50; trial++) {
            boolean ofRig = random.nextBoolean();
            String text = ofRig ? from.rig : from.route;
            int count = (int) METERS.matcher(text).results().count();
            if (count == 0) {
                continue;
            }
            MatchResult at = METERS.matcher(text)
                    .results()
                    .skip(random.nextInt(count))
                    .findFirst()
                    .orElseThrow();
            double was = Double.parseDouble(text.substring(at.start() + 1, at.end() - 3));
            double now = random.nextBoolean() ? was * random.nextDouble(0, 2) : was + random.nextDouble(-0.5, 0.5);
            String other = text.substring(0, at.start())
                    + String.format(Locale.ROOT, "\"%.4f m\"", now)
                    + text.substring(at.end());
            if (ofRig ? RangeRigs.read(other).isPresent() : read(other).isPresent()) {
                return Optional.of(ofRig ? measured(other, from.route) : measured(from.rig, other));
            }
        }
        return Optional.empty();
    }

    private static Case measured(String rigText, String routeText) {
        Rig rig = RangeRigs.read(rigText).orElseThrow();
        Hazard hazard = read(routeText).orElseThrow().hazards().get(0);
        StopSignal stop = new StopSignal();
        AtomicReference<Case> found = new AtomicReference<>();
        Thread work = new Thread(() -> {
            try {
                found.set(stop.during(() -> measured(rigText, routeText, rig, hazard)));
            } catch (WorkStopped e) {
                found.set(new Case(rigText, routeText, GIVE_UP_MS / 1000.0, 1, 0));
            }
        });
        work.start();
        try {
            work.join(GIVE_UP_MS);
            stop.give();
            work.join();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        return found.get();
    }

    private static Case measured(String rigText, String routeText, Rig rig, Hazard hazard) {
        double worstS = 0;
        int cells = 0;
        int undecided = 0;
        HazardCheck check = new HazardCheck(hazard, rig, rig.stances().get(0), Margins.defaults());
        for (CheckedConfiguration c :
                CheckedConfiguration.listOf(rig, rig.stances().get(0))) {
            long before = cpuNs();
            ReportCell cell = check.cell(c);
            worstS = Math.max(worstS, (cpuNs() - before) * 1e-9);
            cells++;
            boolean open = cell.reasons().stream().anyMatch(r -> r.toString().contains("could not be decided"));
            undecided += open ? 1 : 0;
            assertTrue(!open || cell.verdict() != Verdict.CLEAR, "clear, though not decided");
        }
        return new Case(rigText, routeText, worstS, cells, undecided);
    }

    private static long cpuNs() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }
}
