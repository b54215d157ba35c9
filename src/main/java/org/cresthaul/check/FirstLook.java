package org.cresthaul.check;

import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.cresthaul.report.Haul;
import org.cresthaul.rig.Setting;
import org.cresthaul.route.Hazard;

/**
 * Which places no configuration passes, in transport or on a raise: known long before all there is to say of a route,
 * since one position that falls short refuses a setting. It refuses and never passes; of a place that it does not
 * refuse nothing is known. Raises are asked in the order of the configurations, as they are when the place is judged
 * whole, so that what is refused here is refused there. Safe to share, each place being looked at by one thread.
 */
final class FirstLook {
    private final Haul haul;
    private final List<Setting> settings;
    private final Set<String> passedByNone = ConcurrentHashMap.newKeySet();
    /** Passed the last place that one passes in transport, and perhaps the next. */
    private volatile Setting hopeful;

    FirstLook(Haul haul, List<CheckedConfiguration> configurations) {
        this.haul = haul;
        settings = configurations.stream().map(CheckedConfiguration::transport).toList();
        hopeful = settings.get(settings.size() - 1);
    }

    /** Looks at one place; whether no configuration passes it. */
    boolean refuses(Hazard hazard) {
        boolean refused = !isPassed(new HazardCheck(hazard, haul.rig(), haul.stance(), haul.margins()));
        if (refused) {
            passedByNone.add(hazard.place().id());
        }
        return refused;
    }

    private boolean isPassed(HazardCheck check) {
        if (check.isClear(hopeful)) {
            return true;
        }
        for (Setting setting : settings) {
            if (check.isClear(setting)) {
                hopeful = setting;
                return true;
            }
            if (check.raise(setting).isPresent()) {
                return true;
            }
        }
        return false;
    }

    /** Whether a place is known to be passed by none; false too where it was not looked at. */
    boolean hasRefused(Hazard hazard) {
        return passedByNone.contains(hazard.place().id());
    }
}
