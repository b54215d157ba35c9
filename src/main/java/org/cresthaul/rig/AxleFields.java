package org.cresthaul.rig;

import java.util.List;
import org.cresthaul.units.JsonFields;
import org.cresthaul.units.LengthLimits;

/**
 * An axle as read, not yet known to be sound.
 *
 * @param xM NaN when wrong
 * @param radiusM NaN when wrong
 */
record AxleFields(double xM, double radiusM, String pointer) {
    static final LengthLimits RADIUS = new LengthLimits(0.2, 1.2);

    static AxleFields of(JsonFields axle) {
        AxleFields read =
                new AxleFields(axle.lengthM("x", OutlineFields.X), axle.lengthM("radius", RADIUS), axle.pointer());
        axle.refuseOthers();
        return read;
    }

    /** The field "axles", front to rear. */
    static List<AxleFields> list(JsonFields unit, int most) {
        List<AxleFields> axles =
                unit.objects("axles", 1, most).stream().map(AxleFields::of).toList();
        double lastXM = Double.NaN;
        for (AxleFields axle : axles) {
            if (axle.xM >= lastXM) {
                unit.problems()
                        .add(
                                "axle-order",
                                "This axle is not behind the one before it.",
                                axle.pointer + "/x",
                                "List axles from front to rear; x runs forward, so it falls from one to the next.");
            }
            lastXM = Double.isNaN(axle.xM) ? lastXM : axle.xM;
        }
        return axles;
    }

    static AxleGroup group(List<AxleFields> axles, double upM, double downM) {
        return new AxleGroup(axles.stream().map(AxleFields::axle).toList(), upM, downM);
    }

    Axle axle() {
        return new Axle(xM, radiusM);
    }
}
