package org.cresthaul.exchange.rigfile;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.PlanTimes;

/**
 * Times as a rig file or a question gives them: those that are there; each other one stays what it was.
 *
 * @param seconds in the order of {@link PlanTimes#KEYS}
 * @param crawlMps crawling speed, meters per second
 */
public record GivenTimes(List<OptionalDouble> seconds, OptionalDouble crawlMps) {
    public GivenTimes {
        seconds = List.copyOf(seconds);
    }

    /** Reads every field of {@code times} and refuses others; after a problem the times that were wrong are absent. */
    public static GivenTimes read(JsonFields times) {
        List<OptionalDouble> seconds = new ArrayList<>();
        for (String key : PlanTimes.KEYS) {
            seconds.add(sound(times.findDurationS(key)));
        }
        OptionalDouble crawl = sound(times.findSpeedMps("crawl", PlanTimes.LEAST_CRAWL_MPS, PlanTimes.MOST_CRAWL_MPS));
        times.refuseOthers();
        return new GivenTimes(seconds, crawl);
    }

    private static OptionalDouble sound(OptionalDouble value) {
        return value.isPresent() && Double.isNaN(value.getAsDouble()) ? OptionalDouble.empty() : value;
    }

    /** {@code others} where nothing was given. */
    public PlanTimes over(PlanTimes others) {
        List<Long> all = new ArrayList<>();
        for (int i = 0; i < seconds.size(); i++) {
            all.add((long) seconds.get(i).orElse(others.seconds().get(i)));
        }
        return PlanTimes.of(all, crawlMps.orElse(others.crawlMps()));
    }
}
