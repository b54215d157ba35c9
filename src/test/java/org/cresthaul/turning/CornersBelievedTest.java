package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongFunction;
import org.cresthaul.language.Sentence;
import org.cresthaul.turning.IndependentCornerJudge.Judgment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the program says of corners against the independent judge, on {@link RandomCorners}. A few cases by default;
 * thousands so:
 *
 * <pre>
 * mvn test -Dtest=CornersBelievedTest#noClearIsWrong -Dcorners.judged=5000 -Dcorners.findings=target/corners.txt
 * mvn test -Dtest=CornersBelievedTest#contactIsSaidOnlyWhereARicherSearchFindsNoWay -Dcorners.contacts=300
 * </pre>
 *
 * {@code -Dcorners.from} is the first seed. Every disagreement is written to the file named, with its seed.
 */
class CornersBelievedTest {
    private static final int JUDGED = Integer.getInteger("corners.judged", 60);
    private static final int CONTACTS = Integer.getInteger("corners.contacts", 1);
    private static final long FROM = Long.getLong("corners.from", 0);

    /** No told gap may lie above the judge's by more, meters. */
    private static final double OPTIMISM_M = 0.001;
    /** Where a way is missed, it may leave no more room than this, meters. */
    private static final double MISSED_M = 0.05;

    @Test
    void noClearIsWrong() {
        noClearIsWrong(JUDGED, RandomCorners::of);
    }

    @Test
    void noClearIsWrongWithAJeep() {
        noClearIsWrong(JUDGED / 2, seed -> RandomCorners.of(seed).withJeep());
    }

    @Test
    void noClearIsWrongWithBoostersBehindOneAnother() {
        noClearIsWrong(JUDGED / 2, seed -> RandomCorners.of(seed).withBoosters());
    }

    @Test
    void noClearIsWrongWithWheelsThatTurn() {
        noClearIsWrong(JUDGED / 3, seed -> RandomCorners.of(seed).withSteering());
    }

    private static void noClearIsWrong(int cases, LongFunction<RandomCorners.Case> draw) {
        List<String> found = new ArrayList<>();
        double worst = 0;
        int passes = 0;
        for (long seed = FROM; seed < FROM + cases; seed++) {
            RandomCorners.Case c = draw.apply(seed);
            CornerAnswer answer = CornerAnswer.of(c.corner(), c.combination(), c.escorts());
            IndependentCornerJudge judge = new IndependentCornerJudge(c.corner(), c.escorts(), Optional.of(c.guide()));
            passes += answer.passes() ? 1 : 0;
            Optional<Sentence> proof = NoLine.find(new CornerSpace(c.corner(), c.escorts()), c.combination());
            assertTrue(proof.isEmpty() || !answer.passes(), () -> c + " passes, and yet " + proof);
            boolean best = true;
            for (CornerAnswer.Line line : answer.lines()) {
                Judgment judged = judge.of(c.combination(), line.path());
                String wrong = "";
                double above = line.reportedM() - judged.leastM();
                if (line.reportedM() > 0 && above > OPTIMISM_M) {
                    wrong += " told too large";
                    worst = Math.max(worst, above);
                }
                if (best && answer.passes() && judged.leastM() < 0) {
                    wrong += " WRONG CLEAR";
                }
                if (best && answer.passes() && !judged.withinLimits()) {
                    wrong += " limits not kept";
                }
                if (best && answer.passes() && !judged.whole()) {
                    wrong += " not a whole passage";
                }
                if (!wrong.isEmpty()) {
                    found.add(told(c, wrong, line, judged));
                }
                best = false;
            }
        }
        write(found);
        assertTrue(passes > cases / 5 && passes < cases * 4 / 5, "both kinds are among them: " + passes);
        assertTrue(
                found.isEmpty(),
                String.format(
                        Locale.ROOT,
                        "%d of %d lines, %d of %d corners pass; worst %.3f m:%n%s",
                        found.size(),
                        cases,
                        passes,
                        cases,
                        worst,
                        String.join("\n", found.subList(0, Math.min(40, found.size())))));
    }

    /**
     * A pole on the center line that escorts hold free (30029), a bend with an easy way that is hard to find (30048),
     * two roads at a sharp angle, where the way leads far ahead between both (30237), ground that juts from the inside
     * of the turn (30588), an S of two bends (30342) and an apron's nose (30648): the richer search found 0.80, 1.44,
     * 0.45, 1.69, 0.065 and 0.069 m of room. At 30097, ground that juts likewise, it finds none, and the judge holds
     * what is found here.
     */
    @ParameterizedTest
    @CsvSource({"30029, 0.3", "30048, 0.3", "30237, 0.3", "30588, 0.3", "30097, 0.1", "30342, 0.065", "30648, 0.069"})
    void aWayThatARicherSearchFoundIsFound(long seed, double roomM) {
        RandomCorners.Case c = RandomCorners.of(seed);
        CornerAnswer answer = CornerAnswer.of(c.corner(), c.combination(), c.escorts());
        Judgment judged = new IndependentCornerJudge(c.corner(), c.escorts(), Optional.of(c.guide()))
                .of(c.combination(), answer.lines().get(0).path());
        assertTrue(
                answer.passes() && judged.leastM() >= roomM && judged.withinLimits() && judged.whole(),
                judged.toString());
    }

    /** Tires astride an island of half a square meter, the steer axle's middle 2 mm beside the island's. */
    @Test
    void astrideAnIslandIsOnTheSideOnWhichTheLineIs() {
        RandomCorners.Case c = RandomCorners.of(422918);
        CornerAnswer.Line line = CornerAnswer.of(c.corner(), c.combination(), c.escorts())
                .lines()
                .get(0);
        Judgment judged = new IndependentCornerJudge(c.corner(), c.escorts(), Optional.of(c.guide()))
                .of(c.combination(), line.path());
        assertEquals(0, judged.wrongSides());
    }

    /**
     * What cutting the borrowed lane out of the opposing ones leaves is sharper than a hair here, and meters long: no
     * lane.
     */
    @ParameterizedTest
    @ValueSource(longs = {402255, 404489})
    void aSpikeThatIsLeftOfALaneIsNoLane(long seed) {
        RandomCorners.Case c = RandomCorners.of(seed);
        CornerAnswer.Line line = CornerAnswer.of(c.corner(), c.combination(), c.escorts())
                .lines()
                .get(0);
        Judgment judged = new IndependentCornerJudge(c.corner(), c.escorts(), Optional.of(c.guide()))
                .of(c.combination(), line.path());
        assertEquals(line.reportedM(), judged.leastM(), OPTIMISM_M);
    }

    @Test
    void contactIsSaidOnlyWhereARicherSearchFindsNoWay() {
        List<String> found = new ArrayList<>();
        int contacts = 0;
        int far = 0;
        for (long seed = FROM; contacts < CONTACTS; seed++) {
            RandomCorners.Case c = RandomCorners.of(seed);
            CornerAnswer answer = CornerAnswer.of(c.corner(), c.combination(), c.escorts());
            if (answer.passes()) {
                continue;
            }
            contacts++;
            Optional<RicherSearch.Found> way = new RicherSearch(c, 1).best(MISSED_M);
            if (way.isPresent() && way.get().leastM() >= 0) {
                far += way.get().leastM() > MISSED_M ? 1 : 0;
                found.add(String.format(
                        Locale.ROOT,
                        "%s: a way with %.3f m is missed; told is %.3f m",
                        c,
                        way.get().leastM(),
                        answer.lines().get(0).reportedM()));
            }
        }
        write(found);
        assertTrue(
                found.size() <= 0.05 * CONTACTS && far == 0,
                String.format(
                        Locale.ROOT,
                        "%d of %d contacts are none, %d of them by more than %.0f mm:%n%s",
                        found.size(),
                        CONTACTS,
                        far,
                        1000 * MISSED_M,
                        String.join("\n", found)));
    }

    private static String told(RandomCorners.Case c, String wrong, CornerAnswer.Line line, Judgment j) {
        return String.format(
                Locale.ROOT,
                "%s:%s; told %.4f m, judged %.4f m (%s, axle at %.1f, %.1f); bent %.4f m where the path ends, %.0f m more to be"
                        + " straight; askew %.6f, steer over %.5f rad, rate over %.4f, bend over %.5f rad, islands wrong %d",
                c,
                wrong,
                line.reportedM(),
                j.leastM(),
                j.where(),
                j.xM(),
                j.yM(),
                j.bentAtPathEndM(),
                j.drivenOnM(),
                j.askewRad(),
                j.steerExcessRad(),
                j.rateExcess(),
                j.articulationExcessRad(),
                j.wrongSides());
    }

    private static void write(List<String> found) {
        String to = System.getProperty("corners.findings");
        if (to == null) {
            return;
        }
        try {
            Files.write(Path.of(to), found, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
