package org.cresthaul.axleload;

import org.cresthaul.language.Sentence;

/**
 * One thing that a load is held to.
 *
 * @param rule what it says, in words: "tandem", "federal bridge formula, 5 axles over 46 ft"
 * @param source whose rule it is
 * @param part what is looked at: the axles {@code first} to {@code last} together, or a fifth wheel
 * @param first index of the front axle among those that stand on the road; or of the fifth wheel, the tractor's 0
 * @param last index of the rear one
 * @param limitKg most allowed; least wanted when {@code least}
 * @param least whether the load must be at least that
 */
public record LoadBound(Sentence rule, Sentence source, Part part, int first, int last, double limitKg, boolean least) {
    /** What a bound looks at. */
    public enum Part {
        AXLES,
        HITCH
    }

    public LoadBound {
        if (first < 0 || last < first || !(limitKg >= 0)) {
            throw new IllegalArgumentException("axles " + first + " to " + last + ", " + limitKg + " kg");
        }
    }

    static LoadBound most(Sentence rule, Sentence source, int first, int last, double limitKg) {
        return new LoadBound(rule, source, Part.AXLES, first, last, limitKg, false);
    }

    public double loadKg(AxleLoads loads) {
        return part == Part.HITCH ? loads.fifthWheelsKg().get(first) : loads.sumKg(first, last);
    }

    /** What is left to the limit; negative when it is not kept. */
    public double marginKg(double loadKg) {
        return least ? loadKg - limitKg : limitKg - loadKg;
    }

    /**
     * The margin as a share of the limit, to rank rules of different size; of one kilogram when the limit is nought.
     */
    public double relativeMargin(double loadKg) {
        return share(marginKg(loadKg), limitKg);
    }

    /** What is left to a limit as a share of it. */
    public static double share(double leftKg, double limitKg) {
        return leftKg / Math.max(1, limitKg);
    }
}
