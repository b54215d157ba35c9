package org.cresthaul.route;

import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.RoadProfile;

/**
 * A bridge that carries a weight limit of its own.
 *
 * @param limits what is posted; empty when nobody has written it down, and then no load is known to be allowed
 */
public record PostedBridge(HazardPlace place, Optional<WeightLimits> limits) implements LimitedPlace {
    @Override
    public String word() {
        return "posted-bridge";
    }

    @Override
    public boolean replacesOthers() {
        return false;
    }

    @Override
    public double fromChainageM() {
        return place.chainageM();
    }

    @Override
    public double toChainageM() {
        return place.chainageM();
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
