package org.cresthaul.report;

import java.util.List;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.UnitName;
import org.cresthaul.turning.Against;
import org.cresthaul.turning.PartOfUnit;
import org.cresthaul.turning.Side;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * What a corner comes to in one configuration: the best way round that was found, what room it leaves and how far the
 * combination swings. Lengths are meters, places longitude and latitude.
 *
 * @param valueM the least room of any tire to the edge of the pavement and of any body to what it must miss, with the
 *     wheel turned as early or as late as a driver may; negative: it encroaches by so much
 * @param onLineM the same on the line itself
 * @param requiredM margin, the driver's straying from the line, and uncertainty
 * @param lateM at what lateness of the turn-in the least room is, negative early, zero on the line itself
 * @param unit part side against what is tightest on the line
 * @param ownLanes verdict without escorts
 * @param escorts whether the line needs the opposing lane, which escorts must hold
 * @param line the line of the steer axle as a driver takes it
 * @param backing how a gate is backed into; null at a corner that is driven forward. All else is told of the pull-out
 * @param gaps of every unit's tires and bodies on the line, tightest first
 * @param overhangs where an underside passes over a curb or an island, least gap first
 * @param leansBeforeM leansBehindM how far before and behind the corner's ends the road is taken to be straight
 * @param offtrackingM of the last effective axle
 * @param trailsWideM how far the booster's tires run outside the trailer's, of several the most that one's run outside
 *     those of the unit before it; null without a trailing booster
 * @param trailsWideAt where, or null
 * @param pivotSwingM how far the booster's pivot runs outside the path of the trailer's effective axle, of several the
 *     most outside that of the unit that holds it; null likewise
 * @param swings by unit, in the order of the combination
 * @param steerRad largest steer angle
 * @param articulationRad largest angle at each coupling
 * @param beyondLimits whether steering or a coupling would have to turn farther than it can
 */
public record CornerFinding(
        @Rounded(Rounding.LENGTH_DOWN) double valueM,
        @Rounded(Rounding.LENGTH_DOWN) double onLineM,
        @Rounded(Rounding.LENGTH_UP) double requiredM,
        @Rounded(Rounding.LENGTH_NEAR) double marginM,
        @Rounded(Rounding.LENGTH_NEAR) double driverM,
        @Rounded(Rounding.LENGTH_NEAR) double turnInM,
        @Rounded(Rounding.LENGTH_UP) double uncertaintyM,
        @Rounded(Rounding.LENGTH_NEAR) double lateM,
        Verdict verdict,
        UnitName unit,
        PartOfUnit part,
        Side side,
        Against against,
        List<Double> lonLat,
        String ownLanes,
        boolean escorts,
        DriverLine line,
        BackingLine backing,
        List<SideGap> gaps,
        List<Overhang> overhangs,
        @Rounded(Rounding.LENGTH_UP) double leansBeforeM,
        @Rounded(Rounding.LENGTH_UP) double leansBehindM,
        @Rounded(Rounding.LENGTH_UP) double offtrackingM,
        @Rounded(Rounding.LENGTH_UP) double sweptWidthM,
        @Rounded(Rounding.LENGTH_UP) double tailSwingM,
        @Rounded(Rounding.LENGTH_UP) double frontalSwingM,
        @Rounded(Rounding.LENGTH_UP) Double trailsWideM,
        List<Double> trailsWideAt,
        @Rounded(Rounding.LENGTH_UP) Double pivotSwingM,
        List<UnitSwing> swings,
        @Rounded(Rounding.ANGLE_NEAR) double steerRad,
        @Rounded(Rounding.ANGLE_NEAR) List<Double> articulationRad,
        boolean beyondLimits)
        implements Finding {
    @Override
    public double left() {
        return valueM - requiredM;
    }

    @Override
    public double share() {
        return Finding.shareOfLength(left(), requiredM);
    }

    /** The least room of one unit's tires or bodies. */
    public record SideGap(
            UnitName unit,
            PartOfUnit part,
            Side side,
            Against against,
            @Rounded(Rounding.LENGTH_DOWN) double valueM,
            List<Double> lonLat) {}

    /**
     * A part of a unit's underside over raised ground beside the pavement.
     *
     * @param ground "the curb", or which island
     * @param heightM of that ground; null when nobody measured it
     * @param gapM underside over it; null likewise
     */
    public record Overhang(
            Sentence unit,
            Sentence ground,
            @Rounded(Rounding.LENGTH_NEAR) Double heightM,
            @Rounded(Rounding.LENGTH_DOWN) Double gapM,
            @Rounded(Rounding.LENGTH_UP) double requiredM,
            List<Double> lonLat) {}

    /** "trailer load", or the unit alone where the part is its body. */
    public static Sentence part(UnitName of, PartOfUnit part) {
        Sentence unit = Names.of(of.word());
        return part.isBodyOf(of)
                ? unit
                : Sentence.of(Code.CORNER_PART).with("unit", unit).with("part", Names.of(part.word()));
    }
}
