package org.cresthaul.clearance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.cresthaul.posture.Pose;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;

/**
 * The lowest gap of a passage of a {@link TwoWheelBody}, and where the steer axle is then: the search's answer, walked
 * down to the very lowest point nearby with the engine's own postures, and the search held to its promise on the way.
 */
record Tightest(double gapM, double steerM) {
    static Tightest of(TwoWheelBody body, RoadProfile profile) {
        Clearance found = GroundClearance.least(body.stance(), TwoWheelBody.SETTING, Leveling.HELD, profile);
        return walkedDown(found, steerM -> gapM(body, profile, steerM));
    }

    static Tightest of(TwoWheelBody body, RoadProfile profile, Soffit soffit) {
        Clearance found = OverheadClearance.least(body.stance(), TwoWheelBody.SETTING, Leveling.HELD, profile, soffit)
                .orElseThrow();
        return walkedDown(found, steerM -> gapUnderM(body, profile, soffit, steerM));
    }

    private static Tightest walkedDown(Clearance found, DoubleUnaryOperator gapAt) {
        assertTrue(found.proven());
        assertEquals(UnitName.TRACTOR, found.unit());
        assertEquals(found.valueM(), gapAt.applyAsDouble(found.steerM()), 1e-9, "attained where it says");
        double from = found.steerM() - 1;
        double to = found.steerM() + 1;
        double share = (Math.sqrt(5) - 1) / 2;
        while (to - from > 1e-5) {
            double left = to - share * (to - from);
            double right = from + share * (to - from);
            if (gapAt.applyAsDouble(left) <= gapAt.applyAsDouble(right)) {
                to = right;
            } else {
                from = left;
            }
        }
        double steerM = (from + to) / 2;
        double gapM = gapAt.applyAsDouble(steerM);
        assertTrue(
                gapM >= found.valueM() - found.provenWithinM() - 1e-9,
                "the search found " + found.valueM() + ", nearby it is " + gapM);
        // On a curve drawn with short chords the walk can end in a ripple above where it began.
        return gapM < found.valueM() ? new Tightest(gapM, steerM) : new Tightest(found.valueM(), found.steerM());
    }

    /** The gap of the straight underside at one position: over every profile point under it and at its two ends. */
    static double gapM(TwoWheelBody body, RoadProfile profile, double steerM) {
        Pose pose = new PostureSolver(body.stance(), TwoWheelBody.SETTING, Leveling.HELD, profile)
                .at(steerM)
                .tractor();
        Ends ends = Ends.of(pose, body.stance().tractor().underside().points());
        double least = Math.min(ends.rearZ - profile.heightAt(ends.rearX), ends.frontZ - profile.heightAt(ends.frontX));
        for (SurveyedPoint p : profile.points()) {
            if (p.distanceM() > ends.rearX && p.distanceM() < ends.frontX) {
                least = Math.min(least, ends.heightAt(p.distanceM()) - p.elevationM());
            }
        }
        return least;
    }

    /** The gap of the straight top at one position under a soffit. */
    private static double gapUnderM(TwoWheelBody body, RoadProfile profile, Soffit soffit, double steerM) {
        Pose pose = new PostureSolver(body.stance(), TwoWheelBody.SETTING, Leveling.HELD, profile)
                .at(steerM)
                .tractor();
        Ends ends = Ends.of(pose, body.stance().tractor().topside().points());
        double least = Double.POSITIVE_INFINITY;
        if (ends.rearX >= soffit.startM() && ends.rearX <= soffit.endM()) {
            least = Math.min(least, soffit.heightAt(ends.rearX) - ends.rearZ);
        }
        if (ends.frontX >= soffit.startM() && ends.frontX <= soffit.endM()) {
            least = Math.min(least, soffit.heightAt(ends.frontX) - ends.frontZ);
        }
        for (int i = 0; i < soffit.size(); i++) {
            double s = soffit.distanceM(i);
            if (s > ends.rearX && s < ends.frontX) {
                least = Math.min(least, soffit.elevationM(i) - ends.heightAt(s));
            }
        }
        return least;
    }

    /** A straight line of the body, in the world. */
    private record Ends(double rearX, double rearZ, double frontX, double frontZ) {
        static Ends of(Pose pose, List<FramePoint> line) {
            FramePoint rear = line.get(0);
            FramePoint front = line.get(1);
            return new Ends(pose.worldXM(rear), pose.worldZM(rear), pose.worldXM(front), pose.worldZM(front));
        }

        double heightAt(double s) {
            return rearZ + (frontZ - rearZ) * (s - rearX) / (frontX - rearX);
        }
    }
}
