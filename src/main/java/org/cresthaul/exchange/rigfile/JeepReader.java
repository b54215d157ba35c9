package org.cresthaul.exchange.rigfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.Tractor;

/** Reads the jeeps of a stance, front to rear, each in its own frame. */
final class JeepReader {
    static final int MOST_JEEPS = 3;
    /** Bounds how fast a jeep's pitch changes along the road, as for the tractor. */
    static final double KINGPIN_AHEAD_OF_AXLES_M = 1.5;
    /** Nearer than this two kingpins are no jeep. */
    static final double KINGPIN_AHEAD_OF_FIFTH_WHEEL_M = 0.5;

    private JeepReader() {}

    /**
     * A jeep as read.
     *
     * @param jeep empty after a problem
     */
    record Read(Optional<Jeep> jeep, OutlineFields topside) {}

    static List<Read> list(JsonFields stance) {
        List<Read> jeeps = new ArrayList<>();
        stance.findObjects("jeeps", 0, MOST_JEEPS).forEach(fields -> jeeps.add(read(fields)));
        return jeeps;
    }

    private static Read read(JsonFields jeep) {
        int before = jeep.problems().count();
        JsonFields kingpin = jeep.object("kingpin");
        double kingpinXM = kingpin.lengthM("x", OutlineFields.X);
        kingpin.refuseOthers();
        List<AxleFields> axles = AxleFields.trailed(jeep, StanceReader.MOST_AXLES);
        SteeringReader.requireGuided(jeep, "axles", axles);
        double upM = jeep.lengthM("travelUp", StanceReader.TRAVEL);
        double downM = jeep.lengthM("travelDown", StanceReader.TRAVEL);
        JsonFields wheel = jeep.object("fifthWheel");
        double reachM = wheel.findLengthM("reach", Couplings.REACH).orElse(Tractor.USUAL_PLATE_REACH_M);
        FramePoint fifthWheel = OutlineFields.point(wheel);
        double rearXM =
                axles.isEmpty() ? Double.NaN : axles.get(axles.size() - 1).xM();
        if (!axles.isEmpty() && kingpinXM < axles.get(0).xM() + KINGPIN_AHEAD_OF_AXLES_M) {
            kingpin.problem(
                    "x",
                    "order",
                    "The jeep's kingpin is not at least 1.5 m ahead of its first axle.",
                    "x runs forward: give the kingpin the larger x.");
        }
        if (fifthWheel != null && fifthWheel.xM() > kingpinXM - KINGPIN_AHEAD_OF_FIFTH_WHEEL_M) {
            wheel.problem(
                    "x",
                    "order",
                    "The jeep's fifth wheel is not at least 0.5 m behind its kingpin.",
                    "x runs forward: give the kingpin the larger x.");
        }
        Couplings.requireFifthWheel(wheel, fifthWheel, rearXM);
        OutlineFields underside = OutlineFields.of(jeep, "underside");
        OutlineFields topside = OutlineFields.of(jeep, "topside");
        underside.requireBelow(topside);
        underside.requireReach(topside, rearXM, kingpinXM, "from the jeep's last axle to its kingpin");
        boolean mayBeLeftOff = LeftOffReader.mayBeLeftOff(jeep);
        jeep.refuseOthers();
        boolean sound = jeep.isThere() && jeep.problems().count() == before;
        return new Read(
                sound
                        ? Optional.of(new Jeep(
                                kingpinXM,
                                AxleFields.group(axles, upM, downM),
                                fifthWheel,
                                reachM,
                                underside.outline(),
                                topside.outline(),
                                mayBeLeftOff))
                        : Optional.empty(),
                topside);
    }
}
