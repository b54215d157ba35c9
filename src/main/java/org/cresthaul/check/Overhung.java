package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.LowPart;
import org.cresthaul.turning.Overhangs;

/**
 * Which slices of the undersides pass over which raised ground on one way round: the same at every notch, which only
 * lifts them.
 *
 * @param byZone in the order of {@link CurbHeights#zones}, then of its slices: where, or empty
 */
record Overhung(List<List<Optional<CornerFit.Gap>>> byZone) {
    static Overhung of(CornerCheck.JudgedCorner j, CurbHeights heights) {
        Overhangs passing = new Overhangs(j.space(), j.fit());
        List<List<Optional<CornerFit.Gap>>> all = new ArrayList<>();
        for (CurbHeights.Zone zone : heights.zones()) {
            List<LowPart> parts = heights.slices().stream()
                    .map(s -> heights.part(s, zone.island()))
                    .toList();
            all.add(passing.find(parts));
        }
        return new Overhung(all);
    }
}
