package org.cresthaul.check;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.Verdict;
import org.cresthaul.road.Corner;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.LowPart;
import org.cresthaul.turning.TurningCombination;

/**
 * The last answers that searches round corners gave, by all that decides them: a check, the plan made from it and what
 * is asked about its reserves ask the same again and again, and a search takes a good part of a second. The same
 * question has the same answer, so that nobody can tell whether it was found anew.
 */
final class CornerAnswers {
    /** An answer holds a track of some hundred kilobytes. */
    private static final int MOST = 256;

    private static final CornerAnswers SHARED = new CornerAnswers();

    private final Map<Question, Answer> answers = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Question, Answer> eldest) {
            return size() > MOST;
        }
    };

    private CornerAnswers() {}

    /**
     * All that decides an answer.
     *
     * @param low parts that keep off raised ground for a way round to be clear
     * @param lowest the same for it to be free
     */
    record Question(
            Corner corner,
            TurningCombination combination,
            List<LowPart> low,
            List<LowPart> lowest,
            CornerFit.Wanted wanted,
            boolean unknownNeighbor) {}

    /**
     * The best way round and what it is worth, with and without the opposing lanes.
     *
     * @param noLine for a contact: why no line can exist, where that is shown
     */
    record Answer(CornerFit fit, Verdict verdict, Verdict ownLanes, boolean escorts, Optional<Sentence> noLine) {}

    /** The answer as it is known, or as it is found now; two threads that ask at once may both find it. */
    static Answer find(Question question, Supplier<Answer> search) {
        Answer known = SHARED.known(question);
        if (known == null) {
            known = search.get();
            SHARED.keep(question, known);
        }
        return known;
    }

    private synchronized Answer known(Question question) {
        return answers.get(question);
    }

    private synchronized void keep(Question question, Answer answer) {
        answers.put(question, answer);
    }
}
