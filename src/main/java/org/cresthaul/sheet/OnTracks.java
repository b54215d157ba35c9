package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.plan.Plan;
import org.cresthaul.route.HazardKind;

/**
 * Places that the front reaches while some part of the combination is still on or between the tracks of a crossing
 * before. Nothing may be stopped for there: whatever is done for such a place is done before the first place of its
 * chain.
 */
final class OnTracks {
    private final int[] heads;

    OnTracks(List<Plan.Step> steps) {
        heads = new int[steps.size()];
        int head = -1;
        double heldToM = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < steps.size(); i++) {
            heads[i] = i;
            Plan.HazardPassage p = steps.get(i).passage();
            if (p == null) {
                continue;
            }
            if (p.fromChainageM() < heldToM) {
                heads[i] = head;
            } else {
                head = i;
            }
            if (p.kind() == HazardKind.RAIL_CROSSING) {
                heldToM = Math.max(heldToM, p.toChainageM());
            }
        }
    }

    /** The step before which everything for this one is done: itself, where the tracks behind are clear. */
    int head(int step) {
        return heads[step];
    }

    /** The later steps whose doings are due before this one, in driving order. */
    List<Integer> followers(int step) {
        List<Integer> followers = new ArrayList<>();
        for (int i = step + 1; i < heads.length; i++) {
            if (heads[i] == step) {
                followers.add(i);
            }
        }
        return followers;
    }
}
