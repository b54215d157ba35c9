package org.cresthaul.exchange.rigfile;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonDocument;
import org.cresthaul.exchange.json.QuantityTexts;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.AxleSteering;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Identity;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.Weights;
import org.cresthaul.units.UnitSystem;

/**
 * Writes a rig file that reads as the very same rig. What no rig holds is not written: a gross weight that was compared
 * with the sum, an air spring that a chart was reckoned from, what wheels that are locked would do otherwise.
 */
public final class RigWriter {
    private final QuantityTexts texts;

    private RigWriter(UnitSystem units) {
        texts = new QuantityTexts(units);
    }

    /** UTF-8; quantities in these units where that is as short as in others. */
    public static byte[] bytes(Rig rig, UnitSystem units) {
        return JsonDocument.bytes(new RigWriter(units).rig(rig));
    }

    private ObjectNode rig(Rig rig) {
        ObjectNode file = node().put("cresthaul", RigFile.FORMAT).put("name", rig.name());
        if (!rig.note().isEmpty()) {
            file.put("note", rig.note());
        }
        if (!rig.identity().equals(Identity.UNKNOWN)) {
            file.set("identity", identity(rig.identity()));
        }
        file.set("measurement", uncertainty(rig.measurement()));
        file.set("ride", uncertainty(rig.ride()));
        if (!rig.times().equals(PlanTimes.defaults())) {
            file.set("times", times(rig.times()));
        }
        ArrayNode notches = file.putArray("notches");
        rig.notches().forEach(n -> notches.addObject().put("name", n.name()).put("offset", texts.length(n.offsetM())));
        ArrayNode stances = file.putArray("stances");
        rig.stances().forEach(s -> stances.add(stance(s)));
        return file;
    }

    private static ObjectNode identity(Identity identity) {
        ObjectNode node = node();
        identity.tractor().ifPresent(t -> node.put("tractor", t));
        identity.jeep().ifPresent(t -> node.put("jeep", t));
        identity.trailer().ifPresent(t -> node.put("trailer", t));
        identity.booster().ifPresent(t -> node.put("booster", t));
        identity.load().ifPresent(t -> node.put("load", t));
        if (!identity.tires().isEmpty()) {
            ObjectNode tires = node.putObject("tires");
            for (AxleKind kind : AxleKind.values()) {
                Optional.ofNullable(identity.tires().get(kind)).ifPresent(t -> tires.put(kind.word(), t));
            }
        }
        return node;
    }

    private ObjectNode uncertainty(Uncertainty uncertainty) {
        return node().put("accuracy", texts.length(uncertainty.valueM())).put("source", uncertainty.source());
    }

    private ObjectNode times(PlanTimes times) {
        ObjectNode node = node();
        for (int i = 0; i < PlanTimes.KEYS.size(); i++) {
            node.put(PlanTimes.KEYS.get(i), texts.time(times.seconds().get(i)));
        }
        return node.put("crawl", texts.speed(times.crawlMps()));
    }

    private ObjectNode stance(LevelStance stance) {
        ObjectNode node = node().put("name", stance.name());
        node.set("tractor", tractor(stance.tractor()));
        if (!stance.jeeps().isEmpty()) {
            ArrayNode jeeps = node.putArray("jeeps");
            stance.jeeps().forEach(j -> jeeps.add(jeep(j)));
        }
        node.set("trailer", trailer(stance.trailer(), stance.weights()));
        stance.booster().ifPresent(b -> node.set("booster", booster(b, true)));
        if (!stance.boostersBehind().isEmpty()) {
            ArrayNode behind = node.putArray("boostersBehind");
            stance.boostersBehind().forEach(b -> behind.add(booster(b, false)));
        }
        stance.weights().ifPresent(w -> node.set("weights", new WeightsWriter(texts).weights(w)));
        stance.plan().ifPresent(p -> node.set("plan", plan(p)));
        return node;
    }

    private ObjectNode tractor(Tractor tractor) {
        ObjectNode node = node();
        node.set("steer", axle(tractor.steer()));
        ObjectNode drive = node.putObject("drive");
        drive.set("axles", axles(tractor.drive().axles()));
        travel(drive, tractor.drive().jounceM(), tractor.drive().reboundM());
        node.set("fifthWheel", joint(tractor.fifthWheel(), tractor.plateReachM()));
        outlines(node, tractor.underside(), tractor.topside());
        return node;
    }

    private ObjectNode jeep(Jeep jeep) {
        ObjectNode node = node();
        node.set("kingpin", x(jeep.kingpinXM()));
        node.set("axles", axles(jeep.axles().axles()));
        travel(node, jeep.axles().jounceM(), jeep.axles().reboundM());
        node.set("fifthWheel", joint(jeep.fifthWheel(), jeep.plateReachM()));
        outlines(node, jeep.underside(), jeep.topside());
        if (jeep.mayBeLeftOff()) {
            node.putArray("states").add(LeftOffReader.IN).add(LeftOffReader.OUT);
        }
        return node;
    }

    private ObjectNode trailer(Trailer trailer, Optional<Weights> weights) {
        ObjectNode node = node();
        node.set("kingpin", x(trailer.kingpinXM()));
        node.set("deckFront", point(trailer.deckFront()));
        node.set("deckRear", point(trailer.deckRear()));
        node.set("axles", axles(trailer.axles().axles()));
        travel(node, trailer.axles().jounceM(), trailer.axles().reboundM());
        node.put("valveAxle", trailer.valveAxle() + 1);
        lift(node, trailer);
        node.put("hydraulicRaiseLimit", texts.length(trailer.hydraulicRaiseLimitM()));
        node.put("manualRaiseLimit", texts.length(trailer.manualRaiseLimitM()));
        node.put("deckSag", texts.length(trailer.deckSagM()));
        outlines(node, trailer.underside(), trailer.topside());
        if (!trailer.load().isEmpty()) {
            ArrayNode load = node.putArray("load");
            for (Outline piece : trailer.load()) {
                String name = name(piece, weights);
                load.addObject().put("name", name).set("outline", outline(piece, name));
            }
        }
        trailer.boosterHinge().ifPresent(h -> node.set("boosterHinge", joint(h, trailer.hingeReachM())));
        return node;
    }

    /** A piece by its weight, or by what its first point is called. */
    private static String name(Outline piece, Optional<Weights> weights) {
        return weights.stream()
                .flatMap(w -> w.pieces().stream())
                .filter(p -> p.outline().filter(piece::equals).isPresent())
                .map(Weights.Piece::name)
                .findFirst()
                .orElse(piece.points().get(0).part());
    }

    private void lift(ObjectNode node, Trailer trailer) {
        LiftAxles lift = trailer.lift();
        int last = trailer.axles().axles().size() - 1;
        if (lift.isEmpty()) {
            return;
        }
        LiftAxles.Raised first = lift.raised().get(0);
        if (lift.axles().size() == 1
                && lift.has(last)
                && lift.raised().size() == 1
                && first.gauge().isEmpty()) {
            node.putObject("liftAxle")
                    .put("gap", texts.length(lift.axles().get(0).gapM()))
                    .put("secondaryRise", texts.length(first.secondaryRiseM()));
            return;
        }
        ArrayNode axles = node.putArray("liftAxles");
        lift.axles().forEach(a -> axles.addObject().put("axle", a.index() + 1).put("gap", texts.length(a.gapM())));
        ArrayNode states = node.putArray("liftStates");
        for (LiftAxles.Raised raised : lift.raised()) {
            ObjectNode state = states.addObject();
            ArrayNode up = state.putArray("up");
            raised.indexes().forEach(i -> up.add(i + 1));
            state.put("secondaryRise", texts.length(raised.secondaryRiseM()));
            raised.gauge().ifPresent(g -> state.set("gauge", new WeightsWriter(texts).chart(g)));
        }
    }

    /** @param first whether it is held by the trailer, and may do more than trail */
    private ObjectNode booster(Booster booster, boolean first) {
        ObjectNode node = node();
        node.set("hinge", x(booster.hingeXM()));
        List<Axle> axles = booster.axles().axles();
        if (axles.size() == 1
                && booster.axles().jounceM() == 0
                && booster.axles().reboundM() == 0) {
            node.set("axle", axle(axles.get(0)));
        } else {
            node.set("axles", axles(axles));
            travel(node, booster.axles().jounceM(), booster.axles().reboundM());
        }
        outlines(node, booster.underside(), booster.topside());
        node.put("hingeUp", texts.angle(booster.hingeUpRad()));
        node.put("hingeDown", texts.angle(booster.hingeDownRad()));
        if (first || booster.states().size() > 1) {
            ArrayNode states = node.putArray("states");
            booster.states().stream().map(BoosterState::word).forEach(states::add);
        }
        booster.closeCoupledAxleXM().ifPresent(xM -> node.set("closeCoupledAxle", x(xM)));
        booster.carried().ifPresent(o -> node.set("carried", outline(o, "booster")));
        booster.nextHinge().ifPresent(h -> node.set("nextHinge", joint(h.at(), h.reachM())));
        return node;
    }

    private ObjectNode plan(PlanDimensions plan) {
        ObjectNode node = node();
        ObjectNode tractor = widths(plan.tractor(), "driveTires");
        tractor.put("steerLimit", texts.angle(plan.steerLimitRad()));
        tractor.put("lockDistance", texts.length(plan.lockDistanceM()));
        tractor.set("steerTires", tires(plan.steerTires()));
        node.set("tractor", tractor);
        plan.jeep()
                .ifPresent(j -> node.set(
                        "jeep",
                        widths(j, "tires")
                                .put(
                                        "kingpinLimit",
                                        texts.angle(plan.jeepLimitRad().getAsDouble()))));
        ObjectNode trailer = widths(plan.trailer(), "tires");
        plan.loadWidthM().ifPresent(w -> trailer.put("loadWidth", texts.length(w)));
        node.set("trailer", trailer.put("kingpinLimit", texts.angle(plan.kingpinLimitRad())));
        plan.booster()
                .ifPresent(b -> node.set(
                        "booster",
                        widths(b, "tires")
                                .put(
                                        "pivotLimit",
                                        texts.angle(plan.pivotLimitRad().getAsDouble()))));
        return node;
    }

    private ObjectNode widths(PlanDimensions.Widths widths, String tires) {
        ObjectNode node =
                node().put("width", texts.length(widths.bodyM())).put("overTires", texts.length(widths.tiresM()));
        node.set(tires, tires(widths.tires()));
        return node;
    }

    private ObjectNode tires(PlanDimensions.Tires tires) {
        return node().put("across", texts.length(tires.treadM())).put("contact", texts.length(tires.contactM()));
    }

    private ArrayNode axles(List<Axle> axles) {
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        axles.forEach(a -> list.add(axle(a)));
        return list;
    }

    private ObjectNode axle(Axle axle) {
        ObjectNode node = x(axle.xM()).put("radius", texts.length(axle.radiusM()));
        axle.steering().ifPresent(s -> node.set("steering", steering(s)));
        return node;
    }

    private ObjectNode steering(AxleSteering steering) {
        ObjectNode node = node();
        if (steering instanceof AxleSteering.Commanded commanded) {
            node.put("wheels", SteeringReader.COMMANDED).put("ratio", texts.percent(commanded.ratio()));
        } else {
            node.put("wheels", SteeringReader.CASTERING);
        }
        return node.put("limit", texts.angle(steering.limitRad()));
    }

    private void travel(ObjectNode node, double upM, double downM) {
        node.put("travelUp", texts.length(upM)).put("travelDown", texts.length(downM));
    }

    private void outlines(ObjectNode node, Outline underside, Outline topside) {
        node.set("underside", outline(underside, ""));
        node.set("topside", outline(topside, ""));
    }

    /** @param usual what a point is called without a word of its own */
    private ArrayNode outline(Outline outline, String usual) {
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        for (FramePoint p : outline.points()) {
            ObjectNode point = point(p);
            if (!p.part().equals(usual)) {
                point.put("part", p.part());
            }
            list.add(point);
        }
        return list;
    }

    private ObjectNode joint(FramePoint at, double reachM) {
        return point(at).put("reach", texts.length(reachM));
    }

    private ObjectNode point(FramePoint point) {
        return x(point.xM()).put("h", texts.length(point.hM()));
    }

    private ObjectNode x(double xM) {
        return node().put("x", texts.length(xM));
    }

    static ObjectNode node() {
        return JsonNodeFactory.instance.objectNode();
    }
}
