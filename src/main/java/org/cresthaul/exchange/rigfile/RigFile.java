package org.cresthaul.exchange.rigfile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.Identity;
import org.cresthaul.rig.LeftOff;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Notch;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Rig;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Problems;

/**
 * Reads a rig file ({@code docs/file-formats.md}, {@code schema/rig-1.schema.json}). A file is taken whole or refused
 * with every mistake in it: it finds them itself, with the place of each, before it builds any value.
 */
public final class RigFile {
    /** What a rig file says of itself. */
    public static final String FORMAT = "rig/1";

    static final int MOST_NOTCHES = 20;
    static final int MOST_STANCES = 10;
    static final LengthLimits ACCURACY = new LengthLimits(0.001, 0.5);
    static final LengthLimits NOTCH = new LengthLimits(-0.5, 0.5);

    private RigFile() {}

    /**
     * Reads a rig file.
     *
     * @param document UTF-8
     * @throws InputRejected with every problem found
     */
    public static Rig parse(byte[] document) throws InputRejected {
        Problems problems = new Problems();
        return finish(JsonText.read(document, problems), problems);
    }

    /** As {@link #parse(byte[])}. */
    public static Rig parse(String document) throws InputRejected {
        Problems problems = new Problems();
        return finish(JsonText.read(document, problems), problems);
    }

    private static Rig finish(JsonNode root, Problems problems) throws InputRejected {
        Optional<Rig> rig = read(root, "", problems);
        problems.throwIfAny();
        return rig.orElseThrow();
    }

    /**
     * Reads a rig that is part of a larger document.
     *
     * @param node as read by {@link JsonText}
     * @param pointer where the node stands in the document
     * @param problems receives every mistake
     * @return empty exactly when a problem was added, or when {@code node} is missing
     */
    public static Optional<Rig> read(JsonNode node, String pointer, Problems problems) {
        if (node.isMissingNode()) {
            return Optional.empty();
        }
        int before = problems.count();
        JsonFields file = JsonFields.of(node, pointer, problems);
        file.word("cresthaul", List.of(FORMAT));
        String name = file.text("name", JsonFields.LONGEST_NAME);
        String note = file.findText("note", JsonFields.LONGEST_NOTE).orElse("");
        Optional<Uncertainty> measurement = uncertainty(file.object("measurement"));
        Optional<Uncertainty> ride = uncertainty(file.object("ride"));
        List<Notch> notches = notches(file);
        double lowest = notches.stream().mapToDouble(Notch::offsetM).min().orElse(Double.NaN);
        double highest = notches.stream().mapToDouble(Notch::offsetM).max().orElse(Double.NaN);
        List<LevelStance> stances = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (JsonFields stance : file.objects("stances", 1, MOST_STANCES)) {
            String stanceName = stance.text("name", JsonFields.LONGEST_NAME);
            if (!stanceName.isEmpty() && !names.add(stanceName)) {
                stance.problem(
                        "name",
                        "name-twice",
                        "Two stances are called \"" + stanceName + "\".",
                        "Give each stance its own name, such as \"loaded\" and \"empty\".");
            }
            Optional<LevelStance> read = new StanceReader(stance, stanceName, lowest, highest).read();
            read.ifPresent(stances::add);
            read.map(LeftOff::combinationsOf).orElse(List.of()).stream()
                    .skip(1)
                    .map(LevelStance::name)
                    .filter(one -> !names.add(one))
                    .forEach(one -> stance.problem(
                            "name",
                            "name-twice",
                            "A stance is called \"" + one + "\", as this one is with a unit left off.",
                            "Give that stance another name, or leave the state of the unit out."));
        }
        PlanTimes times = file.findObject("times")
                .map(t -> GivenTimes.read(t).over(PlanTimes.defaults()))
                .orElse(PlanTimes.defaults());
        Identity identity = file.findObject("identity").map(RigFile::identity).orElse(Identity.UNKNOWN);
        file.refuseOthers();
        if (problems.count() > before) {
            return Optional.empty();
        }
        return Optional.of(
                new Rig(name, note, measurement.orElseThrow(), ride.orElseThrow(), notches, stances, times, identity));
    }

    private static Identity identity(JsonFields fields) {
        Identity identity = new Identity(
                fields.findText("tractor", JsonFields.LONGEST_NAME),
                fields.findText("jeep", JsonFields.LONGEST_NAME),
                fields.findText("trailer", JsonFields.LONGEST_NAME),
                fields.findText("booster", JsonFields.LONGEST_NAME),
                fields.findText("load", JsonFields.LONGEST_NAME),
                fields.findObject("tires").map(RigFile::tires).orElse(Map.of()));
        fields.refuseOthers();
        return identity;
    }

    private static Map<AxleKind, String> tires(JsonFields fields) {
        Map<AxleKind, String> tires = new EnumMap<>(AxleKind.class);
        for (AxleKind kind : AxleKind.values()) {
            fields.findText(kind.word(), JsonFields.LONGEST_NAME).ifPresent(t -> tires.put(kind, t));
        }
        fields.refuseOthers();
        return tires;
    }

    private static Optional<Uncertainty> uncertainty(JsonFields fields) {
        int before = fields.problems().count();
        double accuracyM = fields.lengthM("accuracy", ACCURACY);
        String source = fields.text("source", JsonFields.LONGEST_NAME);
        fields.refuseOthers();
        return fields.isThere() && fields.problems().count() == before
                ? Optional.of(new Uncertainty(accuracyM, source))
                : Optional.empty();
    }

    private static List<Notch> notches(JsonFields file) {
        List<Notch> notches = new ArrayList<>();
        Set<String> names = new HashSet<>();
        boolean reference = false;
        double lastM = Double.NaN;
        List<JsonFields> items = file.objects("notches", 1, MOST_NOTCHES);
        int before = file.problems().count();
        for (JsonFields item : items) {
            String name = item.text("name", 40);
            double offsetM = item.lengthM("offset", NOTCH);
            item.refuseOthers();
            if (!name.isEmpty() && !names.add(name)) {
                item.problem("name", "notch-twice", "Notch \"" + name + "\" is listed twice.", "Keep one of them.");
            }
            if (offsetM == lastM) {
                item.problem("offset", "notch-twice", "Two notches have the same offset.", "Keep one of them.");
            } else if (offsetM < lastM) {
                item.problem(
                        "offset",
                        "notch-order",
                        "This notch is lower than the one before it.",
                        "List the notches from lowest to highest.");
            }
            lastM = Double.isNaN(offsetM) ? lastM : offsetM;
            reference |= offsetM == 0;
            if (!name.isEmpty() && !Double.isNaN(offsetM)) {
                notches.add(new Notch(name, offsetM));
            }
        }
        if (!items.isEmpty() && !reference && file.problems().count() == before) {
            file.problem(
                    "notches",
                    "reference-notch",
                    "No notch is the reference: none has the offset \"0 in\".",
                    "Measure the rig at one notch and give that notch the offset \"0 in\".");
        }
        return notches;
    }
}
