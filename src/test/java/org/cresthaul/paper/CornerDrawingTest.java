package org.cresthaul.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.CornerLayoutFileTest;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.language.Catalog;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Route;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.view.CornerView;
import org.junit.jupiter.api.Test;

/** The picture of a corner on the sheet: nothing of the turn is cut off, and its marks are lettered. */
class CornerDrawingTest {
    private static CornerView view(String text) throws Exception {
        Route route = RouteFile.parse(text);
        Rig rig = RigFile.parse(RigTexts.RIG);
        String key = RouteCheck.check(
                        new Haul(route, rig, rig.stances().get(0), Margins.defaults()), new Inputs("0", "0"))
                .configurations()
                .get(0)
                .key();
        return CornerView.of(new Haul(route, rig, rig.stances().get(0), Margins.defaults()), "C1", key);
    }

    @Test
    void aTurnBackIsHeldWhole() throws Exception {
        // 45 m between the roadways: farther than the 42 m that were drawn.
        CornerView view = view(CornerLayoutFileTest.U_TURN_WIDE);
        double reach = CornerDrawing.turning(view).stream()
                .mapToDouble(p -> Math.max(Math.abs(p.get(0)), Math.abs(p.get(1))))
                .max()
                .orElseThrow();
        assertTrue(reach > 46, "the turn reaches " + reach);
        Drawing drawing = CornerDrawing.of(
                view, OptionalDouble.empty(), new RoundedFigures(UnitSystem.US_CUSTOMARY), Catalog.ENGLISH);
        // The body where the steer axle turns farthest: the same transform as the line's, which is drawn last but the
        // marks.
        Drawing.Path line = drawing.shapes().stream()
                .filter(s -> s instanceof Drawing.Path p && p.stroke() == Ink.GUIDE)
                .map(s -> (Drawing.Path) s)
                .findFirst()
                .orElseThrow();
        List<Drawing.Point> at = line.lines().get(0);
        int seen = 0;
        for (int i = 0; i < view.positions().size(); i++) {
            CornerView.PositionView p = view.positions().get(i);
            if (Math.abs(p.steerRad()) > 0.01 || p.articulationRad().stream().anyMatch(a -> Math.abs(a) > 0.01)) {
                seen++;
                assertTrue(
                        at.get(i).x() > 0
                                && at.get(i).x() < drawing.width()
                                && at.get(i).y() > 0
                                && at.get(i).y() < drawing.height(),
                        "state " + i + " at " + at.get(i));
            }
        }
        assertTrue(seen > 30, "states looked at: " + seen);
    }

    /** What is lettered is what the view has, which CornerViewTest holds to the geometry. */
    @Test
    void widthsAndTheLeastRoomAreLetteredBesideTheirLines() throws Exception {
        CornerView view = view(CornerLayoutFileTest.GATE);
        RoundedFigures figures = new RoundedFigures(UnitSystem.US_CUSTOMARY);
        List<String> told =
                CornerDrawing.of(view, OptionalDouble.of(12.192), figures, Catalog.ENGLISH).shapes().stream()
                        .filter(s -> s instanceof Drawing.Lettering)
                        .map(s -> ((Drawing.Lettering) s).text())
                        .filter(text -> text.length() > 1)
                        .toList();
        List<String> expected = new ArrayList<>();
        expected.add("R 40 ft");
        view.widths().forEach(w -> expected.add(figures.dimension(w.widthM())));
        if (view.least().roomM() >= 0) {
            expected.add(figures.clearance(view.least().roomM()));
        }
        assertTrue(!view.widths().isEmpty() && expected.containsAll(told) && !told.isEmpty(), told + " of " + expected);
        assertTrue(told.contains("R 40 ft"), "12.192 m are 40 ft, beside the line: " + told);
    }

    /** Nine high, six wide a letter at most; a mark is a circle of seven. */
    @Test
    void theRadiusIsLetteredBesideTheLineAndItsMarks() throws Exception {
        CornerView view = view(CornerLayoutFileTest.GATE);
        List<Drawing.Shape> shapes = CornerDrawing.of(
                        view, OptionalDouble.of(12.192), new RoundedFigures(UnitSystem.US_CUSTOMARY), Catalog.ENGLISH)
                .shapes();
        Drawing.Point label = shapes.stream()
                .filter(s -> s instanceof Drawing.Lettering l && l.text().equals("R 40 ft"))
                .map(s -> ((Drawing.Lettering) s).at())
                .findFirst()
                .orElseThrow();
        List<Drawing.Point> driven = shapes.stream()
                .filter(s -> s instanceof Drawing.Path p && p.stroke() == Ink.GUIDE && p.strokeWidth() > 1)
                .flatMap(s -> ((Drawing.Path) s).lines().get(0).stream())
                .toList();
        assertTrue(driven.size() > 30, "the line: " + driven.size());
        for (Drawing.Point p : driven) {
            assertTrue(
                    Math.abs(p.x() - label.x()) > 7 * 6 / 2 || Math.abs(p.y() - (label.y() - 3)) > 9 / 2.0,
                    "the line runs over it at " + p);
        }
        for (Drawing.Shape shape : shapes) {
            if (shape instanceof Drawing.Circle c && c.radius() == 7) {
                assertTrue(
                        Math.abs(c.center().x() - label.x()) > 7 * 6 / 2.0
                                || Math.abs(c.center().y() - (label.y() - 3)) > 9 / 2.0 + 7,
                        "a mark is on it at " + c.center());
            }
        }
    }

    @Test
    void marksAreLetteredInTheOrderTheyAreDriven() throws Exception {
        CornerView view = view(CornerLayoutFileTest.GATE);
        List<String> letters = CornerDrawing.of(
                        view, OptionalDouble.empty(), new RoundedFigures(UnitSystem.US_CUSTOMARY), Catalog.ENGLISH)
                .shapes()
                .stream()
                .filter(s -> s instanceof Drawing.Lettering)
                .map(s -> ((Drawing.Lettering) s).text())
                .filter(text -> text.length() == 1 && !text.equals("N"))
                .toList();
        assertEquals("A", letters.get(0));
        assertTrue(letters.size() >= 3 && letters.size() <= view.marks().size(), letters.toString());
        String words = CornerDrawing.marksInWords(view, Catalog.ENGLISH);
        assertTrue(
                words.contains("A wheel over to the ") && words.contains("abreast of where the curb return begins"),
                words);
        int before = -1;
        for (CornerView.MarkView mark : view.marks()) {
            assertTrue(mark.position() >= before, view.marks().toString());
            before = mark.position();
        }
    }

    /** The arrow against the same line on the map: their angle to each other is the same in both. */
    @Test
    void northIsWhereTheMapHasIt() throws Exception {
        CornerView view = view(CornerLayoutFileTest.GATE);
        List<Drawing.Shape> shapes = CornerDrawing.of(
                        view, OptionalDouble.empty(), new RoundedFigures(UnitSystem.US_CUSTOMARY), Catalog.ENGLISH)
                .shapes();
        int letter = shapes.indexOf(shapes.stream()
                .filter(s -> s instanceof Drawing.Lettering l && l.text().equals("N"))
                .findFirst()
                .orElseThrow());
        List<Drawing.Point> shaft =
                ((Drawing.Path) shapes.get(letter - 2)).lines().get(0);
        double drawnNorth = bearing(shaft.get(0), shaft.get(1));
        List<Drawing.Point> line = shapes.stream()
                .filter(s -> s instanceof Drawing.Path p && p.stroke() == Ink.GUIDE)
                .map(s -> ((Drawing.Path) s).lines().get(0))
                .findFirst()
                .orElseThrow();
        int last = line.size() - 1;
        double drawn = bearing(line.get(0), line.get(last));
        List<Double> from = view.leadLonLat().get(0);
        List<Double> to = view.leadLonLat().get(last);
        double onMap =
                Math.atan2((to.get(0) - from.get(0)) * Math.cos(Math.toRadians(from.get(1))), to.get(1) - from.get(1));
        // Eight digits of a degree are a millimeter of some 50 m; the sphere's parallels bend less than that.
        assertEquals(0, Math.IEEEremainder(drawn - drawnNorth - onMap, 2 * Math.PI), 0.01);
    }

    /** Clockwise from up. */
    private static double bearing(Drawing.Point from, Drawing.Point to) {
        return Math.atan2(to.x() - from.x(), from.y() - to.y());
    }
}
