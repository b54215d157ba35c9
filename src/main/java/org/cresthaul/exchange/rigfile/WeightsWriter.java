package org.cresthaul.exchange.rigfile;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.function.Function;
import org.cresthaul.exchange.json.QuantityTexts;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.Weights;

/** Writes the weights of a stance. */
final class WeightsWriter {
    private final QuantityTexts texts;

    WeightsWriter(QuantityTexts texts) {
        this.texts = texts;
    }

    ObjectNode weights(Weights weights) {
        ObjectNode node = RigWriter.node()
                .put("accuracy", texts.percent(weights.accuracy()))
                .put("source", weights.source());
        node.set("tractor", mass(weights.tractor()));
        if (!weights.jeeps().isEmpty()) {
            ArrayNode jeeps = node.putArray("jeeps");
            weights.jeeps().forEach(j -> jeeps.add(mass(j)));
        }
        node.set("trailer", mass(weights.trailer()));
        node.set("gooseneck", mass(weights.gooseneck()));
        weights.booster().ifPresent(b -> {
            ObjectNode booster = mass(b.standing());
            b.carried().ifPresent(c -> booster.set("carriedCg", cg(c)));
            node.set("booster", booster);
        });
        if (!weights.boostersBehind().isEmpty()) {
            ArrayNode behind = node.putArray("boostersBehind");
            for (Weights.BoosterBehind b : weights.boostersBehind()) {
                ObjectNode booster = mass(b.standing());
                booster.set("gauge", chart(b.gauge()));
                behind.add(booster.put("set", texts.pressure(b.setPa())));
            }
        }
        if (!weights.pieces().isEmpty()) {
            ArrayNode pieces = node.putArray("pieces");
            weights.pieces()
                    .forEach(p -> pieces.addObject().put("name", p.name()).setAll(mass(p.at())));
        }
        byKind(node, "tracks", weights.tracks(), texts::length);
        ratings(node, weights.ratings());
        weights.leastBrakedKg().ifPresent(kg -> node.put("leastBraked", texts.mass(kg)));
        gauges(node, weights.gauges());
        weights.regulator()
                .ifPresent(r -> node.putObject("regulator")
                        .put("least", texts.pressure(r.leastPa()))
                        .put("most", texts.pressure(r.mostPa()))
                        .put("set", texts.pressure(r.setPa())));
        weights.shims().ifPresent(s -> node.set("shims", shims(s)));
        weights.frontLift()
                .ifPresent(f -> node.putObject("frontLift")
                        .put("ratedPressure", texts.pressure(f.ratedPa()))
                        .put("ratedLoad", texts.mass(f.ratedKg()))
                        .put("takeOff", texts.pressure(f.takeOffPa())));
        return node;
    }

    private ObjectNode mass(Weights.MassPoint mass) {
        ObjectNode node = RigWriter.node().put("weight", texts.mass(mass.massKg()));
        node.set("cg", cg(mass));
        return node;
    }

    private ObjectNode cg(Weights.MassPoint mass) {
        ObjectNode cg = RigWriter.node().put("x", texts.length(mass.xM())).put("h", texts.length(mass.hM()));
        return mass.offsetM() == 0 ? cg : cg.put("offset", texts.length(mass.offsetM()));
    }

    private void ratings(ObjectNode node, Weights.Ratings ratings) {
        ObjectNode rated = RigWriter.node();
        byKind(rated, "axles", ratings.axleKg(), texts::mass);
        byKind(rated, "tires", ratings.tiresKg(), texts::mass);
        ratings.hitchKg().ifPresent(kg -> rated.put("fifthWheel", texts.mass(kg)));
        byKind(rated, "tireWidths", ratings.tireWidthsM(), texts::length);
        if (!rated.isEmpty()) {
            node.set("ratings", rated);
        }
    }

    private static void byKind(
            ObjectNode node, String key, Map<AxleKind, Double> values, Function<Double, String> text) {
        if (values.isEmpty()) {
            return;
        }
        ObjectNode kinds = node.putObject(key);
        for (AxleKind kind : AxleKind.values()) {
            if (values.containsKey(kind)) {
                kinds.put(kind.word(), text.apply(values.get(kind)));
            }
        }
    }

    private void gauges(ObjectNode node, Weights.Gauges gauges) {
        ObjectNode charts = RigWriter.node();
        gauges.trailerDown().ifPresent(c -> charts.set("trailerDown", chart(c)));
        gauges.trailerUp().ifPresent(c -> charts.set("trailerUp", chart(c)));
        gauges.booster().ifPresent(c -> charts.set("booster", chart(c)));
        if (!charts.isEmpty()) {
            node.set("gauges", charts);
        }
    }

    ObjectNode chart(ChartPoints chart) {
        ObjectNode node = RigWriter.node().put("accuracy", texts.percent(chart.accuracy()));
        ArrayNode points = node.putArray("points");
        chart.points()
                .forEach(p ->
                        points.addArray().add(texts.pressure(p.pressurePa())).add(texts.mass(p.loadKg())));
        return node;
    }

    private ObjectNode shims(Weights.ShimSet shims) {
        ObjectNode node = RigWriter.node()
                .put("fitted", shims.fitted())
                .put("arm", texts.length(shims.armM()))
                .put("fold", texts.angle(shims.foldRad()))
                .put("foldLoad", texts.mass(shims.foldKg()));
        ArrayNode plates = node.putArray("plates");
        for (Weights.ShimPlate p : shims.shims()) {
            plates.addObject()
                    .put("name", p.name())
                    .put("thickness", texts.length(p.thicknessM()))
                    .put("least", texts.mass(p.leastKg()))
                    .put("most", texts.mass(p.mostKg()));
        }
        return node;
    }
}
