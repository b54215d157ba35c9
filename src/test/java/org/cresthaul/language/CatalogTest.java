package org.cresthaul.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.cresthaul.plan.ConditionKind;
import org.cresthaul.plan.StepKind;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.route.HazardKind;
import org.cresthaul.turning.Against;
import org.cresthaul.turning.Side;
import org.cresthaul.units.Worded;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The catalogs say the same things: of each language every code, with the same places for figures and names. */
class CatalogTest {
    /** Words that Spanish lends from the trade or that figures need; a text of nothing else may be alike. */
    private static final Pattern ALIKE = Pattern.compile("[^a-zA-Z]*|(\\W|[a-z]{1,4}|\\d|N|49 CFR|Cresthaul|booster)*");

    @Test
    void everyCodeHasTheSamePlacesInBoth() {
        for (Code code : Code.values()) {
            assertEquals(Catalog.ENGLISH.places(code), Catalog.SPANISH.places(code), code.key());
        }
        assertTrue(Code.values().length > 600);
    }

    @Test
    void noTextIsLeftInEnglish() {
        Set<String> alike = new TreeSet<>();
        for (Code code : Code.values()) {
            String english = bare(Catalog.ENGLISH, code);
            if (english.equals(bare(Catalog.SPANISH, code))
                    && !ALIKE.matcher(english).matches()) {
                alike.add(code.key() + ": " + english);
            }
        }
        assertEquals(Set.of(), alike);
        assertNotEquals(Catalog.ENGLISH.text(Code.STAY_RAISED), Catalog.SPANISH.text(Code.STAY_RAISED));
    }

    private static String bare(Catalog catalog, Code code) {
        return catalog.filled(code, place -> "");
    }

    /** What no source says needs no text: found by the name of the code, or of the value that it is the word for. */
    @Test
    void everyCodeIsUsed() throws IOException {
        StringBuilder sources = new StringBuilder();
        try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java") && !f.endsWith("language/Code.java"))
                    .toList()) {
                sources.append(Files.readString(file));
            }
        }
        Set<String> named = new TreeSet<>();
        Pattern.compile("Code\\.([A-Z][A-Z0-9_]+)").matcher(sources).results().forEach(r -> named.add(r.group(1)));
        words().forEach(w -> named.add(Sentence.codeOf((Enum<?>) w).name()));
        Set<String> unused = new TreeSet<>();
        for (Code code : Code.values()) {
            if (!named.contains(code.name()) && !code.name().startsWith("UNIT_")) {
                unused.add(code.name());
            }
        }
        assertEquals(Set.of(), unused);
    }

    private static Stream<Worded> words() {
        return Stream.of(
                        Verdict.values(),
                        StepKind.values(),
                        ConditionKind.values(),
                        AxleKind.values(),
                        HazardKind.values(),
                        Against.values(),
                        Side.values(),
                        spareKinds())
                .flatMap(Stream::of);
    }

    private static Worded[] spareKinds() {
        try {
            return (Worded[]) Class.forName("org.cresthaul.plan.SpareKind").getEnumConstants();
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    /** In English the word of a verdict, a side or a step on paper is that of files and requests. */
    @Test
    void englishWordsAreThoseOfTheFiles() {
        words().filter(w -> !(w instanceof HazardKind)
                        && !w.getClass().getSimpleName().equals("SpareKind"))
                .forEach(w -> assertEquals(w.word(), Catalog.ENGLISH.word((Enum<?>) w)));
        for (HazardKind kind : HazardKind.values()) {
            assertEquals(kind.spoken(), Catalog.ENGLISH.word(kind));
        }
    }

    /** Numbers stay, units change: feet and inches as drivers say them, one foot in the singular. */
    @ParameterizedTest
    @CsvSource({
        "14 ft 3 7/8 in, 14 pies 3 7/8 pulg",
        "1 ft 3 3/4 in, 1 pie 3 3/4 pulg",
        "-3 ft 6 in, -3 pies 6 pulg",
        "1.9 in (49 mm), 1.9 pulg (49 mm)",
        "23 lb, 23 lb",
        "4.8 km/h, 4.8 km/h",
        "1.0 deg, 1.0 grados",
        "1.2 %, 1.2 %"
    })
    void figuresKeepTheirNumbers(String english, String spanish) {
        assertEquals(english, Catalog.ENGLISH.figure(english));
        assertEquals(spanish, Catalog.SPANISH.figure(english));
    }

    @Test
    void aSentenceIsItsCodeWithWhatStandsInIt() {
        Sentence said = Sentence.of(Code.CROSSING_NUMBER).with("number", "000021X");
        assertEquals(Sentence.of(Code.CROSSING_NUMBER).with("number", "000021X"), said);
        assertNotEquals(Sentence.of(Code.CROSSING_NUMBER).with("number", "000022Y"), said);
        assertEquals("Crossing number 000021X, as on the blue sign.", said.toString());
        assertEquals("Cruce número 000021X, como en el letrero azul.", said.in(Catalog.SPANISH));
        assertThrows(
                IllegalArgumentException.class,
                () -> Sentence.of(Code.CROSSING_NUMBER).in(Catalog.SPANISH));
    }

    @Test
    void whatAFileNamesStaysAsItIsNamed() {
        assertEquals("remolque", Names.of("trailer").in(Catalog.SPANISH));
        assertEquals("outrigger step", Names.of("outrigger step").in(Catalog.SPANISH));
    }
}
