package org.cresthaul.exchange.rigfile;

import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.AxleSteering;
import org.cresthaul.units.LengthLimits;

/**
 * An axle as read, not yet known to be sound.
 *
 * @param xM NaN when wrong
 * @param radiusM NaN when wrong
 * @param steering empty when wrong, too
 */
record AxleFields(double xM, double radiusM, Optional<AxleSteering> steering, String pointer) {
    static final LengthLimits RADIUS = new LengthLimits(0.2, 1.2);

    /** An axle of the tractor. */
    static AxleFields of(JsonFields axle) {
        return of(axle, false);
    }

    /** @param steers whether its wheels may turn */
    private static AxleFields of(JsonFields axle, boolean steers) {
        double xM = axle.lengthM("x", OutlineFields.X);
        double radiusM = axle.lengthM("radius", RADIUS);
        Optional<AxleSteering> steering =
                steers ? axle.findObject("steering").flatMap(SteeringReader::read) : Optional.empty();
        axle.refuseOthers();
        return new AxleFields(xM, radiusM, steering, axle.pointer());
    }

    /** The one axle of a booster. */
    static AxleFields trailed(JsonFields axle) {
        return of(axle, true);
    }

    /** The field "axles" of the tractor's group, front to rear. */
    static List<AxleFields> list(JsonFields unit, int most) {
        return list(unit, most, false);
    }

    /** The field "axles" of a unit behind the tractor, front to rear. */
    static List<AxleFields> trailed(JsonFields unit, int most) {
        return list(unit, most, true);
    }

    private static List<AxleFields> list(JsonFields unit, int most, boolean steers) {
        List<AxleFields> axles = unit.objects("axles", 1, most).stream()
                .map(axle -> of(axle, steers))
                .toList();
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
        return new Axle(xM, radiusM, steering);
    }
}
