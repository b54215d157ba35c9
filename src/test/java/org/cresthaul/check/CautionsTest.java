package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.junit.jupiter.api.Test;

/** Every cell is cautioned about what happens there, and about nothing else; people come first on tracks. */
class CautionsTest {
    @Test
    void aCellCarriesTheCautionsOfWhatHappensThere() throws Exception {
        Report report = SampleHaul.of("sorrel-valley", "lowbed-loaded").report();
        TreeMap<String, Integer> kinds = new TreeMap<>();
        for (HazardFindings hazard : report.hazards()) {
            assertEquals(hazard.cautions().size(), hazard.cautionsWhen().size());
            for (ReportCell cell : hazard.cells()) {
                List<Sentence> own = Cautions.of(hazard, cell);
                for (int i = 0; i < hazard.cautions().size(); i++) {
                    boolean happens =
                            switch (hazard.cautionsWhen().get(i).word()) {
                                case "raised" -> cell.raise() != null;
                                case "escorts" ->
                                    cell.corner() != null && cell.corner().escorts();
                                default -> true;
                            };
                    assertEquals(
                            happens, own.contains(hazard.cautions().get(i)), hazard.id() + " " + cell.configuration());
                    kinds.merge(hazard.cautionsWhen().get(i) + " " + happens, 1, Integer::sum);
                }
            }
            if (hazard.kind().word().equals("rail-crossing")) {
                assertEquals(
                        StuckOnTracks.caution(hazard.notes().stream()
                                .filter(n -> n.startsWith("crossing number "))
                                .map(n -> n.substring("crossing number ".length()))
                                .findFirst()),
                        hazard.cautions().get(0));
            }
        }
        assertTrue(kinds.keySet().containsAll(List.of("always true", "raised false", "raised true")), kinds.toString());
        assertEquals(
                Optional.empty(),
                report.hazards().stream()
                        .filter(h -> h.cautions().isEmpty() && h.kind().word().equals("rail-crossing"))
                        .findAny());
    }
}
