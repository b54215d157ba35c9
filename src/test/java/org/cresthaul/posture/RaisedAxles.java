package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.LiftAxle;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Trailer;

/** Which axles are up in a state, read from the rig without the program's own rule. */
public final class RaisedAxles {
    private RaisedAxles() {}

    /** A raised tire: as its axle stands, and how high it is held above that. */
    public record Tire(Axle axle, double gapM) {}

    /** Their places in the trailer's group, the first is 0. */
    private static List<Integer> indexes(Trailer trailer, LiftState state) {
        if (state.word().equals("down")) {
            return List.of();
        }
        if (state.word().equals("up")) {
            return List.of(trailer.lift().axles().get(0).index());
        }
        List<Integer> indexes = new ArrayList<>();
        for (String number : state.word().substring("up-".length()).split("-")) {
            indexes.add(Integer.parseInt(number) - 1);
        }
        return indexes;
    }

    public static List<Tire> tires(Trailer trailer, LiftState state) {
        List<Tire> tires = new ArrayList<>();
        for (int index : indexes(trailer, state)) {
            for (LiftAxle axle : trailer.lift().axles()) {
                if (axle.index() == index) {
                    tires.add(new Tire(trailer.axles().axles().get(index), axle.gapM()));
                }
            }
        }
        return tires;
    }

    /** The trailer's own axles on the road. */
    public static List<Axle> down(Trailer trailer, LiftState state) {
        List<Axle> down = new ArrayList<>(trailer.axles().axles());
        tires(trailer, state).forEach(t -> down.remove(t.axle()));
        return down;
    }

    public static double riseM(Trailer trailer, LiftState state) {
        List<Integer> up = indexes(trailer, state);
        for (LiftAxles.Raised raised : trailer.lift().raised()) {
            if (raised.indexes().equals(up)) {
                return raised.secondaryRiseM();
            }
        }
        return 0;
    }
}
