package org.cresthaul.exchange.rigfile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Trailer;

/** Reads the boosters of a stance, front to rear, each in its own frame. */
final class BoosterReader {
    static final int MOST_BEHIND = 2;
    static final double HINGE_AHEAD_OF_AXLE_M = 0.5;
    static final double MOST_HINGE_RAD = Math.toRadians(45);

    private final double lastTrailerAxleXM;
    private final Map<String, OutlineFields> topsides;
    private final boolean given;
    private final Optional<Booster> first;
    private final List<Booster> behind = new ArrayList<>();
    private final List<OutlineFields> topsidesBehind = new ArrayList<>();

    /**
     * @param lastTrailerAxleXM NaN when not known
     * @param topsides where those of the first booster are added, by the key of their weight
     */
    BoosterReader(JsonFields stance, double lastTrailerAxleXM, Map<String, OutlineFields> topsides) {
        this.lastTrailerAxleXM = lastTrailerAxleXM;
        this.topsides = topsides;
        Optional<JsonFields> fields = stance.findObject("booster");
        given = fields.isPresent();
        boolean hingeGiven = fields.isPresent() && fields.get().has("nextHinge");
        int before = stance.problems().count();
        Set<BoosterState> states = fields.map(BoosterReader::states).orElse(Set.of());
        first = fields.flatMap(f -> first(f, before, states));
        List<JsonFields> others = stance.findObjects("boostersBehind", 0, MOST_BEHIND);
        boolean runsAlone = true;
        for (int i = 0; i < others.size(); i++) {
            if (!hingeGiven && stance.isThere()) {
                stance.problems()
                        .add(
                                "no-hinge",
                                "A booster is given behind one that has no hinge for it.",
                                stance.pointer("boostersBehind") + "/" + i,
                                "Add \"nextHinge\": {\"x\": \"...\", \"h\": \"...\"} to the booster ahead, or leave this one out.");
            }
            hingeGiven = others.get(i).has("nextHinge");
            Set<BoosterState> trails = LeftOffReader.boosterBehind(others.get(i));
            runsAlone &= trails.contains(BoosterState.NONE);
            read(
                            others.get(i),
                            stance.problems().count(),
                            trails,
                            OptionalDouble.empty(),
                            Optional.empty(),
                            topsidesBehind::add)
                    .ifPresent(behind::add);
        }
        if (hingeGiven && stance.isThere()) {
            stance.problem(
                    others.isEmpty() ? "booster" : "boostersBehind",
                    "nothing-behind",
                    "The last booster has a hinge for another behind it, but there is none.",
                    "Add it to \"boostersBehind\", or leave \"nextHinge\" out.");
        }
        if (!others.isEmpty() && fields.isPresent()) {
            requireTrails(fields.get(), states, runsAlone);
        }
    }

    /** Whether the file has one, well read or not. */
    boolean given() {
        return given;
    }

    /** Empty without one, and after a problem. */
    Optional<Booster> first() {
        return first;
    }

    /** Those behind it; fewer than there are after a problem. */
    List<Booster> behind() {
        return List.copyOf(behind);
    }

    /** Of each booster behind the first that the file has. */
    List<OutlineFields> topsidesBehind() {
        return List.copyOf(topsidesBehind);
    }

    List<Booster> all() {
        List<Booster> all = new ArrayList<>();
        first.ifPresent(all::add);
        all.addAll(behind);
        return all;
    }

    /** @param runsAlone whether all behind it may be left off: only then does it anything else */
    private static void requireTrails(JsonFields booster, Set<BoosterState> states, boolean runsAlone) {
        if (!states.isEmpty() && !states.contains(BoosterState.TRAILING)) {
            booster.problem(
                    "states",
                    "booster-behind",
                    "There is a booster behind it, but it never trails.",
                    "Add \"trailing\", or leave the booster behind it out.");
        }
        for (BoosterState state : states) {
            if (state != BoosterState.TRAILING && !runsAlone) {
                booster.problem(
                        "states",
                        "booster-behind",
                        "With a booster behind it this one only trails: it cannot be " + state.word() + ".",
                        "Add \"none\" to the states of those behind it, or give its other states in a stance without them.");
            }
        }
    }

    private Optional<Booster> first(JsonFields booster, int before, Set<BoosterState> states) {
        Optional<JsonFields> closeFields = booster.findObject("closeCoupledAxle");
        double closeXM = closeFields.map(c -> c.lengthM("x", OutlineFields.X)).orElse(Double.NaN);
        closeFields.ifPresent(JsonFields::refuseOthers);
        if (closeXM >= lastTrailerAxleXM) {
            closeFields
                    .orElseThrow()
                    .problem(
                            "x",
                            "axle-order",
                            "The close-coupled axle is not behind the trailer's axles.",
                            "Give its x in the trailer's frame, below that of the last trailer axle.");
        }
        requireWith(booster, states, BoosterState.CLOSE_COUPLED, "closeCoupledAxle", closeFields.isPresent());
        if (states.contains(BoosterState.CLOSE_COUPLED) && booster.has("axles")) {
            booster.problem(
                    "states",
                    "several-axles",
                    "Only a booster on one axle is close-coupled: as one more axle of the trailer's group.",
                    "Leave the state out, or give one \"axle\".");
        }
        boolean carriedGiven = booster.has("carried");
        Optional<OutlineFields> carried =
                carriedGiven ? Optional.of(OutlineFields.of(booster, "carried", "booster")) : Optional.empty();
        requireWith(booster, states, BoosterState.CARRIED, "carried", carriedGiven);
        carried.ifPresent(outline -> topsides.put("carriedCg", outline));
        OptionalDouble closeIfGiven = closeFields.isPresent() ? OptionalDouble.of(closeXM) : OptionalDouble.empty();
        Optional<Booster> read =
                read(booster, before, states, closeIfGiven, carried, topside -> topsides.put("booster", topside));
        return booster.problems().count() > before ? Optional.empty() : read;
    }

    /** @param before how many problems there were before this booster */
    private static Optional<Booster> read(
            JsonFields booster,
            int before,
            Set<BoosterState> states,
            OptionalDouble closeXM,
            Optional<OutlineFields> carried,
            Consumer<OutlineFields> topsideRead) {
        JsonFields hinge = booster.object("hinge");
        double hingeXM = hinge.lengthM("x", OutlineFields.X);
        hinge.refuseOthers();
        boolean several = booster.has("axles");
        List<AxleFields> axles = axles(booster, several);
        double upM = several ? booster.lengthM("travelUp", StanceReader.TRAVEL) : 0;
        double downM = several ? booster.lengthM("travelDown", StanceReader.TRAVEL) : 0;
        double firstXM = axles.isEmpty() ? Double.NaN : axles.get(0).xM();
        double lastXM =
                axles.isEmpty() ? Double.NaN : axles.get(axles.size() - 1).xM();
        if (hingeXM < firstXM + HINGE_AHEAD_OF_AXLE_M) {
            hinge.problem(
                    "x",
                    "order",
                    "The booster's hinge is not at least 0.5 m ahead of its axle.",
                    "x runs forward: give the hinge the larger x.");
        }
        OutlineFields underside = OutlineFields.of(booster, "underside");
        OutlineFields topside = OutlineFields.of(booster, "topside");
        underside.requireBelow(topside);
        underside.requireReach(topside, lastXM, hingeXM, "from the booster's axle to its hinge");
        topsideRead.accept(topside);
        double upRad = booster.angleRad("hingeUp", 0, MOST_HINGE_RAD);
        double downRad = booster.angleRad("hingeDown", 0, MOST_HINGE_RAD);
        Optional<JsonFields> nextFields = booster.findObject("nextHinge");
        double reachM = nextFields
                .map(h -> h.findLengthM("reach", Couplings.REACH))
                .orElse(OptionalDouble.empty())
                .orElse(Trailer.USUAL_HINGE_REACH_M);
        FramePoint next = nextFields.map(OutlineFields::point).orElse(null);
        if (next != null) {
            Couplings.requireNextHinge(nextFields.orElseThrow(), next, hingeXM, lastXM);
        }
        booster.refuseOthers();
        if (!booster.isThere() || booster.problems().count() > before) {
            return Optional.empty();
        }
        return Optional.of(new Booster(
                hingeXM,
                AxleFields.group(axles, upM, downM),
                underside.outline(),
                topside.outline(),
                List.copyOf(states),
                upRad,
                downRad,
                closeXM,
                carried.map(OutlineFields::outline),
                Optional.ofNullable(next).map(at -> new Booster.Hinge(at, reachM))));
    }

    private static List<AxleFields> axles(JsonFields booster, boolean several) {
        if (several && booster.has("axle")) {
            booster.problem(
                    "axles", "both-axles", "A booster has \"axle\" or \"axles\", not both.", "Keep one of them.");
        }
        List<AxleFields> axles = several
                ? AxleFields.trailed(booster, StanceReader.MOST_AXLES)
                : List.of(AxleFields.trailed(booster.object("axle")));
        SteeringReader.requireGuided(booster, several ? "axles" : "axle", axles);
        return axles;
    }

    private static void requireWith(
            JsonFields booster, Set<BoosterState> states, BoosterState state, String key, boolean given) {
        if (states.contains(state) && !given) {
            booster.problem(
                    key,
                    "missing",
                    "The state \"" + state.word() + "\" needs \"" + key + "\".",
                    "Add it, or leave the state out.");
        }
    }

    /** In the order of the trade, whatever the order in the file. */
    private static Set<BoosterState> states(JsonFields booster) {
        Set<BoosterState> states = EnumSet.noneOf(BoosterState.class);
        List<JsonNode> items = booster.items("states", 1, BoosterState.values().length);
        for (int i = 0; i < items.size(); i++) {
            JsonNode item = items.get(i);
            Optional<BoosterState> state = Stream.of(BoosterState.values())
                    .filter(s -> item.isTextual() && s.word().equals(item.textValue()))
                    .findFirst();
            String at = booster.pointer("states") + "/" + i;
            if (state.isEmpty()) {
                booster.problems()
                        .add(
                                "unknown-word",
                                "This is not a state of a booster.",
                                at,
                                "It must be one of: none, trailing, close-coupled, carried.");
            } else if (!states.add(state.get())) {
                booster.problems()
                        .add(
                                "state-twice",
                                "The state \"" + item.textValue() + "\" is listed twice.",
                                at,
                                "Keep one of them.");
            }
        }
        return states;
    }
}
