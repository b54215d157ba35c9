package org.cresthaul.whatif;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.cresthaul.check.PlaceCheck;
import org.cresthaul.plan.Alterations;
import org.cresthaul.plan.CellSpares;
import org.cresthaul.plan.ConditionKind;
import org.cresthaul.plan.KeptAnswers;
import org.cresthaul.plan.OffBy;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanFollower;
import org.cresthaul.plan.Robustness;
import org.cresthaul.plan.SpareKind;
import org.cresthaul.plan.Texts;
import org.cresthaul.report.Haul;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.route.Route;

/**
 * How a plan's margins shrink when what was declared is off: every place is checked again with the route, the rig or
 * the weights altered, in the configuration and at the raise of the plan. Nothing is estimated from the first answer.
 */
public final class RobustnessCheck {
    private static final double INCH_M = 0.0254;
    /** Numbered as the assumptions are; then all together, and an exact survey. */
    private static final int SURVEY = 0;

    private static final int RIDE = 1;
    private static final int LOAD_HEIGHT = 2;
    private static final int WEIGHT = 3;

    /** Less than is ever written is no gain, meters. */
    private static final double LEAST_GAIN_M = 1e-4;

    private final Haul haul;
    private final OffBy amounts;
    private final KeptAnswers.OfPlan kept;
    private final PlanFollower follower;
    private final List<Supplier<PlaceCheck>> alone;

    /**
     * A place of the plan.
     *
     * @param open whether the plan holds there
     * @param told the figure that the plan tells already
     */
    private record PassedPlace(
            String hazard,
            String name,
            String configuration,
            double frontM,
            double rearM,
            boolean open,
            Optional<Plan.Spare> told) {
        static PassedPlace of(Plan.HazardPassage p) {
            return new PassedPlace(
                    p.hazard(),
                    p.name(),
                    p.set().configuration(),
                    p.raise() == null ? 0 : p.raise().frontM(),
                    p.raise() == null ? 0 : p.raise().rearM(),
                    !p.blocked() && p.condition() != ConditionKind.SET_ASIDE,
                    Optional.ofNullable(p.spare()));
        }

        Plan.Spare asTold(Plan.Spare spare) {
            return told.filter(t -> t.kind() == spare.kind()).orElse(spare);
        }
    }

    /**
     * A row, with what ranks it.
     *
     * @param name of the place
     * @param open whether the plan holds there
     * @param required there for this kind, as declared
     */
    record Ranked(Robustness.Row row, String name, boolean open, double required) {
        String where() {
            return name + ", " + Texts.side(row.kind());
        }

        /** What is not known may be anything: it ranks below all that is. */
        double worstShare() {
            return row.worst() == null ? Double.NEGATIVE_INFINITY : row.kind().share(row.worst(), required);
        }

        /** Of an exact survey, meters; zero where none is known. */
        double gainM() {
            return row.exact() == null ? 0 : row.exact() - row.spare();
        }

        boolean gainIsNotKnown() {
            return row.bears().get(SURVEY) && row.exact() == null;
        }

        Optional<Robustness.NotKnown> notKnown(List<Robustness.Assumed> assumed) {
            List<String> what = new ArrayList<>();
            for (int i = 0; i < assumed.size(); i++) {
                if (row.isNotKnown(i)) {
                    what.add("what is left with " + assumed.get(i).what());
                }
            }
            if (row.worst() == null) {
                what.add("what is left when everything is off together");
            }
            if (gainIsNotKnown()) {
                what.add("what an exact survey would free");
            }
            return what.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Robustness.NotKnown(
                            row.hazard(), row.kind(), where() + ": unknown " + String.join(", ", what) + "."));
        }
    }

    /** Of one place. */
    private record Rows(List<Ranked> all) {
        Rows {
            all = List.copyOf(all);
        }
    }

    private RobustnessCheck(Haul haul, OffBy amounts, KeptAnswers.OfPlan kept, PlanFollower follower) {
        this.haul = haul;
        this.amounts = amounts;
        this.kept = kept;
        this.follower = follower;
        alone = List.of(
                () -> check(Alterations.surveyed(haul.route(), amounts.surveyTimes()), haul.stance()),
                () -> check(haul.route(), Alterations.closer(haul.stance(), amounts.rideM())),
                () -> check(haul.route(), Alterations.loadHigher(haul.stance(), amounts.loadM())),
                () -> check(haul.route(), Alterations.heavier(haul.stance(), amounts.weightShare())));
    }

    private PlaceCheck check(Route over, LevelStance standing) {
        return new PlaceCheck(haul.over(over).standing(standing));
    }

    /** The margins of a plan's passages; those it blocks at or sets aside are never called its weakest point. */
    static Robustness of(
            Haul haul,
            List<Plan.HazardPassage> passages,
            OffBy amounts,
            KeptAnswers.OfPlan kept,
            PlanFollower follower) {
        return new RobustnessCheck(haul, amounts, kept, follower)
                .of(passages.stream().map(PassedPlace::of).toList());
    }

    private Robustness of(List<PassedPlace> places) {
        Map<List<Object>, Ranked> least = new LinkedHashMap<>();
        // Each place has checks of its own, so that they can go side by side.
        places.parallelStream()
                .map(this::followed)
                .toList()
                .forEach(rows -> rows.forEach(r -> least.merge(
                        List.of(r.row.hazard(), r.row.kind()), r, (a, b) -> a.worstShare() <= b.worstShare() ? a : b)));
        return of(amounts.assumed(), List.copyOf(least.values()));
    }

    /** What the rows come to. */
    static Robustness of(List<Robustness.Assumed> assumed, List<Ranked> rows) {
        return new Robustness(
                assumed,
                rows.stream().map(Ranked::row).toList(),
                rows.stream()
                        .filter(Ranked::open)
                        .min(Comparator.comparingDouble(Ranked::worstShare))
                        .map(RobustnessCheck::weakest)
                        .orElse(null),
                rows.stream()
                        .filter(r -> r.gainM() >= LEAST_GAIN_M)
                        .max(Comparator.comparingDouble(Ranked::gainM))
                        .map(r -> resurvey(r, rows.stream().anyMatch(Ranked::gainIsNotKnown)))
                        .orElse(null),
                rows.stream().flatMap(r -> r.notKnown(assumed).stream()).toList());
    }

    private static Robustness.Weakest weakest(Ranked r) {
        return new Robustness.Weakest(
                r.row.hazard(),
                r.row.kind(),
                r.row.worst(),
                r.where()
                        + (r.row.worst() == null
                                ? ": what is left there when everything is off together is unknown; count on nothing."
                                : ": of what is required there, it has the least left when everything is off together"
                                        + (r.row.worst() < 0 ? "; it is short then." : ".")));
    }

    private static Robustness.Resurvey resurvey(Ranked r, boolean others) {
        return new Robustness.Resurvey(
                r.row.hazard(),
                r.gainM(),
                r.where()
                        + ": an exact survey here would free more than anywhere else on this plan"
                        + (others ? " where that is known." : "."));
    }

    private List<Ranked> followed(PassedPlace place) {
        Rows rows = kept.of(
                place.hazard, KeptAnswers.Asked.OFF, List.of(place, amounts), Rows.class, () -> new Rows(rows(place)));
        follower.answered(place.hazard);
        return rows.all;
    }

    private List<Ranked> rows(PassedPlace place) {
        List<Plan.Spare> spares = CellSpares.of(cell(check(haul.route(), haul.stance()), place)).stream()
                .map(place::asTold)
                .toList();
        List<ReportCell> altered = new ArrayList<>();
        for (int i = 0; i < alone.size(); i++) {
            int assumption = i;
            altered.add(
                    spares.stream().anyMatch(s -> bears(assumption, s.kind(), place))
                            ? cell(alone.get(i).get(), place)
                            : null);
        }
        LevelStance off = Alterations.heavier(
                Alterations.loadHigher(Alterations.closer(haul.stance(), amounts.rideM()), amounts.loadM()),
                amounts.weightShare());
        AlteredCells cells = new AlteredCells(
                altered,
                cell(check(Alterations.surveyed(haul.route(), amounts.surveyTimes()), off), place),
                altered.get(SURVEY) == null
                        ? null
                        : cell(check(Alterations.surveyed(haul.route(), 0), haul.stance()), place));
        return spares.stream()
                .map(spare -> new Ranked(
                        cells.row(
                                place.hazard,
                                spare,
                                IntStream.range(0, alone.size())
                                        .mapToObj(i -> bears(i, spare.kind(), place))
                                        .toList(),
                                SURVEY),
                        place.name,
                        place.open,
                        spare.required()))
                .toList();
    }

    private static ReportCell cell(PlaceCheck check, PassedPlace place) {
        return place.hazard.equals(Plan.WHOLE_ROUTE)
                ? check.wholeRoute(place.configuration)
                : check.raised(place.hazard, place.configuration, place.frontM, place.rearM);
    }

    /** Whether an assumption can change a kind of spare at all. Weights tell whether a front can be raised. */
    private boolean bears(int assumption, SpareKind kind, PassedPlace place) {
        boolean gap = kind == SpareKind.GROUND || kind == SpareKind.OVERHEAD;
        return switch (assumption) {
            case SURVEY -> kind != SpareKind.LOAD && isSurveyed(place.hazard);
            case RIDE -> gap;
            case LOAD_HEIGHT ->
                kind == SpareKind.OVERHEAD && !haul.stance().trailer().load().isEmpty();
            case WEIGHT ->
                kind == SpareKind.LOAD
                        || gap
                                && place.frontM > 0
                                && haul.stance()
                                        .weights()
                                        .flatMap(w -> w.frontLift())
                                        .isPresent();
            default -> throw new IllegalArgumentException("no assumption " + assumption);
        };
    }

    private boolean isSurveyed(String hazardId) {
        return haul.route().findHazard(hazardId).flatMap(h -> h.survey()).isPresent();
    }
}
