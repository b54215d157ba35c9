package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;

/**
 * One line tried: the combination followed along it, and every place where some part has less than a wanted room.
 * States are coarse and tires lengthened to cover the ground between them, so that what is found here is near the truth
 * and on its unfavorable side for tires; {@link PassageRoom} has the last word.
 */
final class LineTrial {
    /**
     * What a trial asks of the corner and the combination, the same for every line.
     *
     * @param parts that the last word is about
     * @param rough what is tried for them
     */
    record Setting(
            CornerSpace space,
            TurningCombination combination,
            List<PassingPart> parts,
            List<PassingPart> rough,
            double runInM,
            double runOutM) {
        Setting {
            parts = List.copyOf(parts);
            rough = List.copyOf(rough);
        }
    }

    /** A place where a part lacks room, or nearly does. Not for sharing. */
    static final class TightPlace {
        /** Of the part: unit, state, and the place of it that moves, ahead and to the left. */
        int unit;

        int state;
        double aheadM;
        double leftM;
        /** Direction in which moving that place gains room. */
        double nx;

        double ny;
        double freeM;
    }

    /** Behind the last steering, so far every state counts, meters. */
    private static final double SETTLING_M = 30;

    /** About how far apart the states of steered pieces are at most, meters. */
    private static final double FINE_M = 0.75;

    /** States of the straight runs that are looked at once. */
    private static final int RUN_STRIDE = 8;

    /** What has no more than this beyond the room wanted may be taken by a step, meters. */
    static final double WATCH_M = 0.2;

    /** The nearest way out lies along a place's own way when it is less than 60 degrees off it. */
    private static final double ALONG = 0.5;

    /** A place on an edge is looked at so far beside it, meters. */
    private static final double TOUCH_M = 1e-4;

    /** No way out to a side is looked for beyond this, meters. */
    private static final double SIDEWAYS_M = 1.5;

    private final Setting setting;
    private final double stateM;
    final Track track;
    private final AxlePaths axles;
    private final double[] nearest = new double[2];

    LineTrial(Setting setting, SteeredLine line, double stateM) {
        this.setting = setting;
        this.stateM = stateM;
        track = Following.along(setting.combination.chain(), line.path(setting.runInM, setting.runOutM), stateM);
        axles = new AxlePaths(track);
    }

    /**
     * Every part's worst places at every state where it has less than {@code wantedM}, or not {@value #WATCH_M} m more.
     * On the straight runs, where parts move along themselves, only some states are looked at, with parts as much
     * longer.
     */
    void places(double wantedM, List<TightPlace> into) {
        double belowM = wantedM + WATCH_M;
        int steered = 0;
        while (steered < track.size() && track.stationM(steered) < setting.runInM - 1e-9) {
            steered++;
        }
        int settling = track.size();
        double out = track.stationM(track.size() - 1) - setting.runOutM + SETTLING_M;
        while (settling > steered && track.stationM(settling - 1) > out) {
            settling--;
        }
        for (PassingPart part : stateM > FINE_M ? setting.rough : setting.parts) {
            places(part, 0, steered, RUN_STRIDE, belowM, into);
            places(part, steered, settling, stateM > FINE_M ? 2 : 1, belowM, into);
            places(part, settling, track.size(), RUN_STRIDE, belowM, into);
        }
    }

    private void places(PassingPart part, int from, int to, int stride, double belowM, List<TightPlace> into) {
        // Bodies are long already; only what is rolled over between two states must not be missed.
        PassingPart p = part.isTires() || stride > 2 ? part.longerBy(0.5 * stride * Math.min(stateM, FINE_M)) : part;
        int k = p.unit();
        double reach = p.reachM();
        // Between two states no place of a part moves farther.
        double step = stride * stateM * (1.15 + 0.12 * p.leverM());
        for (int i = from; i < to; i += stride) {
            double c = track.cosine[k][i];
            double s = track.sine[k][i];
            double mx = axles.xM[k][i] + p.middleAheadM() * c - p.middleLeftM() * s;
            double my = axles.yM[k][i] + p.middleAheadM() * s + p.middleLeftM() * c;
            double middle = p.off().roughM(mx, my);
            if (middle >= belowM + reach) {
                i += stride * (int) ((middle - belowM - reach) / step);
                continue;
            }
            TightPlace worst = corner(p, i, c, s, belowM);
            TightPlace other = vertex(p, i, mx, my, belowM + reach, belowM);
            if (worst != null) {
                into.add(worst);
            }
            if (other != null) {
                into.add(other);
            }
        }
    }

    private TightPlace corner(PassingPart p, int i, double c, double s, double belowM) {
        int k = p.unit();
        double least = belowM;
        int at = -1;
        for (int q = 0; q < 4; q++) {
            double x = axles.xM[k][i] + p.aheadM(q) * c - p.leftM(q) * s;
            double y = axles.yM[k][i] + p.aheadM(q) * s + p.leftM(q) * c;
            double free = p.off().freeM(x, y, least);
            if (free < least) {
                least = free;
                at = q;
            }
        }
        if (at < 0) {
            return null;
        }
        TightPlace place = place(k, i, p.aheadM(at), p.leftM(at), least);
        double x = axles.xM(k, i, place.aheadM, place.leftM);
        double y = axles.yM(k, i, place.aheadM, place.leftM);
        p.off().field.nearest(x, y, nearest);
        double dx = x - nearest[0];
        double dy = y - nearest[1];
        double d = Hypotenuse.of(dx, dy);
        double sign = least >= 0 ? 1 : -1;
        place.nx = d > 0 ? sign * dx / d : 0;
        place.ny = d > 0 ? sign * dy / d : 0;
        double along = place.nx * track.cosine[k][i] + place.ny * track.sine[k][i];
        if (least < 0 && Math.abs(along) > ALONG) {
            outSideways(p, place, x, y, place.leftM);
        }
        return place;
    }

    /**
     * A part that has rolled onto something is not free of it farther on along its own way: what lacks is the way out
     * to a side.
     *
     * @param x y a place of that ground, {@code left} of the unit's axle in the middle
     */
    private void outSideways(PassingPart p, TightPlace place, double x, double y, double left) {
        double leftX = -track.sine[p.unit()][place.state];
        double leftY = track.cosine[p.unit()][place.state];
        double toLeft = left + reach(p, x, y, leftX, leftY) - p.rightM();
        double toRight = p.leftM() - left + reach(p, x, y, -leftX, -leftY);
        if (Math.min(toLeft, toRight) > SIDEWAYS_M) {
            return;
        }
        double sign = toLeft < toRight ? 1 : -1;
        place.freeM = -Math.min(toLeft, toRight);
        place.leftM = sign > 0 ? p.rightM() : p.leftM();
        place.nx = sign * leftX;
        place.ny = sign * leftY;
    }

    /** How far the ground that is kept off reaches from a place on its edge or within, to one side. */
    private static double reach(PassingPart p, double x, double y, double dirX, double dirY) {
        double nx = x + TOUCH_M * dirX;
        double ny = y + TOUCH_M * dirY;
        return p.off().freeM(nx, ny) < 0 ? p.off().field.crossedM(nx, ny, dirX, dirY) : 0;
    }

    private static TightPlace place(int unit, int state, double aheadM, double leftM, double freeM) {
        TightPlace place = new TightPlace();
        place.unit = unit;
        place.state = state;
        place.aheadM = aheadM;
        place.leftM = leftM;
        place.freeM = freeM;
        return place;
    }

    /** Corners of the ground that is kept off, against the sides of the part. */
    private TightPlace vertex(PassingPart p, int i, double mx, double my, double around, double belowM) {
        int k = p.unit();
        double c = track.cosine[k][i];
        double s = track.sine[k][i];
        // The gap, and where it is from the unit's axle.
        double[] least = {belowM, 0, 0};
        p.off().field.jutting.around(mx, my, around, (x, y) -> {
            double px = x - axles.xM[k][i];
            double py = y - axles.yM[k][i];
            double along = px * c + py * s;
            double left = py * c - px * s;
            double gap = p.outsideM(along, left);
            if (gap < least[0]) {
                least[0] = gap;
                least[1] = along;
                least[2] = left;
            }
        });
        return least[0] < belowM ? beside(p, i, least[1], least[2], least[0], c, s) : null;
    }

    private TightPlace beside(PassingPart p, int i, double along, double left, double gap, double c, double s) {
        double a = Math.max(p.rearM(), Math.min(p.frontM(), along));
        double b = Math.max(p.rightM(), Math.min(p.leftM(), left));
        double da = a - along;
        double db = b - left;
        double d = Hypotenuse.of(da, db);
        TightPlace place = place(p.unit(), i, a, b, gap);
        place.nx = d > 0 ? (da * c - db * s) / d : 0;
        place.ny = d > 0 ? (da * s + db * c) / d : 0;
        if (gap <= 0) {
            outSideways(
                    p,
                    place,
                    axles.xM[place.unit][i] + along * c - left * s,
                    axles.yM[place.unit][i] + along * s + left * c,
                    left);
        }
        return place;
    }

    /** Where a coupling bends most: how far beyond its limit, radians; negative: so far within. */
    record Bend(int coupling, int state, double overRad) {}

    /** The couplings that bend to their limits less a margin, or come nearer to that than {@code watchRad}. */
    List<Bend> bends(double marginRad, double watchRad) {
        List<Bend> bends = new ArrayList<>();
        for (int k = 0; k < setting.combination.articulationLimitRad().size(); k++) {
            double limit = setting.combination.articulationLimitRad().get(k) - marginRad;
            double least = Math.cos(Math.max(0, Math.min(Math.PI, limit - watchRad)));
            int at = -1;
            for (int i = 0; i < track.size(); i++) {
                double cos = track.cosine[k][i] * track.cosine[k + 1][i] + track.sine[k][i] * track.sine[k + 1][i];
                if (cos < least) {
                    least = cos;
                    at = i;
                }
            }
            if (at >= 0) {
                bends.add(new Bend(k, at, Math.abs(track.articulationRad(at, k)) - limit));
            }
        }
        return bends;
    }
}
