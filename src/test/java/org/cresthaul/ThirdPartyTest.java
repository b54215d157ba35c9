package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every library and font that is passed on is listed with its license, and every license's text is in the jar. */
class ThirdPartyTest {
    private static final Pattern LISTED =
            Pattern.compile("^\\| `([^`]+\\.(jar|ttf))` \\|[^|]+\\|([^|]+)\\|(.+)\\|$", Pattern.MULTILINE);
    private static final Pattern TEXT = Pattern.compile("licenses/([^)]+\\.txt)");

    private static Set<String> named(String ending, Path... folders) throws Exception {
        Set<String> names = new TreeSet<>();
        for (Path folder : folders) {
            try (Stream<Path> files = Files.list(folder)) {
                files.map(f -> f.getFileName().toString())
                        .filter(n -> n.endsWith(ending))
                        .forEach(names::add);
            }
        }
        return names;
    }

    /** The build copies what is passed on to target/lib before tests run. */
    @Test
    void everythingPassedOnIsListedAndNothingElse() throws Exception {
        Set<String> listed = LISTED.matcher(Files.readString(Path.of("docs/third-party.md")))
                .results()
                .map(m -> m.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> there = named(".jar", Path.of("target/lib"));
        assertTrue(there.size() > 15, there.toString());
        there.addAll(named(".ttf", Path.of("src/main/resources/fonts")));
        assertEquals(
                there,
                listed,
                "docs/third-party.md; a library of an earlier build may still lie in target/lib: mvn clean");
    }

    @Test
    void everyLicenseHasItsTextInTheJar() throws Exception {
        Set<String> texts = new TreeSet<>();
        Matcher rows = LISTED.matcher(Files.readString(Path.of("docs/third-party.md")));
        while (rows.find()) {
            Set<String> own =
                    TEXT.matcher(rows.group(4)).results().map(m -> m.group(1)).collect(Collectors.toSet());
            assertTrue(!own.isEmpty() && !rows.group(3).isBlank(), rows.group());
            // The text is that of the license named first: its name begins the file's.
            assertTrue(
                    own.stream().anyMatch(t -> t.startsWith(rows.group(3).trim().split("[ ;]")[0])), rows.group());
            texts.addAll(own);
        }
        texts.add("NOTICE.txt");
        for (String text : texts) {
            try (InputStream in = ThirdPartyTest.class.getResourceAsStream("/licenses/" + text)) {
                assertNotNull(in, text);
                String read = new String(in.readAllBytes(), StandardCharsets.UTF_8);
                assertTrue(read.length() > 500, text + " is a license's text");
            }
        }
        assertEquals(
                texts,
                named(".txt", Path.of("src/main/resources/licenses")),
                "every text belongs to something that is listed");
    }

    /** Licenses that ask for nothing but their notice have one: who, and from when. */
    @Test
    void everyNoticeSaysWhoAndWhen() throws Exception {
        int notices = 0;
        for (String text : named(".txt", Path.of("src/main/resources/licenses"))) {
            if (text.startsWith("MIT") || text.startsWith("BSD") || text.startsWith("OFL")) {
                String read = Files.readString(Path.of("src/main/resources/licenses", text));
                assertTrue(
                        Pattern.compile("Copyright [^\\n]*\\b(19|20)\\d\\d\\b")
                                .matcher(read)
                                .find(),
                        text);
                notices++;
            }
        }
        assertTrue(notices >= 5, notices + " notices");
    }
}
