package org.cresthaul.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.check.SampleHaul;
import org.cresthaul.road.Corner;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.turning.Against;
import org.cresthaul.turning.Following;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** What is marked in the picture of a corner, against the geometry it was judged by. */
public class CornerViewTest {
    /** Places are told to 0.1 mm each way. */
    private static final double ROUNDED_M = 0.0005;
    /**
     * The mark stands where the part is in the nearest state, half a state's way from the least at most. There the room
     * changes by the square of the way alone: along a curve of a meter, far sharper than any that is driven, by that
     * over two.
     */
    private static final double BOUND_M = Math.pow(Following.STATE_M / 2, 2) / 2;

    private static final List<SampleHaul> HAULS =
            List.of(SampleHaul.of("alder-county", "lowbed-loaded"), SampleHaul.of("sorrel-valley", "lowbed-loaded"));

    private record Seen(RouteCorner corner, CornerView view) {}

    /** Every surveyed corner of two samples, short and long. */
    private static final List<Seen> SEEN = seen();

    private static List<Seen> seen() {
        List<Seen> all = new ArrayList<>();
        for (SampleHaul it : HAULS) {
            for (RouteCorner corner : it.route().hazards().stream()
                    .filter(RouteCorner.class::isInstance)
                    .map(RouteCorner.class::cast)
                    .filter(c -> c.shape().isPresent())
                    .toList()) {
                for (String key : List.of("down/none/1", "up/trailing/1")) {
                    all.add(new Seen(
                            corner, CornerView.of(it.whole(), corner.place().id(), key)));
                }
            }
        }
        return all;
    }

    private static double apartM(List<Double> a, List<Double> b) {
        return Math.hypot(a.get(0) - b.get(0), a.get(1) - b.get(1));
    }

    /** The mark is as long as the room is, its end is on an edge, and the room is the least the report tells. */
    @Test
    void theLeastRoomIsMarkedWhereItIs() {
        List<Seen> all = SEEN;
        int open = 0;
        for (Seen s : all) {
            CornerView.LeastView least = s.view.least();
            String what = s.view.hazard() + " " + s.view.configuration() + " " + least;
            double drawnM = Math.signum(least.roomM()) * apartM(least.at(), least.to());
            assertTrue(drawnM > least.roomM() - ROUNDED_M && drawnM < least.roomM() + BOUND_M, what + " " + drawnM);
            open += least.roomM() > 0 ? 1 : 0;
            Corner corner = s.corner.shape().orElseThrow();
            if (least.against() == Against.PAVEMENT && !s.view.escorts()) {
                Geometry to = new GeometryFactory()
                        .createPoint(
                                new Coordinate(least.to().get(0), least.to().get(1)));
                assertEquals(0, corner.pavement().getBoundary().distance(to), ROUNDED_M, what);
            }
        }
        assertTrue(all.size() >= 6, all.size() + " views");
        assertTrue(open >= 3, open + " with room");
    }

    /**
     * Own lane with its shoulder, and the opposing lane, before the turn and behind it, by hand from the route file: 12
     * ft and 4, 6 or 10 ft, and 12 ft; a foot is 0.3048 m.
     */
    @ParameterizedTest
    @CsvSource({"C1, 4.8768, 3.6576", "C2, 5.4864, 3.6576", "C3, 6.7056, 3.6576"})
    void theLanesAreAsWideAsTheyWereSurveyed(String corner, double ownM, double opposingM) {
        List<CornerView> views = SEEN.stream()
                .map(Seen::view)
                .filter(v -> v.hazard().equals(corner))
                .limit(2)
                .toList();
        assertEquals(2, views.size());
        for (CornerView view : views) {
            List<CornerView.WidthView> widths = view.widths();
            assertEquals(
                    List.of(true, false, true, false),
                    widths.stream().map(CornerView.WidthView::own).toList(),
                    view.configuration());
            for (CornerView.WidthView width : widths) {
                assertEquals(width.own() ? ownM : opposingM, width.widthM(), 0.001, corner + " " + widths);
                assertEquals(width.widthM(), apartM(width.from(), width.to()), ROUNDED_M, corner + " " + widths);
            }
        }
    }
}
