package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;

/**
 * How far each unit leaves the lead path.
 *
 * @param offtrackingM by unit: the farthest its effective axle is from the lead path, metres
 */
public record TurningFigures(List<Double> offtrackingM) {
    public TurningFigures {
        offtrackingM = List.copyOf(offtrackingM);
    }

    /** The figures of a followed path; exact to the spacing of its states along the path, which enters to second order. */
    public static TurningFigures of(Track track, LeadPath path) {
        List<Double> most = new ArrayList<>();
        for (int k = 0; k < track.chain().size(); k++) {
            PathFrame frame = new PathFrame(track);
            double farthest = 0;
            for (int i = 0; i < track.size(); i++) {
                frame.project(track.axleXM(i, k), track.axleYM(i, k));
                farthest = Math.max(farthest, Math.abs(frame.offsetM()));
            }
            most.add(farthest);
        }
        return new TurningFigures(most);
    }
}
