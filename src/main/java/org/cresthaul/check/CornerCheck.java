package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.road.Corner;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.CornerSpace;
import org.cresthaul.turning.Following;
import org.cresthaul.turning.TurningCombination;
import org.cresthaul.turning.TurningFigures;

/** Judges every configuration at one corner. The notch does not matter here. Not safe to share between threads. */
final class CornerCheck {
    /** States are that far apart that what lies between them hides less than this, metres. */
    static final double SAMPLING_M = 0.003;
    /** The search gains less than this on its grid's best line, metres. */
    private static final double HOPELESS_M = -1.5;
    /** Lines with more spare room than this are not told apart, metres. */
    private static final double SPARE_M = 0.1;

    private final RouteCorner hazard;
    private final LevelStance stance;
    private final Margins margins;
    private final double uncertaintyM;
    private final Map<String, Judged> judged = new HashMap<>();
    private final Map<Judged, CornerFinding> findings = new IdentityHashMap<>();
    private final Map<Boolean, CornerSpace> spaces = new HashMap<>();

    /** The best way round and what it is worth. */
    record Judged(CornerFit fit, Verdict verdict, Verdict ownLanes, boolean escorts) {}

    CornerCheck(RouteCorner hazard, Rig rig, LevelStance stance, Margins margins) {
        this.hazard = hazard;
        this.stance = stance;
        this.margins = margins;
        double survey = hazard.survey().map(s -> s.valueM()).orElse(0.0);
        uncertaintyM = Math.hypot(survey, rig.measurement().valueM()) + SAMPLING_M + Following.TOLERANCE_M;
    }

    double requiredM() {
        return margins.sideM() + uncertaintyM;
    }

    /** Every configuration's cell, those of one axle and booster state alike. */
    List<Report.Cell> cells(List<CheckedConfiguration> configurations) {
        List<Report.Cell> cells = new ArrayList<>();
        List<String> would = new ArrayList<>();
        for (CheckedConfiguration c : configurations) {
            judge(c).filter(j -> j.verdict == Verdict.CLEAR || j.verdict == Verdict.TIGHT)
                    .map(j -> c.stateLabel() + (j.escorts ? " with escorts" : ""))
                    .filter(l -> !would.contains(l))
                    .ifPresent(would::add);
        }
        for (CheckedConfiguration c : configurations) {
            cells.add(cell(c, would));
        }
        return cells;
    }

    private Report.Cell cell(CheckedConfiguration c, List<String> would) {
        if (!hazard.isSurveyed()) {
            return Report.Cell.unknown(c.key(), hazard.radiusM().isPresent()
                    ? "a tight turn of the route line whose geometry nobody has given"
                    : "no geometry: nothing can be said about this corner");
        }
        Optional<Judged> found = judge(c);
        if (found.isEmpty()) {
            return Report.Cell.unknown(c.key(), "the rig file has no plan (widths and turning limits): no corner can be"
                    + " judged");
        }
        Judged j = found.get();
        List<String> reasons = new ArrayList<>();
        CornerFit.Gap tightest = j.fit.tightest();
        if (!j.fit.withinLimits()) {
            reasons.add("corner: no line found that steering and couplings allow");
        }
        if (j.escorts) {
            reasons.add("corner: only by using the oncoming lane; escorts must hold the traffic, as the permit says");
        }
        if (j.verdict == Verdict.CONTACT && tightest.valueM() < 0) {
            reasons.add("corner: on the best line found, " + words(tightest, j.fit) + " goes over "
                    + tightest.against().word());
        } else if (j.verdict == Verdict.CONTACT) {
            reasons.add("corner: the room is smaller than its uncertainty: cannot rule out contact");
        } else if (j.verdict == Verdict.TIGHT && room(j.fit) < requiredM()) {
            reasons.add("corner: no contact, but less than the required margin");
        }
        if (j.verdict == Verdict.CONTACT) {
            reasons.add(would.isEmpty()
                    ? "corner: no configuration of this rig makes the turn"
                    : "corner: would make the turn: " + String.join("; ", would));
        }
        return Report.Cell.atCorner(c.key(), j.verdict.word(), reasons,
                findings.computeIfAbsent(j, this::finding));
    }

    private static String words(CornerFit.Gap gap, CornerFit fit) {
        String unit = fit.combination().units().get(gap.unit()).name();
        return "the " + unit + (gap.part().equals(unit) ? "" : "'s " + gap.part()) + " on the " + gap.side();
    }

    private static double room(CornerFit fit) {
        return fit.withinLimits() ? fit.tightest().valueM() : Math.min(fit.tightest().valueM(), -0.001);
    }

    /** The best way round in a configuration's axle and booster state; empty without a plan or a geometry. */
    Optional<Judged> judge(CheckedConfiguration c) {
        if (hazard.shape().isEmpty()) {
            return Optional.empty();
        }
        Optional<TurningCombination> combination = TurningCombination.of(stance, c.lift(), c.booster());
        return combination.map(t -> judged.computeIfAbsent(c.lift().word() + "/" + c.booster().word(), k -> judge(t)));
    }

    private Judged judge(TurningCombination combination) {
        for (Judged before : judged.values()) {
            if (before.fit.combination().equals(combination)) {
                return before;
            }
        }
        Corner corner = hazard.shape().orElseThrow();
        double enough = requiredM() + SPARE_M;
        // Where the opposing lanes may be borrowed, the own lanes are not searched to the end for what they cannot have.
        double hopeless = corner.escorted().isPresent() ? HOPELESS_M : Double.NEGATIVE_INFINITY;
        CornerFit own = CornerFit.of(space(corner, false), combination, enough, hopeless);
        Verdict verdict = verdict(own);
        if (verdict == Verdict.CLEAR || corner.escorted().isEmpty()) {
            return new Judged(own, verdict, verdict, false);
        }
        CornerFit wide = CornerFit.of(space(corner, true), combination, enough, Double.NEGATIVE_INFINITY);
        Verdict withEscorts = verdict(wide);
        // Free with its margin only on the opposing lane, and free without it on its own: both are a person's decision.
        if (verdict == Verdict.TIGHT && withEscorts != Verdict.CLEAR || room(wide) <= room(own)) {
            return new Judged(own, verdict, verdict, false);
        }
        return new Judged(wide, withEscorts.orWorse(Verdict.TIGHT), verdict, wide.usesOpposing());
    }

    private CornerSpace space(Corner corner, boolean escorts) {
        return spaces.computeIfAbsent(escorts, e -> new CornerSpace(corner, e));
    }

    private Verdict verdict(CornerFit fit) {
        double room = room(fit);
        return room >= requiredM() ? Verdict.CLEAR : room >= uncertaintyM ? Verdict.TIGHT : Verdict.CONTACT;
    }

    private CornerFinding finding(Judged j) {
        CornerFit fit = j.fit;
        CornerFit.Gap t = fit.tightest();
        TurningFigures figures = TurningFigures.of(fit.track(), fit.combination());
        List<CornerFit.Gap> gaps = new ArrayList<>(fit.gaps());
        gaps.sort(Comparator.comparingDouble(CornerFit.Gap::valueM));
        List<Double> bends = new ArrayList<>();
        for (int k = 0; k + 1 < fit.combination().units().size(); k++) {
            bends.add(angle(fit.track().mostArticulationRad(k)));
        }
        return new CornerFinding(
                Figures.down(t.valueM()),
                Figures.up(requiredM()),
                Figures.near(margins.sideM()),
                Figures.up(uncertaintyM),
                j.verdict.word(),
                fit.combination().units().get(t.unit()).name(),
                t.part(),
                t.side(),
                t.against().word(),
                lonLat(t.xM(), t.yM()),
                j.ownLanes.word(),
                j.escorts,
                new CornerFinding.LineFigures(
                        Figures.near(fit.line().offsetInM()),
                        Figures.near(fit.line().startM()),
                        Figures.near(fit.line().radiusM()),
                        angle(fit.line().swingInRad()),
                        angle(fit.line().swingOutRad()),
                        Figures.near(fit.offsetOutM())),
                gaps.stream()
                        .map(g -> new CornerFinding.SideGap(
                                fit.combination().units().get(g.unit()).name(),
                                g.part(),
                                g.side(),
                                g.against().word(),
                                Figures.down(g.valueM()),
                                lonLat(g.xM(), g.yM())))
                        .toList(),
                Figures.up(figures.offtrackingM().get(figures.offtrackingM().size() - 1)),
                Figures.up(figures.sweptWidthM()),
                Figures.up(figures.tailSwing().valueM()),
                Figures.up(figures.frontalSwing().valueM()),
                figures.trailsWide().map(s -> Figures.up(s.valueM())).orElse(null),
                figures.trailsWide().filter(s -> s.valueM() > 0).map(s -> lonLat(s.xM(), s.yM())).orElse(null),
                figures.pivotSwing().map(s -> Figures.up(s.valueM())).orElse(null),
                angle(fit.track().mostSteerRad()),
                bends,
                !fit.withinLimits());
    }

    private static double angle(double rad) {
        return Math.rint(rad * 1e5) / 1e5;
    }

    private List<Double> lonLat(double xM, double yM) {
        return lonLat(hazard, xM, yM);
    }

    static List<Double> lonLat(RouteCorner corner, double xM, double yM) {
        LonLat at = corner.lonLat(xM, yM);
        return List.of(Math.rint(at.lonDeg() * 1e8) / 1e8, Math.rint(at.latDeg() * 1e8) / 1e8);
    }
}
