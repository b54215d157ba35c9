package org.cresthaul.exchange;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.cresthaul.exchange.track.LineMending.Gap;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.PassPoint;
import org.cresthaul.route.RouteLine;

/**
 * Writes stretches of which no track says anything as stretches where nothing is known: a route with one is not clear.
 */
final class GapFeatures {
    /** What such a candidate says it comes from. */
    static final String OBJECT = "the track";

    private static final double NEAR_M = 30;

    private final RouteDocument document;
    private final RouteLine line;
    /** Gaps come in the order of travel. */
    private double soFarM;

    GapFeatures(RouteDocument document, RouteLine line) {
        this.document = document;
        this.line = line;
    }

    void add(List<Gap> gaps) {
        for (Gap gap : gaps) {
            double fromM = next(gap.from());
            double toM = Math.max(next(gap.to()), fromM + 2);
            double middleM = Math.min(line.lengthM(), (fromM + toM) / 2);
            LonLat at = line.frameAt(middleM).origin();
            ObjectNode properties = document.addPoint(at);
            properties
                    .put("hazard", "stretch")
                    .put("id", document.freeId("gap-1"))
                    .put("name", "Gap in the track");
            List<PassPoint> passages = line.passagesWithin(at, NEAR_M);
            for (int k = 0; k < passages.size() && passages.size() > 1; k++) {
                if (Math.abs(passages.get(k).chainageM() - middleM) < NEAR_M) {
                    properties.put("passage", k + 1);
                }
            }
            properties
                    .putArray("extent")
                    .add(String.format(Locale.ROOT, "%.2f m", fromM - middleM))
                    .add(String.format(Locale.ROOT, "%.2f m", toM - middleM));
            properties
                    .putObject("candidate")
                    .put("source", "person")
                    .put("object", OBJECT)
                    .put("raw", "nothing is known of this stretch; it was taken as driven straight")
                    .put("state", "open");
            soFarM = toM;
        }
    }

    private double next(LonLat place) {
        return line.passagesWithin(place, NEAR_M).stream()
                .map(PassPoint::chainageM)
                .filter(c -> c >= soFarM)
                .min(Comparator.naturalOrder())
                .orElse(soFarM);
    }
}
