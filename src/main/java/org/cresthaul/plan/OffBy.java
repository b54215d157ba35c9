package org.cresthaul.plan;

import java.util.List;
import org.cresthaul.geometry.Finite;
import org.cresthaul.rig.Rig;

/**
 * By how much things are off.
 *
 * @param surveyTimes how many times as coarse the surveys are
 * @param rideM how much lower every underside rides, and how much higher every topside, meters
 * @param loadM how much higher the load stands, meters
 * @param weightShare how much heavier everything is, as a share
 */
public record OffBy(double surveyTimes, double rideM, double loadM, double weightShare) {
    private static final double INCH_M = 0.0254;

    public OffBy {
        Finite.requireAtLeast("surveyTimes", 1, surveyTimes);
        Finite.requireAtLeast("rideM", 0, rideM);
        Finite.requireAtLeast("loadM", 0, loadM);
        Finite.requireAtLeast("weightShare", 0, weightShare);
    }

    /**
     * Surveys twice as coarse, the rig's own ride accuracy once more and at least 1/2 in, the load 1 in higher, 2 %
     * more weight: this program's choice.
     */
    public static OffBy of(Rig rig) {
        return new OffBy(2, Math.max(INCH_M / 2, rig.ride().valueM()), INCH_M, 0.02);
    }

    public List<Robustness.Assumed> assumed() {
        return List.of(
                new Robustness.Assumed(
                        "survey " + (surveyTimes == 2 ? "twice" : Texts.number(surveyTimes) + " times") + " as coarse",
                        surveyTimes,
                        "times"),
                new Robustness.Assumed("ride " + Texts.inches(rideM) + " lower", rideM, "m"),
                new Robustness.Assumed("load " + Texts.inches(loadM) + " higher", loadM, "m"),
                new Robustness.Assumed("weights " + Texts.number(weightShare * 100) + " % more", weightShare, "share"));
    }
}
