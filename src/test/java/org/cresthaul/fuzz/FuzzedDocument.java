package org.cresthaul.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.MutatedJson;

/** A document out of bytes: as they are, or a sound one with as many changes as they hold choices for. */
final class FuzzedDocument {
    private static final int MOST_CHANGES = 12;

    private FuzzedDocument() {}

    static String of(byte[] data, String sound) {
        if (data.length > 0 && data[0] == (byte) 255) {
            return new String(data, 1, data.length - 1, StandardCharsets.UTF_8);
        }
        ByteChoices choices = new ByteChoices(Arrays.copyOfRange(data, Math.min(1, data.length), data.length));
        String text = sound;
        for (int i = 0; i < MOST_CHANGES && !choices.isUsedUp(); i++) {
            text = new MutatedJson(text, choices).next();
        }
        return text;
    }

    /** Judging takes a hundred times as long as reading: one file in four is judged. */
    static boolean isJudged(byte[] data) {
        return data.length % 4 == 0;
    }

    /** A refusal names places and remedies. */
    static void requireHelp(InputRejected e) {
        for (InputProblem problem : e.problems()) {
            assertFalse(problem.pointer() == null || problem.remedy().isBlank(), problem.toString());
        }
    }
}
