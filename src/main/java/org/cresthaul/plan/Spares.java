package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.CornerFinding;
import org.cresthaul.check.LoadSheet;
import org.cresthaul.check.Report;
import org.cresthaul.check.Verdict;

/** What a cell of a report leaves beyond what it requires. */
final class Spares {
    static final String GROUND = "ground";
    static final String OVERHEAD = "overhead";
    static final String CORNER = "corner";
    static final String LOAD = "load";
    static final List<String> KINDS = List.of(GROUND, OVERHEAD, CORNER, LOAD);

    private static final double LEAST_REQUIRED = 1e-3;

    private Spares() {}

    /** Each kind that is judged by a number in a cell; none where nothing is known. */
    static List<Plan.Spare> of(Report.Cell cell) {
        List<Plan.Spare> spares = new ArrayList<>();
        Optional.ofNullable(cell.ground()).ifPresent(g -> spares.add(gap(GROUND, g)));
        Optional.ofNullable(cell.overhead()).ifPresent(g -> spares.add(gap(OVERHEAD, g)));
        Optional.ofNullable(cell.corner()).ifPresent(c -> spares.add(corner(c)));
        Optional.ofNullable(cell.load()).ifPresent(f -> spares.add(load(f)));
        return spares;
    }

    static Optional<Plan.Spare> find(Report.Cell cell, String kind) {
        return of(cell).stream().filter(s -> s.kind().equals(kind)).findFirst();
    }

    /** The least for its size. */
    static Optional<Plan.Spare> governing(Report.Cell cell) {
        return of(cell).stream().min(Comparator.comparingDouble(Spares::share));
    }

    /** What is left as a share of what is required or allowed. */
    static double share(Plan.Spare spare) {
        return share(spare.left(), spare.required());
    }

    static double share(double left, double required) {
        return left / Math.max(LEAST_REQUIRED, required);
    }

    /** A gap that is not clear leaves nothing, even where another place than its tightest is the reason. */
    private static Plan.Spare gap(String kind, Report.GapFinding g) {
        double left = down(g.valueM() - g.requiredM(), 1e4);
        boolean clear = g.verdict().equals(Verdict.CLEAR.word());
        return new Plan.Spare(kind, g.valueM(), g.requiredM(), clear ? left : Math.min(left, 0),
                g.part().isEmpty() ? g.unit() : g.unit() + ", " + g.part());
    }

    private static Plan.Spare corner(CornerFinding c) {
        // A line that steering and couplings do not allow leaves no room, whatever it measures.
        double valueM = c.beyondLimits() ? Math.min(c.valueM(), -LEAST_REQUIRED) : c.valueM();
        return new Plan.Spare(CORNER, valueM, c.requiredM(), down(valueM - c.requiredM(), 1e4),
                c.unit() + ", " + c.part() + " on the " + c.side());
    }

    private static Plan.Spare load(LoadSheet.Finding f) {
        return new Plan.Spare(LOAD, f.loadKg(), f.limitKg(), f.marginKg(), f.axles());
    }

    /** Down to a whole part of a unit, but for rounding noise. */
    static double down(double value, double parts) {
        double steps = Math.floor(value * parts + 1e-6);
        return (steps == 0 ? 0.0 : steps) / parts;
    }
}
