package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

    /**
     * The same path for a chain whose units have one to four axles each, some of them steered, some castering: stops of
     * 2° to 40°, so that many are met.
     */
    RandomManeuver steered(SplittableRandom random, boolean casters) {
        List<TurningUnit> units = new ArrayList<>();
        for (TurningUnit unit : chain) {
            List<Double> fixed = new ArrayList<>();
            List<SteeredAxles.Castering> castering = new ArrayList<>();
            List<SteeredAxles.Commanded> commanded = new ArrayList<>();
            int axles = random.nextInt(1, 5);
            for (int i = 0; i < axles; i++) {
                double behindM = unit.hitchToAxleM() + 1.3 * i;
                double limitRad = Math.toRadians(random.nextDouble(2, 40));
                int kind = random.nextInt(3);
                if (kind == 1 && casters) {
                    castering.add(new SteeredAxles.Castering(behindM, limitRad));
                } else if (kind == 2) {
                    commanded.add(new SteeredAxles.Commanded(behindM, random.nextDouble(0.05, 1), limitRad));
                } else {
                    fixed.add(behindM);
                }
            }
            if (fixed.isEmpty() && commanded.isEmpty()) {
                fixed.add(unit.hitchToAxleM());
            }
            SteeredAxles all = new SteeredAxles(fixed, castering, commanded);
            units.add(new TurningUnit(all.effectiveM(), unit.couplingBehindM(), Optional.of(all)));
        }
        return new RandomManeuver(units, path);
    }

    double[] straightBehind() {
        double[] headings = new double[chain.size()];
        java.util.Arrays.fill(headings, path.at(0)[2]);
        return headings;
    }
}
