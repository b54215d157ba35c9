package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;
import org.cresthaul.route.HazardKind;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * What a check found, ready to be shown: the component names are the keys of the report's JSON form, lengths are
 * meters, null stands for "none". The same inputs give an equal report. See docs/api.md.
 */
public record Report(
        String cresthaul,
        String version,
        CheckedRoute route,
        CheckedRig rig,
        Margins margins,
        List<TapeLine> tape,
        List<UncertaintyTerm> uncertainties,
        List<ConfigurationVerdict> configurations,
        List<HazardFindings> hazards,
        LoadReport loads,
        ReversingReport reversing,
        List<Sentence> cautions,
        SurveyFirst surveyFirst) {
    public static final String FORM = "report/1";

    /** Without the readings of a tape, and with every place surveyed. */
    public Report(
            String cresthaul,
            String version,
            CheckedRoute route,
            CheckedRig rig,
            Margins margins,
            List<UncertaintyTerm> uncertainties,
            List<ConfigurationVerdict> configurations,
            List<HazardFindings> hazards,
            LoadReport loads,
            ReversingReport reversing,
            List<Sentence> cautions) {
        this(
                cresthaul,
                version,
                route,
                rig,
                margins,
                List.of(),
                uncertainties,
                configurations,
                hazards,
                loads,
                reversing,
                cautions,
                new SurveyFirst(List.of(), List.of()));
    }

    /** What a tape finds on the rig as the file has it: a distance or a height of its level stance. */
    public record TapeLine(
            String what, @Rounded(Rounding.LENGTH_NEAR) double valueM) {}

    /**
     * The route of the report.
     *
     * @param sha256 of its file
     * @param limitsSha256 of the limits file that replaced the route's own limits, null when none did
     */
    public record CheckedRoute(
            String name,
            String note,
            String sha256,
            String limitsSha256,
            @Rounded(Rounding.LENGTH_NEAR) double lengthM,
            List<CheckedLeg> legs) {}

    public record CheckedLeg(
            String name,
            @Rounded(Rounding.LENGTH_NEAR) double startChainageM,
            @Rounded(Rounding.LENGTH_NEAR) double endChainageM) {}

    public record CheckedRig(String name, String note, String sha256, String stance) {}

    /** One term of the uncertainty: half-width of a 95 % interval, and where it comes from. */
    public record UncertaintyTerm(String term, double valueM, String source) {}

    /**
     * A configuration over the whole route.
     *
     * @param verdict the worst of any hazard, and of the limits of the whole route where they count; never clear on a
     *     route without hazards, where nothing was judged
     * @param axlesUp numbers of the trailer axles that are up, where there are several lift axles; else empty
     * @param loads under the limits of the whole route and the rig's own: "loads not known" without weights
     * @param raisedOnly how many of the hazards that are not clear become clear with a raise
     */
    public record ConfigurationVerdict(
            String key,
            String label,
            LiftState lift,
            int axles,
            List<Integer> axlesUp,
            BoosterState booster,
            String notch,
            @Rounded(Rounding.LENGTH_NEAR) double notchOffsetM,
            Verdict verdict,
            int clear,
            int tight,
            int contact,
            int notSurveyed,
            int outsideLimits,
            int loadsNotKnown,
            int raisedOnly,
            Verdict loads) {}

    /**
     * One hazard for every configuration.
     *
     * @param extentM first and last surveyed distance, or of the structure; empty when nothing is surveyed
     * @param limits why nothing here is called clear, whatever the numbers
     * @param cautionsWhen for each of the cautions in which cells it belongs
     * @param bridge what a posted bridge asks beside weights of the whole, or null
     */
    public record HazardFindings(
            String id,
            HazardKind kind,
            String name,
            String landmark,
            @Rounded(Rounding.LENGTH_NEAR) double chainageM,
            @Rounded(Rounding.LENGTH_NEAR) double offsetM,
            List<Double> lonLat,
            boolean surveyed,
            List<String> lines,
            @Rounded(Rounding.LENGTH_NEAR) List<Double> extentM,
            List<UncertaintyTerm> uncertainties,
            List<Sentence> limits,
            List<String> notes,
            List<Sentence> cautions,
            List<Caution.When> cautionsWhen,
            List<Cell> cells,
            List<LeastSetting> least,
            BridgeFinding bridge) {
        /** Without a bridge. */
        public HazardFindings(
                String id,
                HazardKind kind,
                String name,
                String landmark,
                double chainageM,
                double offsetM,
                List<Double> lonLat,
                boolean surveyed,
                List<String> lines,
                List<Double> extentM,
                List<UncertaintyTerm> uncertainties,
                List<Sentence> limits,
                List<String> notes,
                List<Caution> cautions,
                List<Cell> cells,
                List<LeastSetting> least) {
            this(
                    id,
                    kind,
                    name,
                    landmark,
                    chainageM,
                    offsetM,
                    lonLat,
                    surveyed,
                    lines,
                    extentM,
                    uncertainties,
                    limits,
                    notes,
                    cautions.stream().map(Caution::text).toList(),
                    cautions.stream().map(Caution::when).toList(),
                    cells,
                    least,
                    null);
        }

        HazardFindings withNote(String note) {
            return new HazardFindings(
                    id,
                    kind,
                    name,
                    landmark,
                    chainageM,
                    offsetM,
                    lonLat,
                    surveyed,
                    lines,
                    extentM,
                    uncertainties,
                    limits,
                    Stream.concat(notes.stream(), Stream.of(note)).toList(),
                    cautions,
                    cautionsWhen,
                    cells,
                    least,
                    bridge);
        }

        HazardFindings withBridge(BridgeFinding other) {
            return new HazardFindings(
                    id,
                    kind,
                    name,
                    landmark,
                    chainageM,
                    offsetM,
                    lonLat,
                    surveyed,
                    lines,
                    extentM,
                    uncertainties,
                    limits,
                    notes,
                    cautions,
                    cautionsWhen,
                    cells,
                    least,
                    other);
        }
    }

    /**
     * One configuration at one hazard.
     *
     * @param ground the governing ground clearance, or null when it is not judged here
     * @param overhead the governing overhead clearance, or null
     * @param units the least gap between coupled units, or null
     * @param raise the least raise that makes it clear, or null
     * @param raiseNote why there is none, or null
     * @param reasons in words, why it is not clear
     * @param load where loads are judged, the rule that leaves the least, or null
     * @param corner the way round, or null when this is no corner or nothing is known of it
     * @param mostMps at a dip, crest or structure that is clear, the speed for which that stands
     *     ({@link BounceAllowance}); null where it is a crawl, where it is not clear, and elsewhere
     */
    public record Cell(
            String configuration,
            Verdict verdict,
            GapFinding ground,
            GapFinding overhead,
            GapFinding units,
            RaiseFinding raise,
            String raiseNote,
            List<Sentence> reasons,
            LoadSheet.Finding load,
            CornerFinding corner,
            @Rounded(Rounding.SPEED_DOWN) Double mostMps) {
        /** Where no speed is told. */
        public Cell(
                String configuration,
                Verdict verdict,
                GapFinding ground,
                GapFinding overhead,
                RaiseFinding raise,
                String raiseNote,
                List<Sentence> reasons,
                LoadSheet.Finding load,
                CornerFinding corner) {
            this(configuration, verdict, ground, overhead, null, raise, raiseNote, reasons, load, corner, null);
        }

        /** Where loads are judged. */
        public Cell(
                String configuration,
                Verdict verdict,
                GapFinding ground,
                GapFinding overhead,
                RaiseFinding raise,
                String raiseNote,
                List<Sentence> reasons,
                LoadSheet.Finding load) {
            this(configuration, verdict, ground, overhead, raise, raiseNote, reasons, load, null);
        }

        /** Where gaps are judged. */
        public Cell(
                String configuration,
                Verdict verdict,
                GapFinding ground,
                GapFinding overhead,
                RaiseFinding raise,
                String raiseNote,
                List<Sentence> reasons) {
            this(configuration, verdict, ground, overhead, raise, raiseNote, reasons, null, null);
        }

        /** Where a corner is judged. */
        static Cell atCorner(String configuration, Verdict verdict, List<Sentence> reasons, CornerFinding corner) {
            return new Cell(configuration, verdict, null, null, null, null, reasons, null, corner);
        }

        static Cell unknown(String configuration, Sentence why) {
            return atCorner(configuration, Verdict.NOT_SURVEYED, List.of(why), null);
        }

        /**
         * What governs here; empty where nothing is judged by a number. Between units that is nothing to look for on
         * the road: only what is not clear governs a place.
         */
        public Optional<Finding> governing() {
            return load != null
                    ? Optional.of(load)
                    : corner != null
                            ? Optional.of(corner)
                            : governing(ground, overhead, units).map(g -> g);
        }

        static Optional<GapFinding> governing(GapFinding ground, GapFinding overhead, GapFinding units) {
            return Finding.governing(Stream.of(
                    ground == null ? null : ground.decisive(),
                    overhead == null ? null : overhead.decisive(),
                    units == null || units.verdict() == Verdict.CLEAR ? null : units.decisive()));
        }

        /** With the speed for which its answer stands. */
        Cell withSpeed() {
            OptionalDouble most = verdict == Verdict.CLEAR ? BounceAllowance.speedMps(this) : OptionalDouble.empty();
            return new Cell(
                    configuration,
                    verdict,
                    ground,
                    overhead,
                    units,
                    raise,
                    raiseNote,
                    reasons,
                    load,
                    corner,
                    most.isPresent() ? (Double) most.getAsDouble() : null);
        }

        Cell withUnits(GapFinding other) {
            return new Cell(
                    configuration, verdict, ground, overhead, other, raise, raiseNote, reasons, load, corner, mostMps);
        }

        /**
         * Where the units stand level so: never better than that, with the reason; and nothing is offered to a
         * combination that cannot stand on the road before and after.
         */
        Cell standing(Verdict level, Optional<Sentence> why) {
            boolean worse = verdict.compareTo(level) < 0;
            boolean touches = level == Verdict.CONTACT;
            if (!worse && !touches) {
                return this;
            }
            List<Sentence> all = new ArrayList<>(reasons);
            why.filter(w -> !reasons.contains(w)).ifPresent(all::add);
            return new Cell(
                    configuration,
                    worse ? level : verdict,
                    ground,
                    overhead,
                    units,
                    touches ? null : raise,
                    touches && raise != null ? "no raise is offered: the units touch standing level" : raiseNote,
                    List.copyOf(all),
                    load,
                    corner,
                    null);
        }

        Cell withRaise(RaiseFinding other) {
            return new Cell(
                    configuration, verdict, ground, overhead, units, other, raiseNote, reasons, load, corner, mostMps);
        }

        Cell withoutRaise(String note) {
            return new Cell(
                    configuration, verdict, ground, overhead, units, null, note, reasons, load, corner, mostMps);
        }
    }

    /**
     * A clearance that counts.
     *
     * @param valueM the least over all lines, levelings and positions
     * @param requiredM margin and uncertainty at that place
     * @param xM hM where on the unit, in its frame
     * @param distanceM chainageM where on the road, from the hazard and from the route's start
     * @param steerM where the steer axle stands then, from the hazard
     * @param beyondSurveyM how far a wheel or the point itself is beyond the survey then
     * @param gradeDeclared false when some of that ground has no declared grade
     * @param provenWithinM the true minimum is at most this much less
     * @param line the surveyed line, or the place across the road: an edge of the combination or a line between them,
     *     with how it is driven then
     * @param besideM how far that place is to the right of the combination's middle, and {@code drivenM} how far that
     *     is driven to the right of its line; null where all wheels are taken to run on the line
     * @param deciding the gap that decides the verdict, where that is another one: that of all lines and levelings
     *     which falls short of its own need by most, or exceeds it by least. Its need is margin and uncertainty where
     *     it keeps the place from being clear, the uncertainty alone where contact cannot be excluded; {@code null}
     *     where this one decides
     * @param against between units the place on the one ahead; null over the ground and under a structure
     */
    public record GapFinding(
            @Rounded(Rounding.LENGTH_DOWN) double valueM,
            @Rounded(Rounding.LENGTH_UP) double requiredM,
            @Rounded(Rounding.LENGTH_NEAR) double marginM,
            @Rounded(Rounding.LENGTH_UP) double uncertaintyM,
            Verdict verdict,
            String unit,
            @Rounded(Rounding.LENGTH_NEAR) double xM,
            @Rounded(Rounding.LENGTH_NEAR) double hM,
            String part,
            @Rounded(Rounding.LENGTH_NEAR) double distanceM,
            @Rounded(Rounding.LENGTH_NEAR) double chainageM,
            @Rounded(Rounding.LENGTH_NEAR) double steerM,
            String line,
            String leveling,
            @Rounded(Rounding.LENGTH_NEAR) double beyondSurveyM,
            boolean gradeDeclared,
            double provenWithinM,
            @Rounded(Rounding.LENGTH_NEAR) Double besideM,
            @Rounded(Rounding.LENGTH_NEAR) Double drivenM,
            GapFinding deciding,
            Against against)
            implements Finding {
        @Override
        public double left() {
            return valueM - requiredM;
        }

        @Override
        public double share() {
            return Finding.shareOfLength(left(), requiredM);
        }

        /** This one, or that which decides where it leaves a smaller share. */
        public GapFinding decisive() {
            return deciding == null || share() <= deciding.share() ? this : deciding;
        }

        /** To the ground or a structure. */
        public GapFinding(
                double valueM,
                double requiredM,
                double marginM,
                double uncertaintyM,
                Verdict verdict,
                String unit,
                double xM,
                double hM,
                String part,
                double distanceM,
                double chainageM,
                double steerM,
                String line,
                String leveling,
                double beyondSurveyM,
                boolean gradeDeclared,
                double provenWithinM,
                Double besideM,
                Double drivenM,
                GapFinding deciding) {
            this(
                    valueM,
                    requiredM,
                    marginM,
                    uncertaintyM,
                    verdict,
                    unit,
                    xM,
                    hM,
                    part,
                    distanceM,
                    chainageM,
                    steerM,
                    line,
                    leveling,
                    beyondSurveyM,
                    gradeDeclared,
                    provenWithinM,
                    besideM,
                    drivenM,
                    deciding,
                    null);
        }

        /** One that decides its own verdict. */
        public GapFinding(
                double valueM,
                double requiredM,
                double marginM,
                double uncertaintyM,
                Verdict verdict,
                String unit,
                double xM,
                double hM,
                String part,
                double distanceM,
                double chainageM,
                double steerM,
                String line,
                String leveling,
                double beyondSurveyM,
                boolean gradeDeclared,
                double provenWithinM) {
            this(
                    valueM,
                    requiredM,
                    marginM,
                    uncertaintyM,
                    verdict,
                    unit,
                    xM,
                    hM,
                    part,
                    distanceM,
                    chainageM,
                    steerM,
                    line,
                    leveling,
                    beyondSurveyM,
                    gradeDeclared,
                    provenWithinM,
                    null,
                    null,
                    null);
        }
    }

    /**
     * Where a unit comes nearest to the one behind it.
     *
     * @param xM hM where on it, in its frame
     * @param bendRad pitch of the one behind relative to it then, nose up
     */
    public record Against(
            String unit,
            @Rounded(Rounding.LENGTH_NEAR) double xM,
            @Rounded(Rounding.LENGTH_NEAR) double hM,
            String part,
            @Rounded(Rounding.BEND_NEAR) double bendRad) {}

    /**
     * Raise above the notch at the deck front, and of the rear by hand.
     *
     * @param clearanceM the gap that governs then
     * @param requiredM margin and uncertainty of that gap, where it is then
     * @param frontEndM how far over this notch the hydraulics raise the deck front at most, or null where nobody says
     * @param rearEndM how far the rear can be raised by hand at most, likewise
     */
    public record RaiseFinding(
            double frontM,
            double rearM,
            @Rounded(Rounding.LENGTH_DOWN) double clearanceM,
            @Rounded(Rounding.LENGTH_UP) double requiredM,
            @Rounded(Rounding.LIMIT_NEAR) Double frontEndM,
            @Rounded(Rounding.LIMIT_NEAR) Double rearEndM) {
        /** One whose ends are not known. */
        public RaiseFinding(double frontM, double rearM, double clearanceM, double requiredM) {
            this(frontM, rearM, clearanceM, requiredM, null, null);
        }

        /** A raise that was found to leave this gap. */
        public static RaiseFinding leaving(double frontM, double rearM, GapFinding governing) {
            return new RaiseFinding(frontM, rearM, governing.valueM(), governing.requiredM());
        }

        /** What governs then leaves, as a share of its need. */
        public double share() {
            return Finding.shareOfLength(clearanceM - requiredM, requiredM);
        }

        public RaiseFinding endingAt(Double frontEnd, Double rearEnd) {
            return new RaiseFinding(frontM, rearM, clearanceM, requiredM, frontEnd, rearEnd);
        }
    }

    /** The lowest notch that clears in one lift and booster state, or null. */
    public record LeastSetting(LiftState lift, BoosterState booster, String notch, String text) {}
}
