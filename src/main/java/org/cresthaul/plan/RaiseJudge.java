package org.cresthaul.plan;

import java.util.Optional;
import org.cresthaul.check.RaisedCheck;

/** Judges a hazard at a raise, as {@link RaisedCheck#at} does. */
public interface RaiseJudge {
    /** Empty when the rig cannot be raised so, or nothing is known of the hazard. */
    Optional<RaisedCheck.Raised> at(String hazard, String configuration, double frontM, double rearM);

    /** How far up it may go from there, as {@link RaisedCheck#above} has it; empty where nobody can tell. */
    default Optional<RaisedCheck.Top> above(
            String hazard, String configuration, double frontM, double rearM, double share) {
        return Optional.empty();
    }

    /** The least raise that leaves so much, as {@link RaisedCheck#least} has it; empty where nobody can tell. */
    default Optional<RaisedCheck.Least> least(String hazard, String configuration, double share) {
        return Optional.empty();
    }

    /** The engine's own judgment. */
    static RaiseJudge of(RaisedCheck check) {
        return new RaiseJudge() {
            @Override
            public Optional<RaisedCheck.Raised> at(String hazard, String configuration, double frontM, double rearM) {
                return check.at(hazard, configuration, frontM, rearM);
            }

            @Override
            public Optional<RaisedCheck.Top> above(
                    String hazard, String configuration, double frontM, double rearM, double share) {
                return check.above(hazard, configuration, frontM, rearM, share);
            }

            @Override
            public Optional<RaisedCheck.Least> least(String hazard, String configuration, double share) {
                return check.least(hazard, configuration, share);
            }
        };
    }
}
