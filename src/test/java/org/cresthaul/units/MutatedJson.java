package org.cresthaul.units;

import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** A sound document with one to three places mangled: taken out, doubled, swapped or filled with something else. */
public final class MutatedJson {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String[] FILLINGS = {
        "null", "true", "0", "-1", "1e300", "\"\"", "\"x\"", "[]", "{}", "[[]]", "\"1 m\"", "\"-1 m\"", "\"0 in\"",
        "\"9 m\"", "\"70 m\"", "\"4 in\"", "\"1e308 m\"", "\"NaN\"", "\"none\"", "\"2 %\"", "\"5 deg\"", "[\"1 m\", \"2 m\"]",
        "[0, 0]", "[-93.1, 44.6]", "{\"x\": \"-4 m\", \"h\": \"1 m\"}"
    };

    private final String sound;
    private final SplittableRandom random;

    public MutatedJson(String sound, long seed) {
        this.sound = sound;
        this.random = new SplittableRandom(seed);
    }

    public String next() throws Exception {
        JsonNode root = MAPPER.readTree(sound);
        for (int k = random.nextInt(1, 4); k > 0; k--) {
            List<JsonNode> containers = new ArrayList<>();
            listContainers(root, containers);
            JsonNode container = containers.get(random.nextInt(containers.size()));
            if (container instanceof ObjectNode object && !object.isEmpty()) {
                List<String> keys = new ArrayList<>();
                object.fieldNames().forEachRemaining(keys::add);
                String key = keys.get(random.nextInt(keys.size()));
                switch (random.nextInt(5)) {
                    case 0 -> object.remove(key);
                    case 1 -> object.set(key, object.get(keys.get(random.nextInt(keys.size()))).deepCopy());
                    case 2 -> object.set(key + "s", object.get(key));
                    default -> object.set(key, filling());
                }
            } else if (container instanceof ArrayNode array && !array.isEmpty()) {
                int i = random.nextInt(array.size());
                switch (random.nextInt(5)) {
                    case 0 -> array.remove(i);
                    case 1 -> array.insert(i, array.get(random.nextInt(array.size())).deepCopy());
                    case 2 -> array.add(array.remove(i));
                    default -> array.set(i, filling());
                }
            }
        }
        return root.toString();
    }

    private JsonNode filling() throws Exception {
        return MAPPER.readTree(FILLINGS[random.nextInt(FILLINGS.length)]);
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
