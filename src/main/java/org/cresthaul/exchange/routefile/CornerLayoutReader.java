package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonQuantities;
import org.cresthaul.road.Bend;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.CornerTemplate.Layout;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.cresthaul.road.CornerTemplate.Roundabout;
import org.cresthaul.road.Fork;
import org.cresthaul.road.Gate;
import org.cresthaul.road.OffsetCrossroads;
import org.cresthaul.road.UTurn;
import org.cresthaul.units.LengthLimits;

/**
 * Reads how the roads of a template are joined: one of several layouts, of which most are told under a key of their
 * own.
 */
final class CornerLayoutReader {
    private static final LengthLimits WIDE = new LengthLimits(0, 100);
    private static final LengthLimits OPENING = new LengthLimits(2, 150);
    private static final LengthLimits GATE = new LengthLimits(2, 60);
    private static final LengthLimits BEND = new LengthLimits(2, 60);
    private static final LengthLimits OFFSET = new LengthLimits(1, 120);
    private static final double A_LITTLE_RAD = Math.toRadians(0.1);
    private static final List<String> KEYS = List.of("roundabout", "uTurn", "bend", "fork", "crossing", "gate");

    private final JsonFields template;
    /** The key there is; empty when the roads are joined by a return alone. */
    private final String key;

    CornerLayoutReader(JsonFields template) {
        this.template = template;
        List<String> there = new ArrayList<>(KEYS.stream().filter(template::has).toList());
        key = there.isEmpty() ? "" : there.get(0);
        for (String other : there.subList(Math.min(1, there.size()), there.size())) {
            template.problem(
                    other,
                    "two-layouts",
                    "A corner is " + key + " or " + other + ", not both.",
                    "Keep the one that the roads look like, or draw the pavement.");
        }
    }

    boolean isGate() {
        return key.equals("gate");
    }

    double leastRad() {
        return switch (key) {
            case "roundabout", "fork" -> 0;
            case "uTurn" -> Math.PI - A_LITTLE_RAD;
            case "crossing", "gate" -> Math.toRadians(30);
            default -> Math.toRadians(20);
        };
    }

    double mostRad() {
        return switch (key) {
            case "roundabout", "bend" -> Math.PI;
            case "uTurn" -> Math.PI + A_LITTLE_RAD;
            case "fork" -> Math.PI - Fork.LEAST_BETWEEN_RAD;
            default -> Math.toRadians(150);
        };
    }

    /** Roads whose opposing lanes may be said to be borrowed. */
    List<String> borrowed() {
        return switch (key) {
            case "fork" -> List.of("approach", "exit", "third");
            case "crossing" -> List.of("approach", "exit", "crossing");
            case "gate" -> List.of("approach");
            default -> List.of("approach", "exit");
        };
    }

    /** The layout; null after a problem. The road widths are null where they could not be read. */
    Layout read(double turnRad, boolean onLeft, RoadWidths approach, RoadWidths exit, List<String> borrow) {
        boolean curb = List.of("", "fork", "crossing").contains(key);
        if (!curb && template.has("curb")) {
            template.problem(
                    "curb",
                    key.equals("roundabout") ? "curb-on-roundabout" : "curb-elsewhere",
                    "This corner has its curb returns in \"" + key + "\".",
                    "Leave \"curb\" out.");
            template.find("curb");
        }
        CurbReturn first = curb ? curb(template.object("curb")) : null;
        if (key.isEmpty()) {
            return first;
        }
        JsonFields fields = template.object(key);
        int before = fields.problems().count();
        Layout layout =
                switch (key) {
                    case "roundabout" -> roundabout(fields);
                    case "uTurn" -> uTurn(fields, turnRad, onLeft, approach, exit);
                    case "bend" -> bend(fields, approach, exit);
                    case "fork" -> fork(fields, turnRad, first, borrow.contains("third"));
                    case "crossing" -> crossing(fields, first, borrow.contains("crossing"));
                    default -> gate(fields);
                };
        fields.refuseOthers();
        return fields.isThere() && fields.problems().count() == before ? layout : null;
    }

    private UTurn uTurn(JsonFields back, double turnRad, boolean onLeft, RoadWidths approach, RoadWidths exit) {
        int before = back.problems().count();
        double median = back.lengthM("median", WIDE);
        double opening = back.lengthM("opening", OPENING);
        double nose = back.findLengthM("nose", WIDE).orElse(0);
        Optional<JsonFields> loon = back.findObject("loon");
        double depth = loon.map(l -> l.lengthM("depth", WIDE)).orElse(0.0);
        double length = loon.map(l -> l.lengthM("length", WIDE)).orElse(0.0);
        loon.ifPresent(JsonFields::refuseOthers);
        if (nose > median / 2) {
            back.problem(
                    "nose",
                    "order",
                    "The median's ends cannot be rounder than half its width.",
                    "Give the radius of the median's corners; leave it out where they are square.");
        }
        if (!Double.isNaN(turnRad) && turnRad > 0 == onLeft) {
            template.problem(
                    "turn",
                    "wrong-side",
                    "One turns back across the side of the opposing traffic.",
                    "Give the other turn, say what side one drives on, or use \"bend\" for a loop.");
        }
        for (String road : List.of("approach", "exit")) {
            RoadWidths widths = road.equals("approach") ? approach : exit;
            if (widths != null && widths.opposingM() > 0) {
                template.problem(
                        road,
                        "opposing-on-u-turn",
                        "At a U-turn approach and exit oppose each other; " + road + " has no further opposing lanes.",
                        "Give \"opposing\": \"0 m\".");
            }
        }
        return back.problems().count() == before ? new UTurn(median, opening, nose, depth, length) : null;
    }

    private static Bend bend(JsonFields bend, RoadWidths approach, RoadWidths exit) {
        int before = bend.problems().count();
        double radius = bend.lengthM("radius", CornerTemplateReader.ISLAND);
        double width = bend.lengthM("width", BEND);
        if (approach != null
                && exit != null
                && width < Math.min(approach.ownM() + approach.opposingM(), exit.ownM() + exit.opposingM())) {
            bend.problem(
                    "width",
                    "order",
                    "The bend is narrower than the lanes of both roads.",
                    "Give its width from edge to edge with all lanes and shoulders.");
        }
        return bend.problems().count() == before ? new Bend(radius, width) : null;
    }

    private static Fork fork(JsonFields fork, double turnRad, CurbReturn inside, boolean borrow) {
        int before = fork.problems().count();
        JsonFields third = fork.object("third");
        String side = third.word("turn", List.of("left", "right"));
        double angle = third.angleRad("angle", 0, Math.PI - Fork.LEAST_BETWEEN_RAD);
        RoadWidths widths = CornerTemplateReader.widths(third, borrow);
        third.refuseOthers();
        double nose = fork.lengthM("nose", CornerTemplateReader.RADIUS);
        if (fork.problems().count() > before || !third.isThere() || inside == null) {
            return null;
        }
        Fork found = new Fork(widths, side.equals("left") ? angle : -angle, inside, nose);
        if (!found.isApartFrom(turnRad)) {
            third.problem(
                    "angle",
                    "third-on-exit",
                    "The third road lies on the exit: between roads there are 15 degrees.",
                    "Both angles are from straight on, each to its own side.");
        }
        return found;
    }

    private static OffsetCrossroads crossing(JsonFields crossing, CurbReturn first, boolean borrow) {
        int before = crossing.problems().count();
        RoadWidths widths = CornerTemplateReader.widths(crossing, borrow);
        double offset = crossing.lengthM("offset", OFFSET);
        CurbReturn second =
                crossing.findObject("curb").map(CornerLayoutReader::curb).orElse(first);
        return crossing.problems().count() == before && first != null
                ? new OffsetCrossroads(widths, offset, first, second)
                : null;
    }

    private Gate gate(JsonFields gate) {
        int before = gate.problems().count();
        double width = gate.lengthM("width", GATE);
        double near = gate.lengthM("near", CornerTemplateReader.RADIUS);
        double far = gate.lengthM("far", CornerTemplateReader.RADIUS);
        if (template.has("exit")) {
            template.problem(
                    "exit", "exit-at-gate", "The drive behind a gate is as wide as the gate.", "Leave \"exit\" out.");
            template.find("exit");
        }
        return gate.problems().count() == before ? new Gate(width, near, far) : null;
    }

    private static CurbReturn curb(JsonFields curb) {
        int before = curb.problems().count();
        if (!curb.has("radii")) {
            double radius = curb.lengthM("radius", CornerTemplateReader.RADIUS);
            curb.refuseOthers();
            return curb.isThere() && curb.problems().count() == before ? CurbReturn.single(radius) : null;
        }
        double[] radii = {Double.NaN, Double.NaN, Double.NaN};
        List<JsonNode> items = curb.items("radii", 3, 3);
        for (int i = 0; i < items.size(); i++) {
            radii[i] = JsonQuantities.lengthM(
                    items.get(i),
                    curb.pointer("radii") + "/" + i,
                    "A radius",
                    CornerTemplateReader.RADIUS,
                    curb.problems());
        }
        double offset = curb.lengthM("offset", CornerTemplateReader.BESIDE);
        if (radii[0] < radii[1] + offset || radii[2] < radii[1] + offset) {
            curb.problem(
                    "radii",
                    "order",
                    "The middle radius and the offset are more than an outer radius.",
                    "Give first, middle, last; the middle one is the tightest.");
        }
        curb.refuseOthers();
        return curb.problems().count() == before ? new CurbReturn(radii[0], radii[1], radii[2], offset) : null;
    }

    private static Roundabout roundabout(JsonFields round) {
        int before = round.problems().count();
        double outer = round.lengthM("outer", CornerTemplateReader.ISLAND);
        double island = round.lengthM("island", CornerTemplateReader.ISLAND);
        double curb = round.lengthM("curb", CornerTemplateReader.RADIUS);
        if (outer < island + 2) {
            round.problem(
                    "outer",
                    "order",
                    "The roundabout's outer radius leaves no lane around its island.",
                    "Give the radius of the outer edge; it is larger than the island's.");
        }
        OptionalDouble height = round.findLengthM("islandHeight", CornerTemplateReader.CURB);
        round.refuseOthers();
        return round.isThere() && round.problems().count() == before
                ? new Roundabout(outer, island, curb, height)
                : null;
    }
}
