package org.cresthaul.route;

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
import org.cresthaul.axleload.BridgeTable;
import org.cresthaul.axleload.FurtherLimits;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.units.JsonFields;
import org.cresthaul.units.LengthLimits;

/** Reads what a set of limits asks besides weights of axles, groups and runs. */
final class FurtherLimitsReader {
    private static final LengthLimits WIDTH = new LengthLimits(0.001, 10);
    private static final double LEAST_PER_WIDTH_KG = 1;

    private FurtherLimitsReader() {}

    /** Whether any of them is there, sound or not. */
    static boolean limits(JsonFields fields) {
        return fields.has("tireWidth") || fields.has("leastShares") || fields.has("bridgeTables");
    }

    /** Problems go where those of {@code fields} go. */
    static FurtherLimits read(JsonFields fields) {
        OptionalDouble kgPerTireM = fields.findObject("tireWidth").map(FurtherLimitsReader::perWidth).orElse(OptionalDouble.empty());
        Map<AxleKind, Double> shares = fields.findObject("leastShares").map(FurtherLimitsReader::shares).orElse(Map.of());
        List<BridgeTable> tables = tables(fields);
        Optional<LocalDate> lastDay = fields.findText("lastDay", 10).map(t -> LimitsFile.date(fields, "lastDay", t));
        List<String> hours = fields.findText("hours", JsonFields.LONGEST_NOTE).map(List::of).orElse(List.of());
        return new FurtherLimits(kgPerTireM, shares, tables, lastDay, hours);
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
                if (axles.isPresent() && Double.isFinite(lengthM)
                        && rows.computeIfAbsent(axles.getAsInt(), n -> new TreeMap<>()).putIfAbsent(lengthM, kg) != null) {
                    row.problem("length", "row-twice", "This length is listed twice for " + axles.getAsInt() + " axles.",
                            "Keep one of them.");
                }
            }
            table.refuseOthers();
            if (fields.problems().count() == before && fields.isThere()) {
                tables.add(new BridgeTable(name, rows));
            }
        }
        return tables;
    }

    private static final int MOST_ROWS = 2000;
    private static final LengthLimits ROW = new LengthLimits(0.1, 100);
}
