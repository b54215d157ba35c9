package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.units.LengthLimits;

/** Reads who surveyed a place, how well and when. */
final class SurveyFields {
    /** Lines of notes that a survey may keep. */
    private static final int MOST_NOTES = 2000;

    private SurveyFields() {}

    /** Empty exactly when a problem was added. */
    static Optional<Uncertainty> read(JsonFields survey, LengthLimits accuracy) {
        int before = survey.problems().count();
        double accuracyM = survey.lengthM("accuracy", accuracy);
        String source = survey.text("source", JsonFields.LONGEST_NAME);
        Optional<LocalDate> date = survey.has("date") ? date(survey) : Optional.empty();
        requireNotes(survey);
        survey.refuseOthers();
        return survey.isThere() && survey.problems().count() == before
                ? Optional.of(new Uncertainty(accuracyM, source, date))
                : Optional.empty();
    }

    /** What was written down in the field, line by line: kept for people, and judged by nothing. */
    private static void requireNotes(JsonFields survey) {
        List<JsonNode> lines = survey.findItems("notes", 1, MOST_NOTES).orElse(List.of());
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).isTextual() ? lines.get(i).textValue() : "";
            if (line.isBlank()
                    || line.codePointCount(0, line.length()) > JsonFields.LONGEST_NAME
                    || line.chars().anyMatch(Character::isISOControl)) {
                survey.problems()
                        .add(
                                "wrong-text",
                                "A line of the notes is a text of one line, not blank, up to " + JsonFields.LONGEST_NAME
                                        + " characters.",
                                survey.pointer("notes") + "/" + i,
                                "Shorten it, or leave it out.");
            }
        }
    }

    private static Optional<LocalDate> date(JsonFields survey) {
        String text = survey.text("date", 10);
        try {
            return Optional.of(LocalDate.parse(text));
        } catch (DateTimeParseException e) {
            survey.problem(
                    "date",
                    "wrong-date",
                    "\"" + text + "\" is not a date.",
                    "Write the day of the survey as year, month and day, such as \"2026-10-05\".");
            return Optional.empty();
        }
    }
}
