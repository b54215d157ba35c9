package org.cresthaul.exchange;

import org.cresthaul.exchange.osm.BaseMap;

/**
 * A base map with whom to thank for it, wherever it is drawn.
 *
 * @param credit in one line
 */
public record CreditedMap(BaseMap map, String credit) {
    public CreditedMap {
        if (credit.isBlank()) {
            throw new IllegalArgumentException("a map is thanked for");
        }
    }
}
