package org.cresthaul.route;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.units.JsonFields;
import org.cresthaul.units.LengthLimits;

/** Reads who surveyed a place, how well and when. */
final class SurveyFields {
    private SurveyFields() {}

    /** Empty exactly when a problem was added. */
    static Optional<Uncertainty> read(JsonFields survey, LengthLimits accuracy) {
        int before = survey.problems().count();
        double accuracyM = survey.lengthM("accuracy", accuracy);
        String source = survey.text("source", JsonFields.LONGEST_NAME);
        Optional<LocalDate> date = survey.has("date") ? date(survey) : Optional.empty();
        survey.refuseOthers();
        return survey.isThere() && survey.problems().count() == before
                ? Optional.of(new Uncertainty(accuracyM, source, date))
                : Optional.empty();
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
