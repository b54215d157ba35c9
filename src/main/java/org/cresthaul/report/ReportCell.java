package org.cresthaul.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.language.Sentence;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

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
 * @param mostMps at a dip, crest or structure that is clear, the speed for which that stands ({@code BounceAllowance});
 *     null where it is a crawl, where it is not clear, and elsewhere
 */
public record ReportCell(
        String configuration,
        Verdict verdict,
        GapFinding ground,
        GapFinding overhead,
        GapFinding units,
        RaiseFinding raise,
        String raiseNote,
        List<Sentence> reasons,
        LoadFinding load,
        CornerFinding corner,
        @Rounded(Rounding.SPEED_DOWN) Double mostMps) {
    /** Where no speed is told. */
    public ReportCell(
            String configuration,
            Verdict verdict,
            GapFinding ground,
            GapFinding overhead,
            RaiseFinding raise,
            String raiseNote,
            List<Sentence> reasons,
            LoadFinding load,
            CornerFinding corner) {
        this(configuration, verdict, ground, overhead, null, raise, raiseNote, reasons, load, corner, null);
    }

    /** Where loads are judged. */
    public ReportCell(
            String configuration,
            Verdict verdict,
            GapFinding ground,
            GapFinding overhead,
            RaiseFinding raise,
            String raiseNote,
            List<Sentence> reasons,
            LoadFinding load) {
        this(configuration, verdict, ground, overhead, raise, raiseNote, reasons, load, null);
    }

    /** Where gaps are judged. */
    public ReportCell(
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
    public static ReportCell atCorner(
            String configuration, Verdict verdict, List<Sentence> reasons, CornerFinding corner) {
        return new ReportCell(configuration, verdict, null, null, null, null, reasons, null, corner);
    }

    public static ReportCell unknown(String configuration, Sentence why) {
        return atCorner(configuration, Verdict.NOT_SURVEYED, List.of(why), null);
    }

    /**
     * What governs here; empty where nothing is judged by a number. Between units that is nothing to look for on the
     * road: only what is not clear governs a place.
     */
    public Optional<Finding> governing() {
        return load != null
                ? Optional.of(load)
                : corner != null
                        ? Optional.of(corner)
                        : governing(ground, overhead, units).map(g -> g);
    }

    public static Optional<GapFinding> governing(GapFinding ground, GapFinding overhead, GapFinding units) {
        return Finding.governing(Stream.of(
                ground == null ? null : ground.decisive(),
                overhead == null ? null : overhead.decisive(),
                units == null || units.verdict() == Verdict.CLEAR ? null : units.decisive()));
    }

    /** With the speed for which its answer stands, or null. */
    public ReportCell withSpeed(Double mps) {
        return new ReportCell(
                configuration, verdict, ground, overhead, units, raise, raiseNote, reasons, load, corner, mps);
    }

    public ReportCell withUnits(GapFinding other) {
        return new ReportCell(
                configuration, verdict, ground, overhead, other, raise, raiseNote, reasons, load, corner, mostMps);
    }

    /**
     * Where the units stand level so: never better than that, with the reason; and nothing is offered to a combination
     * that cannot stand on the road before and after.
     */
    public ReportCell standing(Verdict level, Optional<Sentence> why) {
        boolean worse = verdict.compareTo(level) < 0;
        boolean touches = level == Verdict.CONTACT;
        if (!worse && !touches) {
            return this;
        }
        List<Sentence> all = new ArrayList<>(reasons);
        why.filter(w -> !reasons.contains(w)).ifPresent(all::add);
        return new ReportCell(
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

    public ReportCell withRaise(RaiseFinding other) {
        return new ReportCell(
                configuration, verdict, ground, overhead, units, other, raiseNote, reasons, load, corner, mostMps);
    }

    public ReportCell withoutRaise(String note) {
        return new ReportCell(
                configuration, verdict, ground, overhead, units, null, note, reasons, load, corner, mostMps);
    }
}
