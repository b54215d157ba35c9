package org.cresthaul.route;

import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.OnBridge;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.RoadProfile;

/**
 * A bridge that carries a weight limit of its own.
 *
 * @param extent where a wheel comes onto it and leaves it, along travel from the hazard's point; empty when nobody has
 *     measured it, and then it counts as a point
 * @param limits what is posted; empty when nobody has written it down, and then no load is known to be allowed
 */
public record PostedBridge(HazardPlace place, Optional<LowStructure.Extent> extent, Optional<WeightLimits> limits)
        implements LimitedPlace {
    @Override
    public HazardKind kind() {
        return HazardKind.POSTED_BRIDGE;
    }

    @Override
    public boolean replacesOthers() {
        return false;
    }

    @Override
    public double fromChainageM() {
        return place.chainageM() + extent.map(LowStructure.Extent::fromM).orElse(0.0);
    }

    @Override
    public double toChainageM() {
        return place.chainageM() + extent.map(LowStructure.Extent::toM).orElse(0.0);
    }

    /** What its limits ask of axles on it together and of the way it is driven over. */
    public OnBridge asked() {
        return limits.map(l -> l.further().bridge()).orElse(OnBridge.NONE);
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
