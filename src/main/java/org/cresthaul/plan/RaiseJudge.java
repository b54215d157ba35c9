package org.cresthaul.plan;

import java.util.Optional;
import org.cresthaul.check.RaisedCheck;

/** Judges a hazard at a raise, as {@link RaisedCheck#at} does. */
interface RaiseJudge {
    /** Empty when the rig cannot be raised so, or nothing is known of the hazard. */
    Optional<RaisedCheck.Raised> at(String hazard, String configuration, double frontM, double rearM);
}
