package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.TurningCombination.Body;

/** Judges a line exactly: the line itself, and the same begun early and late. */
final class PassageJudge {
    private final LineTrial.Setting setting;
    private final CornerFit.Wanted wanted;
    private final List<PassingPart> firmParts;
    private final List<PassingPart> lowParts;

    PassageJudge(LineTrial.Setting setting, CornerFit.Wanted wanted) {
        this.setting = setting;
        this.wanted = wanted;
        firmParts =
                setting.parts().stream().filter(p -> !p.off().against.isLow()).toList();
        lowParts = setting.parts().stream().filter(p -> p.off().against.isLow()).toList();
    }

    /** What decides: the least gap of all alone. {@link #whole} tells the others. */
    CornerFit judge(SteeredLine line) {
        TurningCombination combination = setting.combination();
        CornerSpace space = setting.space();
        LeadPath path = line.path(setting.runInM(), setting.runOutM());
        Track fine = fine(path);
        boolean within = isWithinLimits(fine);
        CornerFit.Gap tightest = PassageRoom.least(fine, firmParts).orElseThrow();
        CornerFit.Band firm = new CornerFit.Band(tightest.valueM(), 0);
        Optional<CornerFit.Gap> low = PassageRoom.least(fine, lowParts);
        if (low.isPresent() && low.get().valueM() < tightest.valueM()) {
            tightest = low.get();
        }
        CornerFit.Band band = new CornerFit.Band(tightest.valueM(), 0);
        // What has no room on the line itself needs no driver to stray from it.
        if (within && tightest.valueM() >= wanted.freeM()) {
            for (double by : lateness()) {
                Track other = fine(begun(line, by));
                firm = firm.orLess(
                        isWithinLimits(other) ? roomM(other, firmParts) : Math.min(firm.roomM(), -PassageRoom.CHORD_M),
                        by);
                band = band.orLess(Math.min(roomM(other, lowParts), firm.roomM()), by);
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
                List.of(tightest),
                band,
                firm,
                space.escorts,
                within,
                space.way.passesIslandsLike(track),
                false);
    }

    /** A judged line with every gap, and with what it needs of opposing lanes. */
    CornerFit whole(CornerFit fit) {
        Track fine = fine(fit.path());
        List<CornerFit.Gap> gaps = PassageRoom.of(fine, setting.parts());
        double least = gaps.stream().mapToDouble(CornerFit.Gap::valueM).min().orElseThrow();
        return with(fit, gaps, fit.band().orLess(least, 0), fit.escorts() && borrows(fine));
    }

    /** A whole line with other low parts: all else stands as it was, where it was held against early and late. */
    CornerFit again(CornerFit fit) {
        if (fit.tightest().valueM() < wanted.freeM()) {
            return whole(judge(fit.line()));
        }
        List<CornerFit.Gap> gaps = new ArrayList<>(fit.gaps());
        gaps.removeIf(g -> g.against().isLow());
        gaps.addAll(PassageRoom.of(fine(fit.path()), lowParts));
        double least = gaps.stream().mapToDouble(CornerFit.Gap::valueM).min().orElseThrow();
        CornerFit.Band band = new CornerFit.Band(least, 0)
                .orLess(fit.firm().roomM(), fit.firm().lateM());
        if (!lowParts.isEmpty() && fit.withinLimits() && least >= wanted.freeM()) {
            for (double by : lateness()) {
                band = band.orLess(roomM(fine(begun(fit.line(), by)), lowParts), by);
            }
        }
        return with(fit, gaps, band, fit.usesOpposing());
    }

    private static CornerFit with(CornerFit fit, List<CornerFit.Gap> gaps, CornerFit.Band band, boolean usesOpposing) {
        return new CornerFit(
                fit.line(),
                fit.path(),
                fit.track(),
                fit.combination(),
                fit.steering(),
                gaps,
                band,
                fit.firm(),
                fit.escorts(),
                fit.withinLimits(),
                fit.keepsSides(),
                usesOpposing);
    }

    private Track fine(LeadPath path) {
        return Following.along(setting.combination().chain(), path, PassageRoom.STATE_M);
    }

    private static double roomM(Track track, List<PassingPart> parts) {
        return PassageRoom.least(track, parts).map(CornerFit.Gap::valueM).orElse(Double.POSITIVE_INFINITY);
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

    /** What was not followed as closely as room is told is within nothing. */
    private boolean isWithinLimits(Track track) {
        TurningCombination combination = setting.combination();
        if (!(track.errorBoundM() <= Following.TOLERANCE_M)
                || track.mostSteerRad() > combination.steerLimitRad() + 1e-9) {
            return false;
        }
        for (int k = 0; k < combination.articulationLimitRad().size(); k++) {
            if (track.mostArticulationRad(k)
                    > combination.articulationLimitRad().get(k)) {
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
        return !lanes.isEmpty() && PassageRoom.isEntered(track, parts);
    }
}
