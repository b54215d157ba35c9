package org.cresthaul.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.language.Catalog;
import org.cresthaul.sheet.RunSheet;
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
        Stream.of(Optional.<CreditedMap>empty(), Optional.of(sample.map))
                .flatMap(m -> pictures(sample, m).stream())
                .forEach(p -> maps.add(p.drawing()));
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

    /**
     * A base map lies beneath all else, within the frame; it moves nothing, and its names stand where there is room.
     */
    @ParameterizedTest
    @EnumSource
    void aBaseMapLiesBeneathAndMovesNothing(PaperSample sample) {
        List<Paper.Picture> without = pictures(sample, Optional.empty());
        List<Paper.Picture> with = pictures(sample, Optional.of(sample.map));
        int names = 0;
        for (int i = 0; i < with.size(); i++) {
            List<Drawing.Shape> own = without.get(i).drawing().shapes();
            List<Drawing.Shape> all = with.get(i).drawing().shapes();
            List<Drawing.Shape> beneath = all.subList(0, all.size() - own.size());
            assertEquals(own, all.subList(beneath.size(), all.size()));
            assertTrue(beneath.size() >= 2, with.get(i).caption() + ": " + beneath.size());
            assertEquals(
                    without.get(i).caption()
                            + " Base map: invented, as the route is: no such road, river or town exists.",
                    with.get(i).caption());
            for (Drawing.Shape shape : beneath) {
                if (shape instanceof Drawing.Path path) {
                    path.lines()
                            .forEach(l -> l.forEach(p -> assertTrue(
                                    p.x() >= 0 && p.y() >= 0 && p.x() <= 960 && p.y() <= 264, p.toString())));
                } else {
                    names++;
                }
            }
        }
        assertTrue(names >= 2, names + " names of settlements");
    }

    /** Of each leg, then of the whole route. */
    private static List<Paper.Picture> pictures(PaperSample sample, Optional<CreditedMap> map) {
        List<Paper.Picture> pictures = new ArrayList<>();
        for (RunSheet.Leg leg : sample.sheet.legs()) {
            pictures.add(LegMap.of(sample.route, map, leg, UnitSystem.US_CUSTOMARY, Catalog.ENGLISH));
        }
        pictures.add(LegMap.of(
                sample.route,
                map,
                sample.statement.hazards().stream()
                        .map(h -> new LegMap.Mark(h.id(), h.verdict()))
                        .toList(),
                UnitSystem.US_CUSTOMARY,
                Catalog.ENGLISH));
        return pictures;
    }

    private static double right(Drawing.Lettering text) {
        return text.at().x() + DIGIT * text.text().length();
    }
}
