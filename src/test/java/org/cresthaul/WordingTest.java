package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Phrases that were put right stay away from all that a user reads: the page, the sentences in the code, the API's
 * document, README and docs.
 */
class WordingTest {
    private static final List<String> GONE = List.of(
            "not to be driven by",
            "nothing to drive by",
            "to be settled first",
            "until it is settled",
            "were settled",
            "towards a coming train",
            "have the railway protect",
            "way on is held free",
            "leaves time enough",
            "free at its tightest",
            "contact cannot be excluded",
            "goes round on the opposing lane",
            "plan past undecided",
            "planned past undecided",
            "when not given",
            "gap to leave beside",
            "each kept all the way",
            "least spare",
            "hold against the declared",
            "back to nothing asked",
            "there would be a way.",
            "above nought",
            "broken box",
            "mend the file",
            "have to be mended",
            "were they exact",
            "warrants nothing",
            "free, but the margin is not kept");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What of a file is read by users: of code its literals, one behind the other, as they are joined. */
    private static String readByUsers(Path file) {
        String text = read(file);
        if (!file.toString().endsWith(".java")) {
            return text;
        }
        Matcher literal = LITERAL.matcher(text);
        StringBuilder all = new StringBuilder();
        while (literal.find()) {
            all.append(literal.group(1));
        }
        return all.toString();
    }

    private static List<String> in(String text) {
        String plain = text.toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        return GONE.stream().filter(plain::contains).toList();
    }

    @Test
    void whatWasPutRightStaysSo() throws IOException {
        List<Path> files = new ArrayList<>();
        for (String root : List.of("src/main/java", "src/main/resources/openapi.json", "web", "docs", "README.md")) {
            try (Stream<Path> all = Files.walk(Path.of(root))) {
                all.filter(f -> f.toString().matches(".*\\.(java|json|js|html|md)"))
                        .forEach(files::add);
            }
        }
        assertTrue(files.size() > 350, files.size() + " files");
        assertEquals(
                List.of(),
                files.stream()
                        .flatMap(f -> in(readByUsers(f)).stream().map(p -> f + ": " + p))
                        .collect(Collectors.toList()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"LEAST SPARE", "2 in when\n not given", "Mend the file at that place"})
    void findsThem(String text) {
        assertEquals(1, in(text).size(), text);
    }
}
