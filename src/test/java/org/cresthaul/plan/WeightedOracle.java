package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.cresthaul.axleload.AxleLoads;
import org.cresthaul.axleload.GaugeChart;
import org.cresthaul.axleload.Statics;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.check.Report;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Weights;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.route.Stretch;

/**
 * The rules of docs/model.md for rigs whose weights are known: every sequence of configurations, every order of every change
 * with each state in between reckoned from the statics, limits that hold instead of the route's, reserves and conditions. No
 * search and no shared code with the planner; dips, stretches and limits of the whole route only, without raises.
 */
final class WeightedOracle {
    private static final double FOOT_M = 0.3048;
    private static final double NOISE = 1e-6;

    private final PlanCase it;
    private final LevelStance stance;
    private final Weights weights;
    private final PlanTimes t;
    private final List<Report.ConfigurationVerdict> all;
    private final double[] lengthM;
    private final double longestM;
    private final List<Spot> spots = new ArrayList<>();
    private final List<StoppingPlace> stops;
    /** By stop, from and to; negative where it cannot be made. */
    private final long[][][] change;
    private int passedOnlyOffRoad;
    private int refusedInBetween;

    private record Spot(String id, double fromM, double toM, boolean point, List<Report.Cell> cells) {}

    /** The best sequence. */
    record Best(int first, long weighed, long seconds, int changes, double reserve, List<String> keys) {
        boolean isBelow(Best other) {
            if (first != other.first) {
                return first < other.first;
            }
            if (weighed != other.weighed) {
                return weighed < other.weighed;
            }
            return changes != other.changes ? changes < other.changes : reserve > other.reserve;
        }
    }

    /** A state that is stood in. */
    private record State(String lift, String booster, boolean air) {}

    WeightedOracle(PlanCase it) {
        this.it = it;
        stance = it.stance();
        weights = stance.weights().orElseThrow();
        t = it.options().times();
        all = it.report().configurations();
        stops = it.route().stops();
        lengthM = all.stream().mapToDouble(c -> CombinationLength.meters(stance, booster(c.booster()))).toArray();
        longestM = java.util.Arrays.stream(lengthM).max().orElseThrow();
        for (Report.HazardFindings h : it.report().hazards()) {
            Hazard hazard = it.route().findHazard(h.id()).orElseThrow();
            boolean stretch = hazard instanceof Stretch;
            spots.add(new Spot(h.id(), h.chainageM() + (stretch ? h.extentM().get(0) : 0),
                    h.chainageM() + (stretch ? h.extentM().get(1) : 0), !stretch, h.cells()));
        }
        List<Report.Cell> whole = all.stream().map(c -> new Report.Cell(c.key(), c.loads(), null, null, null, null, List.of(),
                it.report().loads().states().stream()
                        .filter(s -> s.lift().equals(c.lift()) && s.booster().equals(c.booster()))
                        .findFirst().orElseThrow().sheet().governing())).toList();
        spots.add(new Spot("whole route", 0, it.route().lengthM(), false, whole));
        change = new long[stops.size()][all.size()][all.size()];
        for (int s = 0; s < stops.size(); s++) {
            for (int from = 0; from < all.size(); from++) {
                for (int to = 0; to < all.size(); to++) {
                    change[s][from][to] = from == to ? 0 : seconds(from, to, stops.get(s));
                }
            }
        }
    }

    int passedOnlyOffRoad() {
        return passedOnlyOffRoad;
    }

    int refusedInBetween() {
        return refusedInBetween;
    }

    private static BoosterState booster(String word) {
        return List.of(BoosterState.values()).stream().filter(b -> b.word().equals(word)).findFirst().orElseThrow();
    }

    /** The cheapest of all sequences, null when there is none. */
    Best best() {
        Best[] best = new Best[1];
        tryAll(new int[stops.size() + 1], 0, best);
        return best[0];
    }

    private void tryAll(int[] sequence, int at, Best[] best) {
        if (at == sequence.length) {
            Best found = cost(sequence);
            if (found != null && (best[0] == null || found.isBelow(best[0]))) {
                best[0] = found;
            }
            return;
        }
        for (int c = 0; c < all.size(); c++) {
            if (!it.options().forbid().contains(all.get(c).key()) && (at == 0 || change[at - 1][sequence[at - 1]][c] >= 0)) {
                sequence[at] = c;
                tryAll(sequence, at + 1, best);
            }
        }
    }

    private Best cost(int[] sequence) {
        long seconds = 0;
        int changes = 0;
        int conditions = 0;
        double reserve = Double.POSITIVE_INFINITY;
        for (int s = 0; s < stops.size(); s++) {
            seconds += change[s][sequence[s]][sequence[s + 1]];
            changes += sequence[s] == sequence[s + 1] ? 0 : 1;
        }
        for (Spot spot : spots) {
            boolean under = false;
            for (int i = 0; i < sequence.length; i++) {
                boolean there = spot.point ? i == part(spot) : drives(i, spot);
                if (there) {
                    int c = sequence[i];
                    if (!passes(spot, c)) {
                        return null;
                    }
                    reserve = Math.min(reserve, tells(spot) ? reserve(spot, c) : Double.POSITIVE_INFINITY);
                    if (spot.point && (!spot.cells.get(c).verdict().equals("clear") || leftM(spot, c) < 0.00635)) {
                        seconds += (long) Math.ceil((spot.toM - spot.fromM + lengthM[c]) / t.crawlMps());
                    }
                }
                boolean now = there && (isAside(spot) || !spot.cells.get(sequence[i]).verdict().equals("clear"));
                conditions += now && !under ? 1 : 0;
                under = now;
            }
        }
        boolean fewest = it.options().fewestConditions();
        return new Best(fewest ? conditions : 0, seconds + (fewest ? 0 : 20 * 60 * conditions), seconds, changes, reserve,
                java.util.Arrays.stream(sequence).mapToObj(c -> all.get(c).key()).toList());
    }

    private boolean isAside(Spot spot) {
        return it.options().setAside().contains(spot.id);
    }

    private boolean passes(Spot spot, int c) {
        boolean accepted = it.options().acceptTight().contains(spot.id);
        String verdict = spot.cells.get(c).verdict();
        return isAside(spot) || (verdict.equals("clear") || verdict.equals("tight") && accepted)
                && (accepted || it.options().leastReserve() == null || reserve(spot, c) >= it.options().leastReserve());
    }

    private static boolean tells(Spot spot) {
        return spot.cells.stream().anyMatch(c -> c.ground() != null || c.load() != null);
    }

    private static double leftM(Spot spot, int c) {
        Report.GapFinding g = spot.cells.get(c).ground();
        return g == null ? 0 : Math.rint((g.valueM() - g.requiredM()) * 1e4) / 1e4;
    }

    private double reserve(Spot spot, int c) {
        Report.Cell cell = spot.cells.get(c);
        if (isAside(spot)) {
            return Double.POSITIVE_INFINITY;
        }
        if (cell.load() != null) {
            return cell.load().marginKg() / Math.max(1e-3, cell.load().limitKg());
        }
        return cell.ground() == null
                ? cell.verdict().equals("clear") ? 0 : -Double.MAX_VALUE
                : leftM(spot, c) / cell.ground().requiredM();
    }

    private int part(Spot spot) {
        return (int) stops.stream().filter(s -> s.place().chainageM() < spot.fromM).count();
    }

    /** Whether the combination is at a place that runs over stops on a part; limits of the route not where others replace them. */
    private boolean drives(int i, Spot spot) {
        double startM = i == 0 ? 0 : stops.get(i - 1).place().chainageM();
        double endM = i == stops.size() ? it.route().lengthM() : stops.get(i).place().chainageM();
        if (spot.id.equals("whole route")) {
            return !replaced(startM - longestM, endM);
        }
        boolean first = spot.fromM <= 0 && i == 0;
        return first || spot.fromM < (i == stops.size() ? Double.POSITIVE_INFINITY : endM)
                && spot.toM + longestM > (i == 0 ? Double.NEGATIVE_INFINITY : startM);
    }

    /** Whether stretches whose limits hold instead cover a piece of road, as far as it is on the route. */
    private boolean replaced(double fromM, double toM) {
        double from = Math.max(0, fromM);
        double to = Math.min(it.route().lengthM(), toM);
        // Every end of a stretch, and the middle between each two of them: is each covered?
        List<Double> ends = new ArrayList<>(List.of(from, to));
        for (Hazard h : it.route().hazards()) {
            if (h instanceof Stretch s && s.replacesOthers()) {
                ends.add(Math.min(to, Math.max(from, s.fromChainageM())));
                ends.add(Math.min(to, Math.max(from, s.toChainageM())));
            }
        }
        ends.sort(Double::compare);
        for (int k = 0; k < ends.size(); k++) {
            double at = k + 1 < ends.size() ? (ends.get(k) + ends.get(k + 1)) / 2 : ends.get(k);
            if (it.route().hazards().stream().noneMatch(h -> h instanceof Stretch s && s.replacesOthers()
                    && s.fromChainageM() <= at + NOISE && s.toChainageM() >= at - NOISE)) {
                return false;
            }
        }
        return true;
    }

    private boolean isHeld(StoppingPlace stop) {
        double at = stop.place().chainageM();
        List<Spot> points = spots.stream().filter(s -> s.point).sorted(java.util.Comparator.comparingDouble(Spot::fromM)).toList();
        double from = Double.NaN;
        double to = Double.NEGATIVE_INFINITY;
        for (Spot s : points) {
            if (s.fromM > to + 30 * FOOT_M) {
                from = s.fromM;
            }
            to = Math.max(to, s.toM + longestM);
            if (at >= from && at <= to) {
                return true;
            }
        }
        return false;
    }

    private long seconds(int from, int to, StoppingPlace stop) {
        Report.ConfigurationVerdict a = all.get(from);
        Report.ConfigurationVerdict b = all.get(to);
        double longer = Math.max(lengthM[from], lengthM[to]);
        boolean same = a.booster().equals(b.booster());
        if (isHeld(stop) || (same ? stop.roomM() < longer : !stop.setUpArea() || stop.roomM() < longer + 30 * FOOT_M)) {
            return -1;
        }
        for (boolean onRoad : stop.setUpArea() ? new boolean[] {true, false} : new boolean[] {true}) {
            for (boolean lowered : new boolean[] {false, true}) {
                for (List<String> order : orders(a, b, lowered)) {
                    if (isSound(a, b, order, stop, onRoad)) {
                        passedOnlyOffRoad += onRoad ? 0 : 1;
                        return t.stop() + order.stream().mapToLong(this::seconds).sum();
                    }
                }
            }
        }
        refusedInBetween++;
        return -1;
    }

    private long seconds(String action) {
        return switch (action) {
            case "notch" -> t.notch();
            case "lift axle" -> t.liftAxle();
            case "regulator" -> t.regulator();
            case "couple booster" -> t.coupleBooster();
            case "uncouple booster" -> t.uncoupleBooster();
            case "close-couple booster" -> t.closeCouple();
            case "open close-coupling" -> t.openCloseCoupling();
            default -> throw new IllegalArgumentException(action);
        };
    }

    private static List<List<String>> orders(
            Report.ConfigurationVerdict from, Report.ConfigurationVerdict to, boolean lowered) {
        List<String> booster = switch (from.booster() + " > " + to.booster()) {
            case "trailing > none" -> List.of("regulator", "uncouple booster");
            case "none > trailing" -> List.of("couple booster", "regulator");
            case "trailing > close-coupled" -> List.of("regulator", "close-couple booster");
            case "close-coupled > trailing" -> List.of("open close-coupling", "regulator");
            case "none > close-coupled" -> List.of("couple booster", "close-couple booster");
            case "close-coupled > none" -> List.of("open close-coupling", "uncouple booster");
            default -> List.of();
        };
        List<List<String>> orders = new ArrayList<>(List.of(booster));
        if (lowered) {
            orders = from.lift().equals("up") && to.lift().equals("up")
                    ? with(with(orders, "lift axle"), "lift axle")
                    : List.of();
        } else if (!from.lift().equals(to.lift())) {
            orders = with(orders, "lift axle");
        }
        return from.notch().equals(to.notch()) ? orders : with(orders, "notch");
    }

    private static List<List<String>> with(List<List<String>> orders, String action) {
        List<List<String>> more = new ArrayList<>();
        for (List<String> order : orders) {
            for (int at = 0; at <= order.size(); at++) {
                List<String> longer = new ArrayList<>(order);
                longer.add(at, action);
                more.add(longer);
            }
        }
        return more;
    }

    private boolean isSound(
            Report.ConfigurationVerdict a, Report.ConfigurationVerdict b, List<String> order, StoppingPlace stop, boolean onRoad) {
        State at = new State(a.lift(), a.booster(), a.booster().equals("trailing"));
        Set<String> allowed = new HashSet<>(broken(at, stop, onRoad));
        allowed.addAll(broken(new State(b.lift(), b.booster(), b.booster().equals("trailing")), stop, onRoad));
        for (String action : order) {
            if (action.equals("notch") && !holdsFront(at)) {
                return false;
            }
            at = switch (action) {
                case "lift axle" -> new State(at.lift.equals("up") ? "down" : "up", at.booster, at.air);
                case "regulator" -> new State(at.lift, at.booster, !at.air);
                case "couple booster", "open close-coupling" -> new State(at.lift, "trailing", false);
                case "uncouple booster" -> new State(at.lift, "none", false);
                case "close-couple booster" -> new State(at.lift, "close-coupled", false);
                default -> at;
            };
            if (!allowed.containsAll(broken(at, stop, onRoad))) {
                return false;
            }
        }
        return true;
    }

    private Statics statics(State s) {
        double kg = s.booster.equals("trailing") && s.air
                ? new GaugeChart(weights.gauges().booster().orElseThrow()).loadKg(weights.regulator().orElseThrow().setPa())
                        .orElseThrow()
                : 0;
        return new Statics(stance, weights, s.lift.equals("up") ? LiftState.UP : LiftState.DOWN, booster(s.booster), kg);
    }

    private boolean holdsFront(State s) {
        Weights.FrontLift lift = weights.frontLift().orElseThrow();
        double front = statics(s).level().kingpinKg() - weights.gooseneck().massKg();
        return lift.ratedPa() * front / lift.ratedKg() <= lift.takeOffPa();
    }

    /** What is not kept, by name. */
    private Set<String> broken(State s, StoppingPlace stop, boolean onRoad) {
        Set<String> broken = new HashSet<>();
        AxleLoads loads = statics(s).level();
        double gross = 0;
        for (AxleLoads.AxleLoad a : loads.axles()) {
            AxleKind kind = a.place().kind();
            String axle = a.place().label();
            Map<AxleKind, Double> tires = weights.ratings().tiresKg();
            gross += a.loadKg();
            add(broken, a.loadKg() > weights.ratings().axleKg().getOrDefault(kind, 1e9) + NOISE, "axle " + axle);
            add(broken, a.loadKg() > tires.getOrDefault(kind, 1e9) + NOISE, "tires " + axle);
            OptionalDouble side = a.heavierSideKg();
            add(broken, side.isPresent() && 2 * side.getAsDouble() > tires.getOrDefault(kind, 1e9) + 2 * NOISE, "side " + axle);
            boolean slack = kind == AxleKind.BOOSTER && s.booster.equals("trailing") && !s.air;
            add(broken, !slack && a.loadKg() < weights.leastBrakedKg().orElse(0) - NOISE, "light " + axle);
        }
        add(broken, loads.kingpinKg() > weights.ratings().hitchKg().orElse(1e9) + NOISE, "hitch");
        add(broken, loads.kingpinKg() < -NOISE, "hitch carried");
        if (onRoad) {
            for (WeightLimits limits : holdingAt(stop.place().chainageM())) {
                add(broken, gross > limits.grossKg().orElse(1e9) + NOISE, "gross " + limits.source());
                for (AxleLoads.AxleLoad a : loads.axles()) {
                    add(broken, a.loadKg() > limits.axleKg().orElse(1e9) + NOISE, limits.source() + " " + a.place().label());
                }
            }
        }
        return broken;
    }

    private static void add(Set<String> broken, boolean is, String what) {
        if (is) {
            broken.add(what);
        }
    }

    private List<WeightLimits> holdingAt(double frontM) {
        List<WeightLimits> sets = new ArrayList<>();
        if (!replaced(frontM - longestM, frontM)) {
            sets.add(it.route().limits().orElseThrow());
        }
        for (Hazard h : it.route().hazards()) {
            if (h instanceof Stretch s && s.fromChainageM() < frontM && s.toChainageM() > frontM - longestM) {
                sets.add(s.limits().orElseThrow());
            }
        }
        return sets;
    }
}
