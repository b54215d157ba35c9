package org.cresthaul.posture;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;

/** How high a combination reaches above level ground in one setting. */
public final class StandingHeight {
    private StandingHeight() {}

    /** The highest point of tractor, trailer, load and booster, meters; the sag of the deck is not taken off. */
    public static double meters(LevelStance stance, Setting setting) {
        return greatest(stance, setting, Stream.of(stance.trailer().topside()), true);
    }

    /** The highest point of what stands on the deck, meters; without a load, of the trailer. */
    public static double ofLoadMeters(LevelStance stance, Setting setting) {
        boolean bare = stance.trailer().load().isEmpty() && setting.booster() != BoosterState.CARRIED;
        return greatest(stance, setting, bare ? Stream.of(stance.trailer().topside()) : Stream.empty(), false);
    }

    private static double greatest(LevelStance stance, Setting setting, Stream<Outline> onTrailer, boolean whole) {
        List<Outline> trailer = Stream.of(
                        onTrailer,
                        stance.trailer().load().stream(),
                        setting.booster() == BoosterState.CARRIED
                                ? stance.booster().flatMap(Booster::carried).stream()
                                : Stream.<Outline>empty())
                .flatMap(s -> s)
                .toList();
        double highest = Double.NEGATIVE_INFINITY;
        for (Leveling leveling : setting.levelings()) {
            CombinationPosture standing = new PostureSolver(stance, setting, leveling, RoadProfile.level()).at(0);
            for (Outline outline : trailer) {
                highest = Math.max(highest, top(standing.trailer(), outline, 0));
            }
            if (whole) {
                highest = Math.max(
                        highest, top(standing.tractor(), stance.tractor().topside(), 0));
                if (setting.booster() == BoosterState.TRAILING) {
                    highest = Math.max(
                            highest,
                            top(
                                    standing.booster().orElseThrow(),
                                    stance.booster().orElseThrow().topside(),
                                    0));
                } else if (setting.booster() == BoosterState.CLOSE_COUPLED) {
                    Booster booster = stance.booster().orElseThrow();
                    highest = Math.max(
                            highest,
                            top(
                                    standing.trailer(),
                                    booster.topside(),
                                    booster.closeCoupledAxleXM().orElseThrow()
                                            - booster.axle().xM()));
                }
            }
        }
        return highest;
    }

    private static double top(Pose pose, Outline outline, double shiftM) {
        return outline.points().stream()
                .mapToDouble(p -> pose.worldZM(p.xM() + shiftM, p.hM()))
                .max()
                .orElseThrow();
    }
}
