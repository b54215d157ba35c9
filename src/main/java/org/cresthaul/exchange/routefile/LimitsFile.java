package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import org.cresthaul.axleload.FurtherLimits;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.language.Sentence;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Problems;

/**
 * Reads a set of weight limits ({@code docs/file-formats.md}, {@code schema/limits-1.schema.json}): a file of its own,
 * such as a permit's limits, or part of a route file.
 */
public final class LimitsFile {
    /** What a limits file says of itself. */
    public static final String FORMAT = "limits/1";

    static final double LEAST_KG = 100;
    static final double MOST_KG = 500_000;
    static final int MOST_ENTRIES = 50;
    static final int MOST_AXLES = 30;
    static final LengthLimits SPAN = new LengthLimits(0, 60);

    private LimitsFile() {}

    /**
     * Reads a limits file.
     *
     * @param document UTF-8
     * @throws InputRejected with every problem found
     */
    public static WeightLimits parse(byte[] document) throws InputRejected {
        Problems problems = new Problems();
        return finish(JsonText.read(document, problems), problems);
    }

    /** As {@link #parse(byte[])}. */
    public static WeightLimits parse(String document) throws InputRejected {
        Problems problems = new Problems();
        return finish(JsonText.read(document, problems), problems);
    }

    private static WeightLimits finish(JsonNode root, Problems problems) throws InputRejected {
        Optional<WeightLimits> limits = read(root, "", problems);
        problems.throwIfAny();
        return limits.orElseThrow();
    }

    /**
     * Reads limits that are part of a larger document, in the form of a file.
     *
     * @return empty exactly when a problem was added, or when {@code node} is missing
     */
    public static Optional<WeightLimits> read(JsonNode node, String pointer, Problems problems) {
        if (node.isMissingNode()) {
            return Optional.empty();
        }
        JsonFields file = JsonFields.of(node, pointer, problems);
        file.word("cresthaul", List.of(FORMAT));
        return read(file, Optional.empty(), Optional.empty());
    }

    /**
     * Reads limits inside another file.
     *
     * @param bridgeM as {@link FurtherLimitsReader#read} takes it
     */
    static Optional<WeightLimits> read(
            JsonFields fields, Optional<String> usualName, Optional<OptionalDouble> bridgeM) {
        Problems problems = fields.problems();
        int before = problems.count();
        String name = usualName.isPresent()
                ? fields.findText("name", JsonFields.LONGEST_NAME).orElse(usualName.get())
                : fields.text("name", JsonFields.LONGEST_NAME);
        fields.findText("note", JsonFields.LONGEST_NOTE);
        String source = fields.text("source", JsonFields.LONGEST_NAME);
        LocalDate date = date(fields);
        boolean reported = fields.has("origin")
                && fields.word("origin", List.of("posted", "reported")).equals("reported");
        OptionalDouble gross = fields.findMassKg("gross", LEAST_KG, MOST_KG);
        OptionalDouble axle = fields.findMassKg("axle", LEAST_KG, MOST_KG);
        OptionalDouble steer = fields.findMassKg("steerAxle", LEAST_KG, MOST_KG);
        SortedMap<Integer, Double> groups = byAxles(fields, "groups");
        SortedMap<Integer, Double> grossByAxles = byAxles(fields, "grossByAxles");
        List<WeightLimits.Span> spans = spans(fields);
        boolean formula = fields.has("bridgeFormula")
                && fields.word("bridgeFormula", List.of("federal")).equals("federal");
        FurtherLimits further = FurtherLimitsReader.read(fields, bridgeM);
        fields.refuseOthers();
        if (!groups.isEmpty() && axle.isEmpty() && fields.isThere()) {
            fields.problem(
                    "axle",
                    "missing",
                    "Limits for groups need one for a single axle as well.",
                    "Add \"axle\": a group with fewer axles than any listed would have no limit without it.");
        }
        boolean none = gross.isEmpty()
                && axle.isEmpty()
                && steer.isEmpty()
                && groups.isEmpty()
                && grossByAxles.isEmpty()
                && spans.isEmpty()
                && !formula
                && !FurtherLimitsReader.limits(fields);
        if (none && fields.isThere() && problems.count() == before) {
            problems.add(
                    "no-limit",
                    "Nothing is limited here.",
                    fields.pointer(),
                    "Give a gross weight, an axle weight, groups, grossByAxles, spans, a bridge formula or table, tire width or"
                            + " least shares.");
        }
        if (!fields.isThere() || problems.count() > before) {
            return Optional.empty();
        }
        return Optional.of(new WeightLimits(
                name, source, date, gross, axle, steer, groups, grossByAxles, spans, formula, further, reported));
    }

    private static LocalDate date(JsonFields fields) {
        return date(fields, "date", fields.text("date", 10));
    }

    /** Null when it is none, or empty. */
    static LocalDate date(JsonFields fields, String key, String text) {
        try {
            return text.isEmpty() ? null : LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            fields.problem(
                    key,
                    "wrong-date",
                    "\"" + text + "\" is not a date.",
                    "Write year, month and day, such as \"2026-11-25\".");
            return null;
        }
    }

    private static SortedMap<Integer, Double> byAxles(JsonFields fields, String key) {
        SortedMap<Integer, Double> byAxles = new TreeMap<>();
        for (JsonFields item : fields.findObjects(key, 1, MOST_ENTRIES)) {
            var axles = item.integer("axles", 1, MOST_AXLES);
            double kg = item.massKg("weight", LEAST_KG, MOST_KG);
            item.refuseOthers();
            if (axles.isPresent() && byAxles.putIfAbsent(axles.getAsInt(), kg) != null) {
                item.problem(
                        "axles", "axles-twice", axles.getAsInt() + " axles are listed twice.", "Keep one of them.");
            }
        }
        return byAxles;
    }

    private static List<WeightLimits.Span> spans(JsonFields fields) {
        List<WeightLimits.Span> spans = new ArrayList<>();
        for (JsonFields item : fields.findObjects("spans", 1, MOST_ENTRIES)) {
            int before = fields.problems().count();
            String name = item.text("name", JsonFields.LONGEST_NAME);
            double overM = item.lengthM("over", SPAN);
            double upToM = item.lengthM("upTo", SPAN);
            double kg = item.massKg("weight", LEAST_KG, MOST_KG);
            OptionalInt axles = item.findInteger("axles", 2, MOST_AXLES);
            item.refuseOthers();
            if (upToM <= overM) {
                item.problem("upTo", "order", "The span ends before it begins.", "Give \"upTo\" the larger length.");
            }
            if (fields.problems().count() == before && item.isThere()) {
                spans.add(new WeightLimits.Span(Sentence.verbatim(name), overM, upToM, kg, axles));
            }
        }
        return spans;
    }
}
