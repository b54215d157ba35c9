package org.cresthaul.units;

import java.util.ArrayList;
import java.util.List;

/** Gathers the mistakes of one document while it is read, so that they are told together. Not for sharing. */
public final class Problems {
    /** More than this many are counted, not listed. */
    public static final int MOST_LISTED = 100;

    private final List<InputProblem> listed = new ArrayList<>();
    private int count;

    public void add(String code, String message, String pointer, String remedy) {
        count++;
        if (listed.size() < MOST_LISTED) {
            listed.add(new InputProblem(code, message, pointer, remedy));
        }
    }

    /** How many so far; a reader compares it before and after to see whether its part was sound. */
    public int count() {
        return count;
    }

    public boolean isEmpty() {
        return count == 0;
    }

    /** What was gathered, in the order found; the last one tells how many more there were. */
    public List<InputProblem> list() {
        List<InputProblem> all = new ArrayList<>(listed);
        if (count > listed.size()) {
            all.add(new InputProblem(
                    "more-problems",
                    (count - listed.size()) + " more problems are not listed.",
                    "",
                    "Correct the listed ones and try again."));
        }
        return all;
    }

    /** Throws what was gathered, if anything was. */
    public void throwIfAny() throws InputRejected {
        if (count > 0) {
            throw new InputRejected(list());
        }
    }
}
