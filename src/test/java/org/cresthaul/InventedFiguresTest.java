package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.cresthaul.axleload.GaugeChart;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Notch;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.Weights;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.units.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What is shown to users is invented: the trade's own figures (check-values W8 to W12: common practice, no source)
 * stand in the tests of them and nowhere else.
 */
class InventedFiguresTest {
    private static final String MARKED = "common practice, no source";
    private static final double PSI = 6894.757293168;
    private static final double LB = 0.45359237;
    private static final double INCH = 0.0254;
    /** Gauge chart, take-off, air left in an empty booster. */
    private static final Pattern OF_THE_TRADE =
            Pattern.compile("\\b(?:10|60|2,?700|3,?000) psi|\\b19,?000 lb on each|\\bfive notches");

    @Test
    void noPressureOfTheTradeStandsOutsideTestsMarkedSo() throws IOException {
        List<Path> files = new ArrayList<>();
        for (String root : List.of("src", "web", "docs", "sample-routes", "README.md")) {
            try (Stream<Path> all = Files.walk(Path.of(root))) {
                all.filter(f -> f.toString().matches(".*\\.(java|js|json|geojson|html|md|txt)"))
                        .forEach(files::add);
            }
        }
        assertTrue(files.size() > 600, files.size() + " files");
        List<String> found = new ArrayList<>();
        int marked = 0;
        for (Path file : files) {
            String text = Files.readString(file);
            if (file.startsWith("src/test/java") && text.contains(MARKED)) {
                marked++;
                continue;
            }
            OF_THE_TRADE.matcher(text).results().forEach(m -> found.add(file + ": " + m.group()));
        }
        assertEquals(List.of(), found);
        assertTrue(marked >= 4, marked + " tests marked " + MARKED);
    }

    static Stream<String> rigs() throws IOException {
        String docs = Files.readString(Path.of("docs/file-formats.md"));
        // The weights that the page shows, in the rig that the tests hold them in.
        String shown = docs.substring(docs.indexOf("{ \"accuracy\": \"2 %\", \"source\": \"scale tickets\""));
        String weights = shown.substring(0, shown.indexOf("```"));
        String rig = RigTexts.RIG.replaceFirst(
                "\"name\": \"loaded\",",
                "\"name\": \"loaded\", \"weights\": " + Matcher.quoteReplacement(weights.strip()) + ",");
        return Stream.of(
                Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json")),
                Files.readString(Path.of("sample-routes/lowbed-empty.rig.json")),
                WeightsTexts.RIG,
                rig);
    }

    @ParameterizedTest
    @MethodSource("rigs")
    void everyRigThatIsShownHasFiguresOfItsOwn(String text) throws Exception {
        Rig rig = RigFile.parse(text);
        assertNotEquals(5, rig.notches().size());
        List<Double> offsets = rig.notches().stream().map(Notch::offsetM).toList();
        for (int i = 1; i < offsets.size(); i++) {
            assertEquals(0.625 * INCH, offsets.get(i) - offsets.get(i - 1), 1e-9);
        }
        LevelStance stance = rig.stances().get(0);
        stance.trailer()
                .lift()
                .raised()
                .forEach(r -> assertTrue(Math.abs(r.secondaryRiseM() - 1.5 * INCH) > 1e-3, "rise of the second valve"));
        stance.trailer()
                .lift()
                .axles()
                .forEach(lift -> assertFalse(
                        lift.gapM() > 3.49 * INCH && lift.gapM() < 4.01 * INCH, "raised tire over the road"));
        Weights weights = stance.weights().orElseThrow();
        Weights.Gauges gauges = weights.gauges();
        for (Optional<ChartPoints> chart : List.of(gauges.trailerDown(), gauges.trailerUp(), gauges.booster())) {
            chart.map(GaugeChart::new)
                    .ifPresent(c -> c.loadKg(60 * PSI)
                            .ifPresent(
                                    kg -> assertTrue(Math.abs(kg - 19_000 * LB) > 50 * LB, kg / LB + " lb at 60 psi")));
        }
        Weights.FrontLift lift = weights.frontLift().orElseThrow();
        for (double pa : List.of(lift.ratedPa(), lift.takeOffPa())) {
            assertTrue(pa < 2_700 * PSI - 1 || pa > 3_000 * PSI + 1, pa / PSI + " psi");
        }
        // Plates have the names their owner gives them: here their thickness.
        weights.shims()
                .orElseThrow()
                .shims()
                .forEach(p -> assertEquals(
                        p.thicknessM() == 0 ? "no plate" : new Length(p.thicknessM()).inFeetAndInches(16) + " plate",
                        p.name()));
    }
}
