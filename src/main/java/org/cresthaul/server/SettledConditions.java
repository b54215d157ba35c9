package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.plan.ConditionKind;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Problems;

/**
 * Reads which conditions of a plan people have settled ({@code docs/file-formats.md}): in a request, or in a file of
 * its own.
 */
public final class SettledConditions {
    /** What such a file says of itself. */
    public static final String FORMAT = "settled/1";

    private static final int MOST = 2000;

    private SettledConditions() {}

    /** @throws InputRejected with every problem found */
    public static List<PlanOptions.Settled> parse(byte[] document) throws InputRejected {
        Problems problems = new Problems();
        JsonNode root = JsonText.read(document, problems);
        JsonFields file = JsonFields.of(root, "", problems);
        file.word("cresthaul", List.of(FORMAT));
        List<PlanOptions.Settled> settled = read(file, "settled");
        file.refuseOthers();
        problems.throwIfAny();
        return settled;
    }

    /** The list under a key, when present; problems go where those of {@code fields} go. */
    public static List<PlanOptions.Settled> read(JsonFields fields, String key) {
        List<PlanOptions.Settled> all = new ArrayList<>();
        for (JsonFields item : fields.findObjects(key, 0, MOST)) {
            int before = fields.problems().count();
            String hazard = item.text("hazard", JsonFields.LONGEST_NAME);
            String what = item.word("what", ConditionKind.words());
            String by = item.text("by", JsonFields.LONGEST_NAME);
            String date = item.text("date", 10);
            String agreed = item.text("agreed", JsonFields.LONGEST_NOTE);
            item.refuseOthers();
            requireDate(item, date);
            if (fields.problems().count() == before) {
                all.add(new PlanOptions.Settled(hazard, ConditionKind.of(what), by, date, agreed));
            }
        }
        return all;
    }

    private static void requireDate(JsonFields item, String date) {
        try {
            if (!date.isEmpty()) {
                LocalDate.parse(date);
            }
        } catch (DateTimeParseException e) {
            item.problem(
                    "date",
                    "wrong-date",
                    "\"" + date + "\" is not a date.",
                    "Write year, month and day, such as \"2026-11-25\".");
        }
    }
}
