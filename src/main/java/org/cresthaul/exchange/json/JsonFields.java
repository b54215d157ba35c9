package org.cresthaul.exchange.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.cresthaul.units.Examples;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.NearestWord;
import org.cresthaul.units.Problems;

/**
 * One JSON object while it is read. It hands out fields by kind, adds a problem with the pointer to the place for each
 * that is missing or wrong, and refuses what nobody asked for ({@link #refuseOthers}).
 *
 * <p>A wrong number comes back as NaN and a wrong text as the empty text, so that a reader can go on and compare: every
 * comparison with NaN is false, and a mistake is told once ({@link JsonQuantities}). A reader builds its value only
 * when no problem was added.
 */
public final class JsonFields {
    /** Longest name, label or identifier. */
    public static final int LONGEST_NAME = 200;
    /** Longest note. */
    public static final int LONGEST_NOTE = 2000;

    private final JsonNode node;
    private final String pointer;
    private final Problems problems;
    private final Set<String> asked = new LinkedHashSet<>();

    private JsonFields(JsonNode node, String pointer, Problems problems) {
        this.node = node;
        this.pointer = pointer;
        this.problems = problems;
    }

    /**
     * The fields of {@code node}. When it is not an object that is a problem, and every field of the result is silently
     * absent.
     */
    public static JsonFields of(JsonNode node, String pointer, Problems problems) {
        if (node instanceof ObjectNode) {
            return new JsonFields(node, pointer, problems);
        }
        if (!node.isMissingNode()) {
            problems.add(
                    "wrong-type",
                    label(pointer) + " must be an object, is " + kindOf(node) + ".",
                    pointer,
                    "Write { ... } here.");
        }
        return new JsonFields(MissingNode.getInstance(), pointer, problems);
    }

    /** False when this stands in for an object that is not there: its fields are absent without further problems. */
    public boolean isThere() {
        return node.isObject();
    }

    public String pointer() {
        return pointer;
    }

    /** Pointer to a field of this object. */
    public String pointer(String key) {
        return pointer + "/" + escaped(key);
    }

    public boolean has(String key) {
        asked.add(key);
        return node.has(key);
    }

    /** Adds a problem at a field of this object. */
    public void problem(String key, String code, String message, String remedy) {
        problems.add(code, message, pointer(key), remedy);
    }

    public Problems problems() {
        return problems;
    }

    /** The raw value of an optional field; a missing node when it is absent. */
    public JsonNode find(String key) {
        asked.add(key);
        return node.path(key);
    }

    private Optional<JsonNode> require(String key, String example) {
        JsonNode value = find(key);
        if (value.isMissingNode()) {
            if (node.isObject()) {
                problem(key, "missing", "\"" + key + "\" is missing.", "Add it, such as " + example + ".");
            }
            return Optional.empty();
        }
        return Optional.of(value);
    }

    /** A required text that is not blank, at most {@code longest} characters, without control characters. */
    public String text(String key, int longest) {
        return require(key, "\"" + key + "\": \"" + Examples.text(key) + "\"")
                .map(v -> checkedText(key, v, longest))
                .orElse("");
    }

    /** As {@link #text}, when present. */
    public Optional<String> findText(String key, int longest) {
        JsonNode value = find(key);
        return value.isMissingNode() ? Optional.empty() : Optional.of(checkedText(key, value, longest));
    }

    private String checkedText(String key, JsonNode value, int longest) {
        if (!value.isTextual()) {
            problem(key, "wrong-type", key + " must be a text, is " + kindOf(value) + ".", "Write it in quotes.");
            return "";
        }
        String raw = value.textValue();
        if (raw.isBlank()) {
            problem(key, "blank", key + " is blank.", "Write something, or leave the field out if it is optional.");
            return "";
        }
        if (raw.codePointCount(0, raw.length()) > longest) {
            problem(key, "too-long", key + " has more than " + longest + " characters.", "Shorten it.");
            return "";
        }
        if (raw.chars().anyMatch(Character::isISOControl)) {
            problem(key, "wrong-text", key + " has a line break or another control character.", "Keep to one line.");
            return "";
        }
        return raw.strip();
    }

    /** A required text that is one of {@code words}; empty when it is not. */
    public String word(String key, List<String> words) {
        String word = require(key, "\"" + key + "\": \"" + words.get(0) + "\"")
                .map(v -> checkedText(key, v, LONGEST_NAME))
                .orElse("");
        if (!word.isEmpty() && !words.contains(word)) {
            problem(
                    key,
                    "unknown-word",
                    key + " is \"" + word + "\".",
                    "It must be one of: " + String.join(", ", words) + ".");
            return "";
        }
        return word;
    }

    /** A required length within limits, meters; NaN when it is not. */
    public double lengthM(String key, LengthLimits limits) {
        return require(key, "\"" + key + "\": \"" + Examples.length(limits) + "\"")
                .map(v -> JsonQuantities.lengthM(v, pointer(key), key, limits, problems))
                .orElse(Double.NaN);
    }

    /** As {@link #lengthM(String, LengthLimits)}, when present; NaN inside when present and wrong. */
    public OptionalDouble findLengthM(String key, LengthLimits limits) {
        JsonNode value = find(key);
        return value.isMissingNode()
                ? OptionalDouble.empty()
                : OptionalDouble.of(JsonQuantities.lengthM(value, pointer(key), key, limits, problems));
    }

    /** A required grade, rise over run, within {@code most} either way; NaN when it is not. */
    public double grade(String key, double least, double most) {
        return require(key, "\"" + key + "\": \"" + Examples.grade(least, most) + "\"")
                .map(v -> JsonQuantities.grade(v, pointer(key), key, least, most, problems))
                .orElse(Double.NaN);
    }

    /** A required angle, radians, within limits; NaN when it is not. */
    public double angleRad(String key, double least, double most) {
        return require(key, "\"" + key + "\": \"" + Examples.angle(least, most) + "\"")
                .map(v -> JsonQuantities.angleRad(v, pointer(key), key, least, most, problems))
                .orElse(Double.NaN);
    }

    /** A required weight within limits, kilograms; NaN when it is not. */
    public double massKg(String key, double least, double most) {
        return require(key, "\"" + key + "\": \"" + Examples.mass(least, most) + "\"")
                .map(v -> JsonQuantities.massKg(v, pointer(key), key, least, most, problems))
                .orElse(Double.NaN);
    }

    /** As {@link #massKg(String, double, double)}, when present; NaN inside when present and wrong. */
    public OptionalDouble findMassKg(String key, double least, double most) {
        JsonNode value = find(key);
        return value.isMissingNode()
                ? OptionalDouble.empty()
                : OptionalDouble.of(JsonQuantities.massKg(value, pointer(key), key, least, most, problems));
    }

    /** A required pressure, pascals; NaN when it is not one. */
    public double pressurePa(String key) {
        return require(key, "\"" + key + "\": \"55 psi\"")
                .map(v -> JsonQuantities.pressurePa(v, pointer(key), key, problems))
                .orElse(Double.NaN);
    }

    /** As {@link #pressurePa(String)}, when present; NaN inside when present and wrong. */
    public OptionalDouble findPressurePa(String key) {
        JsonNode value = find(key);
        return value.isMissingNode()
                ? OptionalDouble.empty()
                : OptionalDouble.of(JsonQuantities.pressurePa(value, pointer(key), key, problems));
    }

    /** A voltage in volts, when present; NaN inside when present and wrong. */
    public OptionalDouble findVoltageV(String key) {
        JsonNode value = find(key);
        return value.isMissingNode()
                ? OptionalDouble.empty()
                : OptionalDouble.of(JsonQuantities.voltageV(value, pointer(key), key, problems));
    }

    /** A time in seconds, when present; NaN inside when present and wrong. */
    public OptionalDouble findDurationS(String key) {
        JsonNode value = find(key);
        return value.isMissingNode()
                ? OptionalDouble.empty()
                : OptionalDouble.of(JsonQuantities.durationS(value, pointer(key), key, problems));
    }

    /** A speed in meters per second within limits, when present; NaN inside when present and wrong. */
    public OptionalDouble findSpeedMps(String key, double least, double most) {
        JsonNode value = find(key);
        return value.isMissingNode()
                ? OptionalDouble.empty()
                : OptionalDouble.of(JsonQuantities.speedMps(value, pointer(key), key, least, most, problems));
    }

    /** A required whole number within limits. */
    public OptionalInt integer(String key, int least, int most) {
        Optional<JsonNode> value = require(key, "\"" + key + "\": " + least);
        if (value.isEmpty()) {
            return OptionalInt.empty();
        }
        return checkedInteger(key, value.get(), least, most);
    }

    /** As {@link #integer}, when present; empty as well when it is wrong. */
    public OptionalInt findInteger(String key, int least, int most) {
        JsonNode value = find(key);
        return value.isMissingNode() ? OptionalInt.empty() : checkedInteger(key, value, least, most);
    }

    private OptionalInt checkedInteger(String key, JsonNode value, int least, int most) {
        if (!value.isInt() || value.intValue() < least || value.intValue() > most) {
            problem(
                    key,
                    "wrong-number",
                    key + " must be a whole number between " + least + " and " + most + ", is "
                            + (value.isNumber() ? value.asText() : kindOf(value)) + ".",
                    "Write it as in \"" + key + "\": " + least + ".");
            return OptionalInt.empty();
        }
        return OptionalInt.of(value.intValue());
    }

    /** A required object; stands in silently when it is not there, after the problem was added. */
    public JsonFields object(String key) {
        return JsonFields.of(
                require(key, "\"" + key + "\": { ... }").orElse(MissingNode.getInstance()), pointer(key), problems);
    }

    /** An optional object. */
    public Optional<JsonFields> findObject(String key) {
        JsonNode value = find(key);
        return value.isMissingNode() ? Optional.empty() : Optional.of(JsonFields.of(value, pointer(key), problems));
    }

    /** The items of a required array, {@code least} to {@code most} of them; empty after a problem. */
    public List<JsonNode> items(String key, int least, int most) {
        return require(key, "\"" + key + "\": [ ... ]")
                .map(v -> checkedItems(key, v, least, most))
                .orElse(List.of());
    }

    /** As {@link #items}, when present. */
    public Optional<List<JsonNode>> findItems(String key, int least, int most) {
        JsonNode value = find(key);
        return value.isMissingNode() ? Optional.empty() : Optional.of(checkedItems(key, value, least, most));
    }

    private List<JsonNode> checkedItems(String key, JsonNode value, int least, int most) {
        if (!value.isArray()) {
            problem(key, "wrong-type", key + " must be a list, is " + kindOf(value) + ".", "Write [ ... ] here.");
            return List.of();
        }
        if (value.size() < least || value.size() > most) {
            problem(
                    key,
                    "wrong-count",
                    key + " has " + value.size() + " entries.",
                    "It must have " + (most == Integer.MAX_VALUE ? "at least " + least : least + " to " + most) + ".");
            return List.of();
        }
        List<JsonNode> items = new ArrayList<>(value.size());
        value.forEach(items::add);
        return items;
    }

    /** As {@link #items}, each an object. */
    public List<JsonFields> objects(String key, int least, int most) {
        return objects(key, items(key, least, most));
    }

    /** As {@link #findItems}, each an object; empty when absent. */
    public List<JsonFields> findObjects(String key, int least, int most) {
        return objects(key, findItems(key, least, most).orElse(List.of()));
    }

    private List<JsonFields> objects(String key, List<JsonNode> items) {
        List<JsonFields> objects = new ArrayList<>(items.size());
        for (int i = 0; i < items.size(); i++) {
            objects.add(JsonFields.of(items.get(i), pointer(key) + "/" + i, problems));
        }
        return objects;
    }

    /** Adds a problem for every field that was not asked for before, naming the nearest key that is known here. */
    public void refuseOthers() {
        node.fieldNames().forEachRemaining(key -> {
            if (!asked.contains(key)) {
                String shown = key.length() > 40 ? key.substring(0, 40) + "..." : key;
                String remedy = NearestWord.of(key, asked)
                        .map(known -> "Did you mean \"" + known + "\"?")
                        .orElse("Known here: " + String.join(", ", asked) + ".");
                problem(key, "unknown-key", "\"" + shown + "\" is not a field of this object.", remedy);
            }
        });
    }

    /** What a value is, for a message. */
    public static String kindOf(JsonNode value) {
        return switch (value.getNodeType()) {
            case OBJECT -> "an object";
            case ARRAY -> "a list";
            case STRING -> "a text";
            case NUMBER -> "a number";
            case BOOLEAN -> "true or false";
            case NULL -> "null";
            default -> "nothing";
        };
    }

    private static String label(String pointer) {
        return pointer.isEmpty() ? "The document" : pointer.substring(pointer.lastIndexOf('/') + 1);
    }

    private static String escaped(String key) {
        return key.replace("~", "~0").replace("/", "~1");
    }
}
