package org.cresthaul.server;

import java.lang.ref.SoftReference;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import org.cresthaul.check.Inputs;
import org.cresthaul.check.Margins;
import org.cresthaul.check.Report;
import org.cresthaul.check.RouteCheck;

/**
 * The reports that were made last, so that a plan, a paper or a comparison of what was checked just now does not check
 * it again. A report is that of the same bytes of route, rig and limits, the same stance and the same margins; equal
 * questions have equal reports. Memory that runs short is given back first from here.
 */
final class CheckedReports {
    private static final int MOST = 4;

    private final Function<CheckRequest, Report> check;
    private final Map<Question, SoftReference<Report>> made = new LinkedHashMap<>(MOST * 2, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Question, SoftReference<Report>> eldest) {
            return size() > MOST;
        }
    };

    private record Question(Inputs inputs, String stance, Margins margins) {}

    CheckedReports() {
        this(c -> RouteCheck.check(c.route(), c.rig(), c.stance(), c.margins(), c.inputs()));
    }

    CheckedReports(Function<CheckRequest, Report> check) {
        this.check = check;
    }

    /** The report, made now if it is not there. A check that was stopped leaves nothing. */
    Report of(CheckRequest asked) {
        Question question = new Question(asked.inputs(), asked.stance().name(), asked.margins());
        Report report = find(question);
        if (report == null) {
            report = check.apply(asked);
            keep(question, report);
        }
        return report;
    }

    private synchronized Report find(Question question) {
        SoftReference<Report> kept = made.get(question);
        return kept == null ? null : kept.get();
    }

    private synchronized void keep(Question question, Report report) {
        made.put(question, new SoftReference<>(report));
    }
}
