package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.CornerFinding;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.LowPart;
import org.cresthaul.turning.TurningFigures;

/** What a judged corner comes to, told as a finding. */
final class CornerTelling {
    private CornerTelling() {}

    static CornerFinding of(
            CornerCheck check,
            CornerCheck.JudgedCorner j,
            BoosterState booster,
            CornerCheck.Told told,
            CurbHeights heights) {
        CornerFit fit = j.fit();
        CornerFit.Gap t = fit.tightest();
        TurningFigures figures = told.figures();
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
                fit.combination().nameOf(t),
                t.part(),
                t.side(),
                t.against(),
                check.lonLat(t.xM(), t.yM()),
                j.ownLanes().word(),
                j.escorts(),
                DriverLines.of(j.space().corner(), fit),
                BackingLines.of(j.space().corner(), fit, booster),
                sideGaps(check, fit),
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
                UnitSwings.listOf(figures, fit.combination()),
                fit.track().mostSteerRad(),
                bends,
                !fit.withinLimits());
    }

    /** The tightest first. */
    private static List<CornerFinding.SideGap> sideGaps(CornerCheck check, CornerFit fit) {
        return fit.gaps().stream()
                .sorted(Comparator.comparingDouble(CornerFit.Gap::valueM))
                .map(g -> new CornerFinding.SideGap(
                        fit.combination().nameOf(g),
                        g.part(),
                        g.side(),
                        g.against(),
                        g.valueM(),
                        check.lonLat(g.xM(), g.yM())))
                .toList();
    }

    /** Of every unit over every raised ground, the lowest slice that passes over it. */
    private static List<CornerFinding.Overhang> overhangs(
            CornerCheck check, CornerCheck.JudgedCorner j, Overhung overhung, CurbHeights heights) {
        List<CornerFinding.Overhang> over = new ArrayList<>();
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
                    over.add(new CornerFinding.Overhang(
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
}
