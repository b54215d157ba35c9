package org.cresthaul.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.cresthaul.language.Catalog;
import org.cresthaul.plan.RunSheet;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every name on the maps of both papers can be read: none stands on another, or beyond the frame. */
class LegMapTest {
    /** About the width of a digit in 12 pt. */
    private static final double DIGIT = 6;

    @ParameterizedTest
    @EnumSource
    void noNameStandsOnAnother(PaperSample sample) {
        List<Drawing> maps = new ArrayList<>();
        for (RunSheet.Leg leg : sample.sheet.legs()) {
            maps.add(LegMap.of(sample.route, leg, UnitSystem.US_CUSTOMARY, Catalog.ENGLISH));
        }
        maps.add(LegMap.of(
                sample.route,
                sample.statement.hazards().stream()
                        .map(h -> new LegMap.Mark(h.id(), h.verdict()))
                        .toList(),
                UnitSystem.US_CUSTOMARY,
                Catalog.ENGLISH));
        int names = 0;
        for (Drawing map : maps) {
            List<Drawing.Lettering> all = map.shapes().stream()
                    .filter(Drawing.Lettering.class::isInstance)
                    .map(Drawing.Lettering.class::cast)
                    .toList();
            List<String> texts = all.stream().map(Drawing.Lettering::text).toList();
            assertEquals(texts.size(), Set.copyOf(texts).size(), texts + " once each");
            for (int i = 0; i < all.size(); i++) {
                Drawing.Lettering a = all.get(i);
                assertTrue(a.at().x() >= 0 && right(a) <= map.width() && a.at().y() <= map.height(), a.toString());
                for (Drawing.Lettering b : all.subList(0, i)) {
                    boolean over =
                            a.at().x() < right(b) && right(a) > b.at().x() && Math.abs(a.at().y() - b.at().y()) < 9;
                    assertFalse(over, map.alt() + ": " + a.text() + " on " + b.text());
                }
                names++;
            }
        }
        assertTrue(names > 30, names + " names");
    }

    private static double right(Drawing.Lettering text) {
        return text.at().x() + DIGIT * text.text().length();
    }
}
