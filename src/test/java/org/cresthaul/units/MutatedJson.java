package org.cresthaul.units;

import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A sound document with one to three places mangled: taken out, doubled, swapped or filled with something else. */
public final class MutatedJson {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String[] FILLINGS = {
        "null",
        "true",
        "0",
        "-1",
        "1e300",
        "\"\"",
        "\"x\"",
        "[]",
        "{}",
        "[[]]",
        "\"1 m\"",
        "\"-1 m\"",
        "\"0 in\"",
        "\"9 m\"",
        "\"70 m\"",
        "\"4 in\"",
        "\"1e308 m\"",
        "\"NaN\"",
        "\"none\"",
        "\"2 %\"",
        "\"5 deg\"",
        "[\"1 m\", \"2 m\"]",
        "[0, 0]",
        "[-93.1, 44.6]",
        "{\"x\": \"-4 m\", \"h\": \"1 m\"}"
    };

    private static final Pattern NUMBER = Pattern.compile("[0-9]+([.,][0-9]+)?");
    private static final String[] NUMBERS = {
        "0", "1", "2", "0.5", "7", "12", "20", "33", "90", "250", "1999", "5000", "0.001", "1.05"
    };

    private final String sound;
    private final RandomGenerator random;

    public MutatedJson(String sound, long seed) {
        this(sound, new SplittableRandom(seed));
    }

    /** With choices that somebody else makes. */
    public MutatedJson(String sound, RandomGenerator choices) {
        this.sound = sound;
        this.random = choices;
    }

    public String next() {
        JsonNode root = tree(sound);
        for (int k = random.nextInt(1, 4); k > 0; k--) {
            List<JsonNode> containers = new ArrayList<>();
            listContainers(root, containers);
            JsonNode container = containers.get(random.nextInt(containers.size()));
            if (container instanceof ObjectNode object && !object.isEmpty()) {
                List<String> keys = new ArrayList<>();
                object.fieldNames().forEachRemaining(keys::add);
                String key = keys.get(random.nextInt(keys.size()));
                switch (random.nextInt(6)) {
                    case 0 -> object.remove(key);
                    case 1 ->
                        object.set(
                                key,
                                object.get(keys.get(random.nextInt(keys.size())))
                                        .deepCopy());
                    case 2 -> object.set(key + "s", object.get(key));
                    case 3 -> object.set(key, nearby(object.get(key)));
                    default -> object.set(key, filling());
                }
            } else if (container instanceof ArrayNode array && !array.isEmpty()) {
                int i = random.nextInt(array.size());
                switch (random.nextInt(6)) {
                    case 0 -> array.remove(i);
                    case 1 ->
                        array.insert(i, array.get(random.nextInt(array.size())).deepCopy());
                    case 2 -> array.add(array.remove(i));
                    case 3 -> array.set(i, nearby(array.get(i)));
                    default -> array.set(i, filling());
                }
            }
        }
        return root.toString();
    }

    /** A quantity with its first number changed; what is none is filled with something else. */
    private JsonNode nearby(JsonNode node) {
        Matcher number = NUMBER.matcher(node.asText());
        if (!node.isTextual() || !number.find()) {
            return filling();
        }
        String changed = NUMBERS[random.nextInt(NUMBERS.length)];
        return TextNode.valueOf(node.asText().substring(0, number.start())
                + changed
                + node.asText().substring(number.end()));
    }

    private JsonNode filling() {
        return tree(FILLINGS[random.nextInt(FILLINGS.length)]);
    }

    private static JsonNode tree(String text) {
        try {
            return MAPPER.readTree(text);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    private static void listContainers(JsonNode node, List<JsonNode> into) {
        if (node.isContainerNode()) {
            into.add(node);
            node.forEach(child -> listContainers(child, into));
        }
    }

    /** A problem points at a place in the document, or at a field missing from one. */
    public static void requireParentExists(JsonNode root, String pointer) {
        JsonPointer at = JsonPointer.compile(pointer);
        assertFalse(!pointer.isEmpty() && root.at(at.head()).isMissingNode(), pointer);
    }
}
