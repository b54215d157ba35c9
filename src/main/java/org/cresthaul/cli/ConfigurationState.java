package org.cresthaul.cli;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.check.Report;

/**
 * The configurations of a report that differ only in their notch.
 *
 * @param label for people: "3 axles, booster trailing"
 * @param first index of the lowest notch among the report's configurations, and among the cells of every hazard
 * @param notches their names, lowest first
 */
record ConfigurationState(String label, int first, List<String> notches) {
    static List<ConfigurationState> listOf(Report report) {
        List<ConfigurationState> states = new ArrayList<>();
        List<Report.ConfigurationVerdict> all = report.configurations();
        int i = 0;
        while (i < all.size()) {
            Report.ConfigurationVerdict first = all.get(i);
            List<String> notches = new ArrayList<>();
            int from = i;
            while (i < all.size()
                    && all.get(i).lift().equals(first.lift())
                    && all.get(i).booster().equals(first.booster())) {
                notches.add(all.get(i).notch());
                i++;
            }
            states.add(new ConfigurationState(label(first), from, List.copyOf(notches)));
        }
        return states;
    }

    private static String label(Report.ConfigurationVerdict c) {
        return c.axles() + (c.axles() == 1 ? " axle, " : " axles, ")
                + (c.booster().equals("none") ? "no booster" : "booster " + c.booster());
    }

    /** This state's part of a list that runs over all configurations. */
    <T> List<T> of(List<T> all) {
        return all.subList(first, first + notches.size());
    }
}
