package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.route.LonLat;

/**
 * Ties a line to the roads it was driven on: of all ways through the net that stay near its points, the likeliest,
 * found by dynamic programming over a hidden Markov model (P. Newson, J. Krumm, Hidden Markov map matching through
 * noise and sparseness, ACM GIS 2009; A. Viterbi, 1967). What is likely: to be near the point, to go its way, and to
 * have driven about as far as the line did. A state is a directed edge with the place on it, so that noise along the
 * road does not turn the truck round.
 *
 * <p>Where no road is near, or none leads on, the line stays as it was drawn.
 */
final class LineMatching {
    /** Farthest that a road is looked for from a point, meters. */
    private static final double NEAR_M = 30;
    /** What a receiver is off by, and what roads in a map are, meters. */
    private static final double SIGMA_M = 4;
    /** By how much the way between two points differs from the line, meters. */
    private static final double BETA_M = 4;
    /** What turning round on the road costs, in meters of difference. */
    private static final double TURN_ROUND_M = 40;

    private static final double AGAINST_TRAFFIC = 2;
    private static final double HEADING = 3;
    private static final int MOST_STATES = 16;
    /** Points are taken this far apart. */
    private static final double LEAST_STEP_M = 7;

    private static final double MOST_STEP_M = 20;
    /** Noise may put a point this far back along the same edge. */
    private static final double BACK_M = 15;
    /** A stretch of the line that no road explains is left out of a chain up to this length, meters. */
    private static final double SKIPPED_M = 60;

    private final RoadNet net;

    /** A place on a directed edge. */
    record State(int edge, double share, double cost, int before) {}

    /**
     * A part of the line: on the roads, by its directed edges in the order of travel, or off them, by its positions.
     *
     * @param first share of the first edge at which it begins
     * @param last share of the last edge at which it ends
     */
    record Part(List<Integer> edges, double first, double last, List<LonLat> off) {
        boolean isOnRoads() {
            return !edges.isEmpty();
        }
    }

    /** Points with what is between them along the line. */
    private record Sample(LonLat at, double alongM, double headingRad) {}

    LineMatching(RoadNet net) {
        this.net = net;
    }

    List<Part> parts(List<LonLat> line) {
        List<Sample> samples = samples(line);
        List<Part> parts = new ArrayList<>();
        int i = 0;
        while (i < samples.size()) {
            List<List<State>> layers = new ArrayList<>();
            List<Integer> taken = new ArrayList<>();
            int end = chain(samples, i, layers, taken);
            if (layers.isEmpty()
                    || samples.get(taken.get(taken.size() - 1)).alongM()
                                    - samples.get(i).alongM()
                            < 1) {
                int next = Math.min(samples.size(), i + 1);
                addOff(parts, samples, i, next);
                i = next;
            } else {
                parts.add(traced(samples, layers, taken));
                i = end;
            }
        }
        return parts;
    }

    private static void addOff(List<Part> parts, List<Sample> samples, int from, int to) {
        List<LonLat> off = new ArrayList<>();
        if (!parts.isEmpty() && !parts.get(parts.size() - 1).isOnRoads()) {
            off.addAll(parts.remove(parts.size() - 1).off());
        }
        samples.subList(from, to).forEach(s -> off.add(s.at()));
        parts.add(new Part(List.of(), 0, 0, List.copyOf(off)));
    }

    /** Corners of the line, with more between them where they are far apart, and fewer where they are near. */
    private static List<Sample> samples(List<LonLat> line) {
        List<LonLat> places = new ArrayList<>();
        List<Double> along = new ArrayList<>();
        double atM = 0;
        places.add(line.get(0));
        along.add(0.0);
        for (int i = 1; i < line.size(); i++) {
            LonLat a = line.get(i - 1);
            LonLat b = line.get(i);
            double stepM = Flat.distanceM(a, b);
            int n = Math.max(1, (int) Math.ceil(stepM / MOST_STEP_M));
            for (int k = 1; k <= n; k++) {
                double t = (double) k / n;
                double hereM = atM + stepM * t;
                boolean last = i == line.size() - 1 && k == n;
                if (hereM - along.get(along.size() - 1) >= LEAST_STEP_M || last) {
                    places.add(
                            k == n
                                    ? b
                                    : new LonLat(
                                            Flat.wrapped(a.lonDeg() + t * Flat.shortWay(b.lonDeg() - a.lonDeg())),
                                            a.latDeg() + t * (b.latDeg() - a.latDeg())));
                    along.add(hereM);
                }
            }
            atM += stepM;
        }
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            LonLat a = places.get(Math.max(0, i - 1));
            LonLat b = places.get(Math.min(places.size() - 1, i + 1));
            Flat flat = Flat.at(a);
            samples.add(new Sample(places.get(i), along.get(i), Math.atan2(flat.y(b.latDeg()), flat.x(b.lonDeg()))));
        }
        return samples;
    }

    /** Follows the line from a point on for as long as roads explain it. Returns the point behind. */
    private int chain(List<Sample> samples, int from, List<List<State>> layers, List<Integer> taken) {
        int i = from;
        StopSignal stop = StopSignal.current();
        for (; i < samples.size(); i++) {
            stop.poll();
            Sample sample = samples.get(i);
            List<State> near = states(sample);
            if (layers.isEmpty()) {
                if (near.isEmpty()) {
                    return i;
                }
                layers.add(near);
                taken.add(i);
                continue;
            }
            Sample before = samples.get(taken.get(taken.size() - 1));
            List<State> reached = reached(layers.get(layers.size() - 1), near, sample.alongM() - before.alongM());
            if (!reached.isEmpty()) {
                layers.add(reached);
                taken.add(i);
            } else if (sample.alongM() - before.alongM() > SKIPPED_M) {
                return taken.get(taken.size() - 1) + 1;
            }
        }
        return taken.isEmpty() ? i : taken.get(taken.size() - 1) + 1;
    }

    private List<State> states(Sample sample) {
        List<State> states = new ArrayList<>();
        Flat flat = Flat.at(sample.at());
        for (int edge : net.near(sample.at(), NEAR_M)) {
            MapStrip strip = net.strip();
            double ax = flat.x(strip.lonDeg(net.from(edge)));
            double ay = flat.y(strip.latDeg(net.from(edge)));
            double ux = flat.x(strip.lonDeg(net.to(edge))) - ax;
            double uy = flat.y(strip.latDeg(net.to(edge))) - ay;
            double length2 = ux * ux + uy * uy;
            double t = length2 == 0 ? 0 : Math.max(0, Math.min(1, -(ax * ux + ay * uy) / length2));
            double offM = Math.hypot(ax + t * ux, ay + t * uy);
            if (offM > NEAR_M) {
                continue;
            }
            double turn = Math.cos(Math.atan2(uy, ux) - sample.headingRad());
            double near = offM * offM / (2 * SIGMA_M * SIGMA_M);
            states.add(new State(edge, t, near + HEADING * (1 - turn) + traffic(edge), -1));
            int other = RoadNet.reverse(edge);
            states.add(new State(other, 1 - t, near + HEADING * (1 + turn) + traffic(other), -1));
        }
        return likeliest(states);
    }

    private double traffic(int edge) {
        return net.isAgainstTraffic(edge) ? AGAINST_TRAFFIC : 0;
    }

    private static List<State> likeliest(List<State> states) {
        states.sort((a, b) ->
                Double.compare(a.cost, b.cost) != 0 ? Double.compare(a.cost, b.cost) : Integer.compare(a.edge, b.edge));
        return states.size() > MOST_STATES ? new ArrayList<>(states.subList(0, MOST_STATES)) : states;
    }

    /** The states of the next point that can be come to, each from where it is likeliest. */
    private List<State> reached(List<State> before, List<State> next, double lineM) {
        double[] cost = new double[next.size()];
        int[] from = new int[next.size()];
        Arrays.fill(cost, Double.POSITIVE_INFINITY);
        for (int b = 0; b < before.size(); b++) {
            State state = before.get(b);
            Map<Integer, Double> entered = entered(state, limitM(lineM), null);
            for (int k = 0; k < next.size(); k++) {
                double wayM = wayM(state, next.get(k), entered);
                double all = state.cost + Math.abs(wayM - lineM) / BETA_M;
                if (all < cost[k]) {
                    cost[k] = all;
                    from[k] = b;
                }
            }
        }
        List<State> reached = new ArrayList<>();
        for (int k = 0; k < next.size(); k++) {
            if (cost[k] < Double.POSITIVE_INFINITY) {
                State s = next.get(k);
                reached.add(new State(s.edge, s.share, s.cost + cost[k], from[k]));
            }
        }
        return reached;
    }

    private static double limitM(double lineM) {
        return 1.5 * lineM + 60;
    }

    private double wayM(State from, State to, Map<Integer, Double> entered) {
        if (from.edge == to.edge) {
            double aheadM = (to.share - from.share) * net.lengthM(to.edge);
            if (aheadM >= -BACK_M) {
                return Math.max(0, aheadM);
            }
        }
        Double atM = entered.get(to.edge);
        return atM == null ? Double.POSITIVE_INFINITY : atM + to.share * net.lengthM(to.edge);
    }

    private record Step(double atM, int edge) implements Comparable<Step> {
        @Override
        public int compareTo(Step other) {
            int byWay = Double.compare(atM, other.atM);
            return byWay != 0 ? byWay : Integer.compare(edge, other.edge);
        }
    }

    /** How far it is to the start of every edge that is come to within a limit (E. W. Dijkstra, 1959). */
    private Map<Integer, Double> entered(State state, double mostM, Map<Integer, Integer> parents) {
        Map<Integer, Double> at = new HashMap<>();
        PriorityQueue<Step> open = new PriorityQueue<>();
        leave(state.edge, (1 - state.share) * net.lengthM(state.edge), mostM, at, open, parents);
        while (!open.isEmpty()) {
            Step step = open.poll();
            if (step.atM <= at.get(step.edge)) {
                leave(step.edge, step.atM + net.lengthM(step.edge), mostM, at, open, parents);
            }
        }
        return at;
    }

    private void leave(
            int edge,
            double atM,
            double mostM,
            Map<Integer, Double> at,
            PriorityQueue<Step> open,
            Map<Integer, Integer> parents) {
        if (atM > mostM) {
            return;
        }
        for (int next : net.leaving(net.to(edge))) {
            double thereM = atM + (next == RoadNet.reverse(edge) ? TURN_ROUND_M : 0);
            if (thereM <= mostM && thereM < at.getOrDefault(next, Double.POSITIVE_INFINITY)) {
                at.put(next, thereM);
                if (parents != null) {
                    parents.put(next, edge);
                }
                open.add(new Step(thereM, next));
            }
        }
    }

    /** The likeliest chain, edge by edge. */
    private Part traced(List<Sample> samples, List<List<State>> layers, List<Integer> taken) {
        List<State> chain = new ArrayList<>();
        List<State> last = layers.get(layers.size() - 1);
        State at = Collections.min(last, (a, b) -> Double.compare(a.cost, b.cost));
        for (int k = layers.size() - 1; k >= 0; k--) {
            chain.add(at);
            at = k > 0 ? layers.get(k - 1).get(at.before) : at;
        }
        Collections.reverse(chain);
        List<Integer> edges = new ArrayList<>();
        edges.add(chain.get(0).edge);
        double share = chain.get(0).share;
        for (int k = 1; k < chain.size(); k++) {
            State from = chain.get(k - 1);
            State to = chain.get(k);
            double lineM = samples.get(taken.get(k)).alongM()
                    - samples.get(taken.get(k - 1)).alongM();
            boolean along = from.edge == to.edge && (to.share - from.share) * net.lengthM(to.edge) >= -BACK_M;
            if (along) {
                share = Math.max(share, to.share);
            } else {
                edges.addAll(between(from, to, limitM(lineM)));
                share = to.share;
            }
        }
        return new Part(List.copyOf(edges), chain.get(0).share, share, List.of());
    }

    /** The edges after one state's, up to and with the next one's. */
    private List<Integer> between(State from, State to, double mostM) {
        Map<Integer, Integer> parents = new HashMap<>();
        entered(from, mostM, parents);
        List<Integer> edges = new ArrayList<>();
        int edge = to.edge;
        do {
            edges.add(edge);
            edge = parents.get(edge);
        } while (edge != from.edge);
        Collections.reverse(edges);
        return edges;
    }
}
