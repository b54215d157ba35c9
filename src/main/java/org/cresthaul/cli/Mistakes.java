package org.cresthaul.cli;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.units.InputProblem;

/** Everything that is wrong with what was handed in, file by file, so that it is told at once. Not for sharing. */
final class Mistakes {
    private final List<String> lines = new ArrayList<>();

    /** Adds the problems of one file; {@code source} is its name, or the option's. */
    void add(String source, List<InputProblem> problems) {
        lines.add(source + (problems.size() == 1 ? " has a mistake:" : " has " + problems.size() + " mistakes:"));
        for (InputProblem problem : problems) {
            lines.add("  " + (problem.pointer().isEmpty() ? "" : problem.pointer() + ": ") + problem.message());
            lines.add("      " + problem.remedy() + " [" + problem.code() + "]");
        }
    }

    /** @throws Refused with everything that was added, if anything was */
    void refuseIfAny() throws Refused {
        refuseIfAny("checked");
    }

    /** As {@link #refuseIfAny()}, where something else than checking was asked for. */
    void refuseIfAny(String done) throws Refused {
        if (!lines.isEmpty()) {
            throw new Refused(String.join("\n", lines) + "\nNothing was " + done + ".\n");
        }
    }
}
