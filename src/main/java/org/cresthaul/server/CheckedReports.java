package org.cresthaul.server;

import java.lang.ref.SoftReference;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BiFunction;
import org.cresthaul.check.CheckFollower;
import org.cresthaul.check.Inputs;
import org.cresthaul.check.KeptFindings;
import org.cresthaul.check.Margins;
import org.cresthaul.check.Report;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.geometry.StopSignal;

/**
 * The reports that were made last, so that a plan, a paper or a comparison of what was checked just now does not check
 * it again. A report is that of the same bytes of route, rig and limits, the same stance and the same margins; equal
 * questions have equal reports, and one that is asked while its equal is answered waits for that. Where a report is
 * made anew, the places that are as they were before are not judged again. Memory that runs short is given back first
 * from here.
 */
final class CheckedReports {
    private static final int MOST = 4;

    private static final long LOOK_MS = 50;

    private final BiFunction<CheckRequest, CheckFollower, Report> check;
    private final Map<Question, Making> underway = new ConcurrentHashMap<>();
    private final Map<Question, SoftReference<Report>> made = new LinkedHashMap<>(MOST * 2, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Question, SoftReference<Report>> eldest) {
            return size() > MOST;
        }
    };

    /** @param report empty when the check ends without one */
    private record Making(CompletableFuture<Optional<Report>> report, CheckFollower follower) {}

    private record Question(Inputs inputs, String stance, Margins margins) {}

    CheckedReports() {
        this(new KeptFindings());
    }

    private CheckedReports(KeptFindings kept) {
        this((c, follower) ->
                RouteCheck.check(c.route(), c.rig(), c.stance(), c.margins(), c.inputs(), kept, follower));
    }

    CheckedReports(BiFunction<CheckRequest, CheckFollower, Report> check) {
        this.check = check;
    }

    Report of(CheckRequest asked) {
        return of(asked, CheckFollower.NONE);
    }

    /**
     * The report: the one that is there; else that of an equal question that is being answered, when it comes to one;
     * else made now. A check that was stopped leaves nothing.
     *
     * @param follower told of the check when it is made for this asker
     */
    Report of(CheckRequest asked, CheckFollower follower) {
        Question question = new Question(asked.inputs(), asked.stance().name(), asked.margins());
        while (true) {
            Report known = find(question);
            if (known != null) {
                return known;
            }
            Making mine = new Making(new CompletableFuture<>(), follower);
            Making other = underway.putIfAbsent(question, mine);
            if (other == null) {
                return make(asked, question, mine);
            }
            follower.waitsFor(other.follower);
            Optional<Report> theirs = await(other.report);
            if (theirs.isPresent()) {
                return theirs.get();
            }
        }
    }

    private Report make(CheckRequest asked, Question question, Making mine) {
        Optional<Report> made = Optional.empty();
        try {
            made = Optional.of(check.apply(asked, mine.follower));
            keep(question, made.get());
            return made.get();
        } finally {
            underway.remove(question, mine);
            mine.report.complete(made);
        }
    }

    /** What another's check comes to, as long as this one's asker waits for it; empty when it ends without a report. */
    private static Optional<Report> await(CompletableFuture<Optional<Report>> other) {
        StopSignal stop = StopSignal.current();
        while (true) {
            stop.poll();
            try {
                return other.get(LOOK_MS, TimeUnit.MILLISECONDS);
            } catch (TimeoutException waiting) {
                // Not yet.
            } catch (InterruptedException | ExecutionException e) {
                throw new IllegalStateException("waiting for an equal check was broken off", e);
            }
        }
    }

    private synchronized Report find(Question question) {
        SoftReference<Report> kept = made.get(question);
        return kept == null ? null : kept.get();
    }

    private synchronized void keep(Question question, Report report) {
        made.put(question, new SoftReference<>(report));
    }
}
