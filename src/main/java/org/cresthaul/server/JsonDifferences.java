package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.units.Problems;

/** Where two JSON documents differ: a pointer (RFC 6901) and both values for each place, in the order of the first. */
public final class JsonDifferences {
    private static final int LONGEST = 160;

    /** @param first shown in one line, "nothing" where the document has nothing there */
    public record Difference(String pointer, String first, String second) {}

    private final List<Difference> found = new ArrayList<>();

    private JsonDifferences() {}

    /** Of two documents that were written by this program. */
    static List<Difference> of(byte[] first, byte[] second) {
        return of(tree(first), tree(second));
    }

    private static JsonNode tree(byte[] document) {
        Problems problems = new Problems();
        JsonNode tree = JsonText.read(document, problems);
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException("a paper reads back: " + problems.list());
        }
        return tree;
    }

    public static List<Difference> of(JsonNode first, JsonNode second) {
        JsonDifferences differences = new JsonDifferences();
        differences.compare("", first, second);
        return differences.found;
    }

    private void compare(String pointer, JsonNode first, JsonNode second) {
        if (first != null && second != null && first.isObject() && second.isObject()) {
            Set<String> names = new LinkedHashSet<>();
            for (JsonNode node : List.of(first, second)) {
                for (Iterator<String> it = node.fieldNames(); it.hasNext(); ) {
                    names.add(it.next());
                }
            }
            names.forEach(
                    n -> compare(pointer + "/" + n.replace("~", "~0").replace("/", "~1"), first.get(n), second.get(n)));
        } else if (first != null && second != null && first.isArray() && second.isArray()) {
            for (int i = 0; i < Math.max(first.size(), second.size()); i++) {
                compare(pointer + "/" + i, first.get(i), second.get(i));
            }
        } else if (!same(first, second)) {
            found.add(new Difference(pointer, shown(first), shown(second)));
        }
    }

    /** 2 and 2.0 are the same number. */
    private static boolean same(JsonNode first, JsonNode second) {
        if (first == null || second == null) {
            return first == second;
        }
        return first.isNumber() && second.isNumber()
                ? first.decimalValue().compareTo(second.decimalValue()) == 0
                : first.equals(second);
    }

    private static String shown(JsonNode node) {
        String text = node == null ? "nothing" : node.toString();
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "...";
    }
}
