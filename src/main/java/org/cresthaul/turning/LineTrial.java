package org.cresthaul.turning;

import java.util.stream.DoubleStream;

/**
 * One shape of a lead line followed once, to be laid at many places: following does not depend on where it happens.
 */
final class LineTrial {
    private static final double TRIAL_STATE_M = 1.0;
    private static final int[] ORDER = {0, 4, 2, 6, 1, 3, 5, 7};

    private final CornerSpace space;
    private final Track track;
    private final double limitLossM;
    /** Outer tyre faces: x, y. */
    private final double[] tyres;
    /** Bodies: x, y of the effective axle, cosine, sine, rear, front, half width. */
    private final double[] bodies;

    final double endXM;
    final double endYM;

    LineTrial(CornerSpace space, TurningCombination combination, CornerLine shape) {
        this.space = space;
        LeadPath path = shape.shape(space.corner, combination, 0, 0);
        double[] headings = new double[combination.chain().size()];
        java.util.Arrays.fill(headings, path.at(0)[2]);
        track = Following.along(combination.chain(), path, headings, TRIAL_STATE_M, false);
        int n = track.size();
        endXM = track.leadXM(n - 1);
        endYM = track.leadYM(n - 1);
        limitLossM = limitLossM(track, combination);
        Outline[] outlines = new Outline[combination.units().size()];
        int tyreCount = 0;
        int bodyCount = 0;
        for (int k = 0; k < outlines.length; k++) {
            outlines[k] = new Outline(k, combination.chain().get(k), combination.units().get(k));
            tyreCount += outlines[k].tyres.length / 2;
            bodyCount += outlines[k].bodies.length / 3;
        }
        tyres = new double[4 * n * tyreCount];
        bodies = new double[7 * n * bodyCount];
        int t = 0;
        int b = 0;
        // Every eighth state first: a bad line is mostly told by them alone.
        for (int first : ORDER) {
            for (int i = first; i < n; i += 8) {
                double hitchX = track.leadXM(i);
                double hitchY = track.leadYM(i);
                for (Outline unit : outlines) {
                    double c = track.cosine[unit.number][i];
                    double s = track.sine[unit.number][i];
                    double x = hitchX - unit.hitchToAxleM * c;
                    double y = hitchY - unit.hitchToAxleM * s;
                    hitchX = x - unit.couplingBehindM * c;
                    hitchY = y - unit.couplingBehindM * s;
                    for (int a = 0; a < unit.tyres.length; a += 2) {
                        double ax = x + unit.tyres[a] * c;
                        double ay = y + unit.tyres[a] * s;
                        double h = unit.tyres[a + 1];
                        tyres[t++] = ax - h * s;
                        tyres[t++] = ay + h * c;
                        tyres[t++] = ax + h * s;
                        tyres[t++] = ay - h * c;
                    }
                    for (int a = 0; a < unit.bodies.length; a += 3) {
                        bodies[b++] = x;
                        bodies[b++] = y;
                        bodies[b++] = c;
                        bodies[b++] = s;
                        bodies[b++] = unit.bodies[a];
                        bodies[b++] = unit.bodies[a + 1];
                        bodies[b++] = unit.bodies[a + 2];
                    }
                }
            }
        }
    }

    /** A unit as plain numbers: this is what trials spend their time on. */
    private static final class Outline {
        final int number;
        final double hitchToAxleM;
        final double couplingBehindM;
        /** Places ahead of the axle and half widths. */
        final double[] tyres;
        /** Rears, fronts and half widths. */
        final double[] bodies;

        Outline(int number, TurningUnit link, TurningCombination.PlanUnit unit) {
            this.number = number;
            hitchToAxleM = link.hitchToAxleM();
            couplingBehindM = link.couplingBehindM();
            tyres = unit.tyres().stream().flatMapToDouble(t -> DoubleStream.of(t.aheadM(), t.halfWidthM())).toArray();
            bodies = unit.bodies().stream()
                    .flatMapToDouble(b -> DoubleStream.of(b.rearM(), b.frontM(), b.halfWidthM()))
                    .toArray();
        }
    }

    /** How far the line asks for more than steering and couplings give, as metres: it outweighs any clearance. */
    static double limitLossM(Track track, TurningCombination combination) {
        double over = Math.max(0, track.mostSteerRad() - combination.steerLimitRad() - 1e-9);
        for (int k = 0; k < combination.articulationLimitRad().size(); k++) {
            over = Math.max(over, track.mostArticulationRad(k) - combination.articulationLimitRad().get(k));
        }
        return over > 0 ? 100 + 10 * over : 0;
    }

    /** Least clearance with the shape's start at a place; anything below {@code enough} may come back as less. */
    double clearanceM(double xM, double yM, double enough) {
        double least = -limitLossM;
        if (limitLossM == 0) {
            least = Double.POSITIVE_INFINITY;
        }
        if (least <= enough) {
            return least;
        }
        for (int i = 0; i < tyres.length; i += 2) {
            double d = space.tyres.insideM(tyres[i] + xM, tyres[i + 1] + yM, enough, least);
            if (d < least) {
                least = d;
                if (least <= enough) {
                    return least;
                }
            }
        }
        least = bodies(space.obstacles, xM, yM, least, enough);
        return least <= enough ? least : bodies(space.opposing, xM, yM, least, enough);
    }

    private double bodies(AreaField keepOff, double xM, double yM, double soFar, double enough) {
        double least = soFar;
        if (keepOff.isEmpty()) {
            return least;
        }
        for (int i = 0; i < bodies.length && least > enough; i += 7) {
            double x = bodies[i] + xM;
            double y = bodies[i + 1] + yM;
            least = Math.min(
                    least,
                    bodyM(keepOff, x, y, bodies[i + 2], bodies[i + 3], bodies[i + 4], bodies[i + 5], bodies[i + 6],
                            enough, least));
        }
        return least;
    }

    /**
     * Gap between a rectangle and an area, by the corners of both; values above {@code of} are not told apart, nor are those
     * of {@code enough} and less.
     */
    static double bodyM(AreaField keepOff, double x, double y, double c, double s, double rear, double front, double half,
            double enough, double of) {
        double least = of;
        double middle = 0.5 * (rear + front);
        double around = 0.5 * (front - rear) + half;
        if (keepOff.outsideBoxM(x + middle * c, y + middle * s) >= least + around) {
            return least;
        }
        for (int q = 0; q < 4; q++) {
            double a = q < 2 ? rear : front;
            double b = q == 0 || q == 3 ? half : -half;
            least = Math.min(least, -keepOff.insideM(x + a * c - b * s, y + a * s + b * c, -least, -enough));
        }
        for (int v = 0; v < keepOff.corners() && least > enough; v++) {
            double px = keepOff.cornerX(v) - x;
            double py = keepOff.cornerY(v) - y;
            double along = px * c + py * s;
            double across = Math.abs(py * c - px * s) - half;
            double beyond = Math.max(rear - along, along - front);
            if (Math.max(across, beyond) < least) {
                double gap = across > 0 && beyond > 0
                        ? Math.sqrt(across * across + beyond * beyond)
                        : Math.max(across, beyond);
                least = Math.min(least, gap);
            }
        }
        return least;
    }
}
