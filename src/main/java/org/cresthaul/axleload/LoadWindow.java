package org.cresthaul.axleload;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * Where along a line something may be set so that every bound is kept: a piece of load along the deck, or the load that
 * the booster's regulator sets. Every load is a straight function of that place, so each bound allows everything on one
 * side of a point: the window is one interval and is found exactly, without sampling.
 *
 * @param from least place looked at
 * @param to greatest
 * @param bounds what is to be kept
 * @param allowed places where every bound is kept; empty when there is none
 * @param best place in the allowed part where the least margin, each as a share of its limit, is greatest
 * @param conflict what leaves no place, when there is none
 */
public record LoadWindow(
        double from,
        double to,
        List<LoadBound> bounds,
        Optional<Range> allowed,
        Optional<Best> best,
        Optional<Conflict> conflict) {
    private static final double NOISE = 1e-12;

    public record Range(double from, double to) {}

    /** @param governing the bound whose margin is least there */
    public record Best(double at, double relativeMargin, LoadBound governing) {}

    /**
     * Two bounds that cannot both be kept between the ends, or one alone, named twice.
     *
     * @param low wants a place of at least {@code lowAt}
     * @param high wants one of at most {@code highAt}
     */
    public record Conflict(LoadBound low, double lowAt, LoadBound high, double highAt) {
        public boolean isOne() {
            return low.equals(high);
        }
    }

    /** Relative margin of one bound: {@code at + slope · place}. */
    private record Line(LoadBound bound, double at, double slope) {
        double value(double place) {
            return at + slope * place;
        }
    }

    /**
     * @param loadsAt equilibrium with the thing set at a place; straight in it
     * @param from one end
     * @param to the other, not below {@code from}
     * @param bounds at least one
     */
    public static LoadWindow of(DoubleFunction<AxleLoads> loadsAt, double from, double to, List<LoadBound> bounds) {
        return of(loadsAt, from, to, bounds, 0);
    }

    /**
     * The same where what is set may be off by a share of itself, to the worse side for each bound.
     *
     * @param from not negative
     * @param off 0.05 for 5 %
     */
    public static LoadWindow of(
            DoubleFunction<AxleLoads> loadsAt, double from, double to, List<LoadBound> bounds, double off) {
        return ofAll(List.of(loadsAt), from, to, bounds, off);
    }

    /**
     * The same where what else is set may be off as well: every bound is kept in each of several equilibria.
     *
     * @param loadsAt at least one, each straight
     */
    public static LoadWindow ofAll(
            List<DoubleFunction<AxleLoads>> loadsAt, double from, double to, List<LoadBound> bounds, double off) {
        if (!(to >= from) || bounds.isEmpty() || loadsAt.isEmpty()) {
            throw new IllegalArgumentException("from " + from + " to " + to + ", " + bounds.size() + " bounds");
        }
        List<Line> lines = loadsAt.stream()
                .flatMap(at -> lines(at, from, to, bounds, off).stream())
                .toList();
        double low = from;
        double high = to;
        Line lowest = null;
        Line highest = null;
        for (Line line : lines) {
            double noise = LoadTest.NOISE_KG / Math.max(1, line.bound.limitKg());
            if (line.slope == 0) {
                if (line.at < -noise) {
                    return none(from, to, bounds, line, from, line, to);
                }
            } else {
                double zero = (-noise - line.at) / line.slope;
                if (line.slope > 0 && zero > low) {
                    low = zero;
                    lowest = line;
                } else if (line.slope < 0 && zero < high) {
                    high = zero;
                    highest = line;
                }
            }
        }
        if (low > high) {
            Line a = lowest == null ? highest : lowest;
            Line b = highest == null ? lowest : highest;
            return none(from, to, bounds, a, low, b, high);
        }
        return new LoadWindow(
                from,
                to,
                bounds,
                Optional.of(new Range(low, high)),
                Optional.of(best(lines, low, high)),
                Optional.empty());
    }

    private static List<Line> lines(
            DoubleFunction<AxleLoads> loadsAt, double from, double to, List<LoadBound> bounds, double off) {
        // Two places fix a straight function; they need not lie within the ends.
        double step = Math.max(1, to - from);
        AxleLoads first = loadsAt.apply(from);
        AxleLoads second = loadsAt.apply(from + step);
        return bounds.stream()
                .map(b -> {
                    double at = b.relativeMargin(b.loadKg(first));
                    double slope = (b.relativeMargin(b.loadKg(second)) - at) / step;
                    // At worst what is set is off to the side on which this bound is kept by less: straight as well.
                    return Math.abs(slope) < NOISE
                            ? new Line(b, at - slope * from, 0)
                            : new Line(b, at - slope * from, slope - Math.abs(slope) * off);
                })
                .toList();
    }

    private static LoadWindow none(
            double from, double to, List<LoadBound> bounds, Line low, double lowAt, Line high, double highAt) {
        return new LoadWindow(
                from,
                to,
                bounds,
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Conflict(low.bound, lowAt, high.bound, highAt)));
    }

    /**
     * The least of straight lines is concave: walk up from the low end along the least line, changing to the line that
     * crosses it first, until it falls.
     */
    private static Best best(List<Line> lines, double low, double high) {
        double at = low;
        Line least = leastAt(lines, at);
        while (least.slope > 0 && at < high) {
            double next = high;
            Line crossing = null;
            for (Line line : lines) {
                if (line.slope < least.slope) {
                    double meet = (line.at - least.at) / (least.slope - line.slope);
                    if (meet < next || meet == next && crossing != null && line.slope < crossing.slope) {
                        next = Math.max(meet, at);
                        crossing = line;
                    }
                }
            }
            at = next;
            if (crossing == null) {
                break;
            }
            least = crossing;
        }
        Line governs = leastAt(lines, at);
        return new Best(at, governs.value(at), governs.bound);
    }

    private static Line leastAt(List<Line> lines, double place) {
        Line least = lines.get(0);
        for (Line line : lines) {
            double value = line.value(place);
            double best = least.value(place);
            if (value < best || value == best && line.slope < least.slope) {
                least = line;
            }
        }
        return least;
    }
}
