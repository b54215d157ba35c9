package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Comparator;
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
        double room = least(gaps);
        double late = 0;
        boolean within = isWithinLimits(fine);
        if (wanted.lateM() > 0) {
            for (double by : new double[] {-wanted.lateM(), wanted.lateM()}) {
                // Who cannot steer back onto the line runs on beside it.
                SteeredLine begun = line.begun(by, combination.steeringLimitRad(), combination.steeringRatePerM())
                        .orElse(line.moved(by, 0));
                Track other = Following.along(combination.chain(), begun.path(setting.runInM(), setting.runOutM()),
                        PassageRoom.STATE_M);
                double least = isWithinLimits(other)
                        ? least(PassageRoom.of(other, setting.parts()))
                        : Math.min(room, -PassageRoom.CHORD_M);
                if (least < room) {
                    room = least;
                    late = by;
                }
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
                room,
                late,
                space.escorts,
                within,
                space.way.passesIslandsLike(track),
                space.escorts && borrows(fine));
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
        return gaps.stream().min(Comparator.comparingDouble(CornerFit.Gap::valueM)).orElseThrow().valueM();
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
        KeepOff lanes = KeepOff.areaOf(Against.OPPOSING, setting.space().corner.opposing());
        List<PassingPart> parts = new ArrayList<>();
        for (int k = 0; k < setting.combination().units().size(); k++) {
            for (Body b : setting.combination().units().get(k).bodies()) {
                parts.add(new PassingPart(k, b.part(), b.rearM(), b.frontM(), -b.halfWidthM(), b.halfWidthM(), lanes));
            }
        }
        return !lanes.isEmpty() && least(PassageRoom.entered(track, parts)) < 0;
    }
}
