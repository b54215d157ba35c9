package org.cresthaul.clearance;

import java.util.List;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CombinationShape.ChainUnit;
import org.cresthaul.rig.UnitName;

/**
 * Where two units bend against each other: at a kingpin or a booster's hinge.
 *
 * @param unit the place of the one behind in the chain, from 1
 */
public record Coupling(int unit, UnitName ahead, UnitName behind) {
    /** Ahead of a unit of a shape. */
    static Coupling aheadOf(CombinationShape shape, int unit) {
        List<ChainUnit> units = shape.units();
        return new Coupling(unit, units.get(unit - 1).name(), units.get(unit).name());
    }

    /** Whether it is a booster's, which bends within limits. */
    public boolean isHinge() {
        return behind.kind() == UnitName.Kind.BOOSTER;
    }
}
