package org.cresthaul.check;

import java.util.Comparator;
import java.util.List;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.PostedBridge;
import org.cresthaul.route.Route;

/**
 * Which limits a combination meets on a part of a route. Limits that hold instead of the route's do so for the part of
 * the combination that is on their stretch: those of the route are out only while all of it is on such stretches.
 */
public final class LimitsCoverage {
    private static final double NOISE_M = 1e-6;

    private final double routeM;
    private final List<LimitedPlace> places;
    private final List<LimitedPlace> instead;

    public LimitsCoverage(Route route) {
        routeM = route.lengthM();
        places = route.hazards().stream()
                .filter(LimitedPlace.class::isInstance)
                .map(LimitedPlace.class::cast)
                .toList();
        instead = places.stream()
                .filter(p -> p.replacesOthers() && p.limits().isPresent())
                .sorted(Comparator.comparingDouble(LimitedPlace::fromChainageM))
                .toList();
    }

    /**
     * Whether the limits of the whole route hold nowhere while the front goes from {@code fromM} to {@code toM}. Before
     * its start and beyond its end the route has no limits.
     */
    public boolean replaced(double fromM, double toM, double lengthM) {
        double reachedM = Math.max(0, fromM - lengthM);
        double endM = Math.min(routeM, toM);
        boolean any = false;
        for (LimitedPlace p : instead) {
            if (p.fromChainageM() <= reachedM + NOISE_M && p.toChainageM() >= reachedM - NOISE_M) {
                reachedM = Math.max(reachedM, p.toChainageM());
                any = true;
            }
        }
        return any && reachedM >= endM - NOISE_M;
    }

    /** Places with limits of their own that any part of the combination is at, known or not. */
    List<LimitedPlace> touching(double fromM, double toM, double lengthM) {
        return places.stream()
                .filter(p -> p instanceof PostedBridge
                        ? p.toChainageM() >= fromM - lengthM && p.fromChainageM() <= toM
                        : p.fromChainageM() < toM && p.toChainageM() > fromM - lengthM)
                .toList();
    }
}
