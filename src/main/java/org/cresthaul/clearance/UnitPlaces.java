package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CoupledCombination;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.posture.PostureSolver.CoupledUnit;
import org.cresthaul.posture.WheelPaths;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;

/**
 * Where the units behind the tractor stand on a way in one setting with one leveling, whatever place across the road is
 * looked at. Middles of stretches that are kept are kept as well. Not safe to share between threads.
 */
final class UnitPlaces {
    final CombinationShape shape;
    final CoupledCombination combination;
    final PostureSolver solver;
    /** At the first positions of the way. */
    final List<Placed> first;

    final UnitMotions motions;
    private final Middles middles = new Middles();

    /** Everything at one steer position. */
    static final class Placed {
        /** In the order of {@link CombinationShape#units}; not to be written to. */
        private final PlacedUnit[] units;
        /** Of each unit against the one ahead, as the ground asks for. */
        private final double[] bendRad;

        private Placed(PlacedUnit[] units, double[] bendRad) {
            this.units = units;
            this.bendRad = bendRad;
        }

        int size() {
            return units.length;
        }

        PlacedUnit unit(int k) {
            return units[k];
        }

        /** What the ground asks of a booster's hinge, before its limits. */
        double askedBendRad(int k) {
            return bendRad[k];
        }

        /** Pitch of a unit against the one ahead, nose up, radians. */
        double bendRad(int k) {
            return units[k].pose.pitchRad() - units[k - 1].pose.pitchRad();
        }
    }

    /** By the number of the stretch; so many of them, of some 2 kB each. */
    private static final class Middles {
        private static final int MOST = 500;

        private Placed[] known = {};
        private int kept;

        Placed of(int number) {
            return number >= 0 && number < known.length ? known[number] : null;
        }

        Placed keep(int number, Placed placed) {
            if (number >= 0 && kept < MOST) {
                if (number >= known.length) {
                    known = Arrays.copyOf(known, Math.max(number + 1, 2 * known.length));
                }
                known[number] = placed;
                kept++;
            }
            return placed;
        }
    }

    /** A pitch to start from. */
    private interface Guess {
        double pitchRad(PlacedUnit tractor, int unit);
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
        motions = new UnitMotions(this);
    }

    /** In the middle of a stretch, its tractor and both ends given. */
    Placed middle(Passage.Span span, PlacedUnit tractor, Placed a, Placed b) {
        Placed known = middles.of(span.number);
        return known != null ? known : middles.keep(span.number, between(tractor, a, b));
    }

    private Placed between(PlacedUnit tractor, Placed a, Placed b) {
        return place(tractor, (t, k) -> 0.5 * (a.units[k].pose.pitchRad() + b.units[k].pose.pitchRad()));
    }

    /** Behind a tractor that nothing is known of. */
    Placed behind(PlacedUnit tractor) {
        return place(tractor, (t, k) -> t.pose.pitchRad());
    }

    private Placed place(PlacedUnit tractor, Guess guess) {
        int n = shape.units().size();
        PlacedUnit[] units = new PlacedUnit[n];
        double[] bendRad = new double[n];
        units[0] = tractor;
        for (int k = 1; k < n; k++) {
            CoupledUnit coupled = solver.behind(units[k - 1], k, guess.pitchRad(tractor, k));
            units[k] = coupled.unit();
            bendRad[k] = coupled.bendRad();
        }
        return new Placed(units, bendRad);
    }
}
