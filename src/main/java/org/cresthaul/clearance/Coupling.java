package org.cresthaul.clearance;

import org.cresthaul.posture.UnitName;

/** Where two units bend against each other. */
public enum Coupling {
    /** Tractor and trailer. */
    KINGPIN(UnitName.TRACTOR, UnitName.TRAILER),
    /** Trailer and trailing booster. */
    HINGE(UnitName.TRAILER, UnitName.BOOSTER);

    private final UnitName ahead;
    private final UnitName behind;

    Coupling(UnitName ahead, UnitName behind) {
        this.ahead = ahead;
        this.behind = behind;
    }

    public UnitName ahead() {
        return ahead;
    }

    public UnitName behind() {
        return behind;
    }
}
