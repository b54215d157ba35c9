package org.cresthaul.exchange.rigfile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.units.LengthLimits;

/**
 * Reads one stance of a rig file. Everything is read and compared as bare numbers first (NaN where a field is wrong, so
 * that no comparison with it speaks); values are built only from a stance without a mistake.
 */
final class StanceReader {
    /**
     * The position search relies on the next two and on that of a booster: they bound how fast a unit's pitch changes
     * along the road.
     */
    static final double STEER_AHEAD_OF_DRIVE_M = 1.5;

    static final double KINGPIN_AHEAD_OF_AXLES_M = 2.0;
    /** Bounds the angle by which a notch turns the trailer. */
    static final double DECK_FRONT_AHEAD_OF_VALVE_M = 1.0;

    static final int MOST_AXLES = 12;
    static final int MOST_LOADS = 20;
    static final LengthLimits TRAVEL = new LengthLimits(0, 0.5);
    static final LengthLimits RAISE = new LengthLimits(0, 1);
    static final LengthLimits SAG = new LengthLimits(0, 0.5);

    private final JsonFields stance;
    private final String name;
    private final double lowestNotchM;
    private final double highestNotchM;
    private double lastTrailerAxleXM = Double.NaN;
    private boolean hingeGiven;
    /** Outlines on the deck by name, for the weights that belong to them. */
    private final Map<String, OutlineFields> loads = new LinkedHashMap<>();

    private final List<OutlineFields> jeepTopsides = new ArrayList<>();
    /** Topsides of what is weighed besides, by the key of its weight. */
    private final Map<String, OutlineFields> topsides = new LinkedHashMap<>();

    StanceReader(JsonFields stance, String name, double lowestNotchM, double highestNotchM) {
        this.stance = stance;
        this.name = name;
        this.lowestNotchM = lowestNotchM;
        this.highestNotchM = highestNotchM;
    }

    /** The stance; empty when a problem was added. */
    Optional<LevelStance> read() {
        int before = stance.problems().count();
        Tractor tractor = tractor(stance.object("tractor"));
        List<JeepReader.Read> jeepsRead = JeepReader.list(stance);
        for (JeepReader.Read jeep : jeepsRead) {
            jeepTopsides.add(jeep.topside());
        }
        JsonFields trailerFields = stance.object("trailer");
        Trailer trailer = trailer(trailerFields);
        BoosterReader boosters = new BoosterReader(stance, lastTrailerAxleXM, topsides);
        if (boosters.given() && trailerFields.isThere() && !hingeGiven) {
            trailerFields.problem(
                    "boosterHinge",
                    "missing",
                    "A booster is given, but no hinge on the trailer.",
                    "Add \"boosterHinge\": {\"x\": \"...\", \"h\": \"...\"} to the trailer, or leave the booster out.");
        }
        Optional<PlanDimensions> plan =
                stance.findObject("plan").flatMap(p -> PlanReader.read(p, !jeepsRead.isEmpty(), boosters.given()));
        Optional<WeightsReader> weights =
                stance.findObject("weights").map(w -> new WeightsReader(w, jeepTopsides, boosters, loads, topsides));
        JsonNode weighed = stance.find("weights");
        if (trailerFields.has("liftStates") && weighed.at("/gauges").has("trailerUp")) {
            stance.problems()
                    .add(
                            "chart-of-no-state",
                            "This chart does not say for which of the lift states it is.",
                            stance.pointer("weights") + "/gauges/trailerUp",
                            "Move it to \"gauge\" of the state it is for.");
        }
        stance.refuseOthers();
        if (!stance.isThere() || stance.problems().count() > before) {
            return Optional.empty();
        }
        List<Jeep> jeeps = jeepsRead.stream().map(j -> j.jeep().orElseThrow()).toList();
        Couplings.requireUnitsApart(stance, tractor, jeeps, trailer, boosters.first());
        Couplings.requireBoostersApart(stance, trailer, boosters.all());
        LeftOffReader.requireFromRear(stance, tractor, jeeps, boosters.behind());
        if (stance.problems().count() == before) {
            LeftOffReader.requireUnitsApart(stance, tractor, jeeps, trailer, boosters.first());
        }
        return stance.problems().count() > before
                ? Optional.empty()
                : Optional.of(new LevelStance(
                        name,
                        tractor,
                        jeeps,
                        trailer,
                        boosters.first(),
                        boosters.behind(),
                        weights.map(WeightsReader::weights),
                        plan));
    }

    private Tractor tractor(JsonFields tractor) {
        int before = tractor.problems().count();
        AxleFields steer = AxleFields.of(tractor.object("steer"));
        JsonFields group = tractor.object("drive");
        List<AxleFields> drive = AxleFields.list(group, MOST_AXLES);
        double upM = group.lengthM("travelUp", TRAVEL);
        double downM = group.lengthM("travelDown", TRAVEL);
        group.refuseOthers();
        if (!drive.isEmpty() && drive.get(0).xM() > steer.xM() - STEER_AHEAD_OF_DRIVE_M) {
            tractor.problems()
                    .add(
                            "axle-order",
                            "The steer axle is not at least 1.5 m ahead of the first drive axle.",
                            steer.pointer() + "/x",
                            "x runs forward: give the steer axle the larger x.");
        }
        JsonFields wheel = tractor.object("fifthWheel");
        double reachM = wheel.findLengthM("reach", Couplings.REACH).orElse(Tractor.USUAL_PLATE_REACH_M);
        FramePoint fifthWheel = OutlineFields.point(wheel);
        if (fifthWheel != null && fifthWheel.xM() >= steer.xM()) {
            wheel.problem(
                    "x",
                    "order",
                    "The fifth wheel is not behind the steer axle.",
                    "Give it an x below that of the steer axle.");
        }
        double rearXM =
                drive.isEmpty() ? Double.NaN : drive.get(drive.size() - 1).xM();
        Couplings.requireFifthWheel(wheel, fifthWheel, rearXM);
        OutlineFields underside = OutlineFields.of(tractor, "underside");
        OutlineFields topside = OutlineFields.of(tractor, "topside");
        underside.requireBelow(topside);
        underside.requireReach(topside, rearXM, steer.xM(), "from the rear drive axle to the steer axle");
        topsides.put("tractor", topside);
        tractor.refuseOthers();
        if (!tractor.isThere() || tractor.problems().count() > before) {
            return null;
        }
        return new Tractor(
                steer.axle(),
                AxleFields.group(drive, upM, downM),
                fifthWheel,
                reachM,
                underside.outline(),
                topside.outline());
    }

    private Trailer trailer(JsonFields trailer) {
        int before = trailer.problems().count();
        JsonFields kingpin = trailer.object("kingpin");
        double kingpinXM = kingpin.lengthM("x", OutlineFields.X);
        kingpin.refuseOthers();
        DeckEnd front = DeckEnd.of(trailer.object("deckFront"));
        DeckEnd rear = DeckEnd.of(trailer.object("deckRear"));
        List<AxleFields> axles = AxleFields.trailed(trailer, MOST_AXLES);
        double upM = trailer.lengthM("travelUp", TRAVEL);
        double downM = trailer.lengthM("travelDown", TRAVEL);
        OptionalInt valveAxle = trailer.integer("valveAxle", 1, MOST_AXLES);
        LiftAxles lift = new LiftAxlesReader(trailer, axles, upM, downM).read();
        SteeringReader.requireGuided(trailer, "axles", onTheRoad(axles, lift));
        double hydraulicM = trailer.lengthM("hydraulicRaiseLimit", RAISE);
        double manualM = trailer.lengthM("manualRaiseLimit", RAISE);
        double sagM = trailer.findLengthM("deckSag", SAG).orElse(0);

        requireKingpinAhead(kingpin, kingpinXM, axles);
        requireDeckBehind(kingpinXM, front, rear);
        requireValveAxle(trailer, axles, valveAxle, lift, front.at, front.fields);
        requireRaises(trailer, manualM, downM, hydraulicM);
        requireTurn(trailer, hydraulicM, front.at, axles, valveAxle);
        OutlineFields underside = OutlineFields.of(trailer, "underside");
        OutlineFields topside = OutlineFields.of(trailer, "topside");
        topsides.put("trailer", topside);
        topsides.put("gooseneck", topside);
        requireOutlines(underside, topside, front, rear, kingpinXM);
        List<OutlineFields> load = loads(trailer);
        Optional<JsonFields> hingeFields = trailer.findObject("boosterHinge");
        hingeGiven = hingeFields.isPresent();
        double reachM = hingeReachM(hingeFields);
        FramePoint hinge = hingeFields.map(OutlineFields::point).orElse(null);
        if (hinge != null) {
            requireHingeBehind(kingpinXM, hingeFields.orElseThrow(), hinge);
        }
        trailer.refuseOthers();
        lastTrailerAxleXM =
                axles.isEmpty() ? Double.NaN : axles.get(axles.size() - 1).xM();
        if (hinge != null) {
            Couplings.requireHinge(hingeFields.orElseThrow(), hinge, lastTrailerAxleXM);
        }
        if (!trailer.isThere() || trailer.problems().count() > before) {
            return null;
        }
        return new Trailer(
                kingpinXM,
                front.at,
                rear.at,
                AxleFields.group(axles, upM, downM),
                valveAxle.getAsInt() - 1,
                lift,
                hydraulicM,
                manualM,
                sagM,
                underside.outline(),
                topside.outline(),
                load.stream().map(OutlineFields::outline).toList(),
                Optional.ofNullable(hinge),
                reachM);
    }

    private static void requireKingpinAhead(JsonFields kingpin, double kingpinXM, List<AxleFields> axles) {
        if (kingpinXM < (axles.isEmpty() ? Double.NaN : axles.get(0).xM()) + KINGPIN_AHEAD_OF_AXLES_M) {
            kingpin.problem(
                    "x",
                    "order",
                    "The kingpin is not at least 2 m ahead of the first trailer axle.",
                    "x runs forward: give the kingpin the larger x.");
        }
    }

    private void requireTurn(
            JsonFields trailer,
            double hydraulicM,
            FramePoint deckFront,
            List<AxleFields> axles,
            OptionalInt valveAxle) {
        if (deckFront != null && valveAxle.orElse(0) >= 1 && valveAxle.getAsInt() <= axles.size()) {
            Couplings.requireTurn(
                    trailer,
                    Math.max(Math.abs(lowestNotchM), Math.max(highestNotchM, hydraulicM)),
                    deckFront.xM(),
                    axles.get(valveAxle.getAsInt() - 1).xM());
        }
    }

    private static double hingeReachM(Optional<JsonFields> hinge) {
        return hinge.map(h -> h.findLengthM("reach", Couplings.REACH))
                .orElse(OptionalDouble.empty())
                .orElse(Trailer.USUAL_HINGE_REACH_M);
    }

    /** An end of the deck, where its fields say; null where they do not. */
    private record DeckEnd(JsonFields fields, FramePoint at) {
        static DeckEnd of(JsonFields fields) {
            return new DeckEnd(fields, OutlineFields.point(fields));
        }
    }

    private static void requireDeckBehind(double kingpinXM, DeckEnd front, DeckEnd rear) {
        if (front.at != null && front.at.xM() >= kingpinXM) {
            front.fields.problem(
                    "x",
                    "order",
                    "The deck front is not behind the kingpin.",
                    "Give it an x below that of the kingpin.");
        }
        if (front.at != null && rear.at != null && rear.at.xM() >= front.at.xM()) {
            rear.fields.problem(
                    "x",
                    "order",
                    "The deck rear is not behind the deck front.",
                    "x runs forward: give the deck front the larger x.");
        }
    }

    private void requireRaises(JsonFields trailer, double manualM, double downM, double hydraulicM) {
        if (manualM > downM) {
            trailer.problem(
                    "manualRaiseLimit",
                    "beyond-travel",
                    "The manual raise limit is more than the axles can travel down.",
                    "Keep it within travelDown.");
        }
        if (hydraulicM < highestNotchM) {
            trailer.problem(
                    "hydraulicRaiseLimit",
                    "below-notch",
                    "The hydraulics reach less high than the highest notch.",
                    "Give the highest deck-front height they reach, measured from the reference notch.");
        }
    }

    private static List<AxleFields> onTheRoad(List<AxleFields> axles, LiftAxles lift) {
        return IntStream.range(0, axles.size())
                .filter(i -> !lift.has(i))
                .mapToObj(axles::get)
                .toList();
    }

    private static void requireOutlines(
            OutlineFields underside, OutlineFields topside, DeckEnd front, DeckEnd rear, double kingpinXM) {
        underside.requireBelow(topside);
        underside.requireReach(
                topside,
                rear.at == null ? Double.NaN : rear.at.xM(),
                front.at == null ? Double.NaN : front.at.xM(),
                "from the deck rear to the deck front");
        if (front.at != null && rear.at != null && rear.at.xM() < front.at.xM() && front.at.xM() < kingpinXM) {
            underside.requireDeck(front.fields, front.at, topside);
            underside.requireDeck(rear.fields, rear.at, topside);
        }
    }

    private static void requireHingeBehind(double kingpinXM, JsonFields fields, FramePoint hinge) {
        if (hinge.xM() >= kingpinXM) {
            fields.problem(
                    "x",
                    "order",
                    "The booster's hinge is not behind the kingpin.",
                    "x runs forward: give the kingpin the larger x.");
        }
    }

    private static void requireValveAxle(
            JsonFields trailer,
            List<AxleFields> axles,
            OptionalInt valveAxle,
            LiftAxles lift,
            FramePoint deckFront,
            JsonFields frontFields) {
        if (!lift.isEmpty() && lift.axles().size() == axles.size()) {
            trailer.problem(
                    "axles",
                    "no-fixed-axle",
                    axles.size() == 1
                            ? "The only trailer axle is the lift axle."
                            : "Every trailer axle is a lift axle: nothing stands on the road in every state.",
                    "List a fixed axle, or leave a lift axle out.");
            return;
        }
        if (valveAxle.isEmpty() || axles.isEmpty()) {
            return;
        }
        if (valveAxle.getAsInt() > axles.size()) {
            trailer.problem(
                    "valveAxle",
                    "no-such-axle",
                    "The height valve reads axle " + valveAxle.getAsInt() + ", but there are " + axles.size() + ".",
                    "Count from the front, starting with 1.");
        } else if (lift.has(valveAxle.getAsInt() - 1)) {
            trailer.problem(
                    "valveAxle",
                    "valve-on-lift-axle",
                    lift.axles().size() == 1
                            ? "The height valve reads the lift axle."
                            : "The height valve reads a lift axle.",
                    "Name a fixed axle: the valve must work with the lift axle up as well.");
        } else if (deckFront != null
                && deckFront.xM() < axles.get(valveAxle.getAsInt() - 1).xM() + DECK_FRONT_AHEAD_OF_VALVE_M) {
            frontFields.problem(
                    "x",
                    "order",
                    "The deck front is not at least 1 m ahead of the valve axle.",
                    "x runs forward: give the deck front the larger x.");
        }
    }

    private List<OutlineFields> loads(JsonFields trailer) {
        List<OutlineFields> load = new ArrayList<>();
        for (JsonFields item : trailer.findObjects("load", 0, MOST_LOADS)) {
            String part = item.text("name", JsonFields.LONGEST_NAME);
            OutlineFields outline = OutlineFields.of(item, "outline", part);
            load.add(outline);
            loads.put(part, outline);
            item.refuseOthers();
        }
        return load;
    }
}
