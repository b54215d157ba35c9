package org.cresthaul.report;

import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * A clearance that counts.
 *
 * @param valueM the least over all lines, levelings and positions
 * @param requiredM margin and uncertainty at that place
 * @param xM hM where on the unit, in its frame
 * @param distanceM chainageM where on the road, from the hazard and from the route's start
 * @param steerM where the steer axle stands then, from the hazard
 * @param beyondSurveyM how far a wheel or the point itself is beyond the survey then
 * @param gradeDeclared false when some of that ground has no declared grade
 * @param provenWithinM the true minimum is at most this much less
 * @param line the surveyed line, or the place across the road: an edge of the combination or a line between them, with
 *     how it is driven then
 * @param besideM how far that place is to the right of the combination's middle, and {@code drivenM} how far that is
 *     driven to the right of its line; null where all wheels are taken to run on the line
 * @param deciding the gap that decides the verdict, where that is another one: that of all lines and levelings which
 *     falls short of its own need by most, or exceeds it by least. Its need is margin and uncertainty where it keeps
 *     the place from being clear, the uncertainty alone where contact cannot be excluded; {@code null} where this one
 *     decides
 * @param against between units the place on the one ahead; null over the ground and under a structure
 */
public record GapFinding(
        @Rounded(Rounding.LENGTH_DOWN) double valueM,
        @Rounded(Rounding.LENGTH_UP) double requiredM,
        @Rounded(Rounding.LENGTH_NEAR) double marginM,
        @Rounded(Rounding.LENGTH_UP) double uncertaintyM,
        Verdict verdict,
        String unit,
        @Rounded(Rounding.LENGTH_NEAR) double xM,
        @Rounded(Rounding.LENGTH_NEAR) double hM,
        String part,
        @Rounded(Rounding.LENGTH_NEAR) double distanceM,
        @Rounded(Rounding.LENGTH_NEAR) double chainageM,
        @Rounded(Rounding.LENGTH_NEAR) double steerM,
        String line,
        String leveling,
        @Rounded(Rounding.LENGTH_NEAR) double beyondSurveyM,
        boolean gradeDeclared,
        double provenWithinM,
        @Rounded(Rounding.LENGTH_NEAR) Double besideM,
        @Rounded(Rounding.LENGTH_NEAR) Double drivenM,
        GapFinding deciding,
        FacingUnit against)
        implements Finding {
    @Override
    public double left() {
        return valueM - requiredM;
    }

    @Override
    public double share() {
        return Finding.shareOfLength(left(), requiredM);
    }

    /** This one, or that which decides where it leaves a smaller share. */
    public GapFinding decisive() {
        return deciding == null || share() <= deciding.share() ? this : deciding;
    }

    /** To the ground or a structure. */
    public GapFinding(
            double valueM,
            double requiredM,
            double marginM,
            double uncertaintyM,
            Verdict verdict,
            String unit,
            double xM,
            double hM,
            String part,
            double distanceM,
            double chainageM,
            double steerM,
            String line,
            String leveling,
            double beyondSurveyM,
            boolean gradeDeclared,
            double provenWithinM,
            Double besideM,
            Double drivenM,
            GapFinding deciding) {
        this(
                valueM,
                requiredM,
                marginM,
                uncertaintyM,
                verdict,
                unit,
                xM,
                hM,
                part,
                distanceM,
                chainageM,
                steerM,
                line,
                leveling,
                beyondSurveyM,
                gradeDeclared,
                provenWithinM,
                besideM,
                drivenM,
                deciding,
                null);
    }

    /** One that decides its own verdict. */
    public GapFinding(
            double valueM,
            double requiredM,
            double marginM,
            double uncertaintyM,
            Verdict verdict,
            String unit,
            double xM,
            double hM,
            String part,
            double distanceM,
            double chainageM,
            double steerM,
            String line,
            String leveling,
            double beyondSurveyM,
            boolean gradeDeclared,
            double provenWithinM) {
        this(
                valueM,
                requiredM,
                marginM,
                uncertaintyM,
                verdict,
                unit,
                xM,
                hM,
                part,
                distanceM,
                chainageM,
                steerM,
                line,
                leveling,
                beyondSurveyM,
                gradeDeclared,
                provenWithinM,
                null,
                null,
                null);
    }
}
