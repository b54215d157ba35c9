package org.cresthaul.axleload;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import org.cresthaul.geometry.Finite;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.AxleKind;

/**
 * A set of weight limits that somebody has set: a law, a permit, the sign at a bridge.
 *
 * @param name what people call it
 * @param source where it is written
 * @param date as of when
 * @param grossKg most for the whole combination
 * @param axleKg most on any one axle
 * @param steerKg most on the steer axle, where it differs
 * @param groupsKg most on a group that shares a suspension, by its number of axles; a number not listed takes the next
 *     smaller one listed, with fewer axles than the least listed that one in proportion to the axles
 * @param grossByAxlesKg most for the whole combination by its number of axles, in the same way; with fewer axles than
 *     the least listed, that one in proportion to the axles
 * @param spans most on consecutive axles by how far the outer ones are apart
 * @param bridgeFormula whether the federal bridge formula holds, on runs that no span covers
 * @param further what else they ask
 * @param reported whether somebody else says so, and nobody on this haul has read the sign or the law: what keeps to
 *     such limits is never within limits for sure
 */
public record WeightLimits(
        String name,
        String source,
        LocalDate date,
        OptionalDouble grossKg,
        OptionalDouble axleKg,
        OptionalDouble steerKg,
        SortedMap<Integer, Double> groupsKg,
        SortedMap<Integer, Double> grossByAxlesKg,
        List<Span> spans,
        boolean bridgeFormula,
        FurtherLimits further,
        boolean reported) {
    static final double POUND_KG = 0.45359237;
    private static final double INCH_M = 0.0254;
    /** A place that is at the edge of a span but for noise is at the edge. */
    private static final double NOISE_M = 1e-6;

    private static final double EXCEPTION_LENGTH_M = 36 * BridgeFormula.FOOT_M;
    private static final double EXCEPTION_KG = 68_000 * POUND_KG;
    private static final double TANDEM_OVER_M = 40 * INCH_M;
    private static final double TANDEM_UP_TO_M = 96 * INCH_M;

    /**
     * Two or more axles whose outer ones are more than {@code overM} and up to {@code upToM} apart.
     *
     * @param axles how many they are; empty for any number
     */
    public record Span(Sentence name, double overM, double upToM, double mostKg, OptionalInt axles) {
        /** Any number of axles. */
        public Span(Sentence name, double overM, double upToM, double mostKg) {
            this(name, overM, upToM, mostKg, OptionalInt.empty());
        }

        public Span {
            Finite.requireAtLeast("overM", 0, overM);
            Finite.requireAtLeast("upToM", overM, upToM);
            Finite.requireAtLeast("mostKg", 0, mostKg);
        }

        boolean covers(double lengthM, int count) {
            return (axles.isEmpty() || axles.getAsInt() == count)
                    && lengthM > overM + NOISE_M
                    && lengthM <= upToM + NOISE_M;
        }
    }

    /** Limits that ask nothing further. */
    public WeightLimits(
            String name,
            String source,
            LocalDate date,
            OptionalDouble grossKg,
            OptionalDouble axleKg,
            OptionalDouble steerKg,
            SortedMap<Integer, Double> groupsKg,
            SortedMap<Integer, Double> grossByAxlesKg,
            List<Span> spans,
            boolean bridgeFormula) {
        this(
                name,
                source,
                date,
                grossKg,
                axleKg,
                steerKg,
                groupsKg,
                grossByAxlesKg,
                spans,
                bridgeFormula,
                FurtherLimits.NONE);
    }

    /** Limits that were read where they stand. */
    public WeightLimits(
            String name,
            String source,
            LocalDate date,
            OptionalDouble grossKg,
            OptionalDouble axleKg,
            OptionalDouble steerKg,
            SortedMap<Integer, Double> groupsKg,
            SortedMap<Integer, Double> grossByAxlesKg,
            List<Span> spans,
            boolean bridgeFormula,
            FurtherLimits further) {
        this(
                name,
                source,
                date,
                grossKg,
                axleKg,
                steerKg,
                groupsKg,
                grossByAxlesKg,
                spans,
                bridgeFormula,
                further,
                false);
    }

    public WeightLimits {
        groupsKg = Collections.unmodifiableSortedMap(new TreeMap<>(groupsKg));
        grossByAxlesKg = Collections.unmodifiableSortedMap(new TreeMap<>(grossByAxlesKg));
        spans = List.copyOf(spans);
        if (name.isBlank() || source.isBlank()) {
            throw new IllegalArgumentException("limits need a name and a source");
        }
        if (grossKg.isEmpty()
                && axleKg.isEmpty()
                && steerKg.isEmpty()
                && groupsKg.isEmpty()
                && grossByAxlesKg.isEmpty()
                && spans.isEmpty()
                && !bridgeFormula
                && further.limitsNothing()) {
            throw new IllegalArgumentException("\"" + name + "\" limits nothing");
        }
    }

    /** Axle limits and bridge formula of the Interstate system: 23 U.S.C. 127(a), 23 CFR 658.17; as written in here. */
    public static WeightLimits federal() {
        return new WeightLimits(
                "federal limits",
                "23 CFR 658.17",
                LocalDate.of(2026, 11, 25),
                OptionalDouble.of(80_000 * POUND_KG),
                OptionalDouble.of(20_000 * POUND_KG),
                OptionalDouble.empty(),
                new TreeMap<>(),
                new TreeMap<>(),
                List.of(
                        new Span(Sentence.of(Code.RULE_SPAN_SINGLE), 0, TANDEM_OVER_M, 20_000 * POUND_KG),
                        new Span(Sentence.of(Code.RULE_SPAN_TANDEM), TANDEM_OVER_M, TANDEM_UP_TO_M, 34_000 * POUND_KG)),
                true);
    }

    /** Why a load cannot be held against these limits, in words; empty when it can. */
    public Optional<Sentence> unknownOf(List<AxlePlace> places, Map<AxleKind, Double> tireWidthsM) {
        return further.findUnmeasured(places, tireWidthsM)
                .map(p ->
                        Sentence.of(Code.LOADS_TIRE_WIDTH).with("limits", name).with("kind", Sentence.word(p.kind())));
    }

    /**
     * Everything these limits ask of axles at {@code places}, front to rear. Of loads only the sum of all enters.
     *
     * @param tireWidthsM nominal width of all tires of one axle together, by kind of axle
     */
    public List<LoadBound> boundsOn(List<AxlePlace> places, double grossKg, Map<AxleKind, Double> tireWidthsM) {
        List<LoadBound> bounds = new ArrayList<>(boundsOn(places));
        bounds.addAll(further.on(places, grossKg, tireWidthsM, Sentence.verbatim(source)));
        return bounds;
    }

    /** The same without what they ask further. */
    List<LoadBound> boundsOn(List<AxlePlace> places) {
        List<LoadBound> bounds = new ArrayList<>();
        int count = places.size();
        grossKg.ifPresent(kg -> bounds.add(most(Sentence.of(Code.RULE_GROSS), 0, count - 1, kg)));
        if (!grossByAxlesKg.isEmpty()) {
            bounds.add(most(
                    Sentence.of(Code.RULE_GROSS_ON).with("count", count), 0, count - 1, listed(grossByAxlesKg, count)));
        }
        for (int i = 0; i < count; i++) {
            boolean steer = places.get(i).group().kind() == AxleKind.STEER;
            OptionalDouble kg = steer && steerKg.isPresent() ? steerKg : axleKg;
            if (kg.isPresent()) {
                bounds.add(most(
                        Sentence.of(steer && steerKg.isPresent() ? Code.RULE_STEER : Code.RULE_SINGLE),
                        i,
                        i,
                        kg.getAsDouble()));
            }
        }
        addGroups(bounds, places);
        addRuns(bounds, places);
        return bounds;
    }

    private LoadBound most(Sentence rule, int first, int last, double kg) {
        return LoadBound.most(rule, Sentence.verbatim(source), first, last, kg);
    }

    /** The next smaller number listed; with fewer axles than any, the least in proportion: no group slips through. */
    private static double listed(SortedMap<Integer, Double> byAxles, int count) {
        SortedMap<Integer, Double> upTo = byAxles.headMap(count + 1);
        int axles = upTo.isEmpty() ? byAxles.firstKey() : upTo.lastKey();
        return byAxles.get(axles) * (axles > count ? (double) count / axles : 1);
    }

    private void addGroups(List<LoadBound> bounds, List<AxlePlace> places) {
        for (int first = 0; first < places.size(); ) {
            int last = first;
            while (last + 1 < places.size()
                    && places.get(last + 1).group().equals(places.get(first).group())) {
                last++;
            }
            int count = last - first + 1;
            // A lone axle that is not listed has the limit of a single axle.
            boolean single = count == 1 && axleKg.isPresent() && !groupsKg.containsKey(1);
            if (!groupsKg.isEmpty() && !single) {
                bounds.add(most(
                        Sentence.of(count == 1 ? Code.RULE_GROUP_ONE : Code.RULE_GROUP)
                                .with("count", count),
                        first,
                        last,
                        listed(groupsKg, count)));
            }
            first = last + 1;
        }
    }

    private void addRuns(List<LoadBound> bounds, List<AxlePlace> places) {
        for (int first = 0; first < places.size(); first++) {
            for (int last = first + 1; last < places.size(); last++) {
                double lengthM = places.get(first).xM() - places.get(last).xM();
                int axles = last - first + 1;
                boolean covered = false;
                for (Span span : spans) {
                    if (span.covers(lengthM, axles)) {
                        covered = true;
                        bounds.add(most(span.name(), first, last, span.mostKg()));
                    }
                }
                if (bridgeFormula && !covered) {
                    int feet = BridgeFormula.feet(lengthM);
                    double kg = BridgeFormula.pounds(feet, axles) * POUND_KG;
                    boolean exception = kg < EXCEPTION_KG && isTwoTandems(places, first, last);
                    bounds.add(most(
                            exception
                                    ? Sentence.of(Code.RULE_TWO_TANDEMS)
                                    : Sentence.of(Code.RULE_FORMULA)
                                            .with("count", axles)
                                            .figure("length", feet + " ft"),
                            first,
                            last,
                            exception ? EXCEPTION_KG : kg));
                }
            }
        }
    }

    /** The exception of 23 CFR 658.17(e): two consecutive tandems may carry 34,000 lb each. */
    private static boolean isTwoTandems(List<AxlePlace> places, int first, int last) {
        return last - first == 3
                && isTandem(places, first)
                && isTandem(places, first + 2)
                && places.get(first).xM() - places.get(last).xM() >= EXCEPTION_LENGTH_M - NOISE_M;
    }

    private static boolean isTandem(List<AxlePlace> places, int front) {
        double lengthM = places.get(front).xM() - places.get(front + 1).xM();
        return lengthM > TANDEM_OVER_M + NOISE_M && lengthM <= TANDEM_UP_TO_M + NOISE_M;
    }
}
