package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.cresthaul.geometry.StopSignal;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * The search behind {@link CornerFit}: from many lines of {@link LineSeeds}, the best of them climbed from by {@link
 * LineSearch}, first for the room that is required, with the turn begun early and late; when none has it, for as much room
 * as there is. One search answers one question on one thread.
 */
final class CornerSearch {
    /** How many lines are climbed from, and how many of those for as much room as there is, before and after it looks bad. */
    private static final int CLIMBS = 2;

    private static final int RAISES = 1;
    private static final int MORE_CLIMBS = 8;
    private static final int MORE_RAISES = 4;
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
    private static final int RAISE_ROUNDS = 8;
    /** What lacks no more than this to be free may have it when it is looked at most closely, meters. */
    private static final double NEARLY_M = 0.15;
    /** A line that lacks more than this is raised only to tell by how much, meters. */
    private static final double HOPELESS_M = 1.5;
    /** When so many climbs have all ended as hopeless, no other is begun. */
    private static final int HOPELESS_CLIMBS = 5;
    /** When so many lines with the required room have lost it begun early or late, no other is looked for. */
    private static final int MOST_STRAYED = 4;
    /** Bends shrink by e for every length of a unit; this many lengths leave nothing that can be seen. */
    private static final double SETTLED_LENGTHS = 15;
    /** What lies farther from the corner's ends belongs to the roads going on. */
    private static final double NEARBY_M = 300;

    private final StopSignal stop = StopSignal.current();
    private final CornerSpace space;
    private final TurningCombination combination;
    private final CornerFit.Wanted wanted;
    final LineTrial.Setting setting;
    final LineSearch search;
    private final PassageJudge judge;
    private final LineSeeds seeds;
    private int strayed;
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
        List<LineSearch.Tried> tried = new ArrayList<>();
        List<SteeredLine> from = seeds.list();
        SteeredLine first = from.get(0);
        for (SteeredLine line : from) {
            stop.poll();
            tried.add(search.tried(line, aim, 0, SEED_M));
        }
        tried.sort(Comparator.comparingDouble(t -> t.cost));
        tried.removeIf(t -> t.cost == Double.POSITIVE_INFINITY);
        best = raised(climbed(tried, 0, CLIMBS, aim, climbed, best), climbed, RAISES);
        // Nothing is called tight or blocked after a short look.
        if (!isClear(best)) {
            best = raised(climbed(tried, CLIMBS, MORE_CLIMBS, aim, climbed, best), climbed, MORE_RAISES);
        }
        return best != null ? best : judge.judge(first);
    }

    private CornerFit climbed(
            List<LineSearch.Tried> tried, int from, int to, double aim, List<LineSearch.Tried> climbed, CornerFit before) {
        CornerFit best = before;
        for (int i = from; i < Math.min(to, tried.size()) && !isEnded(best, climbed); i++) {
            best = better(best, climbed(tried.get(i).line, aim, climbed));
        }
        return best;
    }

    private CornerFit raised(CornerFit before, List<LineSearch.Tried> climbed, int most) {
        CornerFit best = before;
        climbed.sort(Comparator.comparingDouble(t -> -t.leastM));
        for (int i = 0; i < Math.min(most, climbed.size()) && !isClear(best) && strayed < MOST_STRAYED; i++) {
            LineSearch.Tried top = climbed.get(i);
            if (best != null && top.leastM < wanted.freeM() - HOPELESS_M) {
                break;
            }
            if (raised.contains(top)) {
                continue;
            }
            raised.add(top);
            SteeredLine line = raised(top.line, 0);
            best = better(best, judge.judge(line));
            // What does not have the room on the line itself does not have it for a driver who is off it.
            if (best.tightest().valueM() >= wanted.requiredM() && !isClear(best)) {
                best = better(best, judged(raised(line, wanted.lateM())));
            }
        }
        return best;
    }

    CornerFit judgedAgain(CornerFit fit) {
        return judge.again(fit);
    }

    /** Climbs for the required room, kept early and late; judged exactly where it is there, and null where it is not. */
    private CornerFit climbed(SteeredLine from, double aim, List<LineSearch.Tried> climbed) {
        double rival = climbed.stream().mapToDouble(t -> t.cost).min().orElse(Double.POSITIVE_INFINITY);
        LineSearch.Tried top = search.climb(from, aim, 0, COARSE_M, rival);
        climbed.add(top);
        if (!top.isEnough()) {
            return null;
        }
        return judged(wanted.lateM() > 0 ? search.climb(top.line, aim, wanted.lateM(), COARSE_M).line : top.line);
    }

    private CornerFit judged(SteeredLine line) {
        CornerFit fit = judge.judge(line);
        strayed += !isClear(fit) && fit.canBeDriven() && fit.tightest().valueM() >= wanted.requiredM() ? 1 : 0;
        return fit;
    }

    private boolean isEnded(CornerFit best, List<LineSearch.Tried> climbed) {
        return isClear(best) || strayed >= MOST_STRAYED
                || climbed.size() >= HOPELESS_CLIMBS
                        && climbed.stream().allMatch(t -> t.leastM < wanted.freeM() - HOPELESS_M);
    }

    /**
     * As much room as can be had near a line: each time a little more is wanted than there is. What then nearly has it is looked
     * at more closely.
     */
    private SteeredLine raised(SteeredLine from, double lateM) {
        LineSearch.Tried at = raised(from, lateM, FINE_M, RAISE_M);
        boolean nearly = !at.isEnough() && at.leastM > wanted.freeM() - NEARLY_M;
        return nearly ? raised(at.line, lateM, FINEST_M, POLISH_M).line : at.line;
    }

    private LineSearch.Tried raised(SteeredLine from, double lateM, double stateM, double firstM) {
        LineSearch.Tried at = search.tried(from, wanted.requiredM() + AIM_M, lateM, stateM);
        double more = firstM;
        int rounds = at.leastM < wanted.freeM() - HOPELESS_M ? 2 : RAISE_ROUNDS;
        for (int round = 0; round < rounds && !at.isEnough(); round++) {
            stop.poll();
            double level = Math.min(wanted.requiredM() + AIM_M, at.leastM + more);
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

    /** The one that is clear, else the one that is free, else the one with more room; with equal standing the one with more. */
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
        double longest = combination.chain().stream().mapToDouble(TurningUnit::hitchToAxleM).max().orElseThrow();
        double length = combination.lengthM();
        DrivenWay way = space.way;
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
