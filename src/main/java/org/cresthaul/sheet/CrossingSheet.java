package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.CrossingTime;
import org.cresthaul.plan.Plan;
import org.cresthaul.route.CrossingTraffic.Warning;
import org.cresthaul.units.UnitSystem;

/**
 * A rail crossing as it is driven: stop, look and listen, the second track, room beyond, then go without a stop. The
 * distances of the stop are those of 49 CFR 392.10, which asks some vehicles alone to stop; every clearing time of a
 * plan counts from a stop.
 */
final class CrossingSheet {
    private static final Sentence STOP_RULE = Sentence.of(Code.SOURCE_STOP);
    private static final Sentence LOOK_RULE = SheetLine.cited("49 CFR 392.11");
    private static final Sentence ROOM_RULE = SheetLine.cited("49 CFR 392.12");
    private static final Sentence GO_RULE = SheetLine.cited("49 CFR 392.10, 392.12");

    private final Sources sources;
    private final Plan plan;
    /** Advice that stands at a crossing before: said once on a sheet. */
    private final Set<Sentence> advised = new HashSet<>();

    CrossingSheet(Sources sources) {
        this.sources = sources;
        plan = sources.plan();
    }

    /**
     * What is done before a crossing.
     *
     * @param stops false where the combination is on the tracks of a crossing before: then it does not stop again
     */
    List<SheetLine> before(Plan.HazardPassage p, boolean stops) {
        List<SheetLine> lines = new ArrayList<>();
        int k = index(p);
        CrossingTime c = k < 0 ? null : plan.crossings().get(k);
        lines.add(
                c == null || c.crossingNumber() == null
                        ? sources.practice(Code.CROSSING_SIGN)
                        : sources.say(Code.CROSSING_SIGN_NUMBER)
                                .with("number", c.crossingNumber())
                                .toDo()
                                .from(SheetLine.PRACTICE));
        if (stops) {
            boolean metric = sources.units() == UnitSystem.METRIC;
            lines.add(sources.required(metric ? Code.CROSSING_STOP_METERS : Code.CROSSING_STOP_FEET, STOP_RULE)
                    .as(SheetTopic.CROSSING_STOP));
        }
        boolean several = c != null && c.tracks() != null && c.tracks() > 1;
        lines.add(sources.required(several ? Code.CROSSING_LOOK_TRACKS : Code.CROSSING_LOOK, LOOK_RULE)
                .as(SheetTopic.CROSSING_LOOK));
        if (c != null && c.warning() != Warning.ACTIVE) {
            lines.add(sight(c, "plan:/crossings/" + k));
        }
        if (c == null || c.tracks() == null) {
            lines.add(sources.practice(Code.CROSSING_TRACKS_UNKNOWN).as(SheetTopic.CROSSING_SECOND_TRACK));
        } else if (several) {
            lines.add((c.tracks() == 2
                            ? sources.practice(Code.CROSSING_TWO_TRACKS)
                            : sources.say(Code.CROSSING_TRACKS)
                                    .with("count", Integer.toString(c.tracks()))
                                    .toDo()
                                    .from(SheetLine.PRACTICE))
                    .as(SheetTopic.CROSSING_SECOND_TRACK));
        }
        lines.add((c == null
                        ? sources.toDo(Code.CROSSING_ROOM)
                        : sources.say(Code.CROSSING_ROOM_LENGTH)
                                .at("length")
                                .distance(c.storageNeededM(), "plan:/crossings/" + k + "/storageNeededM")
                                .toDo())
                .from(ROOM_RULE)
                .as(SheetTopic.CROSSING_ROOM));
        return lines;
    }

    /**
     * How far along the track it must be seen where nothing announces a train, or nobody knows whether something does.
     */
    private SheetLine sight(CrossingTime c, String at) {
        boolean passive = c.warning() == Warning.PASSIVE;
        if (c.sightNeededM() == null) {
            return sources.plain(passive ? Code.CROSSING_PASSIVE_UNKNOWN : Code.CROSSING_SIGHT_UNKNOWN)
                    .as(SheetTopic.CROSSING_SIGHT);
        }
        return sources.say(passive ? Code.CROSSING_PASSIVE_SIGHT : Code.CROSSING_SIGHT)
                .at("sight")
                .distance(c.sightNeededM(), at + "/sightNeededM")
                .toDo()
                .as(SheetTopic.CROSSING_SIGHT);
    }

    /** How it is passed, and how long that takes. */
    List<SheetLine> through(Plan.HazardPassage p) {
        List<SheetLine> lines = new ArrayList<>();
        lines.add(sources.rule(Code.CROSSING_GO, GO_RULE).as(SheetTopic.CROSSING_GO));
        int k = index(p);
        if (k < 0) {
            return lines;
        }
        CrossingTime c = plan.crossings().get(k);
        String at = "plan:/crossings/" + k;
        Say say = sources.say(Code.CROSSING_TIME).at("clear").seconds(c.clearSeconds(), at + "/clearSeconds");
        if (c.warningSeconds() != null) {
            say.and(Code.CROSSING_TIME_WARNING).at("warning").seconds(c.warningSeconds(), at + "/warningSeconds");
        }
        if (c.reserveSeconds() != null) {
            say.and(Code.CROSSING_TIME_RESERVE).at("reserve").secondsLeft(c.reserveSeconds(), at + "/reserveSeconds");
        }
        say.and(
                        c.fits() == null
                                ? Code.CROSSING_TIME_UNKNOWN
                                : c.fits() ? Code.CROSSING_TIME_ENOUGH : Code.CROSSING_TIME_SHORT)
                .at("needed")
                .seconds(c.reserveNeededSeconds(), at + "/reserveNeededSeconds");
        lines.add(say.plain());
        c.advice().stream().filter(advised::add).forEach(a -> lines.add(SheetLine.plain(a.in(sources.catalog()))));
        return lines;
    }

    private int index(Plan.HazardPassage p) {
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
