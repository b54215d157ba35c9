package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.route.Stretch;

/**
 * The rules of docs/model.md applied to every sequence of configurations there is, one after the other: one
 * configuration between each two stops, whether they can be used or not; with weights every order of every change, each
 * state in between. No search, no shared code with the planner but the length of the combination, which has a test of
 * its own.
 */
final class PlanOracle {
    private static final double FOOT_M = 0.3048;
    private static final String WHOLE = "whole route";

    private final PlanCase it;
    private final PlanTimes t;
    private final List<Spot> spots = new ArrayList<>();
    private final List<ConfigurationVerdict> configurations;
    private final double[] lengthM;
    private final double longestM;
    private final ChangeOracle changes;
    /** By stop, from and to; negative where it cannot be made. */
    private final long[][][] change;
    /** What a condition counts before time, and in seconds. */
    private int first;

    private long each;

    /** A place: where it begins and ends, what each configuration meets there. */
    private record Spot(
            String id,
            double fromM,
            double toM,
            boolean point,
            boolean gaps,
            boolean slow,
            List<String> verdicts,
            List<RaiseFinding> raises,
            List<ReportCell> cells,
            Optional<RailCrossing> crossing) {
        /** Null where there is none, as for the limits of a route without weights. */
        GapFinding gap(int c) {
            return cells.isEmpty() ? null : cells.get(c).ground();
        }

        LoadFinding load(int c) {
            return cells.isEmpty() ? null : cells.get(c).load();
        }
    }

    PlanOracle(PlanCase it) {
        this.it = it;
        t = it.options().times();
        configurations = it.report().configurations();
        lengthM = configurations.stream()
                .mapToDouble(c -> CombinationLength.meters(it.stance(), c.booster()))
                .toArray();
        longestM = Arrays.stream(lengthM).max().orElseThrow();
        for (HazardFindings h : it.report().hazards()) {
            Hazard hazard = it.route().findHazard(h.id()).orElseThrow();
            double before = h.extentM().isEmpty() ? 0 : h.extentM().get(0);
            double after = h.extentM().isEmpty() ? 0 : h.extentM().get(1);
            if (h.kind().word().equals("corner")) {
                before = -150 * FOOT_M;
                after = 150 * FOOT_M;
            }
            if (h.kind().word().equals("rail-crossing")) {
                // One track 5 ft wide at the point, as these cases have them, and 15 ft to either side.
                before = Math.min(before, -17.5 * FOOT_M);
                after = Math.max(after, 17.5 * FOOT_M);
            }
            boolean gaps = List.of("rail-crossing", "low-structure", "dip", "crest")
                    .contains(h.kind().word());
            spots.add(new Spot(
                    h.id(),
                    h.chainageM() + before,
                    h.chainageM() + after,
                    !(hazard instanceof Stretch),
                    gaps,
                    List.of("rail-crossing", "corner").contains(h.kind().word()),
                    h.cells().stream().map(x -> x.verdict().word()).toList(),
                    h.cells().stream().map(ReportCell::raise).toList(),
                    h.cells(),
                    hazard instanceof RailCrossing c ? Optional.of(c) : Optional.empty()));
        }
        if (it.report().loads().counts()) {
            spots.add(new Spot(
                    WHOLE,
                    0,
                    it.route().lengthM(),
                    false,
                    false,
                    false,
                    configurations.stream().map(x -> x.loads().word()).toList(),
                    List.of(),
                    wholeRoute(),
                    Optional.empty()));
        }
        changes = new ChangeOracle(it, longestM);
        List<StoppingPlace> stops = it.route().stops();
        change = new long[stops.size()][configurations.size()][configurations.size()];
        for (int s = 0; s < stops.size(); s++) {
            boolean held = isHeld(stops.get(s));
            for (int from = 0; from < configurations.size(); from++) {
                for (int to = 0; to < configurations.size(); to++) {
                    change[s][from][to] = from == to
                            ? 0
                            : held
                                    ? -1
                                    : changes.seconds(
                                            configurations.get(from),
                                            configurations.get(to),
                                            Math.max(lengthM[from], lengthM[to]),
                                            stops.get(s));
                }
            }
        }
    }

    /** What governs the loads of each configuration; nothing where the weights are not known. */
    private List<ReportCell> wholeRoute() {
        return it.stance().weights().isEmpty()
                ? List.of()
                : configurations.stream()
                        .map(c -> new ReportCell(
                                c.key(),
                                c.loads(),
                                null,
                                null,
                                null,
                                null,
                                List.of(),
                                it.report().loads().states().stream()
                                        .filter(s -> s.lift().equals(c.lift())
                                                && s.booster().equals(c.booster()))
                                        .findFirst()
                                        .orElseThrow()
                                        .sheet()
                                        .governing()))
                        .toList();
    }

    ChangeOracle changes() {
        return changes;
    }

    /** Every place that may be set aside. */
    List<String> places() {
        return spots.stream().map(Spot::id).toList();
    }

    /** The best of all sequences; the first one in the report's order among equals. */
    Optional<BestSequence> best() {
        return best(
                Set.of(), it.options().fewestConditions() ? 1 : 0, it.options().fewestConditions() ? 0 : 20 * 60);
    }

    /**
     * The quickest with these places set aside: what would be driven if they were resolved, whatever the conditions.
     */
    Optional<BestSequence> quickest(Set<String> aside) {
        return best(aside, 0, 0);
    }

    private Optional<BestSequence> best(Set<String> aside, int first, long each) {
        this.first = first;
        this.each = each;
        Set<String> all = new HashSet<>(aside);
        all.addAll(it.options().setAside());
        BestSequence[] best = new BestSequence[1];
        tryAll(new ArrayList<>(), all, best);
        return Optional.ofNullable(best[0]);
    }

    private void tryAll(List<Integer> sequence, Set<String> aside, BestSequence[] best) {
        if (sequence.size() == it.route().stops().size() + 1) {
            BestSequence found = cost(sequence, aside);
            if (found != null && (best[0] == null || found.isBelow(best[0]))) {
                best[0] = found;
            }
            return;
        }
        for (int c = 0; c < configurations.size(); c++) {
            String key = configurations.get(c).key();
            if (!it.options().forbid().contains(key)
                    && (sequence.isEmpty() || change[sequence.size() - 1][sequence.get(sequence.size() - 1)][c] >= 0)
                    && (it.options().fix() == null || it.options().fix().equals(key))) {
                sequence.add(c);
                tryAll(sequence, aside, best);
                sequence.remove(sequence.size() - 1);
            }
        }
    }

    /** Null when something is not allowed. */
    private BestSequence cost(List<Integer> sequence, Set<String> aside) {
        long seconds = 0;
        int changes = 0;
        int counted = 0;
        double reserve = Double.POSITIVE_INFINITY;
        List<StoppingPlace> stops = it.route().stops();
        for (int i = 0; i < stops.size(); i++) {
            if (!sequence.get(i).equals(sequence.get(i + 1))) {
                seconds += change[i][sequence.get(i)][sequence.get(i + 1)];
                changes++;
            }
        }
        Set<Spot> done = new HashSet<>();
        for (Spot spot : spots) {
            if (!spot.point) {
                boolean under = false;
                for (int i = 0; i < sequence.size(); i++) {
                    int c = sequence.get(i);
                    boolean there = drives(i, spot);
                    if (there && !passes(spot, c, aside)) {
                        return null;
                    }
                    if (there) {
                        reserve = Math.min(reserve, tells(spot) ? reserve(spot, c, aside) : Double.POSITIVE_INFINITY);
                    }
                    // Each time it is come to under one.
                    boolean now = there && conditions(spot, c, 0, 0, aside) > 0;
                    counted += now && !under ? 1 : 0;
                    under = now;
                }
            } else if (!done.contains(spot)) {
                List<Spot> group = group(spot);
                done.addAll(group);
                int c = sequence.get(part(group.get(0)));
                long passing = passing(group, c, aside);
                if (passing < 0) {
                    return null;
                }
                seconds += passing;
                double[] raise = raise(group, c, aside);
                for (Spot s : group) {
                    reserve = !tells(s)
                            ? reserve
                            : Math.min(
                                    reserve,
                                    raise[0] == 0 && raise[1] == 0 || !s.gaps
                                            ? reserve(s, c, aside)
                                            : raisedReserve(s, c, raise[0], raise[1], aside));
                    counted += conditions(s, c, raise[0], raise[1], aside);
                }
            }
        }
        return new BestSequence(
                first * counted,
                seconds + each * counted,
                seconds,
                changes,
                reserve,
                sequence.stream().map(c -> configurations.get(c).key()).toList());
    }

    /** Whether the combination is at a place that runs over stops while it is between stops i - 1 and i. */
    private boolean drives(int i, Spot spot) {
        List<StoppingPlace> stops = it.route().stops();
        if (spot.id.equals(WHOLE)) {
            // Not where others hold instead under all of the combination all the way.
            return !changes.replaced(
                    (i == 0 ? 0 : stops.get(i - 1).place().chainageM()) - longestM,
                    i == stops.size()
                            ? it.route().lengthM()
                            : stops.get(i).place().chainageM());
        }
        double startM =
                i == 0 ? Double.NEGATIVE_INFINITY : stops.get(i - 1).place().chainageM();
        double endM = i == stops.size()
                ? Double.POSITIVE_INFINITY
                : stops.get(i).place().chainageM();
        // The whole route holds from the first moment, even when there is a stop at its very start.
        return spot.fromM <= 0 && i == 0 || spot.fromM < endM && spot.toM + longestM > startM;
    }

    /** Between which stops a place is passed: it begins after so many. */
    private int part(Spot first) {
        return (int) it.route().stops().stream()
                .filter(s -> s.place().chainageM() < first.fromM)
                .count();
    }

    /** Everything that holds the combination together with this one, without 30 ft between, first to last. */
    private List<Spot> group(Spot spot) {
        List<Spot> group = new ArrayList<>(List.of(spot));
        boolean grown = true;
        while (grown) {
            grown = false;
            for (Spot other : spots) {
                if (other.point && !group.contains(other) && group.stream().anyMatch(g -> meet(g, other))) {
                    group.add(other);
                    grown = true;
                }
            }
        }
        group.sort(Comparator.comparingDouble(Spot::fromM));
        return group;
    }

    private boolean meet(Spot a, Spot b) {
        Spot first = a.fromM <= b.fromM ? a : b;
        Spot second = first == a ? b : a;
        return second.fromM <= first.toM + longestM + 30 * FOOT_M;
    }

    private boolean passes(Spot spot, int c, Set<String> aside) {
        return aside.contains(spot.id) || lets(spot, spot.verdicts.get(c)) && enough(spot, reserve(spot, c, aside));
    }

    private boolean enough(Spot spot, double reserve) {
        return it.options().leastReserve() == null
                || it.options().acceptTight().contains(spot.id)
                || reserve >= it.options().leastReserve() - 1e-9;
    }

    /** Left beyond what is required, as a share. */
    private double reserve(Spot spot, int c, Set<String> aside) {
        if (aside.contains(spot.id)) {
            return Double.POSITIVE_INFINITY;
        }
        GapFinding gap = spot.gap(c);
        if (spot.load(c) != null) {
            return spot.load(c).marginKg() / Math.max(1e-3, spot.load(c).limitKg());
        }
        // Clear without figures: nothing is known to be left.
        return gap == null
                ? spot.verdicts.get(c).equals("clear") ? 0 : -Double.MAX_VALUE
                : (gap.valueM() - gap.requiredM()) / gap.requiredM();
    }

    /** Whether any configuration has figures there; one place without would make all ways alike. */
    private static boolean tells(Spot spot) {
        return spot.cells.stream().anyMatch(c -> c.ground() != null || c.load() != null || c.raise() != null);
    }

    private double raisedReserve(Spot s, int c, double front, double rear, Set<String> aside) {
        if (aside.contains(s.id)) {
            return Double.POSITIVE_INFINITY;
        }
        RaiseFinding own = s.raises.get(c);
        if (own != null && own.frontM() == front && own.rearM() == rear) {
            return (own.clearanceM() - own.requiredM()) / own.requiredM();
        }
        return it.judge()
                .at(s.id, configurations.get(c).key(), front, rear)
                .map(r -> (r.ground().valueM() - r.ground().requiredM())
                        / r.ground().requiredM())
                .orElse(-Double.MAX_VALUE);
    }

    /**
     * A place set aside or tight in transport is a condition. A crossing not shown to be cleared from a stop is one as
     * well: 2 s to look, 1.47 ft/s2 up to 8.8 ft/s or the crawl, the length, 15 ft before and behind and 5 ft of track,
     * and 5 s to spare; or one with less room beyond than the length and 15 ft. Where nothing is recorded nothing is
     * shown.
     */
    private int conditions(Spot s, int c, double front, double rear, Set<String> aside) {
        boolean flat = front == 0 && rear == 0;
        int count = aside.contains(s.id) || flat && !s.verdicts.get(c).equals("clear") ? 1 : 0;
        if (s.crossing.isPresent()) {
            var traffic = s.crossing.get().traffic();
            double v = Math.min(8.8 * FOOT_M, t.crawlMps());
            double a = 1.47 * FOOT_M;
            double clear = 2 + v / a + (lengthM[c] + 35 * FOOT_M - v * v / (2 * a)) / v;
            boolean shown = traffic.warningS().isPresent()
                    && traffic.warningS().getAsDouble() - clear >= 5
                    && traffic.storageM().getAsDouble() >= lengthM[c] + 15 * FOOT_M;
            count += shown ? 0 : 1;
        }
        return count;
    }

    /**
     * On what raise a group is passed: none where that will do, else the largest that any of its places wants; where
     * that does not do, of those that leave what is asked for. Null where nothing does.
     */
    private double[] raise(List<Spot> group, int c, Set<String> aside) {
        if (group.stream().allMatch(s -> passes(s, c, aside))) {
            return new double[2];
        }
        for (boolean leaving : new boolean[] {false, true}) {
            double[] raise = new double[2];
            for (Spot s : group) {
                double[] wanted = wanted(s, c, leaving, aside);
                raise[0] = Math.max(raise[0], wanted[0]);
                raise[1] = Math.max(raise[1], wanted[1]);
            }
            if (!it.options().avoidRaising() && group.stream().allMatch(s -> raised(s, c, raise[0], raise[1], aside))) {
                return raise;
            }
        }
        return null;
    }

    /**
     * Its own; the least that leaves enough where its own does not, also for a place that is clear and leaves too
     * little.
     */
    private double[] wanted(Spot s, int c, boolean leaving, Set<String> aside) {
        if (passes(s, c, aside) || !s.gaps) {
            return new double[2];
        }
        RaiseFinding own = s.raises.get(c);
        double[] first = own == null ? new double[2] : new double[] {own.frontM(), own.rearM()};
        Double asked = it.options().leastReserve();
        boolean more = leaving
                && asked != null
                && asked > 0
                && (own != null
                        ? !enough(s, raisedReserve(s, c, first[0], first[1], aside))
                        : lets(s, s.verdicts.get(c)));
        return more
                ? it.judge()
                        .least(s.id, configurations.get(c).key(), asked)
                        .map(r -> new double[] {r.frontM(), r.rearM()})
                        .orElse(first)
                : first;
    }

    private boolean lets(Spot spot, String verdict) {
        return verdict.equals("clear")
                || verdict.equals("tight") && it.options().acceptTight().contains(spot.id);
    }

    /** Seconds for a group of places, negative when it cannot be passed. */
    private long passing(List<Spot> group, int c, Set<String> aside) {
        double[] raise = raise(group, c, aside);
        if (raise == null) {
            return -1;
        }
        boolean flat = raise[0] == 0 && raise[1] == 0;
        double seconds = flat ? 0 : 2.0 * t.stop() + t.raise() + t.lower();
        for (Spot s : group) {
            // Less than 1/4 in left, or nothing known, is a bounce at 5 mph: 1 in at 10 mph, with the square of speed.
            GapFinding gap = s.gap(c);
            boolean bounces = gap == null || gap.valueM() - gap.requiredM() < 0.00635;
            boolean slow = s.slow || !flat || s.gaps && (!s.verdicts.get(c).equals("clear") || bounces);
            seconds += slow ? Math.ceil((s.toM - s.fromM + lengthM[c]) / t.crawlMps()) : 0;
        }
        return (long) seconds;
    }

    private boolean raised(Spot s, int c, double front, double rear, Set<String> aside) {
        if (front == 0 && rear == 0 || !s.gaps || aside.contains(s.id)) {
            return passes(s, c, aside);
        }
        RaiseFinding own = s.raises.get(c);
        if (own != null && own.frontM() == front && own.rearM() == rear) {
            return enough(s, raisedReserve(s, c, front, rear, aside));
        }
        return it.judge()
                .at(s.id, configurations.get(c).key(), front, rear)
                .map(r -> lets(s, r.verdict().word()) && enough(s, raisedReserve(s, c, front, rear, aside)))
                .orElse(false);
    }

    /** Whether the combination is still at a place there. */
    private boolean isHeld(StoppingPlace stop) {
        double at = stop.place().chainageM();
        for (Spot s : spots) {
            if (s.point) {
                List<Spot> group = group(s);
                double end = group.stream().mapToDouble(g -> g.toM).max().orElseThrow() + longestM;
                if (at >= group.get(0).fromM && at <= end) {
                    return true;
                }
            }
        }
        return false;
    }
}
