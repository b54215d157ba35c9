package org.cresthaul.route;

import java.util.Optional;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.geometry.Uncertainty;

/** A place on the route that is judged by loads, not by gaps. */
public sealed interface LimitedPlace extends Hazard permits PostedBridge, Stretch {
    /** What holds here; empty when it is not known. */
    Optional<WeightLimits> limits();

    /** Whether these limits hold instead of those of the whole route; otherwise both hold. */
    boolean replacesOthers();

    /** Where it begins, meters from the route's start. */
    double fromChainageM();

    /** Where it ends; the same place for a point. */
    double toChainageM();

    /** Nothing is surveyed where loads are judged. */
    @Override
    default LimitedPlace withSurvey(Uncertainty other) {
        return this;
    }
}
