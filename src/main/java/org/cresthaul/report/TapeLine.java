package org.cresthaul.report;

import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/** What a tape finds on the rig as the file has it: a distance or a height of its level stance. */
public record TapeLine(
        String what, @Rounded(Rounding.LENGTH_NEAR) double valueM) {}
