package org.cresthaul.axleload;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;

/**
 * What limits ask at a bridge besides weights of the combination: of the axles that stand on it together, and of the
 * way it is driven over.
 *
 * @param lengthM from where a wheel comes onto the bridge to where it leaves it; empty when nobody has measured it
 * @param mostKg most on the axles that stand on it together; needs the length
 * @param terms how it must be driven over, each once, in the order of {@link Term}
 */
public record OnBridge(OptionalDouble lengthM, OptionalDouble mostKg, List<Term> terms) {
    /** Nothing is asked. */
    public static final OnBridge NONE = new OnBridge(OptionalDouble.empty(), OptionalDouble.empty(), List.of());

    /**
     * Axles count as standing on a bridge together when their outer ones are up to this much farther apart than it is
     * long: neither is measured better. 1 ft, this program's choice.
     */
    public static final double ALLOWANCE_M = BridgeFormula.FOOT_M;

    private static final double NOISE_M = 1e-6;

    /** A term of a permit. */
    public enum Term {
        ALONE("alone", Code.TERM_ALONE),
        CENTERED("centered", Code.TERM_CENTERED),
        CRAWL("crawl", Code.TERM_CRAWL);

        private final String word;
        private final Code code;

        Term(String word, Code code) {
            this.word = word;
            this.code = code;
        }

        /** In the word of the file. */
        public String word() {
            return word;
        }

        /** In words. */
        public Sentence text() {
            return Sentence.of(code);
        }
    }

    /** The consecutive axles from index {@code first} to {@code last}. */
    public record Run(int first, int last) {
        public int count() {
            return last - first + 1;
        }
    }

    public OnBridge {
        lengthM.ifPresent(m -> Finite.requireAtLeast("lengthM", 0, m));
        mostKg.ifPresent(kg -> Finite.requireAtLeast("mostKg", 0, kg));
        if (mostKg.isPresent() && lengthM.isEmpty()) {
            throw new IllegalArgumentException("which axles stand on a bridge together hangs on its length");
        }
        terms = terms.isEmpty()
                ? List.of()
                : EnumSet.copyOf(terms).stream()
                        .sorted(Comparator.naturalOrder())
                        .toList();
    }

    /** A bridge so long of which nothing is asked. */
    public static OnBridge overLength(double lengthM) {
        return new OnBridge(OptionalDouble.of(lengthM), OptionalDouble.empty(), List.of());
    }

    /**
     * Every run of axles that stand on it together and is part of no longer one, from the front; none without a length.
     */
    public List<Run> together(List<AxlePlace> places) {
        List<Run> runs = new ArrayList<>();
        if (lengthM.isEmpty()) {
            return runs;
        }
        double reachM = lengthM.getAsDouble() + ALLOWANCE_M + NOISE_M;
        int last = -1;
        for (int first = 0; first < places.size(); first++) {
            int to = first;
            while (to + 1 < places.size()
                    && places.get(first).xM() - places.get(to + 1).xM() <= reachM) {
                to++;
            }
            if (to > last) {
                runs.add(new Run(first, to));
                last = to;
            }
        }
        return runs;
    }

    /** The bound on each of them; none where no weight is given. */
    List<LoadBound> boundsOn(List<AxlePlace> places, Sentence source) {
        List<LoadBound> bounds = new ArrayList<>();
        mostKg.ifPresent(kg -> together(places)
                .forEach(r -> bounds.add(LoadBound.most(
                        Sentence.of(r.count() == 1 ? Code.RULE_BRIDGE_ONE : Code.RULE_BRIDGE)
                                .with("count", r.count()),
                        source,
                        r.first(),
                        r.last(),
                        kg))));
        return bounds;
    }
}
