package org.cresthaul.plan;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.report.ReportCell;

/** Every kind of spare in a cell of a report, where {@link Spares} tells the one that governs. */
public final class CellSpares {
    private CellSpares() {}

    /** Each kind that is judged by a number; none where nothing is known. */
    public static List<Plan.Spare> of(ReportCell cell) {
        return Stream.of(
                        Spares.of(cell.ground(), SpareKind.GROUND),
                        Spares.of(cell.overhead(), SpareKind.OVERHEAD),
                        Spares.of(cell.units(), SpareKind.UNITS),
                        Optional.ofNullable(cell.load() == null && cell.corner() == null ? null : Spares.of(cell)))
                .flatMap(Optional::stream)
                .toList();
    }

    public static Optional<Plan.Spare> find(ReportCell cell, SpareKind kind) {
        return of(cell).stream().filter(s -> s.kind() == kind).findFirst();
    }
}
