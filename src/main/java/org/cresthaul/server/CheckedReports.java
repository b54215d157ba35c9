package org.cresthaul.server;

import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.cresthaul.check.CheckFollower;
import org.cresthaul.check.KeptFindings;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.plan.KeptAnswers;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanAid;
import org.cresthaul.plan.PlanFollower;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;

/**
 * The reports and plans that were made last, so that a plan, a paper or a comparison of what was checked just now does
 * not check it again, nor a paper of what was planned just now plan it again. A report is that of the same bytes of
 * route, rig and limits, the same stance and the same margins, a plan also that of the same options. Where either is
 * made anew, the places that are as they were before are not judged again.
 */
final class CheckedReports {
    private static final int USUAL_MOST = 4;

    private final BiFunction<CheckRequest, CheckFollower, Report> check;
    private final MadeOnce<Question, Report> reports;
    private final MadeOnce<PlanQuestion, Plan> plans;

    private final MadeOnce<Question, byte[]> written;
    private final KeptDocuments documents = new KeptDocuments();
    private final KeptAnswers answers = new KeptAnswers();

    private record Question(Inputs inputs, String stance, Margins margins) {
        static Question of(CheckRequest asked) {
            return new Question(
                    asked.inputs(), asked.haul().stance().name(), asked.haul().margins());
        }
    }

    private record PlanQuestion(Question check, PlanOptions options) {}

    CheckedReports() {
        this(USUAL_MOST);
    }

    /** @param most how many reports are kept, and how many plans */
    CheckedReports(int most) {
        this(most, new KeptFindings());
    }

    private CheckedReports(int most, KeptFindings kept) {
        this(most, (c, follower) -> RouteCheck.check(c.haul(), c.inputs(), kept, follower));
    }

    CheckedReports(BiFunction<CheckRequest, CheckFollower, Report> check) {
        this(USUAL_MOST, check);
    }

    private CheckedReports(int most, BiFunction<CheckRequest, CheckFollower, Report> check) {
        this.check = check;
        this.reports = new MadeOnce<>(most);
        this.plans = new MadeOnce<>(most);
        this.written = new MadeOnce<>(most);
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
        return reports.of(Question.of(asked), follower, () -> check.apply(asked, follower));
    }

    /** The report as JSON, written once for all who ask the same. */
    byte[] json(CheckRequest asked, CheckFollower follower) {
        return written.of(Question.of(asked), follower, () -> JsonAnswer.bytes(of(asked, follower)));
    }

    /** What was read for it. */
    KeptDocuments documents() {
        return documents;
    }

    /** What goes along with a plan that is made here. */
    PlanAid aid(PlanFollower follower) {
        return new PlanAid(answers, follower);
    }

    /** The plan of a check likewise. */
    Plan plan(CheckRequest asked, PlanOptions options, CheckFollower follower, Supplier<Plan> plan) {
        return plans.of(new PlanQuestion(Question.of(asked), options), follower, plan);
    }
}
