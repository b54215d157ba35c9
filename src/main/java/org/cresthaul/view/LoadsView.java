package org.cresthaul.view;

import java.util.List;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Verdict;

/**
 * The loads of one configuration, for drawing: the component names are the keys of the JSON form; meters, kilograms and
 * pascals; null stands for "not known" or "does not apply".
 *
 * @param hazard whose limits are held against, or null for those of the whole route
 * @param verdict under those limits and the rig's own
 * @param unknown why the loads are not known, or null
 * @param sheet null when they are not
 * @param units outlines in the level stance, x in the tractor's frame
 * @param wheels every wheel there
 * @param pieces names of the pieces of load
 * @param position loads against the place of a piece on the deck, or null without one
 * @param regulator loads against the booster regulator's pressure, or null
 */
public record LoadsView(
        String configuration,
        String label,
        String hazard,
        Verdict verdict,
        Sentence unknown,
        LoadSheet sheet,
        List<Outlines> units,
        List<Wheel> wheels,
        List<String> pieces,
        Plot position,
        Plot regulator,
        List<ReadingView> readings,
        List<Sentence> cautions) {
    /** A unit's outlines, each a list of [x, h]. */
    public record Outlines(
            String unit, List<List<Double>> underside, List<List<Double>> topside, List<List<List<Double>>> load) {}

    /** A wheel; {@code axle} is its index among the sheet's axles, or null when it is lifted. */
    public record Wheel(double xM, double hM, double radiusM, boolean lifted, Integer axle) {}

    /**
     * Group loads against something that can be set, with the part of it where every limit is kept.
     *
     * @param of "position" (meters of a piece's center of gravity behind the deck front) or "pressure" (pascals)
     * @param piece name of the piece, or null
     * @param at what is set now
     * @param allowed first and last place where every limit is kept, or null
     * @param best the best of them, or null
     * @param note why there is none, or null
     */
    public record Plot(
            String of,
            String piece,
            double from,
            double to,
            double at,
            List<Double> allowed,
            Best best,
            String note,
            List<PlotLine> lines) {}

    /** @param margin the least margin there, as a share of its limit; {@code rule} is whose it is */
    public record Best(double at, double margin, String rule) {}

    /**
     * A group's load.
     *
     * @param points [place, kilograms], straight between them
     * @param mostKg what the rules about this group alone leave it, or null
     * @param rule which of them, or null
     * @param leastKg what it must carry at least, or null
     */
    public record PlotLine(
            String group, String label, List<List<Double>> points, Double mostKg, String rule, Double leastKg) {}

    /**
     * A gauge reading against the declared load, for one axle.
     *
     * @param readKg what the chart says, or null beyond it
     * @param agrees null when nothing can be said
     * @param pieceOffKg how much heavier the piece would have to be than declared to explain the reading, or null
     */
    public record ReadingView(
            String gauge,
            double pressurePa,
            Double readKg,
            Double declaredKg,
            Double toleranceKg,
            Boolean agrees,
            Double pieceOffKg,
            String note) {}
}
