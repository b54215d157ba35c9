package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.cresthaul.axleload.BridgeTable;
import org.cresthaul.axleload.FurtherLimits;
import org.cresthaul.axleload.OnBridge;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.units.LengthLimits;

/** Reads what a set of limits asks besides weights of axles, groups and runs. */
final class FurtherLimitsReader {
    private static final LengthLimits WIDTH = new LengthLimits(0.001, 10);
    private static final double LEAST_PER_WIDTH_KG = 1;

    private FurtherLimitsReader() {}

    /** Whether any of them is there, sound or not. */
    static boolean limits(JsonFields fields) {
        return fields.has("tireWidth")
                || fields.has("leastShares")
                || fields.has("bridgeTables")
                || fields.has("onBridge");
    }

    /**
     * Problems go where those of {@code fields} go.
     *
     * @param bridgeM how long the bridge is, itself empty when nobody has measured it; empty elsewhere than at a bridge
     */
    static FurtherLimits read(JsonFields fields, Optional<OptionalDouble> bridgeM) {
        OptionalDouble kgPerTireM = fields.findObject("tireWidth")
                .map(FurtherLimitsReader::perWidth)
                .orElse(OptionalDouble.empty());
        Map<AxleKind, Double> shares = fields.findObject("leastShares")
                .map(FurtherLimitsReader::shares)
                .orElse(Map.of());
        List<BridgeTable> tables = tables(fields);
        Optional<LocalDate> lastDay = fields.findText("lastDay", 10).map(t -> LimitsFile.date(fields, "lastDay", t));
        List<String> hours =
                fields.findText("hours", JsonFields.LONGEST_NOTE).map(List::of).orElse(List.of());
        return new FurtherLimits(
                kgPerTireM,
                shares,
                tables,
                lastDay,
                hours,
                bridgeM.map(m -> onBridge(fields, m)).orElse(OnBridge.NONE));
    }

    private static OnBridge onBridge(JsonFields fields, OptionalDouble lengthM) {
        OptionalDouble kg = fields.findMassKg("onBridge", LimitsFile.LEAST_KG, LimitsFile.MOST_KG);
        if (kg.isPresent() && lengthM.isEmpty()) {
            fields.problem(
                    "onBridge",
                    "no-length",
                    "Which axles stand on the bridge together is not known: nobody says how long" + " it is.",
                    "Add \"extent\" to the bridge, such as [\"0 ft\", \"60 ft\"], or leave \"onBridge\" out.");
            kg = OptionalDouble.empty();
        }
        List<OnBridge.Term> terms = new ArrayList<>();
        List<JsonNode> items =
                fields.findItems("terms", 1, OnBridge.Term.values().length).orElse(List.of());
        for (int i = 0; i < items.size(); i++) {
            String word = items.get(i).asText();
            Optional<OnBridge.Term> term = Stream.of(OnBridge.Term.values())
                    .filter(t -> t.word().equals(word))
                    .findFirst();
            if (term.isEmpty() || terms.contains(term.get())) {
                fields.problems()
                        .add(
                                term.isEmpty() ? "unknown-word" : "term-twice",
                                term.isEmpty()
                                        ? "There is no term of this name."
                                        : "The term \"" + word + "\" is listed twice.",
                                fields.pointer("terms") + "/" + i,
                                "Write \"alone\", \"centered\", \"crawl\", each at most once.");
            } else {
                terms.add(term.get());
            }
        }
        return new OnBridge(lengthM, kg, terms);
    }

    private static OptionalDouble perWidth(JsonFields fields) {
        double kg = fields.massKg("weight", LEAST_PER_WIDTH_KG, LimitsFile.MOST_KG);
        double widthM = fields.lengthM("per", WIDTH);
        fields.refuseOthers();
        return Double.isFinite(kg / widthM) ? OptionalDouble.of(kg / widthM) : OptionalDouble.empty();
    }

    private static Map<AxleKind, Double> shares(JsonFields fields) {
        Map<AxleKind, Double> shares = new EnumMap<>(AxleKind.class);
        for (AxleKind kind : List.of(AxleKind.STEER, AxleKind.DRIVE)) {
            if (fields.has(kind.word())) {
                shares.put(kind, fields.grade(kind.word(), 0, 1));
            }
        }
        fields.refuseOthers();
        if (shares.isEmpty() && fields.isThere()) {
            fields.problem("steer", "missing", "No group is named.", "Give a share for \"steer\", \"drive\" or both.");
        }
        shares.values().removeIf(s -> !Double.isFinite(s));
        return shares;
    }

    private static List<BridgeTable> tables(JsonFields fields) {
        List<BridgeTable> tables = new ArrayList<>();
        for (JsonFields table : fields.findObjects("bridgeTables", 1, LimitsFile.MOST_ENTRIES)) {
            int before = fields.problems().count();
            String name = table.text("name", JsonFields.LONGEST_NAME);
            SortedMap<Integer, SortedMap<Double, Double>> rows = new TreeMap<>();
            for (JsonFields row : table.objects("rows", 1, MOST_ROWS)) {
                OptionalInt axles = row.integer("axles", 2, LimitsFile.MOST_AXLES);
                double lengthM = row.lengthM("length", ROW);
                double kg = row.massKg("weight", LimitsFile.LEAST_KG, LimitsFile.MOST_KG);
                row.refuseOthers();
                if (axles.isPresent()
                        && Double.isFinite(lengthM)
                        && rows.computeIfAbsent(axles.getAsInt(), n -> new TreeMap<>())
                                        .putIfAbsent(lengthM, kg)
                                != null) {
                    row.problem(
                            "length",
                            "row-twice",
                            "This length is listed twice for " + axles.getAsInt() + " axles.",
                            "Keep one of them.");
                }
            }
            table.refuseOthers();
            if (fields.problems().count() == before && table.isThere()) {
                tables.add(new BridgeTable(name, rows));
            }
        }
        return tables;
    }

    private static final int MOST_ROWS = 2000;
    private static final LengthLimits ROW = new LengthLimits(0.1, 100);
}
