package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonQuantities;
import org.cresthaul.road.CornerTemplate;
import org.cresthaul.road.CornerTemplate.Layout;
import org.cresthaul.road.CornerTemplate.Median;
import org.cresthaul.road.CornerTemplate.Obstacle;
import org.cresthaul.road.CornerTemplate.PlanPoint;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.cresthaul.road.UTurn;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Problems;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** Reads the measures of a corner's template. */
final class CornerTemplateReader {
    static final LengthLimits LANES = new LengthLimits(2, 40);
    static final LengthLimits BESIDE = new LengthLimits(0, 40);
    static final LengthLimits RADIUS = new LengthLimits(0, 150);
    static final LengthLimits ISLAND = new LengthLimits(0.5, 100);
    static final LengthLimits PLACE = new LengthLimits(-150, 150);
    static final LengthLimits POLE = new LengthLimits(0.02, 10);
    /** Of curbs and islands; what is higher is an obstacle. */
    static final LengthLimits CURB = new LengthLimits(0, 1);

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final Problems problems;

    CornerTemplateReader(Problems problems) {
        this.problems = problems;
    }

    /** The template; empty after a problem. */
    Optional<CornerTemplate> read(JsonFields t) {
        if (!t.isThere()) {
            return Optional.empty();
        }
        int before = problems.count();
        CornerLayoutReader layouts = new CornerLayoutReader(t);
        String turn = t.word("turn", List.of("left", "right"));
        double angle = t.angleRad("angle", layouts.leastRad(), layouts.mostRad());
        boolean onLeft = onLeft(t);
        List<String> borrow = words(t, "borrow", layouts.borrowed());
        RoadWidths approach = road(t.object("approach"), borrow.contains("approach"));
        RoadWidths exit = layouts.isGate() ? approach : road(t.object("exit"), borrow.contains("exit"));
        double turnRad = turn.equals("left") ? angle : -angle;
        Layout layout = layouts.read(turnRad, onLeft, approach, exit, borrow);
        double apronM = t.findLengthM("apron", BESIDE).orElse(0);
        OptionalDouble curbHeight = t.findLengthM("curbHeight", CURB);
        List<Median> islands = new ArrayList<>();
        for (JsonFields island : t.findObjects("islands", 0, 50)) {
            List<PlanPoint> outline = outline(island, "outline");
            OptionalDouble height = island.findLengthM("height", CURB);
            if (outline.size() >= 3) {
                islands.add(new Median(outline, height));
            }
            island.refuseOthers();
        }
        List<Obstacle> obstacles = new ArrayList<>();
        for (JsonFields o : t.findObjects("obstacles", 0, 200)) {
            o.findText("name", JsonFields.LONGEST_NAME);
            if (!o.isThere()) {
                continue;
            }
            if (o.has("outline")) {
                List<PlanPoint> outline = outline(o, "outline");
                if (outline.size() >= 3) {
                    obstacles.add(new Obstacle(outline, 0));
                }
            } else {
                PlanPoint at = point(o.find("at"), o.pointer("at"));
                double radius = o.lengthM("radius", POLE);
                if (at != null && !Double.isNaN(radius)) {
                    obstacles.add(new Obstacle(List.of(at), radius));
                }
            }
            o.refuseOthers();
        }
        t.refuseOthers();
        if (problems.count() > before || Double.isNaN(apronM)) {
            return Optional.empty();
        }
        return Optional.of(new CornerTemplate(
                layout instanceof UTurn ? Math.copySign(Math.PI, turnRad) : turnRad,
                approach,
                exit,
                layout,
                apronM,
                islands,
                obstacles,
                curbHeight,
                onLeft));
    }

    /** Whether {@code drives} says that one drives on the left; on the right when nothing is said. */
    static boolean onLeft(JsonFields fields) {
        return fields.has("drives") && "left".equals(fields.word("drives", List.of("left", "right")));
    }

    private static List<String> words(JsonFields t, String key, List<String> known) {
        List<String> words = new ArrayList<>();
        List<JsonNode> items = t.findItems(key, 0, known.size()).orElse(List.of());
        for (int i = 0; i < items.size(); i++) {
            if (!items.get(i).isTextual() || !known.contains(items.get(i).textValue())) {
                t.problems()
                        .add(
                                "unknown-word",
                                key + " holds something else than " + String.join(", ", known) + ".",
                                t.pointer(key) + "/" + i,
                                "Name the road whose opposing lanes may be borrowed.");
            } else {
                words.add(items.get(i).textValue());
            }
        }
        return words;
    }

    private static RoadWidths road(JsonFields road, boolean borrow) {
        int before = road.problems().count();
        RoadWidths widths = widths(road, borrow);
        road.refuseOthers();
        return road.problems().count() == before ? widths : null;
    }

    /** Lanes and shoulder; whoever asks refuses what else is there. Null after a problem. */
    static RoadWidths widths(JsonFields road, boolean borrow) {
        int before = road.problems().count();
        double own = road.lengthM("own", LANES);
        double opposing = road.lengthM("opposing", BESIDE);
        double shoulder = road.findLengthM("shoulder", BESIDE).orElse(0);
        return road.isThere() && road.problems().count() == before
                ? new RoadWidths(own, opposing, shoulder, borrow)
                : null;
    }

    private List<PlanPoint> outline(JsonFields fields, String key) {
        List<PlanPoint> points = new ArrayList<>();
        List<JsonNode> items = fields.items(key, 3, CornerReader.MOST_POINTS);
        int before = problems.count();
        for (int i = 0; i < items.size(); i++) {
            PlanPoint p = point(items.get(i), fields.pointer(key) + "/" + i);
            if (p != null) {
                points.add(p);
            }
        }
        if (problems.count() == before && points.size() >= 3) {
            Coordinate[] ring = new Coordinate[points.size() + 1];
            for (int i = 0; i <= points.size(); i++) {
                PlanPoint p = points.get(i % points.size());
                ring[i] = new Coordinate(p.xM(), p.yM());
            }
            CornerReader.requireValid(problems, GEOMETRY.createPolygon(ring), fields.pointer(key));
        }
        return points;
    }

    private PlanPoint point(JsonNode node, String at) {
        if (!node.isArray() || node.size() != 2) {
            problems.add(
                    node.isMissingNode() ? "missing" : "wrong-type",
                    "A place is two lengths.",
                    at,
                    "Write [\"12 ft\", \"-30 ft\"]: along the approach, and to its left.");
            return null;
        }
        double x = JsonQuantities.lengthM(node.get(0), at + "/0", "x", PLACE, problems);
        double y = JsonQuantities.lengthM(node.get(1), at + "/1", "y", PLACE, problems);
        return Double.isNaN(x) || Double.isNaN(y) ? null : new PlanPoint(x, y);
    }
}
