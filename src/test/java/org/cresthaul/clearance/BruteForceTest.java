package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.cresthaul.posture.PlainGround;
import org.cresthaul.posture.RandomProfiles;
import org.cresthaul.posture.RandomRigs;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.junit.jupiter.api.Test;

/** The check of the check: the independent solver against still plainer looks at the same definitions. */
class BruteForceTest {
    private static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    @Test
    void aWheelStandsWhereTrialOfEveryPointOfItsCirclePutsIt() {
        RandomGenerator random = random(1);
        int looked = 0;
        double worst = 0;
        for (int i = 0; i < 200; i++) {
            PlainGround ground = PlainGround.of(RandomProfiles.profile(random));
            double r = random.nextDouble(0.1, 0.6);
            for (int k = 0; k < 10; k++) {
                double x = random.nextDouble(ground.startM() - 2, ground.endM() + 2);
                double most = Double.NEGATIVE_INFINITY;
                int n = 20_000;
                for (int j = -n; j <= n; j++) {
                    double u = r * j / n;
                    most = Math.max(most, ground.heightAt(x + u) + Math.sqrt(Math.max(0, r * r - u * u)));
                }
                // Trial stays below the true height by at most what half a step of ground and circle hides.
                double below = ground.wheelCenterM(x, r) - most;
                assertTrue(below > -1e-9 && below < 2e-5, "at " + x + ": " + below);
                worst = Math.max(worst, below);
                looked++;
            }
        }
        assertEquals(2000, looked);
        System.out.printf("a wheel's height against trial: worst difference %.4f mm%n", worst * 1000);
    }

    @Test
    void theSearchFindsWhatLookingEverywhereFinds() {
        RandomGenerator random = random(2);
        double accuracyM = 0.0002;
        int compared = 0;
        double worst = 0;
        for (int i = 0; i < 12; i++) {
            LevelStance stance = RandomRigs.stance(random);
            Setting setting = RandomRigs.setting(random, stance);
            Leveling leveling = RandomRigs.leveling(random, setting);
            RoadProfile profile = RandomProfiles.profile(random);
            Soffit soffit = RandomProfiles.soffit(random, profile, RandomRigs.highestM(stance) + 0.1);
            for (BruteForceClearance clearance : new BruteForceClearance[] {
                BruteForceClearance.overGround(stance, setting, leveling, profile),
                BruteForceClearance.underSoffit(stance, setting, leveling, profile, soffit)
            }) {
                double search = clearance.least(accuracyM).valueM();
                double everywhere = clearance.denseScan(0.001).valueM();
                assertTrue(search <= everywhere + accuracyM, "search " + search + ", everywhere " + everywhere);
                assertTrue(everywhere <= search + 0.001, "search " + search + ", everywhere " + everywhere);
                worst = Math.max(worst, Math.abs(search - everywhere));
                compared++;
            }
        }
        assertEquals(24, compared);
        System.out.printf("search against every position: worst difference %.3f mm%n", worst * 1000);
    }
}
