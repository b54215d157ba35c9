package org.cresthaul.clearance;

import org.cresthaul.geometry.Finite;

/**
 * The gap that must be shown at every position before a passage may be called free.
 *
 * @param marginM spare gap wanted, meters; zero to ask only whether contact is excluded
 * @param surveyM half-width of the 95 % interval of one surveyed elevation, meters
 * @param otherM half-width of everything that does not come from the survey (rig measurement, tire and ride), combined,
 *     meters
 * @param allowUndeclared whether ground beyond the survey whose grade nobody declared is allowed for with
 *     {@link org.cresthaul.road.Approach#UNDECLARED_ACCURACY}
 * @param times how often all of it, with what ground beyond the survey asks for, is wanted; more than once for a
 *     reserve
 */
public record Demand(double marginM, double surveyM, double otherM, boolean allowUndeclared, double times) {
    public Demand {
        Finite.requireAtLeast("times", 1, times);
        Finite.requireAtLeast("marginM", 0, marginM);
        Finite.requireAtLeast("surveyM", 0, surveyM);
        Finite.requireAtLeast("otherM", 0, otherM);
    }

    /** Once. */
    public Demand(double marginM, double surveyM, double otherM, boolean allowUndeclared) {
        this(marginM, surveyM, otherM, allowUndeclared, 1);
    }

    /** Margin and uncertainty for a point whose survey factor is {@code factor}, meters. */
    double at(double factor) {
        double survey = surveyM * factor;
        return times * (marginM + Math.sqrt(survey * survey + otherM * otherM));
    }

    /** Only what it takes to exclude contact. */
    public Demand withoutMargin() {
        return new Demand(0, surveyM, otherM, allowUndeclared);
    }

    /** The same with a share of it left over at every position. */
    public Demand leaving(double share) {
        return new Demand(marginM, surveyM, otherM, allowUndeclared, times * (1 + share));
    }
}
