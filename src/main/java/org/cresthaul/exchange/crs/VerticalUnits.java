package org.cresthaul.exchange.crs;

import java.util.OptionalDouble;
import javax.measure.IncommensurableException;
import javax.measure.UnconvertibleException;
import javax.measure.Unit;
import org.apache.sis.referencing.CRS;
import org.opengis.referencing.crs.VerticalCRS;
import org.opengis.util.FactoryException;

/** What heights of the EPSG dataset are counted in. */
public final class VerticalUnits {
    private VerticalUnits() {}

    /** How many meters one is, of heights by their code; empty where there are no such heights. */
    public static OptionalDouble meters(int code) {
        try {
            if (CRS.forCode("EPSG:" + code) instanceof VerticalCRS heights) {
                Unit<?> unit = heights.getCoordinateSystem().getAxis(0).getUnit();
                Unit<?> meters = unit.getSystemUnit();
                if (meters.toString().equals("m")) {
                    return OptionalDouble.of(unit.getConverterToAny(meters).convert(1.0));
                }
            }
        } catch (FactoryException | IncommensurableException | UnconvertibleException e) {
            // No heights.
        }
        return OptionalDouble.empty();
    }
}
