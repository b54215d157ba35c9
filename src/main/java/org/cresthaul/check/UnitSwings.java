package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.report.UnitSwing;
import org.cresthaul.turning.TurningCombination;
import org.cresthaul.turning.TurningFigures;

/** Reads how far every unit swings off the figures of a way round. */
final class UnitSwings {
    private UnitSwings() {}

    static List<UnitSwing> listOf(TurningFigures figures, TurningCombination combination) {
        List<UnitSwing> swings = new ArrayList<>();
        for (TurningFigures.UnitSwing s : figures.swings()) {
            TurningFigures.UnitTrail trail = figures.trails().stream()
                    .filter(t -> t.unit() == s.unit())
                    .findFirst()
                    .orElse(null);
            swings.add(new UnitSwing(
                    combination.units().get(s.unit()).name().word(),
                    figures.offtrackingM().get(s.unit()),
                    s.tailOutside().valueM(),
                    s.tailInside().valueM(),
                    s.frontOutside().valueM(),
                    s.frontInside().valueM(),
                    trail == null ? null : (Double) trail.outside().valueM(),
                    trail == null ? null : (Double) trail.inside().valueM()));
        }
        return List.copyOf(swings);
    }
}
