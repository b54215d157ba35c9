package org.cresthaul.exchange;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.cresthaul.exchange.osm.MapAlong;
import org.cresthaul.exchange.osm.MapCandidate;
import org.cresthaul.exchange.osm.MapExtract;
import org.cresthaul.exchange.osm.MapProgress;
import org.cresthaul.exchange.raster.RasterSource;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.exchange.track.LineMending;
import org.cresthaul.exchange.track.LineMending.MendedLeg;
import org.cresthaul.exchange.track.LineThinning;
import org.cresthaul.exchange.track.MarkedPlace;
import org.cresthaul.exchange.track.TrackContent;
import org.cresthaul.exchange.track.TrackNote;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.PassPoint;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteLine;
import org.cresthaul.units.InputRejected;

/** Makes a route file of tracks. The file is read back by the reader of routes before it is handed on. */
public final class RouteImport {
    /** Farthest that a marked place may be off the line to be on the route, meters: what a route file takes. */
    static final double NEAR_M = 30;

    private final Options options;
    private final List<TrackContent> contents;

    /**
     * How a route is made.
     *
     * @param name of the route; empty to take the first that a file gives
     * @param withinM how far leaving out points may move the line; 0 keeps all
     * @param longestGapM longest gap between pieces that is bridged
     * @param maps extracts of OpenStreetMap, to which the line is tied and along which hazards are looked for; may be
     *     empty
     * @param rasters heights of the land, of which the road at open candidates is sketched; may be empty
     * @param update a route file made before, whose hazards and stopping places are kept
     */
    public record Options(
            String name,
            double withinM,
            double longestGapM,
            List<MapExtract> maps,
            List<RasterSource> rasters,
            Optional<byte[]> update,
            MapProgress progress) {
        public Options {
            maps = List.copyOf(maps);
            rasters = List.copyOf(rasters);
        }
    }

    /** The route file, and what to tell before it is kept. */
    public record Imported(ImportPreview preview, Route route, byte[] document) {
        /** A copy. */
        @Override
        public byte[] document() {
            return document.clone();
        }
    }

    private RouteImport(List<TrackContent> contents, Options options) {
        this.contents = contents;
        this.options = options;
    }

    /**
     * Makes a route.
     *
     * @param contents at least one, in the order of travel
     * @throws InputRejected when no line can be made of them
     */
    public static Imported of(List<TrackContent> contents, Options options) throws InputRejected {
        return new RouteImport(contents, options).made();
    }

    private Imported made() throws InputRejected {
        LineMending.Mended mended =
                LineMending.of(contents.stream().flatMap(c -> c.legs().stream()).toList(), options.longestGapM());
        String name = name();
        RouteDocument document = options.update().isPresent()
                ? RouteDocument.read(options.update().get())
                : RouteDocument.of(name, "");
        Optional<MapAlong> along = options.maps().isEmpty()
                ? Optional.empty()
                : Optional.of(MapAlong.of(
                        options.maps(),
                        mended.legs().stream().map(MendedLeg::positions).toList(),
                        options.progress()));
        if (along.isPresent()) {
            document.removeOpenWithout(Candidate.NO_OBJECT);
        }
        int kept = 0;
        for (int k = 0; k < mended.legs().size(); k++) {
            MendedLeg leg = mended.legs().get(k);
            List<LonLat> thin =
                    along.isPresent() ? along.get().legs().get(k) : LineThinning.of(leg.positions(), options.withinM());
            document.addLeg(leg.name(), thin);
            kept += thin.size();
        }
        byte[] legsAlone = document.bytes();
        Route bare = RouteFile.parse(legsAlone);
        RouteLine line = bare.line();
        List<ImportPreview.PlaceOnLine> places = addPlaces(document, line);
        new GapFeatures(document, line).add(mended.gaps());
        List<MapCandidate> found = along.map(a -> found(a, bare)).orElse(List.of());
        List<TrackNote> notes = notes(mended, along);
        List<ImportPreview.Candidate> candidates = addCandidates(found, document, line, notes);
        boolean same = places.isEmpty() && mended.gaps().isEmpty() && found.isEmpty();
        byte[] bytes = same ? legsAlone : document.bytes();
        Route route = same ? bare : RouteFile.parse(bytes);
        List<ImportPreview.RasterUse> rasters = new SketchFeatures(document, route).add(options.rasters());
        if (rasters.stream().anyMatch(r -> r.sketches() > 0)) {
            bytes = document.bytes();
            route = RouteFile.parse(bytes);
        }
        ImportPreview preview = new ImportPreview(
                name,
                sources(),
                List.of(),
                route.lengthM(),
                contents.stream().mapToInt(TrackContent::points).sum(),
                kept,
                along.isPresent() ? 0 : options.withinM(),
                legs(route),
                notes,
                places,
                turns(route),
                along.map(a -> new ImportPreview.MapTie(
                                mapNames(), a.farthestM(), a.offRoadM(), ImportPreview.MapTie.ATTRIBUTION))
                        .orElse(null),
                candidates,
                along.isPresent() ? missing(candidates, document) : List.of(),
                rasters);
        return new Imported(preview, route, bytes);
    }

    private List<ImportPreview.Source> sources() {
        return contents.stream()
                .map(c -> new ImportPreview.Source(
                        c.file(), c.format(), c.points(), c.places().size()))
                .toList();
    }

    private static List<ImportPreview.Leg> legs(Route route) {
        return route.legs().stream()
                .map(l -> new ImportPreview.Leg(l.name(), l.startChainageM(), l.endChainageM()))
                .toList();
    }

    /** What the map has along the line and what it shows of the line itself, in the order of travel. */
    private static List<MapCandidate> found(MapAlong along, Route bare) {
        List<MapCandidate> found = new ArrayList<>(along.candidates());
        found.addAll(UnseenBends.of(along, bare));
        found.sort(Comparator.comparingDouble(MapCandidate::chainageM).thenComparing(MapCandidate::id));
        return found;
    }

    private List<TrackNote> notes(LineMending.Mended mended, Optional<MapAlong> along) {
        List<TrackNote> notes = new ArrayList<>();
        contents.forEach(c -> notes.addAll(c.notes()));
        notes.addAll(mended.notes());
        along.ifPresent(a -> a.notes()
                .forEach(n ->
                        notes.add(new TrackNote(n.extract(), TrackNote.Done.DOUBTFUL, n.code(), 0, 0, n.message()))));
        return notes;
    }

    /** What the map has; a candidate that somebody has surveyed or dismissed is left as it is. */
    private List<ImportPreview.Candidate> addCandidates(
            List<MapCandidate> found, RouteDocument document, RouteLine line, List<TrackNote> notes) {
        List<String> newer = new ArrayList<>();
        CandidateFeatures features = new CandidateFeatures(document, line, found);
        List<ImportPreview.Candidate> all = new ArrayList<>();
        for (MapCandidate c : found) {
            String state = document.candidateState(c.id());
            if (CandidateFeatures.isOlder(c, document.openDate(c.id())) && document.isOn(line, c.id())) {
                newer.add(c.id());
            } else if (state.isEmpty() || state.equals("open")) {
                document.remove(c.id());
                features.add(c);
            }
            LonLat at = features.at(c);
            all.add(new ImportPreview.Candidate(
                    c.id(),
                    c.kind(),
                    c.name(),
                    c.chainageM(),
                    c.fromM(),
                    c.toM(),
                    List.of(at.lonDeg(), at.latDeg()),
                    c.object(),
                    c.key(),
                    c.raw(),
                    c.value().isPresent() ? c.value().getAsDouble() : null,
                    c.tracks(),
                    state.isEmpty() ? "new" : state.equals("open") ? "known" : state,
                    isDoubtful(c)));
        }
        if (!newer.isEmpty()) {
            notes.add(new TrackNote(
                    mapNames(),
                    TrackNote.Done.DOUBTFUL,
                    "map-older",
                    0,
                    0,
                    "Of " + newer.size() + (newer.size() == 1 ? " candidate" : " candidates")
                            + " the route file has a later state than this map; it was kept. The first is "
                            + newer.get(0) + "."));
        }
        return List.copyOf(all);
    }

    private String mapNames() {
        return options.maps().stream().map(MapExtract::name).collect(Collectors.joining(", "));
    }

    private static List<ImportPreview.Missing> missing(
            List<ImportPreview.Candidate> candidates, RouteDocument document) {
        return document.mapCandidatesBut(
                candidates.stream().map(ImportPreview.Candidate::id).collect(Collectors.toSet()));
    }

    /** Where the map itself leaves open what is there, or says what cannot be used. */
    private static boolean isDoubtful(MapCandidate c) {
        return switch (c.kind()) {
            case MAP_INCOMPLETE, OFF_MAP -> true;
            case LIMIT -> c.value().isEmpty();
            default -> false;
        };
    }

    private String name() {
        if (!options.name().isEmpty()) {
            return options.name();
        }
        return contents.stream()
                .map(TrackContent::name)
                .filter(n -> !n.isEmpty())
                .findFirst()
                .orElse(contents.stream()
                        .flatMap(c -> c.legs().stream())
                        .map(l -> l.name())
                        .filter(n -> !n.isEmpty())
                        .findFirst()
                        .orElse(contents.stream().map(TrackContent::file).collect(Collectors.joining(", "))));
    }

    private List<ImportPreview.PlaceOnLine> addPlaces(RouteDocument document, RouteLine line) {
        List<ImportPreview.PlaceOnLine> all = new ArrayList<>();
        Set<String> before = document.waypoints();
        int number = 0;
        for (TrackContent content : contents) {
            for (MarkedPlace place : content.places()) {
                List<PassPoint> passages = line.passagesWithin(place.at(), NEAR_M);
                if (passages.isEmpty()) {
                    all.add(new ImportPreview.PlaceOnLine(null, place.name(), null, line.roughDistanceM(place.at())));
                    continue;
                }
                if (before.contains(place.name())) {
                    continue;
                }
                for (int k = 0; k < passages.size(); k++) {
                    number++;
                    String id = document.freeId("W" + (number < 10 ? "0" : "") + number);
                    ObjectNode properties = document.addPoint(place.at());
                    properties.put("place", "waypoint").put("id", id).put("name", place.name());
                    if (passages.size() > 1) {
                        properties.put("passage", k + 1);
                    }
                    PassPoint at = passages.get(k);
                    all.add(new ImportPreview.PlaceOnLine(id, place.name(), at.chainageM(), at.offsetM()));
                }
            }
        }
        return List.copyOf(all);
    }

    private static List<ImportPreview.Turn> turns(Route route) {
        return route.hazards().stream()
                .filter(h -> h.kind() == HazardKind.CORNER)
                .map(Hazard::place)
                .map(p -> new ImportPreview.Turn(
                        p.id(),
                        p.name(),
                        p.chainageM(),
                        List.of(p.position().lonDeg(), p.position().latDeg())))
                .toList();
    }
}
