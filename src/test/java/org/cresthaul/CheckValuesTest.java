package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Counts the values from outside the project and their sources, as docs/check-values.md lists them, in the tests
 * themselves.
 */
class CheckValuesTest {
    private static final Pattern TOLD = Pattern.compile("\\*\\*(\\d+) values from (\\d+) sources\\*\\*");
    private static final Pattern SOURCE = Pattern.compile("^(\\d+)\\. (.{8,}?)\\.?$", Pattern.MULTILINE);
    private static final Pattern ROW = Pattern.compile(
            "^\\| ([A-Z]\\d+) \\| ([^|]+) \\| ([^|]+) \\| ([^|]+) \\| `([^|`]+)` \\|$", Pattern.MULTILINE);

    @Test
    void everyListedValueStandsInItsTestAndTheCountIsTold() throws Exception {
        String page = Files.readString(Path.of("docs/check-values.md"));
        Map<Integer, String> sources = new TreeMap<>();
        SOURCE.matcher(page).results().forEach(m -> sources.put(Integer.valueOf(m.group(1)), m.group(2)));
        assertEquals(sources.size(), Set.copyOf(sources.values()).size(), "each source once");
        Set<Integer> used = new TreeSet<>();
        Set<String> numbers = new TreeSet<>();
        int values = 0;
        Matcher row = ROW.matcher(page);
        while (row.find()) {
            assertTrue(numbers.add(row.group(1)), row.group(1) + " twice");
            String test = Files.readString(Path.of("src/test/java/org/cresthaul", row.group(5) + ".java"));
            Set<String> own = new TreeSet<>();
            for (String value : row.group(3).split("; ")) {
                assertTrue(own.add(value), row.group(1) + " counts " + value + " twice");
                assertTrue(
                        Pattern.compile("(?<![\\w.])" + Pattern.quote(value) + "(?![\\w.]*\\d)")
                                .matcher(test)
                                .find(),
                        row.group(1) + ": " + value + " is not in " + row.group(5));
                values++;
            }
            for (String source : row.group(4).split(", ")) {
                assertTrue(sources.containsKey(Integer.valueOf(source)), row.group(1) + ": no source " + source);
                used.add(Integer.valueOf(source));
            }
        }
        assertEquals(sources.keySet(), used, "every source gives a value");
        Matcher told = TOLD.matcher(page);
        assertTrue(told.find());
        assertEquals(
                values + " values, " + sources.size() + " sources",
                told.group(1) + " values, " + told.group(2) + " sources");
        assertTrue(values >= 90 && sources.size() >= 24, values + " values, " + sources.size() + " sources");
    }
}
