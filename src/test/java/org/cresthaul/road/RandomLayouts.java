package org.cresthaul.road;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.CornerTemplate.Layout;
import org.cresthaul.road.CornerTemplate.RoadWidths;

/** Random U-turns, bends, forks, offset crossroads and gates. */
public final class RandomLayouts {
    private RandomLayouts() {}

    private static CornerTemplate template(
            double degrees, RoadWidths in, RoadWidths out, Layout layout, double apronM, boolean onLeft) {
        return new CornerTemplate(
                Math.toRadians(degrees),
                in,
                out,
                layout,
                apronM,
                List.of(),
                List.of(),
                OptionalDouble.of(0.15),
                onLeft);
    }

    public static CornerTemplate of(Random random, boolean onLeft) {
        RoadWidths in = road(random);
        RoadWidths out = road(random);
        double hand = random.nextBoolean() ? 1 : -1;
        double apron = random.nextInt(3) == 0 ? 1.5 : 0;
        CurbReturn curb = CurbReturn.single(2 + 20 * random.nextDouble());
        return switch (random.nextInt(5)) {
            case 0 -> {
                double median = random.nextInt(3) * 6;
                yield template(
                        onLeft ? -180 : 180,
                        new RoadWidths(in.ownM(), 0, in.shoulderM(), true),
                        new RoadWidths(out.ownM(), 0, out.shoulderM(), random.nextBoolean()),
                        new UTurn(
                                median,
                                10 + 30 * random.nextDouble(),
                                0.4 * median * random.nextDouble(),
                                random.nextInt(2) * 4,
                                40),
                        apron,
                        onLeft);
            }
            case 1 ->
                template(
                        hand * (20 + 160 * random.nextDouble()),
                        in,
                        out,
                        new Bend(
                                6 + 30 * random.nextDouble(),
                                Math.min(
                                                in.ownM() + in.opposingM() + in.shoulderM(),
                                                out.ownM() + out.opposingM() + out.shoulderM())
                                        + 3 * random.nextDouble()),
                        apron,
                        onLeft);
            case 2 -> {
                double turn = hand * (10 + 140 * random.nextDouble());
                double third;
                do {
                    third = -150 + 300 * random.nextDouble();
                } while (Math.abs(third - turn) < 20);
                yield template(
                        turn,
                        in,
                        out,
                        new Fork(road(random), Math.toRadians(third), curb, random.nextInt(3)),
                        apron,
                        onLeft);
            }
            case 3 ->
                template(
                        hand * (60 + 60 * random.nextDouble()),
                        in,
                        out,
                        new OffsetCrossroads(road(random), 15 + 60 * random.nextDouble(), curb, curb),
                        apron,
                        onLeft);
            default ->
                template(
                        hand * (40 + 100 * random.nextDouble()),
                        in,
                        out,
                        new Gate(5 + 8 * random.nextDouble(), 6 * random.nextDouble(), 8 * random.nextDouble()),
                        apron,
                        onLeft);
        };
    }

    private static RoadWidths road(Random random) {
        return new RoadWidths(
                3 + 5 * random.nextDouble(), random.nextInt(3) * 2.1, random.nextInt(3) * 0.7, random.nextBoolean());
    }
}
