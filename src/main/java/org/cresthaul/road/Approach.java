package org.cresthaul.road;

import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;

/**
 * The ground beyond one end of a surveyed line.
 *
 * @param declaredGrade rise over run in the direction of travel (0.02 climbs two meters in a hundred), when the route
 *     file declares it; otherwise the line goes on at the slope of its end segment
 * @param gradeAccuracy half-width of the 95 % interval of that grade, same unit
 */
public record Approach(OptionalDouble declaredGrade, double gradeAccuracy) {
    /** Half-width assumed for the grade of ground that nobody declared: 2 %, an assumption of this program. */
    public static final double UNDECLARED_ACCURACY = 0.02;

    public Approach {
        declaredGrade.ifPresent(g -> Finite.require("declaredGrade", g));
        Finite.requireAtLeast("gradeAccuracy", 0, gradeAccuracy);
    }

    public static Approach declared(double grade, double accuracy) {
        return new Approach(OptionalDouble.of(grade), accuracy);
    }

    public static Approach undeclared() {
        return new Approach(OptionalDouble.empty(), UNDECLARED_ACCURACY);
    }

    public boolean isDeclared() {
        return declaredGrade.isPresent();
    }
}
