package org.cresthaul.cli;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.check.CheckedConfiguration;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.Report;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;

/**
 * The configurations of a report that differ only in their notch.
 *
 * @param axles how many trailer axles carry
 * @param first index of the lowest notch among the report's configurations, and among the cells of every hazard
 * @param notches their names, lowest first
 */
record ConfigurationState(LiftState lift, BoosterState booster, int axles, int first, List<String> notches) {
    static List<ConfigurationState> listOf(Report report) {
        List<ConfigurationState> states = new ArrayList<>();
        List<ConfigurationVerdict> all = report.configurations();
        int i = 0;
        while (i < all.size()) {
            ConfigurationVerdict c = all.get(i);
            List<String> notches = new ArrayList<>();
            int first = i;
            while (i < all.size()
                    && all.get(i).lift().equals(c.lift())
                    && all.get(i).booster() == c.booster()) {
                notches.add(all.get(i).notch());
                i++;
            }
            states.add(new ConfigurationState(c.lift(), c.booster(), c.axles(), first, List.copyOf(notches)));
        }
        return states;
    }

    /** "3 axles"; where there are several lift axles "3 axles, axle 4 up" */
    String axlesLabel() {
        return CheckedConfiguration.axles(axles, lift).toString();
    }

    /** "booster trailing" */
    String boosterLabel() {
        return booster == BoosterState.NONE ? "no booster" : "booster " + booster;
    }

    /** "3 axles, booster trailing" */
    String label() {
        return axlesLabel() + ", " + boosterLabel();
    }

    /** This state's part of a list that runs over all configurations. */
    <T> List<T> of(List<T> all) {
        return all.subList(first, first + notches.size());
    }
}
