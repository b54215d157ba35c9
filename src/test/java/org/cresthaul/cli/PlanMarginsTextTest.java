package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.cresthaul.plan.Robustness;
import org.cresthaul.plan.SpareKind;
import org.cresthaul.report.Verdict;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;

class PlanMarginsTextTest {
    /** 1 in = 25.4 mm, by definition. */
    @Test
    void toldApartAreNoBearingAndNotKnown() {
        Robustness.Row row = new Robustness.Row(
                "H1",
                SpareKind.OVERHEAD,
                0.0508,
                List.of(true, false, true),
                Arrays.asList(0.0254, null, null),
                null,
                null,
                Verdict.CONTACT);
        String text = new PlanMarginsText(new PrintedFigures(UnitSystem.US_CUSTOMARY))
                .robustness(new Robustness(
                        List.of(
                                new Robustness.Assumed("a", 1, "m"),
                                new Robustness.Assumed("b", 1, "m"),
                                new Robustness.Assumed("c", 1, "m")),
                        List.of(row),
                        null,
                        null,
                        List.of(new Robustness.NotKnown(
                                "H1", SpareKind.OVERHEAD, "Invented beam, overhead: not known what is left with c."))));
        assertTrue(text.matches("(?s).*H1 +overhead +2 in +1 in +- +unknown +unknown +contact\n.*"), text);
        assertTrue(text.contains("H1 Invented beam, overhead: not known what is left with c."), text);
    }
}
