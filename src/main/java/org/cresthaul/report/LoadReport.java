package org.cresthaul.report;

import java.util.List;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * The loads part of a report.
 *
 * @param known whether the stance's weights are known; without them no load is ever within limits
 * @param accuracy how far a load may be from what is told, as a share of it (95 %), or null
 * @param source where the weights come from, or null
 * @param limits every set of limits that holds somewhere: first that of the whole route
 * @param counts whether the limits of the whole route enter the verdicts of the configurations
 * @param states every state of booster and lift axle, as the configurations run
 * @param advice how many axles must be down where
 */
public record LoadReport(
        boolean known,
        Double accuracy,
        String source,
        List<LimitSet> limits,
        boolean counts,
        List<StateLoads> states,
        List<Advice> advice,
        List<Sentence> cautions) {
    /**
     * A set of limits.
     *
     * @param place id of the hazard it belongs to, or null for the whole route
     * @param replaces whether it holds instead of the limits of the whole route
     * @param date as of when, ISO 8601
     * @param rules in the order of the file
     */
    public record LimitSet(String place, String name, String source, String date, boolean replaces, List<Rule> rules) {}

    /** One limit; {@code mostKg} is null for the bridge formula, which has no single figure. */
    public record Rule(
            String rule, @Rounded(Rounding.MASS_NEAR) Double mostKg) {}

    /**
     * One state.
     *
     * @param axles how many trailer axles carry
     * @param verdict under the limits of the whole route, and the rig's own
     * @param unknown why its loads are not known, or null
     * @param sheet null when they are not
     */
    public record StateLoads(
            LiftState lift,
            BoosterState booster,
            int axles,
            String label,
            Verdict verdict,
            Sentence unknown,
            LoadSheet sheet) {}

    /**
     * How many axles must be down between two places, with one use of the booster.
     *
     * @param places ids of the hazards whose limits hold there
     * @param axles for each lift state the verdict
     * @param reasons why what is not allowed is not
     */
    public record Advice(
            @Rounded(Rounding.LENGTH_NEAR) double fromChainageM,
            @Rounded(Rounding.LENGTH_NEAR) double toChainageM,
            List<String> places,
            BoosterState booster,
            List<AxlesAllowed> axles,
            String text,
            List<Sentence> reasons) {}

    /** One lift state there. */
    public record AxlesAllowed(LiftState lift, int axles, Verdict verdict) {}
}
