package org.cresthaul.exchange.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** Lays a document out for people: two spaces a level, and what fits into a line on one. */
public final class JsonDocument {
    private static final int WIDTH = 110;

    private JsonDocument() {}

    /** UTF-8, with an end of line behind it. */
    public static byte[] bytes(JsonNode document) {
        StringBuilder text = new StringBuilder();
        append(text, document, "");
        return text.append('\n').toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void append(StringBuilder text, JsonNode node, String indent) {
        String flat = flat(node);
        if (indent.length() + flat.length() <= WIDTH || !node.isContainerNode()) {
            text.append(flat);
            return;
        }
        String inner = indent + "  ";
        text.append(node.isObject() ? '{' : '[');
        String between = "\n";
        if (node.isObject()) {
            for (Map.Entry<String, JsonNode> member : node.properties()) {
                text.append(between).append(inner).append(key(member.getKey()));
                append(text, member.getValue(), inner);
                between = ",\n";
            }
        } else {
            for (JsonNode item : node) {
                text.append(between).append(inner);
                append(text, item, inner);
                between = ",\n";
            }
        }
        text.append('\n').append(indent).append(node.isObject() ? '}' : ']');
    }

    private static String flat(JsonNode node) {
        if (!node.isContainerNode()) {
            return node.toString();
        }
        StringBuilder text = new StringBuilder(node.isObject() ? "{" : "[");
        String between = "";
        if (node.isObject()) {
            for (Map.Entry<String, JsonNode> member : node.properties()) {
                text.append(between).append(key(member.getKey())).append(flat(member.getValue()));
                between = ", ";
            }
        } else {
            for (JsonNode item : node) {
                text.append(between).append(flat(item));
                between = ", ";
            }
        }
        return text.append(node.isObject() ? '}' : ']').toString();
    }

    private static String key(String name) {
        return TextNode.valueOf(name) + ": ";
    }
}
