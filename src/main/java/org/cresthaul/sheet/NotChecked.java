package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.plan.Plan;
import org.cresthaul.report.Report;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.route.HazardKind;

/** What a plan says nothing about: first what this one lacks, then what none looks at. */
final class NotChecked {
    private NotChecked() {}

    static List<String> of(Plan plan, Report report, LevelStance stance) {
        List<String> list = new ArrayList<>();
        report.hazards().stream()
                .filter(h -> !h.surveyed())
                .forEach(h -> list.add(h.id() + " " + h.name() + ": not surveyed."));
        if (report.hazards().isEmpty()) {
            list.add("Any place: the route file names none.");
        }
        if (!report.loads().known()) {
            list.add("Axle loads: the rig's weights are not declared.");
        }
        if (report.loads().limits().stream().noneMatch(l -> l.place() == null)) {
            list.add("Limits of the whole route: none are in the files.");
        }
        if (stance.plan().isEmpty()) {
            list.add("Corners: the rig's widths and turning limits are not declared.");
        }
        if (plan.robustness() == null) {
            list.add("How the margins shrink when what was declared is off.");
        } else {
            plan.robustness()
                    .notKnown()
                    .forEach(n -> list.add("How the margin shrinks at " + n.hazard() + " " + n.text()));
        }
        boolean rails = report.hazards().stream().anyMatch(h -> h.kind() == HazardKind.RAIL_CROSSING);
        if (rails && plan.crossings().stream().anyMatch(c -> c.fits() == null)
                || rails && plan.crossings().isEmpty()) {
            list.add("Time to clear rail crossings against the least warning, where that is unknown.");
        }
        list.add("Places that are not in the route file, and the road between places: surface, width, shoulders, wires,"
                + " trees, work zones.");
        list.add("Bridges without posted limits in the file, and culverts.");
        list.add("Bouncing, braking, side slope beyond the surveyed wheel paths, and load that shifts.");
        list.add("Terms of the permit other than weights: hours, days, weather, escorts, notices.");
        list.add("Fitness of tires, brakes, chains and lights on the day.");
        return list;
    }
}
