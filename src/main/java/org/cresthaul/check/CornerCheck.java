package org.cresthaul.check;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.CornerFinding;
import org.cresthaul.report.Margins;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.road.Corner;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.CornerSpace;
import org.cresthaul.turning.Following;
import org.cresthaul.turning.LowPart;
import org.cresthaul.turning.NoLine;
import org.cresthaul.turning.SteeredLine;
import org.cresthaul.turning.TurningCombination;
import org.cresthaul.turning.TurningFigures;

/**
 * Judges configurations at one corner. The notch matters only where the underside would pass over a curb or an island.
 * Not safe to share between threads.
 */
public final class CornerCheck {
    /** What lies between states hides less than this, meters. */
    static final double CHORD_M = 0.001;
    /** How far the declared height of a curb may be off: this program's choice. */
    static final double CURB_M = 0.0254;

    private final RouteCorner hazard;
    private final Optional<String> unknown;
    private final Rig rig;
    private final LevelStance stance;
    private final Margins margins;
    private final double uncertaintyM;
    private final double heightUncertaintyM;
    private final Map<Question, JudgedCorner> judged = new HashMap<>();
    /** Of all notches but the highest. */
    private final Map<Question, JudgedCorner> lows = new HashMap<>();

    private final Map<Seen, CurbHeights> heights = new HashMap<>();
    private final Map<JudgedCorner, JudgedCorner> backing = new IdentityHashMap<>();
    private final Map<JudgedCorner, Map<String, CornerFinding>> findings = new IdentityHashMap<>();
    private final Map<SteeredLine, Told> told = new IdentityHashMap<>();
    private final Map<SteeredLine, Optional<Sentence>> noLines = new IdentityHashMap<>();
    private final Map<Boolean, CornerSpace> spaces;

    /** The best way round and what it is worth. */
    public record JudgedCorner(CornerFit fit, CornerSpace space, Verdict verdict, Verdict ownLanes, boolean escorts) {}

    /** What does not depend on the notch. */
    record Told(TurningFigures figures, Overhung overhung, Optional<Sentence> noLine) {}

    /** A configuration, with its pivot free or locked. */
    private record Seen(String key, int units) {}

    /** What decides a way round: configurations that agree in it share one. */
    private record Question(TurningCombination combination, List<LowPart> low, List<LowPart> lowest) {}

    /** @param spaces of the corner, without and with escorts, made when first asked for; may be shared */
    public CornerCheck(
            JoinedCorners.Judging judging,
            Rig rig,
            LevelStance stance,
            Margins margins,
            Map<Boolean, CornerSpace> spaces) {
        this.spaces = spaces;
        hazard = judging.corner();
        unknown = judging.unknown();
        this.rig = rig;
        this.stance = stance;
        this.margins = margins;
        double survey = hazard.survey().map(s -> s.valueM()).orElse(0.0);
        uncertaintyM = Math.hypot(survey, rig.measurement().valueM()) + CHORD_M + Following.TOLERANCE_M;
        heightUncertaintyM =
                Math.hypot(Math.hypot(rig.measurement().valueM(), rig.ride().valueM()), CURB_M);
    }

    double requiredM() {
        return margins.sideM() + margins.lineM() + uncertaintyM;
    }

    double uncertaintyM() {
        return uncertaintyM;
    }

    Margins margins() {
        return margins;
    }

    RouteCorner hazard() {
        return hazard;
    }

    /** A corner nearby that nobody surveyed. */
    Optional<String> unknownNeighbor() {
        return unknown;
    }

    /** Gap that has to be left over a curb. */
    double curbRequiredM() {
        return margins.groundM() + heightUncertaintyM;
    }

    /** Judges a configuration and gathers what is told of it; {@link #cell} then has both. */
    void prepare(CheckedConfiguration c) {
        judge(c).ifPresent(j -> finding(c, j));
    }

    private Told told(CheckedConfiguration c, JudgedCorner j) {
        return told.computeIfAbsent(
                j.fit.line(),
                line -> new Told(
                        j.fit.figures(),
                        Overhung.of(j, heights(c, j.fit.combination())),
                        noLines.getOrDefault(line, Optional.empty())));
    }

    /** @param would the states that can make the turn, in words */
    ReportCell cell(CheckedConfiguration c, List<Sentence> would) {
        if (!hazard.isSurveyed()) {
            return ReportCell.unknown(
                    c.key(),
                    Sentence.of(hazard.radiusM().isPresent() ? Code.CORNER_TIGHT_TURN : Code.CORNER_NO_GEOMETRY));
        }
        Optional<JudgedCorner> found = judge(c);
        if (found.isEmpty()) {
            return ReportCell.unknown(c.key(), Sentence.of(Code.CORNER_NO_PLAN));
        }
        JudgedCorner j = found.get();
        CornerFinding finding = finding(c, j);
        return ReportCell.atCorner(
                c.key(), j.verdict, new CornerReasons(this, j, finding, told(c, j).noLine).list(would), finding);
    }

    private CornerFinding finding(CheckedConfiguration c, JudgedCorner j) {
        return findings.computeIfAbsent(j, k -> new HashMap<>())
                .computeIfAbsent(
                        c.key(),
                        k -> CornerTelling.of(this, j, c.booster(), told(c, j), heights(c, j.fit.combination())));
    }

    private CurbHeights heights(CheckedConfiguration c, TurningCombination combination) {
        return heights.computeIfAbsent(
                new Seen(c.key(), combination.units().size()),
                k -> new CurbHeights(
                        hazard.shape().orElseThrow(),
                        stance,
                        c.transport(),
                        fromAbove(c).orElseThrow(),
                        combination));
    }

    /** The best way round in a configuration; empty without a plan or a geometry. */
    public Optional<JudgedCorner> judge(CheckedConfiguration c) {
        if (hazard.shape().isEmpty()) {
            return Optional.empty();
        }
        return fromAbove(c).map(t -> hazard.shape().get().backing() ? backed(c, t) : judge(c, t));
    }

    private Optional<TurningCombination> fromAbove(CheckedConfiguration c) {
        return hazard.shape().orElseThrow().backing()
                ? TurningCombination.backing(stance, c.lift(), c.booster())
                : TurningCombination.of(stance, c.lift(), c.booster());
    }

    /**
     * Backed into, with the booster's pivot free or locked; tight at best, since nobody holds what folds by itself to a
     * line.
     */
    private JudgedCorner backed(CheckedConfiguration c, TurningCombination t) {
        JudgedCorner free = judge(c, t);
        JudgedCorner best = free;
        if (t.hasPivot()) {
            JudgedCorner locked = judge(c, t.pivotLocked());
            best = free.verdict == locked.verdict
                    ? locked.fit.tightest().valueM() >= free.fit.tightest().valueM() ? locked : free
                    : free.verdict.orWorse(locked.verdict) == free.verdict ? locked : free;
        }
        JudgedCorner way = best;
        return backing.computeIfAbsent(
                way,
                w -> new JudgedCorner(
                        w.fit,
                        w.space,
                        w.verdict.orWorse(Verdict.TIGHT),
                        w.ownLanes.orWorse(Verdict.TIGHT),
                        w.escorts));
    }

    private JudgedCorner judge(CheckedConfiguration c, TurningCombination t) {
        // A higher notch carries over all that a lower one does. Where the highest notch's line is worth as much at the
        // lowest, it is the line of all.
        Question top = question(c.at(rig.notches().get(rig.notches().size() - 1)), t);
        Question bottom = question(c.at(rig.notches().get(0)), t);
        JudgedCorner highest = judged.computeIfAbsent(top, this::judge);
        JudgedCorner lowest =
                lows.computeIfAbsent(bottom, q -> worth(q, highest).orElseGet(() -> judge(q)));
        return lowest.verdict == highest.verdict
                ? lowest
                : lows.computeIfAbsent(question(c, t), q -> worth(q, highest).orElse(lowest));
    }

    /** A way round with more to keep off; empty where it is worth less with it. */
    private Optional<JudgedCorner> worth(Question question, JudgedCorner way) {
        CornerFit.Wanted wanted = wanted();
        CornerFit kept = way.fit.with(way.space, question.low, wanted);
        CornerFit fit = verdict(kept) == Verdict.CLEAR ? kept : way.fit.with(way.space, question.lowest, wanted);
        Verdict here = fit == kept ? Verdict.CLEAR : verdict(fit).orWorse(Verdict.TIGHT);
        Verdict told = way.escorts ? here.orWorse(Verdict.TIGHT) : here;
        return told == way.verdict
                ? Optional.of(new JudgedCorner(fit, way.space, told, way.escorts ? way.ownLanes : told, way.escorts))
                : Optional.empty();
    }

    private Question question(CheckedConfiguration c, TurningCombination combination) {
        CurbHeights over = heights(c, combination);
        // To be clear, nothing passes over what is too high or of unknown height; to be free, what touches keeps off.
        return new Question(combination, over.low(curbRequiredM(), false), over.low(heightUncertaintyM, true));
    }

    private JudgedCorner judge(Question question) {
        CornerAnswers.Answer answer = CornerAnswers.find(
                new CornerAnswers.Question(
                        hazard.shape().orElseThrow(),
                        question.combination,
                        question.low,
                        question.lowest,
                        wanted(),
                        unknown.isPresent()),
                () -> {
                    JudgedCorner found = search(question);
                    return new CornerAnswers.Answer(
                            found.fit,
                            found.verdict,
                            found.ownLanes,
                            found.escorts,
                            found.verdict == Verdict.CONTACT
                                    ? NoLine.find(found.space, question.combination)
                                    : Optional.empty());
                });
        noLines.put(answer.fit().line(), answer.noLine());
        return new JudgedCorner(
                answer.fit(), space(answer.fit().escorts()), answer.verdict(), answer.ownLanes(), answer.escorts());
    }

    private JudgedCorner search(Question question) {
        Corner corner = hazard.shape().orElseThrow();
        JudgedCorner own = onLanes(question, false, List.of());
        if (own.verdict == Verdict.CLEAR || corner.escorted().isEmpty()) {
            return own;
        }
        JudgedCorner wide = onLanes(question, true, List.of(own.fit));
        // Free with its margin only on the opposing lane, and free without it on its own: both are a person's decision.
        if (own.verdict == Verdict.TIGHT && wide.verdict != Verdict.CLEAR
                || own.verdict == wide.verdict && wide.fit.roomM() <= own.fit.roomM()) {
            return own;
        }
        return new JudgedCorner(
                wide.fit, wide.space, wide.verdict.orWorse(Verdict.TIGHT), own.verdict, wide.fit.usesOpposing());
    }

    private JudgedCorner onLanes(Question question, boolean escorts, List<CornerFit> near) {
        CornerSpace space = space(escorts);
        CornerFit.Wanted wanted = wanted();
        // What has no line with the less to keep off has none with the more.
        CornerFit free = CornerFit.of(space, question.combination, question.lowest, wanted, near);
        Verdict verdict = verdict(free);
        if (question.low.equals(question.lowest) || verdict == Verdict.CONTACT) {
            return new JudgedCorner(free, space, verdict, verdict, false);
        }
        if (verdict == Verdict.CLEAR) {
            CornerFit kept = free.with(space, question.low, wanted);
            if (verdict(kept) != Verdict.CLEAR) {
                kept = CornerFit.of(space, question.combination, question.low, wanted, List.of(free));
            }
            if (verdict(kept) == Verdict.CLEAR) {
                return new JudgedCorner(kept, space, Verdict.CLEAR, Verdict.CLEAR, false);
            }
        }
        return new JudgedCorner(free, space, Verdict.TIGHT, Verdict.TIGHT, false);
    }

    private CornerSpace space(boolean escorts) {
        return spaces.computeIfAbsent(
                escorts, e -> new CornerSpace(hazard.shape().orElseThrow(), e));
    }

    private CornerFit.Wanted wanted() {
        return new CornerFit.Wanted(requiredM(), uncertaintyM, margins.turnInM());
    }

    /** Clear with its margin however the turn is begun; tight when it is free on the line itself. */
    private Verdict verdict(CornerFit fit) {
        if (!fit.canBeDriven() || fit.tightest().valueM() < uncertaintyM) {
            return Verdict.CONTACT;
        }
        return fit.roomM() >= requiredM() && unknown.isEmpty() ? Verdict.CLEAR : Verdict.TIGHT;
    }

    public List<Double> lonLat(double xM, double yM) {
        return lonLat(hazard, xM, yM);
    }

    public static List<Double> lonLat(RouteCorner corner, double xM, double yM) {
        LonLat at = corner.lonLat(xM, yM);
        return List.of(Math.rint(at.lonDeg() * 1e8) / 1e8, Math.rint(at.latDeg() * 1e8) / 1e8);
    }
}
