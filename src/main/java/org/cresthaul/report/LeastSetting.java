package org.cresthaul.report;

import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;

/** The lowest notch that clears in one lift and booster state, or null. */
public record LeastSetting(LiftState lift, BoosterState booster, String notch, String text) {}
