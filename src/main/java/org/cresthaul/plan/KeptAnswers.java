package org.cresthaul.plan;

import java.lang.ref.SoftReference;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.report.CheckedRig;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.Route;

/**
 * What plans asked the engines about places, each answer by everything that it hangs on: after a change at one place of
 * a route no other is asked about again. Only of places of gaps, which hang on nothing else of the route. Those asked
 * for longest ago go first, and all of them where memory runs short. Safe to share; what two ask for at the same time
 * is found twice.
 */
public final class KeptAnswers {
    /** Of some kilobyte each. */
    private static final int MOST = 5_000;

    private final Map<Question, SoftReference<Object>> kept = new LinkedHashMap<>(256, 0.75f, true);
    private int made;

    /** What is asked of a place. */
    public enum Asked {
        RAISED,
        HIGHEST,
        LEAST,
        OPENS,
        OFF
    }

    /**
     * What every answer about a rig hangs on; by value, its hash reckoned once.
     *
     * @param raisesFront by configuration, whether the power take-off raises its front, as declared and where
     *     everything is heavier
     */
    private record Ground(
            CheckedRig rig, LevelStance stance, Margins margins, List<List<Boolean>> raisesFront, int hash) {
        @Override
        public int hashCode() {
            return hash;
        }

        @Override
        public boolean equals(Object other) {
            return other == this
                    || other instanceof Ground g
                            && hash == g.hash
                            && rig.equals(g.rig)
                            && stance.equals(g.stance)
                            && margins.equals(g.margins)
                            && raisesFront.equals(g.raisesFront);
        }
    }

    private record Question(Ground ground, Hazard hazard, Asked asked, List<Object> more) {}

    /** What is asked about the places of one route with one rig. */
    public final class OfPlan {
        private final Route route;
        private final Ground ground;

        private OfPlan(Route route, Ground ground) {
            this.route = route;
            this.ground = ground;
        }

        /**
         * The answer, found now if it is not there; a question that was stopped leaves nothing.
         *
         * @param more of the question, by value
         */
        public <T> T of(String hazardId, Asked asked, List<Object> more, Class<T> type, Supplier<T> find) {
            Hazard hazard = route.findHazard(hazardId)
                    .filter(h -> h.kind().judged() == HazardKind.JudgedBy.GAPS)
                    .orElse(null);
            if (hazard == null) {
                return find.get();
            }
            Question question = new Question(ground, hazard, asked, more);
            Object known = known(question);
            if (known == null) {
                known = find.get();
                keep(question, known);
            }
            return type.cast(known);
        }
    }

    /** For a route and a rig as a report has them. */
    public OfPlan of(Haul haul, Report report) {
        double share = OffBy.of(haul.rig()).weightShare();
        List<List<Boolean>> raisesFront = List.of(
                new RaisedCheck(haul).raisesFront(),
                new RaisedCheck(haul.standing(Alterations.heavier(haul.stance(), share))).raisesFront());
        int hash = List.of(report.rig(), haul.stance(), haul.margins(), raisesFront)
                .hashCode();
        return new OfPlan(haul.route(), new Ground(report.rig(), haul.stance(), haul.margins(), raisesFront, hash));
    }

    /** How many answers were found so far rather than known. */
    synchronized int made() {
        return made;
    }

    /** The places of which answers are kept. */
    synchronized Set<Hazard> places() {
        return kept.keySet().stream().map(Question::hazard).collect(Collectors.toSet());
    }

    private synchronized Object known(Question question) {
        SoftReference<Object> found = kept.get(question);
        return found == null ? null : found.get();
    }

    private synchronized void keep(Question question, Object answer) {
        made++;
        kept.put(question, new SoftReference<>(answer));
        Iterator<Question> oldest = kept.keySet().iterator();
        while (kept.size() > MOST) {
            oldest.next();
            oldest.remove();
        }
    }
}
