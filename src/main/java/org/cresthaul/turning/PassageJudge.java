package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.TurningCombination.Body;

/** Judges a line exactly: the line itself, and the same begun early and late. */
final class PassageJudge {
    private final LineTrial.Setting setting;
    private final CornerFit.Wanted wanted;

    PassageJudge(LineTrial.Setting setting, CornerFit.Wanted wanted) {
        this.setting = setting;
        this.wanted = wanted;
    }

    CornerFit judge(SteeredLine line) {
        TurningCombination combination = setting.combination();
        CornerSpace space = setting.space();
        LeadPath path = line.path(setting.runInM(), setting.runOutM());
        Track fine = Following.along(combination.chain(), path, PassageRoom.STATE_M);
        List<CornerFit.Gap> gaps = PassageRoom.of(fine, setting.parts());
        boolean within = isWithinLimits(fine);
        double least = least(gaps);
        CornerFit.Band band = new CornerFit.Band(least, 0);
        CornerFit.Band firm = new CornerFit.Band(least(gaps.stream().filter(g -> !g.against().isLow()).toList()), 0);
        // What has no room on the line itself needs no driver to stray from it.
        if (within && least >= wanted.freeM()) {
            for (double by : lateness()) {
                Track other = Following.along(combination.chain(), begun(line, by), PassageRoom.STATE_M);
                List<CornerFit.Gap> there = isWithinLimits(other) ? PassageRoom.of(other, setting.parts()) : List.of();
                double low = least(there.stream().filter(g -> g.against().isLow()).toList());
                firm = firm.orLess(there.isEmpty()
                        ? Math.min(firm.roomM(), -PassageRoom.CHORD_M)
                        : least(there.stream().filter(g -> !g.against().isLow()).toList()), by);
                band = band.orLess(Math.min(low, firm.roomM()), by);
            }
        }
        Track track = Following.along(combination.chain(), path);
        double[] in = offset(space.corner.approach(), path.at(0));
        double[] out = offset(space.corner.exit(), path.at(path.lengthM()));
        return new CornerFit(
                line,
                path,
                track,
                combination,
                steering(line, in[1], out[1]),
                gaps,
                band,
                firm,
                space.escorts,
                within,
                space.way.passesIslandsLike(track),
                space.escorts && borrows(fine));
    }

    /** A line judged before, with other low parts: all else stands as it was, where it was held against early and late. */
    CornerFit again(CornerFit fit) {
        if (fit.tightest().valueM() < wanted.freeM()) {
            return judge(fit.line());
        }
        List<PassingPart> low = setting.parts().stream().filter(p -> p.off().against.isLow()).toList();
        TurningCombination combination = setting.combination();
        List<CornerFit.Gap> gaps = new ArrayList<>(fit.gaps());
        gaps.removeIf(g -> g.against().isLow());
        gaps.addAll(PassageRoom.of(Following.along(combination.chain(), fit.path(), PassageRoom.STATE_M), low));
        double least = least(gaps);
        CornerFit.Band band = new CornerFit.Band(least, 0).orLess(fit.firm().roomM(), fit.firm().lateM());
        if (!low.isEmpty() && fit.withinLimits() && least >= wanted.freeM()) {
            for (double by : lateness()) {
                band = band.orLess(least(PassageRoom.of(
                        Following.along(combination.chain(), begun(fit.line(), by), PassageRoom.STATE_M), low)), by);
            }
        }
        return new CornerFit(fit.line(), fit.path(), fit.track(), combination, fit.steering(), gaps, band, fit.firm(),
                fit.escorts(), fit.withinLimits(), fit.keepsSides(), fit.usesOpposing());
    }

    private double[] lateness() {
        return wanted.lateM() > 0 ? new double[] {-wanted.lateM(), wanted.lateM()} : new double[0];
    }

    /** The line begun early or late; who cannot steer back onto it runs on beside it. */
    private LeadPath begun(SteeredLine line, double by) {
        TurningCombination combination = setting.combination();
        return line.begun(by, combination.steeringLimitRad(), combination.steeringRatePerM())
                .orElse(line.moved(by, 0))
                .path(setting.runInM(), setting.runOutM());
    }

    private CornerFit.Steering steering(SteeredLine line, double in, double out) {
        int from = 0;
        int to = line.steerRad.length - 1;
        while (from + 1 < to && Math.abs(line.steerRad[from + 1]) < Math.toRadians(1)) {
            from++;
        }
        while (to - 1 > from && Math.abs(line.steerRad[to - 1]) < Math.toRadians(1)) {
            to--;
        }
        return new CornerFit.Steering(
                setting.runInM() + from * line.spacingM, setting.runInM() + to * line.spacingM, in, out);
    }

    private static double[] offset(RoadEnd end, double[] at) {
        double c = Math.cos(end.headingRad());
        double s = Math.sin(end.headingRad());
        return new double[] {
            (at[0] - end.xM()) * c + (at[1] - end.yM()) * s, -(at[0] - end.xM()) * s + (at[1] - end.yM()) * c
        };
    }

    private static double least(List<CornerFit.Gap> gaps) {
        return gaps.stream().mapToDouble(CornerFit.Gap::valueM).min().orElse(Double.POSITIVE_INFINITY);
    }

    private boolean isWithinLimits(Track track) {
        TurningCombination combination = setting.combination();
        if (track.mostSteerRad() > combination.steerLimitRad() + 1e-9) {
            return false;
        }
        for (int k = 0; k < combination.articulationLimitRad().size(); k++) {
            if (track.mostArticulationRad(k) > combination.articulationLimitRad().get(k)) {
                return false;
            }
        }
        return true;
    }

    private boolean borrows(Track track) {
        KeepOff lanes = setting.space().lanes;
        List<PassingPart> parts = new ArrayList<>();
        for (int k = 0; k < setting.combination().units().size(); k++) {
            for (Body b : setting.combination().units().get(k).bodies()) {
                parts.add(new PassingPart(k, b.part(), b.rearM(), b.frontM(), -b.halfWidthM(), b.halfWidthM(), lanes));
            }
        }
        return !lanes.isEmpty() && least(PassageRoom.entered(track, parts)) < 0;
    }
}
