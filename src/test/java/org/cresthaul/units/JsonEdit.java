package org.cresthaul.units;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Puts one value in the place of another in a sound document, to see what a reader makes of it. */
public final class JsonEdit {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private JsonEdit() {}

    /**
     * The document with one change.
     *
     * @param pointer the place; it need not exist yet in an object, and "-" adds to a list
     * @param value JSON, or "absent" to take the place out
     */
    public static String edit(String document, String pointer, String value) {
        try {
            JsonNode root = MAPPER.readTree(document);
            JsonPointer at = JsonPointer.compile(pointer);
            JsonNode parent = root.at(at.head());
            String key = at.last().getMatchingProperty();
            if (parent instanceof ObjectNode object) {
                if (value.equals("absent")) {
                    require(object.has(key), pointer);
                    object.remove(key);
                } else {
                    object.set(key, MAPPER.readTree(value));
                }
            } else if (parent instanceof ArrayNode array && key.equals("-")) {
                array.add(MAPPER.readTree(value));
            } else if (parent instanceof ArrayNode array && value.equals("absent")) {
                require(array.has(Integer.parseInt(key)), pointer);
                array.remove(Integer.parseInt(key));
            } else {
                require(parent instanceof ArrayNode && parent.has(Integer.parseInt(key)), pointer);
                ((ArrayNode) parent).set(Integer.parseInt(key), MAPPER.readTree(value));
            }
            return root.toString();
        } catch (IOException e) {
            throw new UncheckedIOException(pointer + " " + value, e);
        }
    }

    private static void require(boolean there, String pointer) {
        if (!there) {
            throw new IllegalArgumentException("no such place: " + pointer);
        }
    }
}
