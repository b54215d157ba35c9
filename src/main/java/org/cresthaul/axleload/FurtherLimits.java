package org.cresthaul.axleload;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.AxleKind;

/**
 * What a set of limits may ask besides weights of axles, groups and runs.
 *
 * @param kgPerTireM most on an axle for every meter of the nominal width of its tires together
 * @param leastShares least share of the gross weight that a group must carry
 * @param tables bridge formulas given as figures; each holds for every run of two axles and more
 * @param lastDay the last day on which these limits may be used, as of a permit
 * @param hours when one may drive by them, in the words of the permit; empty when nothing is said
 * @param bridge what they ask at a bridge; {@link OnBridge#NONE} elsewhere
 */
public record FurtherLimits(
        OptionalDouble kgPerTireM,
        Map<AxleKind, Double> leastShares,
        List<BridgeTable> tables,
        Optional<LocalDate> lastDay,
        List<String> hours,
        OnBridge bridge) {
    public static final FurtherLimits NONE =
            new FurtherLimits(OptionalDouble.empty(), Map.of(), List.of(), Optional.empty(), List.of(), OnBridge.NONE);

    public FurtherLimits {
        kgPerTireM.ifPresent(kg -> Finite.requireAtLeast("kgPerTireM", 0, kg));
        leastShares = leastShares.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(leastShares));
        tables = List.copyOf(tables);
        hours = List.copyOf(hours);
    }

    boolean limitsNothing() {
        return kgPerTireM.isEmpty()
                && leastShares.isEmpty()
                && tables.isEmpty()
                && bridge.mostKg().isEmpty();
    }

    /** An axle whose tires these limits ask for and nobody measured; its load cannot be held against them. */
    Optional<AxlePlace> findUnmeasured(List<AxlePlace> places, Map<AxleKind, Double> tireWidthsM) {
        return kgPerTireM.isEmpty()
                ? Optional.empty()
                : places.stream()
                        .filter(p -> !tireWidthsM.containsKey(p.kind()))
                        .findFirst();
    }

    /** Bounds on axles at {@code places}; of the unmeasured ones none by tires. */
    List<LoadBound> on(List<AxlePlace> places, double grossKg, Map<AxleKind, Double> tireWidthsM, Sentence source) {
        List<LoadBound> bounds = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            Double widthM = tireWidthsM.get(places.get(i).kind());
            if (kgPerTireM.isPresent() && widthM != null) {
                bounds.add(LoadBound.most(
                        Sentence.of(Code.RULE_TIRE_WIDTH), source, i, i, kgPerTireM.getAsDouble() * widthM));
            }
        }
        leastShares.forEach((group, share) -> addShare(bounds, places, group, share * grossKg, source));
        bounds.addAll(bridge.boundsOn(places, source));
        for (BridgeTable table : tables) {
            for (int first = 0; first < places.size(); first++) {
                for (int last = first + 1; last < places.size(); last++) {
                    int axles = last - first + 1;
                    double lengthM = places.get(first).xM() - places.get(last).xM();
                    bounds.add(LoadBound.most(
                            Sentence.of(Code.RULE_TABLE)
                                    .with("table", table.name())
                                    .with("count", axles),
                            source,
                            first,
                            last,
                            table.mostKg(axles, lengthM)));
                }
            }
        }
        return bounds;
    }

    /** The axles of a group stand one behind the other. */
    private static void addShare(
            List<LoadBound> bounds, List<AxlePlace> places, AxleKind group, double kg, Sentence source) {
        int first = -1;
        int last = -1;
        for (int i = 0; i < places.size(); i++) {
            if (places.get(i).group().kind() == group) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        if (first >= 0) {
            bounds.add(new LoadBound(
                    Sentence.of(first == last ? Code.RULE_SHARE_ONE : Code.RULE_SHARE)
                            .with("kind", Sentence.word(group)),
                    source,
                    LoadBound.Part.AXLES,
                    first,
                    last,
                    kg,
                    true));
        }
    }
}
