package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.turning.Against;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.LowPart;
import org.cresthaul.turning.Side;
import org.cresthaul.turning.TurningFigures;
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
 * @param unit part side against what is tightest on the line, in words
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
        String unit,
        String part,
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
            String unit,
            String part,
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

    static CornerFinding of(
            CornerCheck check, CornerCheck.Judged j, BoosterState booster, CornerCheck.Told told, CurbHeights heights) {
        CornerFit fit = j.fit();
        CornerFit.Gap t = fit.tightest();
        TurningFigures figures = told.figures();
        List<CornerFit.Gap> gaps = new ArrayList<>(fit.gaps());
        gaps.sort(Comparator.comparingDouble(CornerFit.Gap::valueM));
        List<Double> bends = new ArrayList<>();
        for (int k = 0; k + 1 < fit.combination().units().size(); k++) {
            bends.add(fit.track().mostArticulationRad(k));
        }
        Passed passed = Passed.of(j.space().corner(), fit);
        return new CornerFinding(
                fit.roomM(),
                t.valueM(),
                check.requiredM(),
                check.margins().sideM(),
                check.margins().lineM(),
                check.margins().turnInM(),
                check.uncertaintyM(),
                fit.lateM(),
                j.verdict(),
                fit.combination().units().get(t.unit()).name().word(),
                t.part(),
                t.side(),
                t.against(),
                check.lonLat(t.xM(), t.yM()),
                j.ownLanes().word(),
                j.escorts(),
                DriverLine.of(j.space().corner(), fit),
                BackingLine.of(j.space().corner(), fit, booster),
                gaps.stream()
                        .map(g -> new SideGap(
                                fit.combination().units().get(g.unit()).name().word(),
                                g.part(),
                                g.side(),
                                g.against(),
                                g.valueM(),
                                check.lonLat(g.xM(), g.yM())))
                        .toList(),
                overhangs(check, j, told.overhung(), heights),
                passed.beforeM(),
                passed.behindM(),
                figures.offtrackingM().get(figures.offtrackingM().size() - 1),
                figures.sweptWidthM(),
                figures.tailSwing().valueM(),
                figures.frontalSwing().valueM(),
                figures.trailsWide().map(s -> s.valueM()).orElse(null),
                figures.trailsWide()
                        .filter(s -> s.valueM() > 0)
                        .map(s -> check.lonLat(s.xM(), s.yM()))
                        .orElse(null),
                figures.pivotSwing().map(s -> s.valueM()).orElse(null),
                UnitSwing.listOf(figures, fit.combination()),
                fit.track().mostSteerRad(),
                bends,
                !fit.withinLimits());
    }

    /** Of every unit over every raised ground, the lowest slice that passes over it. */
    private static List<Overhang> overhangs(
            CornerCheck check, CornerCheck.Judged j, Overhung overhung, CurbHeights heights) {
        List<Overhang> over = new ArrayList<>();
        for (int z = 0; z < heights.zones().size(); z++) {
            CurbHeights.Zone zone = heights.zones().get(z);
            List<Optional<CornerFit.Gap>> found = overhung.byZone().get(z);
            for (int unit = 0; unit < j.fit().combination().units().size(); unit++) {
                int lowest = -1;
                for (int i = 0; i < found.size(); i++) {
                    if (heights.unitOf(heights.slices().get(i)) == unit
                            && found.get(i).isPresent()
                            && (lowest < 0
                                    || heights.slices().get(i).heightM()
                                            < heights.slices().get(lowest).heightM())) {
                        lowest = i;
                    }
                }
                if (lowest >= 0) {
                    double underM = heights.slices().get(lowest).heightM();
                    CornerFit.Gap at = found.get(lowest).orElseThrow();
                    boolean known = zone.heightM().isPresent();
                    over.add(new Overhang(
                            Names.of(j.fit()
                                    .combination()
                                    .units()
                                    .get(unit)
                                    .name()
                                    .word()),
                            zone.island() == LowPart.BEYOND_EDGE
                                    ? Sentence.of(Code.GROUND_CURB)
                                    : Sentence.of(Code.GROUND_ISLAND).with("number", zone.island() + 1),
                            known ? (Double) zone.heightM().getAsDouble() : null,
                            known ? (Double) (underM - zone.heightM().getAsDouble()) : null,
                            check.curbRequiredM(),
                            check.lonLat(at.xM(), at.yM())));
                }
            }
        }
        over.sort(Comparator.comparingDouble(o -> o.gapM() == null ? Double.NEGATIVE_INFINITY : o.gapM()));
        return List.copyOf(over);
    }

    /** "trailer load", or the unit alone where the part is its body. */
    public static Sentence part(String unit, String part) {
        return part.equals(unit)
                ? Names.of(unit)
                : Sentence.of(Code.CORNER_PART).with("unit", Names.of(unit)).with("part", Names.of(part));
    }

    static double angle(double rad) {
        return Math.rint(rad * 1e5) / 1e5;
    }
}
