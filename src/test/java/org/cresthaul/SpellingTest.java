package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * American spelling in all that is ours: names in the code, keys, samples, page, docs. The words are those of the trade
 * and of this project that are spelled in two ways; they are looked for inside identifiers, too.
 */
class SpellingTest {
    /** The first exception is the name of a library, geantyref. */
    private static final Pattern BRITISH = Pattern.compile(
            "(?i)(?<!gean)tyre|kerb|centre|centring|colour|(?<![a-z])grey|metre(?![a-z])|metres(?![a-z])|behaviour|neighbour|favour"
                    + "|honour|harbour|labour|rumour|licence|(?<![a-z])defence|offence|judgement|manoeuv|haulier|lorry|lorries"
                    + "|carriageway|motorway|storey|aluminium|artefact|catalogue|plough|mould|cheque|ageing|whilst|amongst|sceptic"
                    + "|(?<![a-z])fulfil(?![a-z])|skilful|programme(?![a-z])|programmes(?![a-z])|windscreen|litre"
                    + "|(level|travel|model|signal|cancel|label|channel|fuel|total|marshal|shovel|tunnel|parcel|equal|dial|pencil)"
                    + "l(ed(?!by)|ing|er)"
                    + "|(organ|recogn|normal|minim|maxim|optim|equal|summar|initial|stabil|standard|real|util|final|general"
                    + "|special|serial|categor|capital|author|apolog|critic|prior|visual|local|symbol|parameter|mobil|penal)"
                    + "is(e(?![a-z])|ed(?![a-z])|es(?![a-z])|ing|ation)"
                    + "|emphasise|analyse(?![sr])|analysing|catalys|paralys");
    /** Whose text is not ours, and the two that hold these words because they look for them. */
    private static final List<String> NOT_OURS = List.of(
            "src/main/resources/licenses/",
            "src/main/resources/fonts/",
            "src/test/java/org/cresthaul/SpellingTest.java",
            "src/test/java/org/cresthaul/exchange/routefile/FormerKeysTest.java");

    /** A word of the open map's tags, spelled as it spells them, in the one file that reads them. */
    private static final String MAP_WORD = "motorway";

    private static final String MAP_READER = "BaseMapTags.java";

    private static List<Path> ours() throws IOException {
        List<Path> files = new ArrayList<>();
        for (String root :
                List.of("src", "web", "docs", "sample-routes", "README.md", "DEVELOPERS.md", "pom.xml", ".ci")) {
            try (Stream<Path> all = Files.walk(Path.of(root))) {
                all.filter(Files::isRegularFile)
                        .filter(f -> !f.toString().matches(".*\\.(png|ttf)"))
                        .filter(f -> NOT_OURS.stream().noneMatch(f.toString().replace('\\', '/')::startsWith))
                        .forEach(files::add);
            }
        }
        return files;
    }

    @Test
    void isAmericanThroughout() throws IOException {
        List<String> found = new ArrayList<>();
        List<Path> files = ours();
        for (Path file : files) {
            List<String> lines = Files.readAllLines(file);
            for (int i = 0; i < lines.size(); i++) {
                Matcher word = BRITISH.matcher(lines.get(i));
                while (word.find()) {
                    if (!(file.endsWith(MAP_READER) && word.group().equals(MAP_WORD))) {
                        found.add(file + ":" + (i + 1) + " " + word.group());
                    }
                }
            }
            if (BRITISH.matcher(file.toString()).find()) {
                found.add(file + " by its name");
            }
        }
        assertEquals(List.of(), found);
        assertTrue(files.size() > 600, files.size() + " files");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "overTyres",
                "levelling",
                "kerb",
                "centre",
                "tyresM",
                "LEVELLING",
                "kerbReturn",
                "metres",
                "grey",
                "equalised",
                "manoeuvre",
                "haulier",
                "travelled",
                "labelling",
                "licence",
                "colour"
            })
    void findsAWordOfTheOtherSpelling(String word) {
        assertTrue(BRITISH.matcher(word).find(), word);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "overTires",
                "leveling",
                "curb",
                "center",
                "meter",
                "parameters",
                "optimism",
                "realistic",
                "emphasis",
                "aria-labelledby",
                "programmer",
                "analyses",
                "raised",
                "revised",
                "excellent",
                "fulfill",
                "equaled",
                "geometries"
            })
    void letsTheAmericanSpellingPass(String word) {
        assertTrue(!BRITISH.matcher(word).find(), word);
    }
}
