package org.cresthaul.report;

import java.util.List;
import org.cresthaul.axleload.LoadGroup;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * What a combination carries in one state of lift axle and booster, ready to be shown. Loads are told as the mass they
 * are the weight of, kilograms, to the tenth; pressures in pascals; null stands for "not known" or "does not apply".
 *
 * @param axles front to rear, those on the road
 * @param groups the axles that share a suspension, with the rule that leaves each the least
 * @param grossKg all axles together
 * @param kingpinKg on the fifth wheel that carries the trailer
 * @param fifthWheels on each of them, front to rear: the tractor's and those of jeeps
 * @param deckFrontKg what the gooseneck holds of the deck
 * @param gradeShown the grade, rise over run, at which the axles' loads uphill and downhill are told
 * @param gauges what the driver should read
 * @param regulator null unless the booster trails
 * @param shims the plates of the booster joint; empty unless the booster trails
 * @param lift raising the loaded front by hydraulics, or null
 * @param governing of all that was tested, what leaves the least for its size
 * @param broken everything that is not kept, the worst first
 */
public record LoadSheet(
        List<AxleLine> axles,
        List<GroupLine> groups,
        @Rounded(Rounding.MASS_NEAR) double grossKg,
        @Rounded(Rounding.MASS_NEAR) double kingpinKg,
        List<FifthWheel> fifthWheels,
        @Rounded(Rounding.MASS_NEAR) double deckFrontKg,
        double gradeShown,
        List<GaugeLine> gauges,
        RegulatorLine regulator,
        List<ShimLine> shims,
        LiftLine lift,
        LoadFinding governing,
        List<LoadFinding> broken) {
    /** The load on the fifth wheel of a unit. */
    public record FifthWheel(
            String unit, @Rounded(Rounding.MASS_NEAR) double loadKg) {}

    /**
     * One axle.
     *
     * @param group "steer", "drive", "jeep", "trailer" or "booster": whose load it shares; "jeep 2" of a second jeep,
     *     "booster 2" of a second booster
     * @param kind the unit it belongs to
     * @param xM along the combination, in the tractor's frame
     * @param rightKg its right side, or null when the tracks are not known
     * @param uphillKg on the grade shown, climbing
     * @param downhillKg the same, descending
     */
    public record AxleLine(
            String label,
            String group,
            AxleKind kind,
            @Rounded(Rounding.LENGTH_NEAR) double xM,
            @Rounded(Rounding.MASS_NEAR) double loadKg,
            @Rounded(Rounding.MASS_NEAR) Double rightKg,
            @Rounded(Rounding.MASS_NEAR) double uphillKg,
            @Rounded(Rounding.MASS_NEAR) double downhillKg) {}

    /** A group; {@code finding} is the rule about it alone that leaves the least, or null when none speaks of it. */
    public record GroupLine(
            String group,
            String label,
            int axles,
            @Rounded(Rounding.MASS_NEAR) double loadKg,
            @Rounded(Rounding.MASS_NEAR) double perAxleKg,
            Verdict verdict,
            LoadFinding finding) {}

    /**
     * A gauge.
     *
     * @param pressurePa what it should read, or null
     * @param loadKg of one axle
     * @param note why there is no reading, or null
     */
    public record GaugeLine(
            LoadGroup gauge,
            Double pressurePa,
            @Rounded(Rounding.MASS_NEAR) double loadKg,
            Sentence note) {}

    /**
     * The booster's regulator.
     *
     * @param setPa what is set
     * @param boosterKg what that puts on the booster's axle
     * @param window pressures at which every limit is kept, or null
     * @param bestPa the best of them, or null
     * @param note why there is none, or null
     */
    public record RegulatorLine(
            double setPa,
            double leastPa,
            double mostPa,
            @Rounded(Rounding.MASS_NEAR) double boosterKg,
            List<Double> window,
            Double bestPa,
            String note) {}

    /**
     * A plate at the booster joint.
     *
     * @param shim its name in the rig file
     * @param thicknessM nought where the name stands for no plate
     * @param leastKg load of the booster's axle it is meant for
     * @param angleRad of the booster's beam to the trailer's with it; positive when the booster's tail stands up
     * @param trouble what goes wrong with it at this load, or null
     */
    public record ShimLine(
            String shim,
            double thicknessM,
            boolean fitted,
            @Rounded(Rounding.MASS_NEAR) double leastKg,
            @Rounded(Rounding.MASS_NEAR) double mostKg,
            double angleRad,
            boolean allowed,
            String trouble) {
        /** Whether a plate is meant, and not the joint without one. */
        public boolean hasThickness() {
            return thicknessM > 0;
        }
    }

    /** Raising the loaded front: pressure needed and what the power take-off gives. */
    public record LiftLine(
            @Rounded(Rounding.MASS_NEAR) double frontKg, double neededPa, double takeOffPa, boolean enough) {}
}
