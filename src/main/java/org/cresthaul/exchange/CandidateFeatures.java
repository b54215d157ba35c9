package org.cresthaul.exchange;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.cresthaul.exchange.osm.MapCandidate;
import org.cresthaul.exchange.osm.MapCandidate.Kind;
import org.cresthaul.exchange.track.PlainText;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.PassPoint;
import org.cresthaul.route.RouteLine;

/** Writes what a map has along the route as hazards of a route file, each an open candidate. */
final class CandidateFeatures {
    static final String LICENSE = "ODbL 1.0, \u00a9 OpenStreetMap contributors";
    /** How far a bridge or a height may reach from its point in a route file, meters. */
    private static final double FARTHEST_M = 2000;

    private static final double NEAR_M = 30;
    private static final int LONGEST_SOURCE = 200;

    /** A warning of low ground clearance this near to a crossing belongs to it, meters; this program's choice. */
    private static final double WARNED_AHEAD_M = 200;

    private static final int MOST_TRACKS = 50;

    private final RouteDocument document;
    private final RouteLine line;
    private final List<Double> warningsM;

    /** @param found all that the map has along the route */
    CandidateFeatures(RouteDocument document, RouteLine line, List<MapCandidate> found) {
        this.document = document;
        this.line = line;
        warningsM = found.stream()
                .filter(c -> c.kind() == Kind.LOW_GROUND_CLEARANCE)
                .map(MapCandidate::chainageM)
                .toList();
    }

    /** The place that stands for a candidate. */
    LonLat at(MapCandidate candidate) {
        return line.frameAt(Math.min(line.lengthM(), candidate.chainageM())).origin();
    }

    void add(MapCandidate candidate) {
        LonLat at = at(candidate);
        ObjectNode properties = document.addPoint(at);
        properties.put("hazard", hazard(candidate)).put("id", candidate.id()).put("name", candidate.name());
        passage(at, candidate.chainageM()).ifPresent(p -> properties.put("passage", p));
        Optional<LocalDate> date = date(candidate);
        special(candidate, date, properties);
        ObjectNode origin = properties.putObject("candidate");
        origin.put("source", "map").put("object", candidate.object());
        date.ifPresent(d -> origin.put("date", d.toString()));
        origin.put("license", LICENSE).put("raw", candidate.raw()).put("state", "open");
        if (hazard(candidate).equals("rail-crossing")) {
            rails(candidate, origin);
        }
    }

    private void rails(MapCandidate crossing, ObjectNode origin) {
        if (crossing.tracks() > 0) {
            origin.put("tracks", Math.min(MOST_TRACKS, crossing.tracks()));
        }
        crossing.crossedAtRad().ifPresent(a -> origin.put("angle", text(Math.toDegrees(a), 0) + " deg"));
        boolean warned = warningsM.stream()
                .anyMatch(w -> w >= crossing.fromM() - WARNED_AHEAD_M && w <= crossing.toM() + WARNED_AHEAD_M);
        if (warned) {
            origin.put("lowGroundSign", "posted");
        }
    }

    /** Which time the route passes a place; empty where it does so once. */
    private Optional<Integer> passage(LonLat at, double chainageM) {
        List<PassPoint> passages = line.passagesWithin(at, NEAR_M);
        int best = 0;
        for (int k = 1; k < passages.size(); k++) {
            if (Math.abs(passages.get(k).chainageM() - chainageM)
                    < Math.abs(passages.get(best).chainageM() - chainageM)) {
                best = k;
            }
        }
        return passages.size() > 1 ? Optional.of(best + 1) : Optional.empty();
    }

    private static Optional<LocalDate> date(MapCandidate candidate) {
        return candidate.timeS() <= 0
                ? Optional.empty()
                : Optional.of(LocalDate.ofInstant(Instant.ofEpochSecond(candidate.timeS()), ZoneOffset.UTC));
    }

    /**
     * Whether the map says something as of an earlier day than this one, written as in a route file; empty for none.
     */
    static boolean isOlder(MapCandidate candidate, String date) {
        return date(candidate).map(d -> d.toString().compareTo(date) < 0).orElse(false);
    }

    /** The kind of hazard that a candidate is judged as. */
    private static String hazard(MapCandidate candidate) {
        return switch (candidate.kind()) {
            case RAIL_CROSSING, MAP_INCOMPLETE -> "rail-crossing";
            case TRAM_CROSSING, FORMER_RAIL, HUMP, LOW_GROUND_CLEARANCE -> "crest";
            case DIP, FORD -> "dip";
            case STRUCTURE_OVER, TUNNEL -> "low-structure";
            case OVERHEAD_WIRE -> "overhead-wire";
            case ON_BRIDGE -> "posted-bridge";
            case MINI_ROUNDABOUT, TURN -> "corner";
            case BAN, BARRIER, OFF_MAP -> "stretch";
            case LIMIT -> isHeight(candidate) ? "low-structure" : "stretch";
        };
    }

    private static boolean isHeight(MapCandidate candidate) {
        return candidate.key().startsWith("maxheight");
    }

    private void special(MapCandidate candidate, Optional<LocalDate> date, ObjectNode properties) {
        switch (hazard(candidate)) {
            case "low-structure" -> {
                boolean reported =
                        candidate.kind() == Kind.LIMIT && candidate.value().isPresent();
                properties.put("measured", reported ? "reported" : "unknown");
                if (reported) {
                    properties.put("reportedBy", told(candidate));
                    properties.put("clearance", text(candidate.value().getAsDouble(), 4) + " m");
                    extent(candidate, FARTHEST_M, properties);
                }
            }
            case "overhead-wire" -> properties.put("measured", "unknown").put("carries", "power");
            case "posted-bridge" -> extent(candidate, FARTHEST_M, properties);
            case "stretch" -> {
                extent(candidate, Double.POSITIVE_INFINITY, properties);
                limits(candidate, date, properties);
            }
            default -> {
                // a point says all
            }
        }
    }

    private static String told(MapCandidate candidate) {
        return "OpenStreetMap, " + candidate.object() + ": " + candidate.raw();
    }

    private void extent(MapCandidate candidate, double farthestM, ObjectNode properties) {
        double from = Math.max(-farthestM, Math.min(-1, candidate.fromM() - candidate.chainageM()));
        double to = Math.min(farthestM, Math.max(1, candidate.toM() - candidate.chainageM()));
        properties.putArray("extent").add(text(from, 2) + " m").add(text(to, 2) + " m");
    }

    /** A weight is used as far as limits can say it, and where the map says as of when; else no load is known there. */
    private static void limits(MapCandidate candidate, Optional<LocalDate> date, ObjectNode properties) {
        String key = candidate.key();
        boolean gross = key.startsWith("maxweight");
        boolean axle = key.startsWith("maxaxleload");
        if (candidate.kind() != Kind.LIMIT || candidate.value().isEmpty() || date.isEmpty() || !gross && !axle) {
            return;
        }
        ObjectNode limits = properties.putObject("limits");
        String source = told(candidate);
        limits.put("source", PlainText.of(source, LONGEST_SOURCE))
                .put("date", date.get().toString())
                .put("origin", "reported")
                .put(gross ? "gross" : "axle", text(candidate.value().getAsDouble(), 3) + " kg");
    }

    private static String text(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}
