package org.cresthaul.turning;

import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.distance.DistanceOp;

/**
 * Ground that some parts of a combination keep off, as signed distance to its edge: positive where free. Safe to share.
 */
final class KeepOff {
    final Against against;
    final AreaField field;
    private final Geometry area;
    private final boolean inside;

    private KeepOff(Against against, Geometry area, boolean inside) {
        this.against = against;
        this.area = area;
        this.inside = inside;
        field = new AreaField(area, inside);
    }

    /** Everything but an area. */
    static KeepOff outsideOf(Against against, Geometry area) {
        return new KeepOff(against, area, true);
    }

    /** An area itself. */
    static KeepOff areaOf(Against against, Geometry area) {
        return new KeepOff(against, area, false);
    }

    boolean isEmpty() {
        return field.isEmpty();
    }

    /** Whether an area is free as a whole. */
    boolean isFree(Geometry part) {
        return inside ? area.covers(part) : area.isEmpty() || !area.intersects(part) || area.touches(part);
    }

    /** How far a place is free, meters; negative: so far inside what is to be kept off. */
    double freeM(double x, double y) {
        double d = field.insideM(x, y);
        return inside ? d : -d;
    }

    /** The nearest point of its edge: as far as {@link #freeM(double, double)} says; none where it is empty. */
    Optional<Coordinate> edgeAt(double x, double y) {
        Geometry place = area.getFactory().createPoint(new Coordinate(x, y));
        return isEmpty() ? Optional.empty() : Optional.of(DistanceOp.nearestPoints(area.getBoundary(), place)[0]);
    }

    /** No more than {@link #freeM(double, double)}, and quick. */
    double roughM(double x, double y) {
        return inside ? field.boundM(x, y, -1) : -field.boundM(x, y, 1);
    }

    /** The same where it matters: values of {@code highM} and more may come back as anything from there on. */
    double freeM(double x, double y, double highM) {
        return inside
                ? field.insideM(x, y, Double.NEGATIVE_INFINITY, highM)
                : -field.insideM(x, y, -highM, Double.POSITIVE_INFINITY);
    }
}
