package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CoupledCombination;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.PostureSolver.PlacedBooster;
import org.cresthaul.posture.WheelPaths;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;

/**
 * Where trailer and booster of one setting with one leveling stand on a way, whatever place across the road is looked
 * at. Not changed after construction.
 */
final class UnitPlaces {
    final CombinationShape shape;
    final CoupledCombination combination;
    final PostureSolver solver;
    /** At the first positions of the way. */
    final List<Placed> first;

    /** Everything at one steer position; no booster is null. */
    record Placed(PlacedUnit tractor, PlacedUnit trailer, PlacedBooster booster) {
        PlacedUnit onBooster() {
            return booster == null ? null : booster.unit();
        }
    }

    /**
     * Places the combination at the first positions of the way.
     *
     * @param spans of the way, one behind the other
     */
    UnitPlaces(
            CombinationShape shape, Setting setting, Leveling leveling, WheelPaths ground, List<Passage.Span> spans) {
        this.shape = shape;
        combination = new CoupledCombination(shape, setting, leveling);
        solver = new PostureSolver(combination, ground);
        List<Placed> places = new ArrayList<>(spans.size() + 1);
        Placed last = behind(spans.get(0).start);
        places.add(last);
        for (Passage.Span span : spans) {
            last = between(span.end, last, last);
            places.add(last);
        }
        first = List.copyOf(places);
    }

    /** Behind a tractor between two neighbors already placed. */
    Placed between(PlacedUnit tractor, Placed a, Placed b) {
        double trailerGuess = 0.5 * (a.trailer.pose.pitchRad() + b.trailer.pose.pitchRad());
        double boosterGuess = a.booster == null
                ? 0
                : 0.5
                        * (a.booster.unit().pose.pitchRad()
                                + b.booster.unit().pose.pitchRad());
        return place(tractor, trailerGuess, boosterGuess);
    }

    /** Behind a tractor that nothing is known of. */
    Placed behind(PlacedUnit tractor) {
        return place(tractor, tractor.pose.pitchRad(), tractor.pose.pitchRad());
    }

    private Placed place(PlacedUnit tractor, double trailerGuess, double boosterGuess) {
        PlacedUnit trailer = solver.trailerAt(tractor, trailerGuess);
        return new Placed(
                tractor, trailer, shape.trailing().isPresent() ? solver.boosterAt(trailer, boosterGuess) : null);
    }
}
