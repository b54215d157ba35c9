package org.cresthaul.check;

import java.util.Optional;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;

/** What to do when stuck on a rail crossing: people first, in one order and the same words wherever it is said. */
public final class StuckOnTracks {
    private StuckOnTracks() {}

    /** Then the railroad, then the emergency number. */
    static Sentence call(Optional<String> crossingNumber) {
        return crossingNumber
                .map(n -> Sentence.of(Code.STUCK_CALL_NUMBER).with("number", n))
                .orElse(Sentence.of(Code.STUCK_CALL));
    }

    /** Get everybody out, then call. */
    public static Sentence caution(Optional<String> crossingNumber) {
        return Sentence.of(Code.BOTH)
                .with("first", Sentence.of(Code.STUCK_PEOPLE))
                .with("second", call(crossingNumber));
    }
}
