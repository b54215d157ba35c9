package org.cresthaul.plan;

import java.util.stream.Stream;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.check.Report;

/** Reserves as shares of what is required or allowed, so that gaps and loads compare; endless where there is no figure. */
final class Reserves {
    private Reserves() {}

    /** The least of any kind in a cell, in transport stance. */
    static double inTransport(Report.Cell cell) {
        return CellSpares.governing(cell).map(CellSpares::share).orElse(Double.POSITIVE_INFINITY);
    }

    /** At the raise that a cell names: about nothing, since it is the least that will do. */
    static double of(Report.RaiseFinding raise) {
        return CellSpares.share(raise.clearanceM() - raise.requiredM(), raise.requiredM());
    }

    /** At another raise. */
    static double of(RaisedCheck.Raised raised) {
        return Stream.of(raised.ground(), raised.overhead())
                .filter(g -> g != null)
                .mapToDouble(g -> CellSpares.share(g.valueM() - g.requiredM(), g.requiredM()))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }
}
