package org.cresthaul.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.cresthaul.check.CheckedConfiguration;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.language.Catalog;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Margins;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.view.PassageView;
import org.junit.jupiter.api.Test;

/** The side view on paper: what is drawn into one another is hatched in red, and the tightest point is marked. */
class SideDrawingTest {
    private static final String WIRE = """
            {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Short road", "note": "Invented for the tests.",
             "features": [
              {"type": "Feature", "properties": {"route": "County road"},
               "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}},
              {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.09, 44.6]},
               "properties": {"hazard": "overhead-wire", "id": "H01", "name": "Line", "carries": "communication",
                "measured": "declared", "clearance": "2 m", "extent": ["-1 m", "1 m"]}}]}
            """;

    private static SideDrawing drawing(String text, boolean overhead) throws Exception {
        Route route = RouteFile.parse(text);
        Rig rig = RigFile.parse(RigTexts.RIG);
        String key =
                CheckedConfiguration.listOf(rig, rig.stances().get(0)).get(0).key();
        PassageView view = PassageView.of(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()),
                "H01",
                key,
                Optional.empty(),
                Optional.empty(),
                0,
                0);
        return new SideDrawing(view, overhead, "gap", overhead, Catalog.ENGLISH);
    }

    /** A crossing of two meters' height, as high as no lowbed's deck, and one that is level. */
    private static String crossing(String topM) {
        return RouteTexts.ROUTE.replace("0.3 m", topM).replace("1.5 %", "0 %").replace("-1 %", "0 %");
    }

    private static List<Drawing.Path> red(Drawing drawing) {
        return drawing.shapes().stream()
                .filter(s -> s instanceof Drawing.Path p && p.stroke() == Ink.CONTACT)
                .map(s -> (Drawing.Path) s)
                .toList();
    }

    private static Point mark(Drawing drawing) {
        return drawing.shapes().stream()
                .filter(s -> s instanceof Drawing.Circle c && c.stroke() == Ink.CONTACT)
                .map(s -> ((Drawing.Circle) s).center())
                .findFirst()
                .orElseThrow();
    }

    @Test
    void contactIsHatchedWhereTheTightestPointIsMarked() throws Exception {
        Drawing whole = drawing(crossing("2 m"), false).whole();
        List<Drawing.Path> red = red(whole);
        assertTrue(red.size() >= 2, "outline and hatch: " + red.size());
        Point mark = mark(whole);
        assertTrue(
                red.stream().filter(Drawing.Path::closed).anyMatch(outline -> holds(outline, mark)),
                mark + " in " + red);
        assertTrue(red.stream().anyMatch(p -> !p.closed() && !p.lines().isEmpty()), "strokes: " + red);
    }

    /** Within the outline's box, as the middle of a gap is that has the outline's edges for its ends. */
    private static boolean holds(Drawing.Path outline, Point p) {
        List<Point> points = outline.lines().get(0);
        return points.stream().mapToDouble(Point::x).min().orElseThrow() <= p.x()
                && points.stream().mapToDouble(Point::x).max().orElseThrow() >= p.x()
                && points.stream().mapToDouble(Point::y).min().orElseThrow() <= p.y()
                && points.stream().mapToDouble(Point::y).max().orElseThrow() >= p.y();
    }

    @Test
    void whatOnlyComesNearIsMarkedAndNotHatched() throws Exception {
        Drawing whole = drawing(crossing("0.1 m"), false).whole();
        assertEquals(List.of(), red(whole));
        Point mark = mark(whole);
        assertTrue(mark.x() > 0 && mark.x() < whole.width() && mark.y() > 0 && mark.y() < whole.height());
    }

    /** A line has nothing above it to reach into. */
    @Test
    void aWireIsDrawnWithoutHatch() throws Exception {
        Drawing whole = drawing(WIRE, true).whole();
        assertEquals(List.of(), red(whole));
        mark(whole);
    }

    /** Of a square of 10 on the side that stands 4 deep in the ground, 10 by 4 are hatched: by hand. */
    @Test
    void theHatchIsTheCommonArea() {
        List<Point> body = List.of(new Point(0, 0), new Point(10, 0), new Point(10, 10), new Point(0, 10));
        List<Point> earth = List.of(new Point(-5, 6), new Point(50, 6), new Point(50, 60), new Point(-5, 60));
        List<Drawing.Shape> hatched = Overlap.of(List.of(body), List.of(earth));
        assertEquals(2, hatched.size());
        for (Drawing.Shape shape : hatched) {
            for (List<Point> line : ((Drawing.Path) shape).lines()) {
                for (Point p : line) {
                    assertTrue(p.x() >= -1e-9 && p.x() <= 10 + 1e-9 && p.y() >= 6 - 1e-9 && p.y() <= 10 + 1e-9, "" + p);
                }
            }
        }
        List<Point> resting = List.of(new Point(0, -4), new Point(10, -4), new Point(10, 6), new Point(0, 6));
        assertEquals(List.of(), Overlap.of(List.of(resting), List.of(earth)));
        assertEquals(List.of(), Overlap.of(List.of(body), List.of()));
    }
}
