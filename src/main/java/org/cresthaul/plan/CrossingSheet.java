package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.cresthaul.units.UnitSystem;

/**
 * A rail crossing as it is driven: stop, look and listen, the second track, room beyond, then go without a stop. The
 * distances of the stop are those of 49 CFR 392.10, which asks some vehicles alone to stop; every clearing time of a
 * plan counts from a stop.
 */
final class CrossingSheet {
    static final String STOP = "crossing stop";
    static final String LOOK = "crossing look";
    static final String SIGHT = "crossing sight";
    static final String SECOND_TRACK = "crossing second track";
    static final String ROOM = "crossing room";
    static final String GO = "crossing go";

    private static final String STOP_RULE = "distances of 49 CFR 392.10";
    private static final String LOOK_RULE = "49 CFR 392.11";
    private static final String ROOM_RULE = "49 CFR 392.12";
    private static final String GO_RULE = "49 CFR 392.10, 392.12";

    private final Sources sources;
    private final Plan plan;
    /** Advice that stands at a crossing before: said once on a sheet. */
    private final Set<String> advised = new HashSet<>();

    CrossingSheet(Sources sources) {
        this.sources = sources;
        plan = sources.plan();
    }

    /**
     * What is done before a crossing.
     *
     * @param stops false where the combination is on the tracks of a crossing before: then it does not stop again
     */
    List<SheetLine> before(Plan.Passage p, boolean stops) {
        List<SheetLine> lines = new ArrayList<>();
        int k = index(p);
        CrossingTime c = k < 0 ? null : plan.crossings().get(k);
        lines.add(SheetLine.practice("Find the blue sign; have its number and the crossing number"
                + (c == null || c.crossingNumber() == null ? "" : ", " + c.crossingNumber() + ",") + " ready."));
        if (stops) {
            boolean metric = sources.units() == UnitSystem.METRIC;
            lines.add(SheetLine.required(
                            "Stop with the front between " + (metric ? "4.6 m and 15 m" : "15 ft and 50 ft")
                                    + " before the nearest rail.",
                            STOP_RULE)
                    .as(STOP));
        }
        boolean several = c != null && c.tracks() != null && c.tracks() > 1;
        lines.add(SheetLine.required(
                        "Look and listen both ways" + (several ? " along every track" : "") + ", window down.",
                        LOOK_RULE)
                .as(LOOK));
        if (c != null && !"active".equals(c.warning())) {
            lines.add(sight(c, "plan:/crossings/" + k));
        }
        if (c == null || c.tracks() == null) {
            lines.add(SheetLine.practice("Unknown how many tracks there are: count them. One train can hide another.")
                    .as(SECOND_TRACK));
        } else if (several) {
            lines.add(SheetLine.practice((c.tracks() == 2 ? "Two" : c.tracks()) + " tracks"
                            + ": see every track clear, after a train too. One train can" + " hide another.")
                    .as(SECOND_TRACK));
        }
        lines.add((c == null
                        ? SheetLine.toDo("Room beyond the tracks for the whole combination, or wait.")
                        : sources.say("Room beyond the tracks for the whole combination, ")
                                .distance(c.storageNeededM(), "plan:/crossings/" + k + "/storageNeededM")
                                .words(", or wait.")
                                .toDo())
                .from(ROOM_RULE)
                .as(ROOM));
        return lines;
    }

    /**
     * How far along the track it must be seen where nothing announces a train, or nobody knows whether something does.
     */
    private SheetLine sight(CrossingTime c, String at) {
        String kind = "passive".equals(c.warning()) ? "Passive crossing" : "Unknown whether lights or gates warn here";
        if (c.sightNeededM() == null) {
            return SheetLine.plain(
                            kind + ": how far along the track must be seen is unknown, because the speed of trains is"
                                    + " not in the route file.")
                    .as(SIGHT);
        }
        return sources.say(kind + ": go only when the track is seen clear for ")
                .distance(c.sightNeededM(), at + "/sightNeededM")
                .words(" both ways.")
                .toDo()
                .as(SIGHT);
    }

    /** How it is passed, and how long that takes. */
    List<SheetLine> through(Plan.Passage p) {
        List<SheetLine> lines = new ArrayList<>();
        lines.add(SheetLine.rule("Go: all the way across without a stop and without a gear change.", GO_RULE)
                .as(GO));
        int k = index(p);
        if (k < 0) {
            return lines;
        }
        CrossingTime c = plan.crossings().get(k);
        String at = "plan:/crossings/" + k;
        Say say = sources.say("From a stop until the rear is clear: ").seconds(c.clearSeconds(), at + "/clearSeconds");
        if (c.warningSeconds() != null) {
            say.words("; least warning before a train ").seconds(c.warningSeconds(), at + "/warningSeconds");
        }
        if (c.reserveSeconds() != null) {
            say.words("; reserve ").secondsLeft(c.reserveSeconds(), at + "/reserveSeconds");
        }
        say.words(c.fits() == null ? "; unknown whether that is enough (" : c.fits() ? "; enough (" : "; NOT ENOUGH (")
                .words("at least ")
                .seconds(c.reserveNeededSeconds(), at + "/reserveNeededSeconds")
                .words(" is required).");
        lines.add(say.plain());
        c.advice().stream().filter(advised::add).forEach(a -> lines.add(SheetLine.plain(a)));
        return lines;
    }

    private int index(Plan.Passage p) {
        return IntStream.range(0, plan.crossings().size())
                .filter(k -> plan.crossings().get(k).hazard().equals(p.hazard())
                        && plan.crossings()
                                .get(k)
                                .configuration()
                                .equals(p.set().configuration()))
                .findFirst()
                .orElse(-1);
    }
}
