package org.cresthaul.paper;

import java.util.Optional;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.language.Catalog;
import org.cresthaul.route.Route;
import org.cresthaul.sheet.Statement;
import org.cresthaul.units.UnitSystem;

/** The map of a statement. Where many places wait for a survey it has their numbers: names would lie on one another. */
final class StatementMap {
    private StatementMap() {}

    static Paper.Picture of(
            Statement statement, Route route, Optional<CreditedMap> map, WaitingTogether waiting, UnitSystem units) {
        Paper.Picture picture = LegMap.of(
                route,
                map,
                statement.hazards().stream()
                        .map(h -> new LegMap.Mark(h.id(), waiting.shortly(h.id()), h.verdict()))
                        .toList(),
                units,
                Catalog.ENGLISH);
        return waiting.hasNumbers()
                ? new Paper.Picture(
                        picture.drawing(), picture.caption() + " Numbers are those of the table \"Survey first\".")
                : picture;
    }
}
