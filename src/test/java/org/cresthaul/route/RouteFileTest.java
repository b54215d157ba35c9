package org.cresthaul.route;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.junit.jupiter.api.Test;

class RouteFileTest {
    @Test
    void readsASoundRoute() throws Exception {
        Route route = RouteFile.parse(RouteTexts.ROUTE);
        assertEquals(2, route.legs().size());
        assertEquals(
                List.of("H01", "H02", "H03", "H04"),
                route.hazards().stream().map(h -> h.place().id()).toList());
        assertFalse(route.hazards().get(3).isSurveyed());
    }
}
