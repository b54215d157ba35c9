package org.cresthaul.exchange.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.LongNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.cresthaul.units.Problems;

/**
 * Strict JSON into a tree: a key twice in an object, a number that no double holds and text after the end are mistakes.
 * What is too large is refused while it is read, before its tree exists.
 */
public final class JsonText {
    /** Longest document, bytes. */
    public static final int MOST_BYTES = 64 * 1024 * 1024;
    /** Deepest nesting of objects and arrays. */
    public static final int MOST_DEPTH = 24;
    /** Most positions in all GeoJSON coordinates together. */
    public static final int MOST_POSITIONS = 1_000_000;
    /** Most values besides positions. */
    public static final int MOST_VALUES = 1_000_000;
    /** Longest text value. */
    public static final int LONGEST_TEXT = 10_000;

    private static final JsonFactory FACTORY = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxDocumentLength(MOST_BYTES)
                    .maxNestingDepth(MOST_DEPTH)
                    .maxStringLength(LONGEST_TEXT)
                    .maxNameLength(200)
                    .maxNumberLength(100)
                    .build())
            .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER)
            .disable(JsonFactory.Feature.INTERN_FIELD_NAMES)
            .build();
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final JsonParser parser;
    private final Problems problems;
    private int positions;
    private int values;

    private JsonText(JsonParser parser, Problems problems) {
        this.parser = parser;
        this.problems = problems;
    }

    /**
     * The document as a tree; a {@link MissingNode} when it is not JSON or too large, with the reason among the
     * problems. With other problems (a key twice) the rest of the tree is there to be read.
     *
     * @param document UTF-8
     */
    public static JsonNode read(byte[] document, Problems problems) {
        if (document.length > MOST_BYTES) {
            return tooLarge(problems);
        }
        if (isOtherEncoding(document)) {
            problems.add(
                    "not-json",
                    "The document is not UTF-8 without a byte order mark.",
                    "",
                    "Save it as UTF-8, without a byte order mark (BOM).");
            return MissingNode.getInstance();
        }
        try (JsonParser parser = FACTORY.createParser(document)) {
            return new JsonText(parser, problems).document();
        } catch (IOException e) {
            return unreadable(e, problems);
        }
    }

    /**
     * JSON exchanged between systems is UTF-8 without a byte order mark (RFC 8259 section 8.1). The parser would take
     * others as well; then the same file would be taken in one place and refused in another, and have two hashes.
     */
    private static boolean isOtherEncoding(byte[] document) {
        if (document.length < 2) {
            return false;
        }
        int first = document[0] & 0xFF;
        int second = document[1] & 0xFF;
        return first == 0 || second == 0 || first >= 0xFE || first == 0xEF && second == 0xBB;
    }

    /** As {@link #read(byte[], Problems)}. */
    public static JsonNode read(String document, Problems problems) {
        return document.length() > MOST_BYTES
                ? tooLarge(problems)
                : read(document.getBytes(StandardCharsets.UTF_8), problems);
    }

    private static JsonNode tooLarge(Problems problems) {
        problems.add(
                "too-large",
                "The document is longer than " + MOST_BYTES / (1024 * 1024) + " MB.",
                "",
                "Leave out what is not needed, or thin the route line.");
        return MissingNode.getInstance();
    }

    private static JsonNode unreadable(IOException e, Problems problems) {
        if (e instanceof TooMany tooMany) {
            problems.add(
                    "too-many", tooMany.getMessage(), tooMany.pointer, "Leave out what is not needed, or thin it.");
        } else if (e instanceof StreamConstraintsException) {
            problems.add(
                    "too-large",
                    "The document nests deeper than " + MOST_DEPTH + " levels, or holds a text, key or number that is"
                            + " too long" + where(((StreamConstraintsException) e).getLocation()) + ".",
                    "",
                    "Check that this is a route or rig file.");
        } else if (e instanceof JsonParseException parse) {
            problems.add(
                    "not-json",
                    "The document is not valid JSON" + where(parse.getLocation()) + ": " + reason(parse) + ".",
                    "",
                    "Correct the text there.");
        } else {
            problems.add("not-json", "The document is not valid JSON in UTF-8.", "", "Save it as JSON in UTF-8.");
        }
        return MissingNode.getInstance();
    }

    private static String where(JsonLocation at) {
        return at == null ? "" : " (line " + at.getLineNr() + ", column " + at.getColumnNr() + ")";
    }

    private static String reason(JsonParseException e) {
        String message = e.getOriginalMessage();
        if (message.startsWith("Non-standard token")) {
            return "NaN and Infinity are not numbers";
        }
        String first = message.lines().findFirst().orElse("").strip();
        int advice = first.indexOf(": enable ");
        String plain = advice < 0 ? first : first.substring(0, advice);
        return plain.length() > 160 ? plain.substring(0, 160) + "..." : plain;
    }

    private JsonNode document() throws IOException {
        JsonToken first = parser.nextToken();
        if (first == null) {
            problems.add("not-json", "The document is empty.", "", "Hand in a route or rig file.");
            return MissingNode.getInstance();
        }
        JsonNode root = value(first, false);
        if (parser.nextToken() != null) {
            problems.add(
                    "not-json",
                    "There is more text after the end of the document" + where(parser.currentTokenLocation()) + ".",
                    "",
                    "Keep one JSON object in a document.");
        }
        return root;
    }

    private JsonNode value(JsonToken token, boolean inCoordinates) throws IOException {
        switch (token) {
            case START_OBJECT:
                return object();
            case START_ARRAY:
                return array(inCoordinates);
            case VALUE_STRING:
                countValue();
                return TextNode.valueOf(wellFormed(parser.getText()));
            case VALUE_NUMBER_INT:
            case VALUE_NUMBER_FLOAT:
                return number(inCoordinates);
            case VALUE_TRUE:
            case VALUE_FALSE:
                countValue();
                return BooleanNode.valueOf(token == JsonToken.VALUE_TRUE);
            default:
                countValue();
                return NullNode.getInstance();
        }
    }

    private JsonNode object() throws IOException {
        countValue();
        ObjectNode node = NODES.objectNode();
        for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
            String key = wellFormed(name);
            JsonNode value = value(parser.nextToken(), key.equals("coordinates"));
            if (node.has(key)) {
                problems.add(
                        "key-twice",
                        "\"" + key + "\" stands twice in one object.",
                        parser.getParsingContext().pathAsPointer().toString(),
                        "Keep one of them.");
            } else {
                node.set(key, value);
            }
        }
        return node;
    }

    private JsonNode array(boolean inCoordinates) throws IOException {
        JsonToken token = parser.nextToken();
        boolean position = inCoordinates && token.isNumeric();
        if (!position) {
            countValue();
        } else if (++positions > MOST_POSITIONS) {
            throw new TooMany(
                    "The document has more than " + MOST_POSITIONS + " positions.",
                    parser.getParsingContext().getParent().pathAsPointer().toString());
        }
        ArrayNode node = new ArrayNode(NODES, position ? 2 : 8);
        for (; token != JsonToken.END_ARRAY; token = parser.nextToken()) {
            node.add(value(token, inCoordinates && node.size() < 4 || inCoordinates && !position));
        }
        return node;
    }

    private JsonNode number(boolean inCoordinates) throws IOException {
        if (!inCoordinates) {
            countValue();
        }
        if (parser.currentToken() == JsonToken.VALUE_NUMBER_INT) {
            switch (parser.getNumberType()) {
                case INT:
                    return IntNode.valueOf(parser.getIntValue());
                case LONG:
                    return LongNode.valueOf(parser.getLongValue());
                default:
                    break;
            }
        }
        double value = parser.getDoubleValue();
        if (!Double.isFinite(value)) {
            problems.add(
                    "out-of-range",
                    "A number is too large to be read.",
                    parser.getParsingContext().pathAsPointer().toString(),
                    "Check its exponent.");
        }
        return DoubleNode.valueOf(value);
    }

    /** Half a surrogate pair is legal in JSON, but no text: it could not be written out again. */
    private String wellFormed(String text) {
        StringBuilder mended = null;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (!Character.isSurrogate(c)) {
                continue;
            }
            if (Character.isHighSurrogate(c) && i + 1 < text.length() && Character.isLowSurrogate(text.charAt(i + 1))) {
                i++;
                continue;
            }
            mended = mended == null ? new StringBuilder(text) : mended;
            mended.setCharAt(i, '\ufffd');
        }
        if (mended == null) {
            return text;
        }
        problems.add(
                "wrong-text",
                "A text holds half a surrogate pair.",
                parser.getParsingContext().getParent() == null
                        ? ""
                        : parser.getParsingContext().getParent().pathAsPointer().toString(),
                "Write the character itself.");
        return mended.toString();
    }

    private void countValue() throws TooMany {
        if (++values > MOST_VALUES) {
            throw new TooMany("The document has more than " + MOST_VALUES + " values.", "");
        }
    }

    private static final class TooMany extends IOException {
        private final String pointer;

        TooMany(String message, String pointer) {
            super(message);
            this.pointer = pointer;
        }
    }
}
