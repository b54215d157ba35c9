package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** A random chain of one to five units and a random path of lines, arcs, clothoids and kinks for it. */
record RandomManeuver(List<TurningUnit> chain, LeadPath path) {
    static RandomManeuver of(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<TurningUnit> chain = new ArrayList<>();
        int units = random.nextInt(1, 6);
        for (int k = 0; k < units; k++) {
            chain.add(new TurningUnit(random.nextDouble(1.2, 14), random.nextDouble(-2, 5)));
        }
        boolean polyline = random.nextInt(4) == 0;
        LeadPath.Builder path = LeadPath.from(random.nextDouble(-50, 50), 0, random.nextDouble(-3, 3));
        int pieces = random.nextInt(2, 7);
        double curvature = 0;
        for (int i = 0; i < pieces; i++) {
            if (polyline) {
                path.kink(random.nextDouble(-1, 1)).line(random.nextDouble(1, 20));
                continue;
            }
            double next = random.nextDouble(-0.12, 0.12);
            switch (random.nextInt(4)) {
                case 0 -> path.line(random.nextDouble(0.5, 20));
                case 1 -> path.arc(random.nextDouble(1, 25), next);
                default -> path.clothoid(random.nextDouble(2, 20), curvature, next);
            }
            curvature = next;
        }
        return new RandomManeuver(chain, path.build());
    }

    double[] straightBehind() {
        double[] headings = new double[chain.size()];
        java.util.Arrays.fill(headings, path.at(0)[2]);
        return headings;
    }
}
