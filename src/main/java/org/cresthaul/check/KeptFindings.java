package org.cresthaul.check;

import java.lang.ref.SoftReference;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Margins;

/**
 * Findings of places that were judged before, each by everything that it hangs on, so that a change at one place of a
 * route costs no more than that place. Those asked for longest ago go first, and all of them where memory runs short.
 * Safe to share; what two ask for at the same time is judged twice.
 */
public final class KeptFindings {
    /** Of some kilobyte each. */
    private static final int MOST_CELLS = 20_000;

    private final Map<Question, Kept> kept = new LinkedHashMap<>(256, 0.75f, true);
    private int cells;

    /**
     * What findings hang on.
     *
     * @param judged the place with all that is known of it, by value; what has no value of its own is never found again
     * @param rigSha256 of the rig's bytes
     * @param raisesFront by configuration, whether the power take-off raises its front
     */
    record Question(Object judged, String rigSha256, String stance, Margins margins, List<Boolean> raisesFront) {
        Question {
            raisesFront = List.copyOf(raisesFront);
        }
    }

    private record Kept(SoftReference<HazardFindings> findings, int cells) {}

    /** The findings, made now if they are not there. A check that was stopped leaves nothing. */
    HazardFindings of(Question question, Supplier<HazardFindings> judge) {
        HazardFindings known = find(question);
        if (known == null) {
            known = judge.get();
            keep(question, known);
        }
        return known;
    }

    /** Whether they are there. */
    boolean has(Question question) {
        return find(question) != null;
    }

    private synchronized HazardFindings find(Question question) {
        Kept found = kept.get(question);
        return found == null ? null : found.findings.get();
    }

    private synchronized void keep(Question question, HazardFindings findings) {
        Kept made = new Kept(new SoftReference<>(findings), findings.cells().size());
        Kept before = kept.put(question, made);
        cells += made.cells - (before == null ? 0 : before.cells);
        Iterator<Kept> oldest = kept.values().iterator();
        while (cells > MOST_CELLS && kept.size() > 1) {
            cells -= oldest.next().cells;
            oldest.remove();
        }
    }
}
