package org.cresthaul.rig;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.cresthaul.geometry.Finite;

/**
 * Which of the trailer's axles can be raised, and every way in which some of them are up. What the rear stands at with
 * several up follows from no rule that holds for every trailer: each state is measured.
 *
 * @param axles front to rear; empty without any
 * @param raised every state in which some are up, each axle in one of them at least
 */
public record LiftAxles(List<LiftAxle> axles, List<Raised> raised) {
    public static final LiftAxles NONE = new LiftAxles(List.of(), List.of());

    /**
     * One state in which some are up.
     *
     * @param indexes which of the trailer's axles, the first is 0, front to rear
     * @param secondaryRiseM how much higher the secondary height valve sets the rear then, at the valve axle, meters
     *     (negative: lower)
     * @param gauge the trailer group's chart then, when it is known
     */
    public record Raised(List<Integer> indexes, double secondaryRiseM, Optional<ChartPoints> gauge) {
        public Raised {
            indexes = List.copyOf(indexes);
            Finite.require("secondaryRiseM", secondaryRiseM);
        }
    }

    public LiftAxles {
        axles = List.copyOf(axles);
        raised = List.copyOf(raised);
        Set<Integer> known = new HashSet<>();
        axles.forEach(a -> known.add(a.index()));
        Set<Integer> used = new HashSet<>();
        if (raised.stream().map(Raised::indexes).distinct().count() < raised.size()) {
            throw new IllegalArgumentException("a raised state is given twice");
        }
        for (Raised r : raised) {
            used.addAll(r.indexes());
            if (r.indexes().isEmpty()) {
                throw new IllegalArgumentException("a raised state needs an axle that is up");
            }
        }
        if (known.size() < axles.size() || !known.equals(used)) {
            throw new IllegalArgumentException("every lift axle is up in some state, and no other is: " + used);
        }
    }

    /** The only lift axle of a trailer. */
    public static LiftAxles one(int index, double gapM, double secondaryRiseM) {
        return new LiftAxles(
                List.of(new LiftAxle(index, gapM)),
                List.of(new Raised(List.of(index), secondaryRiseM, Optional.empty())));
    }

    public boolean isEmpty() {
        return axles.isEmpty();
    }

    public boolean has(int index) {
        return axles.stream().anyMatch(a -> a.index() == index);
    }

    /** Every state, all down first. */
    public List<LiftState> states() {
        return Stream.concat(Stream.of(LiftState.DOWN), raised.stream().map(this::stateOf))
                .toList();
    }

    private LiftState stateOf(Raised r) {
        return axles.size() == 1
                ? LiftState.UP
                : LiftState.up(r.indexes().stream().map(i -> i + 1).toList());
    }

    /**
     * What is up in a state, front to rear.
     *
     * @throws IllegalArgumentException when the trailer is never in that state
     */
    public List<LiftAxle> up(LiftState state) {
        List<Integer> up = find(state).map(Raised::indexes).orElse(List.of());
        return axles.stream().filter(a -> up.contains(a.index())).toList();
    }

    /** How much higher the secondary valve sets the rear in a state; zero with all down. */
    public double secondaryRiseM(LiftState state) {
        return find(state).map(Raised::secondaryRiseM).orElse(0.0);
    }

    /** What is known of a state; empty with all down. */
    public Optional<Raised> find(LiftState state) {
        if (!state.isUp()) {
            return Optional.empty();
        }
        return Optional.of(raised.stream()
                .filter(r -> stateOf(r).equals(state))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("this stance has no lift axle to put " + state)));
    }

    /** The same with every raised tire this much lower, at the ground at most. */
    public LiftAxles lowered(double byM) {
        return new LiftAxles(
                axles.stream()
                        .map(a -> new LiftAxle(a.index(), Math.max(0, a.gapM() - byM)))
                        .toList(),
                raised);
    }
}
