package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.junit.jupiter.api.Test;

/** The files that tell hazard kinds apart are those that docs/hazard-kinds.md names. */
class HazardKindPlacesTest {
    private static final Path SOURCES = Path.of("src/main/java/org/cresthaul");

    /** A constant of the kinds, or a question about the type of a hazard. */
    private static Pattern branch() {
        String kinds = Stream.of(HazardKind.values()).map(HazardKind::name).collect(Collectors.joining("|"));
        // A spare has a kind of that name too; no switch over hazards has this case alone.
        String cases = kinds.replace("CORNER|", "");
        String types = types(Hazard.class).collect(Collectors.joining("|"));
        return Pattern.compile("HazardKind\\.(" + kinds + ")\\b|case ([A-Z_]+, )*(" + cases + ")\\b" + "|instanceof ("
                + types + ")\\b|\\b(" + types + ")\\.class|\\((" + types + ")\\)");
    }

    private static Stream<String> types(Class<?> sealed) {
        Class<?>[] permitted = sealed.getPermittedSubclasses();
        return permitted == null
                ? Stream.of(sealed.getSimpleName())
                : Stream.concat(
                        sealed == Hazard.class ? Stream.empty() : Stream.of(sealed.getSimpleName()),
                        Stream.of(permitted).flatMap(HazardKindPlacesTest::types));
    }

    /** The types of hazards themselves say their kind, and are no branch. */
    private static boolean isAHazard(Path file) {
        String name = name(file);
        return name.equals("HazardKind") || types(Hazard.class).anyMatch(name::equals);
    }

    /** An import makes hazards of what it finds, each of one kind. */
    private static boolean isImport(Path file) {
        return file.startsWith(SOURCES.resolve("exchange")) && !file.startsWith(SOURCES.resolve("exchange/routefile"));
    }

    private static String name(Path file) {
        return file.getFileName().toString().replace(".java", "");
    }

    @Test
    void areThoseOfTheDocument() throws IOException {
        Pattern branch = branch();
        Set<String> found = new TreeSet<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java"))
                    .filter(f -> !isAHazard(f) && !isImport(f))
                    .toList()) {
                if (branch.matcher(Files.readString(file)).find()) {
                    found.add(name(file));
                }
            }
        }
        String document = Files.readString(Path.of("docs/hazard-kinds.md"));
        String list = document.substring(document.indexOf("## Files that tell kinds apart"));
        Set<String> told = Pattern.compile("`([A-Z]\\w+)`")
                .matcher(list.substring(list.indexOf("|---|---|")))
                .results()
                .map((MatchResult r) -> r.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
        assertTrue(found.contains("HazardReader") && found.contains("Surroundings"), found.toString());
        assertEquals(told, found);
    }
}
