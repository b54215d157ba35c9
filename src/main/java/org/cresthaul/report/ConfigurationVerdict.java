package org.cresthaul.report;

import java.util.List;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * A configuration over the whole route.
 *
 * @param verdict the worst of any hazard, and of the limits of the whole route where they count; never clear on a route
 *     without hazards, where nothing was judged
 * @param axlesUp numbers of the trailer axles that are up, where there are several lift axles; else empty
 * @param loads under the limits of the whole route and the rig's own: "loads not known" without weights
 * @param raisedOnly how many of the hazards that are not clear become clear with a raise
 */
public record ConfigurationVerdict(
        String key,
        String label,
        LiftState lift,
        int axles,
        List<Integer> axlesUp,
        BoosterState booster,
        String notch,
        @Rounded(Rounding.LENGTH_NEAR) double notchOffsetM,
        Verdict verdict,
        int clear,
        int tight,
        int contact,
        int notSurveyed,
        int outsideLimits,
        int loadsNotKnown,
        int raisedOnly,
        Verdict loads) {}
