package org.cresthaul.exchange.crs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.Map;
import net.sf.geographiclib.Geodesic;
import org.cresthaul.route.LonLat;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Planes of the EPSG dataset against GeographicLib, which projects by methods and code of its own: three UTM zones, one
 * of them south; transverse Mercator with other constants; conformal conics in feet and meters; an equal-area conic.
 * How the values were made stands in the file.
 */
class AgainstGeographicLibTest {
    /** Between the two, meters: the equal-area conic is turned back by a series that is off by up to 1.5 mm here. */
    private static final double WITHIN_M = 0.002;

    private static final Map<Integer, PlaneCoordinates> PLANES = new HashMap<>();

    @ParameterizedTest
    @CsvFileSource(resources = "geographiclib.csv", useHeadersInDisplayName = true)
    void isWhereGeographicLibHasIt(int code, double east, double north, double lon, double lat) throws Exception {
        PlaneCoordinates plane = PLANES.get(code);
        if (plane == null) {
            plane = PlaneCoordinates.of(code);
            PLANES.put(code, plane);
        }

        LonLat at = plane.at(east, north);

        double offM = Geodesic.WGS84.Inverse(lat, lon, at.latDeg(), at.lonDeg()).s12;
        assertTrue(offM <= WITHIN_M, offM + " m");
        double[] back = plane.from(new LonLat(lon, lat));
        assertEquals(east, back[0], WITHIN_M / (code == 2263 ? 0.3048 : 1));
        assertEquals(north, back[1], WITHIN_M / (code == 2263 ? 0.3048 : 1));
    }
}
