package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.exchange.routefile.LimitsFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Problems;

/** What a check is asked for, read from a request's body with every mistake in it told together. */
record CheckRequest(Haul haul, Inputs inputs) {
    /** Most hazards times configurations in one check. */
    static final long MOST_CELLS = 20_000;

    private static final LengthLimits MARGIN = new LengthLimits(0, 1);

    /** The members of a request, for what a passage asks beyond a check. */
    interface More<T> {
        /** Reads further members; adds problems to those of {@code fields}. */
        T read(JsonFields fields);
    }

    /** A check and what else the request holds. */
    record With<T>(CheckRequest check, T more) {}

    /** @throws Refusal with every mistake */
    static CheckRequest read(byte[] body, KeptDocuments kept) {
        return read(body, fields -> Boolean.TRUE, kept).check();
    }

    /** As {@link #read(byte[], KeptDocuments)}, with further members. */
    static <T> With<T> read(byte[] body, More<T> more, KeptDocuments kept) {
        Problems problems = new Problems();
        JsonNode root = JsonText.read(body, problems);
        refuseIfAny(problems);
        JsonFields fields = JsonFields.of(root, "", problems);
        Map<String, String> hashes = RequestMembers.sha256(body);
        Optional<Route> route =
                kept.route(document(fields, "route"), "/route", Optional.ofNullable(hashes.get("route")), problems);
        Optional<Rig> rig = kept.rig(document(fields, "rig"), "/rig", Optional.ofNullable(hashes.get("rig")), problems);
        Optional<String> stanceName = fields.findText("stance", JsonFields.LONGEST_NAME);
        Optional<LevelStance> stance = rig.flatMap(r -> stance(r, stanceName, fields));
        Margins margins =
                fields.findObject("margins").map(CheckRequest::margins).orElse(Margins.defaults());
        Optional<WeightLimits> limits = LimitsFile.read(fields.find("limits"), "/limits", problems);
        T further = more.read(fields);
        fields.refuseOthers();
        refuseIfAny(problems);
        return new With<>(
                new CheckRequest(
                        new Haul(
                                limits.map(route.orElseThrow()::withLimits).orElse(route.orElseThrow()),
                                rig.orElseThrow(),
                                stance.orElseThrow(),
                                margins),
                        new Inputs(hashes.get("route"), hashes.get("rig"), Optional.ofNullable(hashes.get("limits")))),
                further);
    }

    private static JsonNode document(JsonFields fields, String key) {
        JsonNode document = fields.find(key);
        if (document.isMissingNode() && fields.isThere()) {
            fields.problem(key, "missing", "\"" + key + "\" is missing.", "Set the " + key + " file in here.");
        }
        return document;
    }

    private static Optional<LevelStance> stance(Rig rig, Optional<String> name, JsonFields fields) {
        Optional<LevelStance> stance = StanceChoice.of(rig, name);
        if (stance.isEmpty()) {
            fields.problem("stance", StanceChoice.CODE, StanceChoice.message(rig, name), StanceChoice.REMEDY);
        }
        return stance;
    }

    private static Margins margins(JsonFields margins) {
        double groundM =
                margins.findLengthM("ground", MARGIN).orElse(Margins.defaults().groundM());
        double overheadM = margins.findLengthM("overhead", MARGIN)
                .orElse(Margins.defaults().overheadM());
        double sideM =
                margins.findLengthM("side", MARGIN).orElse(Margins.defaults().sideM());
        double lineM =
                margins.findLengthM("line", MARGIN).orElse(Margins.defaults().lineM());
        double turnInM =
                margins.findLengthM("turnIn", MARGIN).orElse(Margins.defaults().turnInM());
        double unitM =
                margins.findLengthM("unit", MARGIN).orElse(Margins.defaults().unitM());
        margins.refuseOthers();
        boolean sound = Double.isFinite(groundM)
                && Double.isFinite(overheadM)
                && Double.isFinite(sideM)
                && Double.isFinite(lineM)
                && Double.isFinite(turnInM)
                && Double.isFinite(unitM);
        return sound ? new Margins(groundM, overheadM, sideM, lineM, turnInM, unitM) : Margins.defaults();
    }

    /** The same of another combination of the rig. */
    CheckRequest of(Haul other) {
        return new CheckRequest(other, inputs);
    }

    /**
     * Keeps one request from holding a processor for long.
     *
     * @throws Refusal when the check is too much work for one request
     */
    CheckRequest requireBoundedWork() {
        return requireBoundedWork(List.of(haul.stance()));
    }

    /**
     * The same where several combinations are asked about at once.
     *
     * @throws Refusal likewise
     */
    CheckRequest requireBoundedWork(List<LevelStance> stances) {
        long configurations = 0;
        double costMs = 0;
        for (LevelStance stance : stances) {
            configurations += (long) haul.rig().notches().size()
                    * stance.liftStates().size()
                    * stance.boosterStates().size();
            costMs += CheckCost.estimatedMs(haul.route(), haul.rig(), stance);
        }
        if (haul.route().hazards().size() * configurations > MOST_CELLS || costMs > CheckCost.MOST_MS) {
            throw Refusal.of(List.of(new InputProblem(
                    "too-much-work",
                    haul.route().hazards().size() + " hazards in " + configurations + " configurations, about "
                            + Math.round(costMs / 1000) + " s of one processor, are too much for one request.",
                    "/route/features",
                    "Check the route in parts, or from the command line.")));
        }
        return this;
    }

    private static void refuseIfAny(Problems problems) {
        if (!problems.isEmpty()) {
            throw Refusal.of(problems.list());
        }
    }
}
