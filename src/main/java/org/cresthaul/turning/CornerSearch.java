package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.cresthaul.geometry.StopSignal;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * The search behind {@link CornerFit}: from many lines of {@link LineSeeds}, the best of them climbed from by
 * {@link LineSearch}, first for the room that is required, with the turn begun early and late; when none has it, for as
 * much room as there is. One search answers one question on one thread.
 */
final class CornerSearch {
    /**
     * How many lines are climbed from, and how many of those for as much room as there is, before and after it looks
     * bad.
     */
    private static final int CLIMBS = 2;

    private static final int RAISES = 1;
    private static final int MORE_CLIMBS = 8;
    private static final int MORE_RAISES = 3;
    private static final int MOST_CLIMBS = 16;
    private static final int MOST_RAISES = 5;
    private static final double SEED_M = 3;
    private static final double COARSE_M = 1.5;
    private static final double FINE_M = 0.75;
    private static final double FINEST_M = 0.3;
    /** Trials are coarse: they aim at a little more than is wanted. */
    private static final double AIM_M = 0.02;
    /** A raise that gains less is not gone on with. */
    private static final double GAIN_M = 0.003;

    /** How much more is wanted at first, and where it is looked at most closely. */
    private static final double RAISE_M = 0.3;

    private static final double POLISH_M = 0.1;
    private static final int RAISE_ROUNDS = 6;
    /** What lacks no more than this to be free may have more when it is looked at most closely, meters. */
    private static final double NEARLY_M = 0.2;
    /** A line that lacks more than this is raised only to tell by how much, meters. */
    private static final double HOPELESS_M = 1.5;
    /** What lacks more than this is raised in two steps, and no other after it, meters. */
    private static final double FAR_M = 0.5;
    /** When so many climbs have all ended as hopeless, no other is begun. */
    private static final int HOPELESS_CLIMBS = 5;
    /** When so many lines have the required room, but not early and late, no other is climbed to. */
    private static final int MOST_STRAYED = 4;
    /** How many of those are gone on with at once. */
    private static final int STRAYED_RAISES = 2;
    /** Bends shrink by e for every length of a unit; this many lengths leave nothing that can be seen. */
    private static final double SETTLED_LENGTHS = 15;
    /** What lies farther from the corner's ends belongs to the roads going on. */
    private static final double NEARBY_M = 300;

    private static final Comparator<LineSearch.Tried> LEAST_LACK = Comparator.comparingDouble(t -> t.cost);

    private final StopSignal stop = StopSignal.current();
    private final CornerSpace space;
    private final TurningCombination combination;
    private final CornerFit.Wanted wanted;
    final LineTrial.Setting setting;
    final LineSearch search;
    private final PassageJudge judge;
    private final LineSeeds seeds;
    /** Climbed to with the required room, and without it early or late. */
    private final List<LineSearch.Tried> strayed = new ArrayList<>();

    private final Set<LineSearch.Tried> raised = Collections.newSetFromMap(new IdentityHashMap<>());

    CornerSearch(CornerSpace space, TurningCombination combination, List<LowPart> low, CornerFit.Wanted wanted) {
        this.space = space;
        this.combination = combination;
        this.wanted = wanted;
        seeds = new LineSeeds(space, combination);
        setting = setting(low);
        search = new LineSearch(setting);
        judge = new PassageJudge(setting, wanted);
    }

    /** @param near lines to begin with, before all others */
    CornerFit best(List<SteeredLine> near) {
        return judge.whole(found(near));
    }

    private CornerFit found(List<SteeredLine> near) {
        double aim = wanted.requiredM() + AIM_M;
        CornerFit best = null;
        List<LineSearch.Tried> climbed = new ArrayList<>();
        for (SteeredLine line : near) {
            best = better(best, climbed(line, aim, climbed));
            if (isClear(best)) {
                return best;
            }
        }
        List<List<SteeredLine>> families = seeds.families();
        SteeredLine first = families.get(0).get(0);
        List<LineSearch.Tried> tried = inOrder(families, aim);
        best = raised(climbed(tried, 0, CLIMBS, aim, climbed, best), climbed, RAISES);
        // Nothing is called tight or blocked after a short look.
        if (!isClear(best)) {
            best = raised(climbed(tried, CLIMBS, MORE_CLIMBS, aim, climbed, best), climbed, MORE_RAISES);
        }
        // What nearly goes round is not called blocked after a middling one.
        if (best != null && standing(best) == 1 && best.tightest().valueM() > wanted.freeM() - NEARLY_M) {
            best = raised(climbed(tried, MORE_CLIMBS, MOST_CLIMBS, aim, climbed, best), climbed, MOST_RAISES);
        }
        return best != null ? best : judge.judge(first);
    }

    /** The two that lack least, then those of each family in turn. */
    private List<LineSearch.Tried> inOrder(List<List<SteeredLine>> families, double aim) {
        List<LineSearch.Tried> all = new ArrayList<>();
        Map<LineSearch.Tried, Integer> turns = new IdentityHashMap<>();
        for (List<SteeredLine> family : families) {
            List<LineSearch.Tried> of = new ArrayList<>();
            for (SteeredLine line : family) {
                stop.poll();
                of.add(search.tried(line, aim, 0, SEED_M));
            }
            of.removeIf(t -> t.cost == Double.POSITIVE_INFINITY);
            of.sort(LEAST_LACK);
            for (int turn = 0; turn < of.size(); turn++) {
                turns.put(of.get(turn), turn);
            }
            all.addAll(of);
        }
        all.sort(LEAST_LACK);
        List<LineSearch.Tried> behind = all.subList(Math.min(CLIMBS, all.size()), all.size());
        behind.sort(Comparator.<LineSearch.Tried>comparingInt(turns::get).thenComparing(LEAST_LACK));
        return all;
    }

    private CornerFit climbed(
            List<LineSearch.Tried> tried,
            int from,
            int to,
            double aim,
            List<LineSearch.Tried> climbed,
            CornerFit before) {
        CornerFit best = before;
        for (int i = from; i < Math.min(to, tried.size()) && !isEnded(best, climbed); i++) {
            best = better(best, climbed(tried.get(i).line, aim, climbed));
        }
        return best;
    }

    /**
     * Lines that have the required room but not early and late are gone on with; where there are none, those with most
     * room, and the highest of what nearly has it is then looked at most closely.
     */
    private CornerFit raised(CornerFit before, List<LineSearch.Tried> climbed, int most) {
        CornerFit best = before;
        List<LineSearch.Tried> from = new ArrayList<>(strayed.isEmpty() ? climbed : strayed);
        from.removeIf(raised::contains);
        from.sort(Comparator.comparingDouble(t -> -t.leastM));
        int tops = strayed.isEmpty() ? most : Math.min(most, STRAYED_RAISES);
        LineSearch.Tried highest = null;
        for (int i = 0; i < Math.min(tops, from.size()) && !isClear(best); i++) {
            LineSearch.Tried top = from.get(i);
            boolean hopeless = top.leastM < wanted.freeM() - HOPELESS_M;
            boolean farOff = i > 0 && best != null && best.tightest().valueM() < wanted.freeM() - FAR_M;
            if (best != null && (hopeless || farOff)) {
                break;
            }
            raised.add(top);
            LineSearch.Tried line = raised(top.line, top.lateM, FINE_M, RAISE_M);
            best = better(best, steadied(line));
            highest = highest == null || line.leastM > highest.leastM ? line : highest;
        }
        boolean nearly = highest != null && highest.lateM == 0 && highest.leastM > wanted.freeM() - NEARLY_M;
        return nearly && !isClear(best) ? better(best, steadied(raised(highest.line, 0, FINEST_M, POLISH_M))) : best;
    }

    /**
     * What has the room on the line itself is raised early and late as well: what does not, does not for a driver who
     * is off it.
     */
    private CornerFit steadied(LineSearch.Tried line) {
        CornerFit fit = judge.judge(line.line);
        return line.lateM < wanted.lateM() && fit.tightest().valueM() >= wanted.requiredM() && !isClear(fit)
                ? better(fit, judge.judge(raised(line.line, wanted.lateM(), FINE_M, RAISE_M).line))
                : fit;
    }

    CornerFit judgedAgain(CornerFit fit) {
        return judge.again(fit);
    }

    /**
     * Climbs for the required room, kept early and late; judged exactly where it is there, and null where it is not.
     */
    private CornerFit climbed(SteeredLine from, double aim, List<LineSearch.Tried> climbed) {
        double rival = climbed.stream().mapToDouble(t -> t.cost).min().orElse(Double.POSITIVE_INFINITY);
        LineSearch.Tried top = search.climb(from, aim, 0, COARSE_M, rival);
        climbed.add(top);
        if (!top.isEnough()) {
            return null;
        }
        if (wanted.lateM() == 0) {
            return judge.judge(top.line);
        }
        LineSearch.Tried late = search.climb(top.line, aim, wanted.lateM(), COARSE_M);
        CornerFit fit = judge.judge(late.line);
        if (!isClear(fit)) {
            strayed.add(late);
        }
        return fit;
    }

    private boolean isEnded(CornerFit best, List<LineSearch.Tried> climbed) {
        return isClear(best)
                || strayed.size() >= MOST_STRAYED
                || climbed.size() >= HOPELESS_CLIMBS
                        && climbed.stream().allMatch(t -> t.leastM < wanted.freeM() - HOPELESS_M);
    }

    /** As much room as can be had near a line: each time a little more is wanted than there is. */
    private LineSearch.Tried raised(SteeredLine from, double lateM, double stateM, double firstM) {
        double most = wanted.requiredM() + AIM_M;
        LineSearch.Tried at = search.tried(from, most, lateM, stateM);
        double more = firstM;
        int rounds = at.leastM < wanted.freeM() - FAR_M ? 2 : RAISE_ROUNDS;
        for (int round = 0; round < rounds && at.leastM < most - GAIN_M; round++) {
            stop.poll();
            double level = Math.min(most, at.leastM + more);
            if (!(level > -1e3)) {
                level = wanted.freeM();
            }
            LineSearch.Tried next = search.climb(at.line, level, lateM, stateM);
            if (next.leastM > at.leastM + GAIN_M) {
                at = next;
            } else {
                more /= 3;
                if (more < GAIN_M) {
                    break;
                }
            }
        }
        return at;
    }

    private boolean isClear(CornerFit fit) {
        return fit != null && fit.canBeDriven() && fit.roomM() >= wanted.requiredM();
    }

    /**
     * The one that is clear, else the one that is free, else the one with more room; with equal standing the one with
     * more.
     */
    private CornerFit better(CornerFit a, CornerFit b) {
        if (a == null || b == null) {
            return a == null ? b : a;
        }
        int standing = Integer.compare(standing(a), standing(b));
        if (standing != 0) {
            return standing > 0 ? a : b;
        }
        boolean byBand = standing(a) >= 2;
        double ra = byBand ? a.roomM() : a.tightest().valueM();
        double rb = byBand ? b.roomM() : b.tightest().valueM();
        return rb > ra ? b : a;
    }

    private int standing(CornerFit fit) {
        return !fit.canBeDriven() ? 0 : isClear(fit) ? 3 : fit.tightest().valueM() >= wanted.freeM() ? 2 : 1;
    }

    private LineTrial.Setting setting(List<LowPart> low) {
        double longest = combination.chain().stream()
                .mapToDouble(TurningUnit::hitchToAxleM)
                .max()
                .orElseThrow();
        double length = combination.lengthM();
        SteppedWay way = space.way;
        double startX = way.x[way.turnFrom];
        double startY = way.y[way.turnFrom];
        double c = Math.cos(space.corner.approach().headingRad());
        double s = Math.sin(space.corner.approach().headingRad());
        double co = Math.cos(space.corner.exit().headingRad());
        double so = Math.sin(space.corner.exit().headingRad());
        double back = 0;
        double ahead = 0;
        for (Geometry g : List.of(space.pavement, space.corner.obstacles(), space.corner.opposing())) {
            for (Coordinate at : g.getCoordinates()) {
                double before = -((at.x - startX) * c + (at.y - startY) * s);
                double behind = (at.x - way.x[way.turnTo]) * co + (at.y - way.y[way.turnTo]) * so;
                back = before < NEARBY_M ? Math.max(back, before) : back;
                ahead = behind < NEARBY_M ? Math.max(ahead, behind) : ahead;
            }
        }
        // The front of everything is before all there is, and at the end the rear of everything past it.
        double runIn = Math.max(back - LineSeeds.BEFORE_M, 0) + length + 2;
        double runOut = Math.max(SETTLED_LENGTHS * longest, ahead + length);
        List<PassingPart> parts = PassingPart.listOf(space, combination, low);
        return new LineTrial.Setting(space, combination, parts, PassingPart.rough(parts), runIn, runOut);
    }
}
