package org.cresthaul.posture;

import org.cresthaul.geometry.Finite;

/**
 * The gap that must be shown at every position before a passage may be called free.
 *
 * @param marginM spare gap wanted, meters; zero to ask only whether contact is excluded
 * @param surveyM half-width of the 95 % interval of one surveyed elevation, meters
 * @param otherM half-width of everything that does not come from the survey (rig measurement, tire and ride),
 *     combined, meters
 * @param allowUndeclared whether ground beyond the survey whose grade nobody declared is allowed for with
 *     {@link org.cresthaul.road.Approach#UNDECLARED_ACCURACY}
 */
public record Demand(double marginM, double surveyM, double otherM, boolean allowUndeclared) {
    public Demand {
        Finite.requireAtLeast("marginM", 0, marginM);
        Finite.requireAtLeast("surveyM", 0, surveyM);
        Finite.requireAtLeast("otherM", 0, otherM);
    }

    /** Margin and uncertainty for a point whose survey factor is {@code factor}, meters. */
    double at(double factor) {
        double survey = surveyM * factor;
        return marginM + Math.sqrt(survey * survey + otherM * otherM);
    }

    /** Only what it takes to exclude contact. */
    public Demand withoutMargin() {
        return new Demand(0, surveyM, otherM, allowUndeclared);
    }
}
