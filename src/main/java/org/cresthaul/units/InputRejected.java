package org.cresthaul.units;

import java.util.List;
import java.util.stream.Collectors;

/** A document that was not taken, with everything that is wrong with it. */
public final class InputRejected extends Exception {
    private final List<InputProblem> problems;

    /** @param problems at least one */
    public InputRejected(List<InputProblem> problems) {
        super(problems.stream().map(InputProblem::toString).collect(Collectors.joining("\n")));
        if (problems.isEmpty()) {
            throw new IllegalArgumentException("a rejection needs a problem");
        }
        this.problems = List.copyOf(problems);
    }

    public List<InputProblem> problems() {
        return problems;
    }
}
