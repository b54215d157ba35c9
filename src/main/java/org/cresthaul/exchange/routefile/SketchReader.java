package org.cresthaul.exchange.routefile;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.road.SurveyedPoint;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.Sketch;
import org.cresthaul.units.LengthLimits;

/** Reads the sketch of a candidate's road. */
final class SketchReader {
    static final int MOST_POINTS = 400;
    static final LengthLimits SPACING = new LengthLimits(0.01, 10_000);
    /** Over these the ground below the combination is judged where they are surveyed. */
    private static final Set<String> KINDS = Stream.of(HazardKind.values())
            .filter(HazardKind::isOverGround)
            .map(HazardKind::word)
            .collect(Collectors.toSet());

    private SketchReader() {}

    /** Empty where there is none, or after a problem. */
    static Optional<Sketch> read(JsonFields hazard, JsonFields candidate) {
        Optional<JsonFields> given = candidate.findObject("sketch");
        if (given.isEmpty()) {
            return Optional.empty();
        }
        JsonFields fields = given.get();
        int before = fields.problems().count();
        if (!KINDS.contains(hazard.find("hazard").asText())) {
            candidate.problem(
                    "sketch",
                    "not-of-this-kind",
                    "Only a rail crossing, a crest or a dip has a sketch of its road.",
                    "Leave it out.");
        }
        String source = fields.text("raster", JsonFields.LONGEST_NAME);
        double spacingM = fields.lengthM("spacing", SPACING);
        Optional<LocalDate> date = fields.has("date")
                ? Optional.ofNullable(LimitsFile.date(fields, "date", fields.text("date", 10)))
                : Optional.empty();
        Optional<List<SurveyedPoint>> points = ProfileReader.points(fields, "points", MOST_POINTS);
        fields.refuseOthers();
        return fields.problems().count() > before || points.isEmpty() || Double.isNaN(spacingM)
                ? Optional.empty()
                : Optional.of(new Sketch(source, spacingM, date, points.get()));
    }
}
