package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;
import org.cresthaul.language.Sentence;
import org.cresthaul.road.Corner;
import org.cresthaul.road.RandomLayouts;
import org.cresthaul.turning.IndependentCornerJudge.Judgment;
import org.junit.jupiter.api.Test;

/**
 * What is said of U-turns, bends, forks, offset crossroads and gates against the independent judge; of a gate that is
 * the pull-out. More seeds: {@code mvn test -Dtest=LayoutsBelievedTest -Dlayouts.judged=500 -Dlayouts.from=1000}.
 */
class LayoutsBelievedTest {
    private static final int JUDGED = Integer.getInteger("layouts.judged", 40);
    private static final int FROM = Integer.getInteger("layouts.from", 0);
    /** No told gap may lie above the judge's by more, meters. */
    private static final double OPTIMISM_M = 0.001;

    @Test
    void noClearIsWrong() {
        List<String> found = new ArrayList<>();
        int passes = 0;
        for (int seed = FROM; seed < FROM + JUDGED; seed++) {
            Corner corner = RandomLayouts.of(new Random(seed), seed % 4 == 3).corner();
            boolean escorts = seed % 2 == 0 && corner.escorted().isPresent();
            TurningCombination rig = RandomRig.of(new SplittableRandom(seed));
            CornerAnswer answer = CornerAnswer.of(corner, rig, escorts);
            passes += answer.passes() ? 1 : 0;
            Optional<Sentence> proof = NoLine.find(new CornerSpace(corner, escorts), rig);
            assertTrue(proof.isEmpty() || !answer.passes(), "seed " + seed + " passes, and yet " + proof);
            CornerAnswer.Line line = answer.lines().get(0);
            Judgment judged = new IndependentCornerJudge(corner, escorts, corner.guide()).of(rig, line.path());
            boolean large = line.reportedM() > 0 && line.reportedM() - judged.leastM() > OPTIMISM_M;
            boolean wrong = answer.passes() && (judged.leastM() < 0 || !judged.withinLimits() || !judged.whole());
            if (large || wrong) {
                found.add(String.format(
                        Locale.ROOT,
                        "seed %d, %.0f degrees, %d units: told %.4f m, judged %.4f m%s",
                        seed,
                        Math.toDegrees(corner.turnRad()),
                        rig.units().size(),
                        line.reportedM(),
                        judged.leastM(),
                        wrong ? " WRONG CLEAR " + judged : ""));
            }
        }
        assertTrue(passes > JUDGED / 5 && passes < JUDGED, "both kinds are among them: " + passes);
        assertTrue(found.isEmpty(), String.join("\n", found));
    }
}
