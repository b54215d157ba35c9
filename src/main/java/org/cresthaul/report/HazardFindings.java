package org.cresthaul.report;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.language.Sentence;
import org.cresthaul.route.HazardKind;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

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
        List<ReportCell> cells,
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
            List<ReportCell> cells,
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

    public HazardFindings withNote(String note) {
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

    public HazardFindings withBridge(BridgeFinding other) {
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
