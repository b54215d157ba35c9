package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.route.RailCrossing;

/**
 * Where the deck goes up before places that are passed on one raise, and down after them: stretches of road for the
 * front of the combination, on which no part of it stands at a place, on tracks, or across the next stop line or
 * junction beyond a crossing.
 */
final class LiftStops {
    private static final double HAIR_M = 1e-6;

    private final List<PlanPlace> places;
    private final RouteLayout layout;
    private final double routeM;
    private final List<Line> lines;

    /**
     * Where the front may stand.
     *
     * @param fromM chainage of the front, at the earliest
     * @param toM at the latest; as {@code fromM} where there is no room
     * @param lacks why nothing shows that the combination may stand here, or empty
     */
    record Window(double fromM, double toM, Optional<Sentence> lacks) {}

    /** The next stop line or junction beyond a crossing. */
    private record Line(PlanPlace crossing, double atM) {
        boolean isUnder(double frontM, double lengthM) {
            return frontM > atM + HAIR_M && frontM - lengthM < atM - HAIR_M;
        }
    }

    LiftStops(List<PlanPlace> places, RouteLayout layout, double routeM) {
        this.places = places;
        this.layout = layout;
        this.routeM = routeM;
        lines = places.stream()
                .flatMap(p -> p.hazard().filter(RailCrossing.class::isInstance).map(RailCrossing.class::cast).stream()
                        .filter(x -> x.traffic().storageM().isPresent())
                        .map(x -> new Line(
                                p,
                                p.chainageM()
                                        + CrossingTimes.farRailM(x)
                                        + x.traffic().storageM().getAsDouble())))
                .toList();
    }

    /** The place whose end the rear leaves last: not always the one the front meets last. */
    static int lastLeft(RouteLayout.Cluster cluster, List<PlanPlace> places) {
        return cluster.places().stream()
                .max(Comparator.comparingDouble(p -> places.get(p).toM()))
                .orElseThrow();
    }

    /** Where the deck goes up before a cluster: as late as can be. */
    Window up(int k, double lengthM) {
        RouteLayout.Cluster cluster = layout.clusters().get(k);
        double earliestM = Math.max(layout.startM(cluster.segment()), k == 0 ? 0 : leftM(k - 1, lengthM));
        double latestM = cluster.fromM();
        PlanPlace first = places.get(cluster.places().get(0));
        if (latestM < earliestM - HAIR_M) {
            return none(Math.max(0, latestM), Sentence.of(Code.LACKS_BEGINS).with("place", first.id()));
        }
        double atM = latestM;
        for (boolean moved = true; moved; ) {
            moved = false;
            for (Line line : lines) {
                if (line.isUnder(atM, lengthM)) {
                    atM = line.atM;
                    moved = true;
                }
            }
        }
        if (atM < earliestM - HAIR_M) {
            return none(
                    latestM,
                    Sentence.of(Code.LACKS_RAISING).with("place", first.id()).with("across", across(latestM, lengthM)));
        }
        double from = earliestM;
        for (Line line : lines) {
            // Standing any earlier than this would be across the line.
            if (line.atM + lengthM <= atM + HAIR_M) {
                from = Math.max(from, line.atM + lengthM);
            }
        }
        return new Window(Math.min(from, atM), atM, Optional.empty());
    }

    /** Where it goes down after a cluster: as soon as the rear has left the last of its places. */
    Window down(int k, double lengthM) {
        RouteLayout.Cluster cluster = layout.clusters().get(k);
        double earliestM = leftM(k, lengthM);
        double latestM = Math.min(
                layout.endM(cluster.segment(), routeM),
                k + 1 < layout.clusters().size() ? layout.clusters().get(k + 1).fromM() : routeM);
        PlanPlace last = places.get(lastLeft(cluster, places));
        if (earliestM > routeM + HAIR_M) {
            return none(routeM, Sentence.of(Code.LACKS_ENDS).with("place", last.id()));
        }
        double atM = earliestM;
        for (boolean moved = true; moved; ) {
            moved = false;
            for (Line line : lines) {
                if (line.isUnder(atM, lengthM)) {
                    atM = line.atM + lengthM;
                    moved = true;
                }
            }
        }
        if (atM > latestM + HAIR_M) {
            return none(
                    earliestM,
                    Sentence.of(Code.LACKS_LOWERING)
                            .with("place", last.id())
                            .with("across", across(earliestM, lengthM)));
        }
        double to = latestM;
        for (Line line : lines) {
            if (line.atM >= atM - HAIR_M) {
                to = Math.min(to, Math.max(atM, line.atM));
            }
        }
        List<String> unknown = new ArrayList<>();
        for (int p : cluster.places()) {
            places.get(p)
                    .hazard()
                    .filter(RailCrossing.class::isInstance)
                    .map(RailCrossing.class::cast)
                    .filter(x -> x.traffic().storageM().isEmpty())
                    .ifPresent(x -> unknown.add(x.place().id()));
        }
        return new Window(
                atM,
                to,
                unknown.isEmpty()
                        ? Optional.empty()
                        : Optional.of(Sentence.of(Code.LACKS_UNKNOWN).with("places", and(unknown))));
    }

    private static Window none(double atM, Sentence lacks) {
        return new Window(atM, atM, Optional.of(lacks));
    }

    private Sentence across(double frontM, double lengthM) {
        return lines.stream()
                .filter(l -> l.isUnder(frontM, lengthM))
                .findFirst()
                .map(l -> Sentence.of(Code.LACKS_LINE).with("place", l.crossing.id()))
                .orElse(Sentence.of(Code.LACKS_A_LINE));
    }

    /** "H02 and H03" */
    private static Sentence and(List<String> ids) {
        return ids.stream()
                .map(Sentence::verbatim)
                .reduce((a, b) -> Sentence.of(Code.AND).with("first", a).with("second", b))
                .orElseThrow();
    }

    /** Where the front is when the rear has left all of a cluster. */
    private double leftM(int k, double lengthM) {
        return layout.clusters().get(k).places().stream()
                        .mapToDouble(p -> places.get(p).toM())
                        .max()
                        .orElseThrow()
                + lengthM;
    }
}
