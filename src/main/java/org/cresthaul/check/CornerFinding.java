package org.cresthaul.check;

import java.util.List;

/**
 * What a corner comes to in one axle and booster state: the best way round that was found, what room it leaves and how far
 * the combination swings. Lengths are metres, places longitude and latitude.
 *
 * @param valueM the least room of any tyre to the edge of the pavement and of any body to what it must miss; negative: it
 *     encroaches by so much
 * @param requiredM margin and uncertainty
 * @param unit part side against what is tightest, in words
 * @param ownLanes verdict without escorts
 * @param escorts whether the line needs the opposing lane, which escorts must hold
 * @param line the lead line of the steer axle
 * @param gaps of every unit's tyres and bodies, tightest first
 * @param offtrackingM of the last effective axle
 * @param trailsWideM how far the booster's tyres run outside the trailer's; null without a trailing booster
 * @param trailsWideAt where, or null
 * @param pivotSwingM how far the booster's pivot runs outside the path of the trailer's effective axle; null likewise
 * @param steerRad largest steer angle
 * @param articulationRad largest angle at each coupling
 * @param beyondLimits whether steering or a coupling would have to turn farther than it can
 */
public record CornerFinding(
        double valueM,
        double requiredM,
        double marginM,
        double uncertaintyM,
        String verdict,
        String unit,
        String part,
        String side,
        String against,
        List<Double> lonLat,
        String ownLanes,
        boolean escorts,
        LineFigures line,
        List<SideGap> gaps,
        double offtrackingM,
        double sweptWidthM,
        double tailSwingM,
        double frontalSwingM,
        Double trailsWideM,
        List<Double> trailsWideAt,
        Double pivotSwingM,
        double steerRad,
        List<Double> articulationRad,
        boolean beyondLimits) {
    /**
     * The lead line in a driver's words.
     *
     * @param offsetInM offsetOutM of the steer axle's centre from the centre of approach and exit, positive to the left
     * @param startM where the steering begins, along the approach from that centre point; negative before it
     * @param radiusM of the turn
     * @param swingInRad swingOutRad how far it swings away before and beyond after the turn
     */
    public record LineFigures(
            double offsetInM, double startM, double radiusM, double swingInRad, double swingOutRad, double offsetOutM) {}

    /** The least room of one unit's tyres or bodies. */
    public record SideGap(
            String unit, String part, String side, String against, double valueM, List<Double> lonLat) {}
}
