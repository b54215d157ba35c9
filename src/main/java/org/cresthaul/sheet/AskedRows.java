package org.cresthaul.sheet;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.WayCosts;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.sheet.Statement.Row;
import org.cresthaul.units.Duration;
import org.cresthaul.units.RoundedFigures;

/** Everything that was asked of a plan, so that it can be asked again. */
final class AskedRows {
    private final Sources sources;
    private final PlanOptions options;

    AskedRows(Sources sources) {
        this.sources = sources;
        options = sources.plan().options();
    }

    /** One row for each option, also for those that were left alone. */
    List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        rows.add(new Row("Configurations forbidden", listed(options.forbid())));
        rows.add(new Row("Configuration kept", SheetLine.plain(options.fix() == null ? "none" : options.fix())));
        rows.add(new Row("Raising", SheetLine.plain(options.avoidRaising() ? "not allowed" : "allowed")));
        rows.add(new Row("Tight places accepted", listed(options.acceptTight())));
        rows.add(new Row("Places set aside as unresolved", listed(options.setAside())));
        rows.add(new Row(
                "Reserve to keep",
                SheetLine.plain(
                        options.leastReserve() == null
                                ? "none asked for"
                                : RoundedFigures.fixed(options.leastReserve() * 100, 1, RoundingMode.HALF_UP)
                                        + " % of what is required")));
        rows.add(new Row(
                "Ways compared by",
                SheetLine.plain(
                        options.fewestConditions()
                                ? "fewest conditions, then time"
                                : "time, each condition counting as "
                                        + Duration.inMinutes(WayCosts.CONDITION_SECONDS))));
        rows.add(new Row(
                "Conditions settled",
                listed(options.settled().stream()
                        .map(s -> s.hazard() + " (" + s.what() + ") by " + s.by() + " on " + s.date())
                        .toList())));
        List<Long> seconds = options.times().seconds();
        Say say = sources.say();
        for (int i = 0; i < seconds.size(); i++) {
            String key = PlanTimes.KEYS.get(i);
            say.words((i == 0 ? "" : ", ") + key + " ").minutes(seconds.get(i), "plan:/options/times/" + key);
        }
        rows.add(new Row(
                "Times",
                say.words(", crawl ")
                        .speed(options.times().crawlMps(), "plan:/options/times/crawlMps")
                        .plain()));
        return rows;
    }

    private static SheetLine listed(List<String> names) {
        return SheetLine.plain(names.isEmpty() ? "none" : String.join(", ", names));
    }
}
