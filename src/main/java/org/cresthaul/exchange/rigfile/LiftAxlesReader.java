package org.cresthaul.exchange.rigfile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.LiftAxle;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.units.LengthLimits;

/**
 * Reads which of a trailer's axles can be raised: the last one alone ("liftAxle"), or any of them with every state in
 * which some are up ("liftAxles" and "liftStates").
 */
final class LiftAxlesReader {
    static final int MOST_AXLES = 4;
    static final int MOST_STATES = 6;
    static final LengthLimits GAP = new LengthLimits(0, 1);
    static final LengthLimits SECONDARY_RISE = new LengthLimits(-0.5, 0.5);

    private final JsonFields trailer;
    private final List<AxleFields> axles;
    private final double upM;
    private final double downM;

    /**
     * @param upM how far the trailer's axles travel up, meters, NaN when wrong
     * @param downM how far down
     */
    LiftAxlesReader(JsonFields trailer, List<AxleFields> axles, double upM, double downM) {
        this.trailer = trailer;
        this.axles = axles;
        this.upM = upM;
        this.downM = downM;
    }

    /** What can be raised; of use only when no problem was added. */
    LiftAxles read() {
        Optional<JsonFields> last = trailer.findObject("liftAxle");
        if (!trailer.has("liftAxles") && !trailer.has("liftStates")) {
            return last.map(this::last).orElse(LiftAxles.NONE);
        }
        if (last.isPresent()) {
            trailer.problem(
                    "liftAxle",
                    "both-lifts",
                    "The last axle is given as the lift axle, and lift axles are listed as well.",
                    "Keep \"liftAxles\" and \"liftStates\".");
        }
        Map<Integer, LiftAxle> listed = listed();
        List<LiftAxles.Raised> states = states(listed);
        return states.isEmpty() || listed.isEmpty() ? LiftAxles.NONE : made(listed, states);
    }

    private static LiftAxles made(Map<Integer, LiftAxle> listed, List<LiftAxles.Raised> states) {
        Set<Integer> used = new HashSet<>();
        states.forEach(s -> used.addAll(s.indexes()));
        return used.equals(listed.keySet())
                        && states.stream()
                                        .map(LiftAxles.Raised::indexes)
                                        .distinct()
                                        .count()
                                == states.size()
                ? new LiftAxles(List.copyOf(listed.values()), states)
                : LiftAxles.NONE;
    }

    private LiftAxles last(JsonFields fields) {
        double gapM = fields.lengthM("gap", GAP);
        double riseM = rise(fields);
        fields.refuseOthers();
        return axles.isEmpty() || Double.isNaN(gapM) || Double.isNaN(riseM)
                ? LiftAxles.NONE
                : LiftAxles.one(axles.size() - 1, gapM, riseM);
    }

    private double rise(JsonFields fields) {
        double riseM = fields.lengthM("secondaryRise", SECONDARY_RISE);
        if (riseM > downM || -riseM > upM) {
            fields.problem(
                    "secondaryRise",
                    "beyond-travel",
                    "The secondary rise is more than the axles' travel: the valve could never set it.",
                    "Keep a rise within travelDown (a drop within travelUp).");
        }
        return riseM;
    }

    /** By index, front to rear. */
    private Map<Integer, LiftAxle> listed() {
        Map<Integer, LiftAxle> listed = new TreeMap<>();
        for (JsonFields item : trailer.objects("liftAxles", 1, MOST_AXLES)) {
            OptionalInt number = item.integer("axle", 1, StanceReader.MOST_AXLES);
            double gapM = item.lengthM("gap", GAP);
            item.refuseOthers();
            if (number.isEmpty() || axles.isEmpty()) {
                continue;
            }
            int index = number.getAsInt() - 1;
            if (index >= axles.size()) {
                item.problem(
                        "axle",
                        "no-such-axle",
                        "Axle " + (index + 1) + " is a lift axle, but there are " + axles.size() + ".",
                        "Count from the front, starting with 1.");
            } else if (listed.containsKey(index)) {
                item.problem(
                        "axle", "given-twice", "Axle " + (index + 1) + " is listed twice.", "List each axle once.");
            } else {
                listed.put(index, new LiftAxle(index, Double.isNaN(gapM) ? 0 : gapM));
            }
        }
        return listed;
    }

    private List<LiftAxles.Raised> states(Map<Integer, LiftAxle> listed) {
        List<LiftAxles.Raised> states = new ArrayList<>();
        Set<Integer> unused = new TreeSet<>(listed.keySet());
        Map<Set<Integer>, String> known = new HashMap<>();
        for (JsonFields item : trailer.objects("liftStates", 1, MOST_STATES)) {
            Set<Integer> up = up(item, listed);
            double riseM = rise(item);
            Optional<ChartPoints> gauge = item.findObject("gauge").flatMap(ChartReader::read);
            item.refuseOthers();
            unused.removeAll(up);
            if (known.putIfAbsent(up, item.pointer()) != null && !up.isEmpty()) {
                item.problem(
                        "up",
                        "given-twice",
                        "The same axles are up at " + known.get(up) + ".",
                        "Give each state once: what the rear stands at with these axles up.");
            }
            if (!up.isEmpty() && !Double.isNaN(riseM)) {
                states.add(new LiftAxles.Raised(List.copyOf(up), riseM, gauge));
            }
        }
        if (!unused.isEmpty() && trailer.has("liftStates")) {
            trailer.problem(
                    "liftStates",
                    "never-up",
                    "Axle " + (unused.iterator().next() + 1) + " is a lift axle, but up in no state.",
                    "Add a state with it in \"up\", or take it out of \"liftAxles\".");
        }
        return states;
    }

    /** Indexes, front to rear; empty when wrong. */
    private Set<Integer> up(JsonFields item, Map<Integer, LiftAxle> listed) {
        Set<Integer> up = new TreeSet<>();
        int before = item.problems().count();
        List<JsonNode> numbers = item.items("up", 1, MOST_AXLES);
        for (int i = 0; i < numbers.size(); i++) {
            String at = item.pointer("up") + "/" + i;
            if (!numbers.get(i).isIntegralNumber() || !numbers.get(i).canConvertToInt()) {
                item.problems()
                        .add(
                                "wrong-type",
                                "The axles that are up are told by their numbers.",
                                at,
                                "Write the number of a lift axle as in [3, 4].");
                continue;
            }
            int index = numbers.get(i).asInt() - 1;
            if (!listed.containsKey(index)) {
                item.problems()
                        .add(
                                "no-lift-axle",
                                "Axle " + numbers.get(i).asInt() + " is not listed as a lift axle.",
                                at,
                                "List it in \"liftAxles\" with its gap, or leave it out here.");
            } else if (!up.add(index)) {
                item.problems()
                        .add("given-twice", "Axle " + (index + 1) + " is listed twice.", at, "List each axle once.");
            }
        }
        return item.problems().count() > before ? Set.of() : up;
    }
}
