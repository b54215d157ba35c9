package org.cresthaul.route;

import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.geometry.Finite;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.RoadProfile;

/**
 * A stretch of the route with weight limits of its own.
 *
 * @param fromM meters along travel from the hazard's point
 * @param toM meters, more than {@code fromM}
 * @param limits what holds there; empty when it is not known
 * @param replacesOthers whether it holds instead of the limits of the whole route
 */
public record Stretch(
        HazardPlace place, double fromM, double toM, Optional<WeightLimits> limits, boolean replacesOthers)
        implements LimitedPlace {
    public Stretch {
        Finite.require("fromM", fromM);
        Finite.require("toM", toM);
        if (toM <= fromM) {
            throw new IllegalArgumentException("a stretch runs forward: from " + fromM + " to " + toM + " m");
        }
    }

    @Override
    public HazardKind kind() {
        return HazardKind.STRETCH;
    }

    @Override
    public double fromChainageM() {
        return place.chainageM() + fromM;
    }

    @Override
    public double toChainageM() {
        return place.chainageM() + toM;
    }

    @Override
    public List<RoadProfile> lines() {
        return List.of();
    }

    @Override
    public Optional<Uncertainty> survey() {
        return Optional.empty();
    }

    @Override
    public boolean isSurveyed() {
        return limits.isPresent();
    }
}
