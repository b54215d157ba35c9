package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** One surveyed wheel-path line over a hazard, and the ground it goes on with beyond its ends. */
public final class RoadProfile extends PiecewiseLine {
    private final String name;
    private final Approach before;
    private final Approach after;
    private final OptionalDouble offsetM;
    private final double surveyedFromM;
    private final double surveyedToM;

    private RoadProfile(
            String name,
            List<SurveyedPoint> points,
            Beyond before,
            Beyond after,
            OptionalDouble offsetM,
            double surveyedFromM,
            double surveyedToM) {
        super(points, before.slope(), after.slope());
        this.surveyedFromM = surveyedFromM;
        this.surveyedToM = surveyedToM;
        this.name = name;
        this.offsetM = offsetM;
        this.before = before.declared();
        this.after = after.declared();
    }

    /** The ground beyond an end: its slope, and what was declared of it. */
    private record Beyond(double slope, Approach declared) {}

    /**
     * A line through surveyed points.
     *
     * @param name which wheel path: "left", "center", "right"
     * @param points at least two, distances strictly increasing, no slope beyond {@link #STEEPEST}
     * @throws IllegalArgumentException when the points are not such a line
     */
    public static RoadProfile of(String name, List<SurveyedPoint> points, Approach before, Approach after) {
        return of(name, OptionalDouble.empty(), points, before, after);
    }

    /**
     * The same where it is known how far beside the truck's middle the line runs.
     *
     * @param offsetM meters, positive to the right
     */
    public static RoadProfile of(
            String name, OptionalDouble offsetM, List<SurveyedPoint> points, Approach before, Approach after) {
        if (points.size() < 2) {
            throw new IllegalArgumentException("a profile needs at least two points, has " + points.size());
        }
        int n = points.size();
        return new RoadProfile(
                name,
                points,
                new Beyond(before.declaredGrade().orElse(slope(points.get(0), points.get(1))), before),
                new Beyond(after.declaredGrade().orElse(slope(points.get(n - 2), points.get(n - 1))), after),
                offsetM,
                points.get(0).distanceM(),
                points.get(n - 1).distanceM());
    }

    /**
     * A line that nobody surveyed as it is, worked out from some that were.
     *
     * @param slopes beyond its ends, behind and ahead
     * @param surveyedFromM surveyedToM what lies outside counts as ground beyond the survey, though it has points
     */
    static RoadProfile workedOut(
            RoadProfile like,
            String name,
            double offsetM,
            List<SurveyedPoint> points,
            double[] slopes,
            double surveyedFromM,
            double surveyedToM) {
        return new RoadProfile(
                name,
                points,
                new Beyond(slopes[0], like.before),
                new Beyond(slopes[1], like.after),
                OptionalDouble.of(offsetM),
                surveyedFromM,
                surveyedToM);
    }

    /** Straight level ground at height zero. */
    public static RoadProfile level() {
        return straight(0);
    }

    /** Straight ground through height zero at distance zero, at one grade. */
    public static RoadProfile straight(double grade) {
        return of(
                "straight",
                List.of(new SurveyedPoint(0, 0), new SurveyedPoint(1, grade)),
                Approach.declared(grade, 0),
                Approach.declared(grade, 0));
    }

    private static double slope(SurveyedPoint a, SurveyedPoint b) {
        return (b.elevationM() - a.elevationM()) / (b.distanceM() - a.distanceM());
    }

    public String name() {
        return name;
    }

    /** How far right of the path of the truck's middle it runs, meters; empty where nobody said. */
    public OptionalDouble offsetM() {
        return offsetM;
    }

    public Approach before() {
        return before;
    }

    public Approach after() {
        return after;
    }

    public List<SurveyedPoint> points() {
        List<SurveyedPoint> points = new ArrayList<>(size());
        for (int i = 0; i < size(); i++) {
            points.add(new SurveyedPoint(distanceM(i), elevationM(i)));
        }
        return points;
    }

    /** How far {@code distanceM} lies beyond the surveyed ends, meters; zero on surveyed ground. */
    public double overrunM(double distanceM) {
        return Math.max(0, Math.max(surveyedFromM - distanceM, distanceM - surveyedToM));
    }

    /** The approach that {@code distanceM} stands on when it is beyond an end. */
    public Approach approachAt(double distanceM) {
        return distanceM < surveyedFromM ? before : after;
    }

    /** Whether all of its points are surveyed ground. */
    public boolean isSurveyedThroughout() {
        return surveyedFromM <= startM() && surveyedToM >= endM();
    }

    /** Whether another is the same line under the same name, with the same ground beyond it. */
    @Override
    public boolean equals(Object other) {
        if (other == this || !super.equals(other)) {
            return other == this;
        }
        RoadProfile line = (RoadProfile) other;
        return name.equals(line.name)
                && before.equals(line.before)
                && after.equals(line.after)
                && offsetM.equals(line.offsetM)
                && surveyedFromM == line.surveyedFromM
                && surveyedToM == line.surveyedToM;
    }

    @Override
    public int hashCode() {
        return 31 * super.hashCode() + name.hashCode();
    }
}
