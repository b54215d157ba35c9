package org.cresthaul.exchange.routefile;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.Overhead;
import org.cresthaul.route.OverheadWire;
import org.cresthaul.route.Sketch;

/** Reads where a hazard comes from that nobody here measured, and holds it to its state. */
final class CandidateReader {
    private static final List<String> SOURCES =
            Stream.of(Candidate.Source.values()).map(Candidate.Source::word).toList();
    private static final List<String> STATES =
            Stream.of(Candidate.State.values()).map(Candidate.State::word).toList();

    private static final int MOST_TRACKS = 50;

    private final JsonFields hazard;
    private final Candidate candidate;

    private CandidateReader(JsonFields hazard, Candidate candidate) {
        this.hazard = hazard;
        this.candidate = candidate;
    }

    /** Empty where the hazard is none, or after a problem. */
    static Optional<CandidateReader> of(JsonFields hazard) {
        return hazard.findObject("candidate").flatMap(fields -> read(hazard, fields));
    }

    private static Optional<CandidateReader> read(JsonFields hazard, JsonFields fields) {
        int before = fields.problems().count();
        String source = fields.word("source", SOURCES);
        String object = fields.text("object", JsonFields.LONGEST_NAME);
        Optional<LocalDate> date = fields.has("date")
                ? Optional.ofNullable(LimitsFile.date(fields, "date", fields.text("date", 10)))
                : Optional.empty();
        Optional<String> license = fields.findText("license", JsonFields.LONGEST_NAME);
        String raw = fields.findText("raw", JsonFields.LONGEST_NOTE).orElse("");
        String state = fields.word("state", STATES);
        Optional<String> by = fields.findText("by", JsonFields.LONGEST_NAME);
        Optional<String> why = fields.findText("why", JsonFields.LONGEST_NOTE);
        Candidate.Rails rails = rails(hazard, fields);
        Optional<Sketch> sketch = SketchReader.read(hazard, fields);
        fields.refuseOthers();
        boolean dismissed = state.equals(Candidate.State.DISMISSED.word());
        for (String key : List.of("by", "why")) {
            if (dismissed && !fields.has(key)) {
                fields.problem(
                        key,
                        "missing",
                        "A candidate is dismissed by somebody, for a reason.",
                        "Say who dismissed it in \"by\", and why in \"why\".");
            } else if (!dismissed && fields.has(key)) {
                fields.problem(
                        key,
                        "not-dismissed",
                        "\"" + key + "\" says who dismissed it and why; this candidate is " + state + ".",
                        "Leave it out, or write \"state\": \"dismissed\".");
            }
        }
        if (!fields.isThere() || fields.problems().count() > before) {
            return Optional.empty();
        }
        return Optional.of(new CandidateReader(
                hazard,
                new Candidate(
                        Stream.of(Candidate.Source.values())
                                .filter(s -> s.word().equals(source))
                                .findFirst()
                                .orElseThrow(),
                        object,
                        date,
                        license,
                        raw,
                        Stream.of(Candidate.State.values())
                                .filter(s -> s.word().equals(state))
                                .findFirst()
                                .orElseThrow(),
                        by,
                        why,
                        rails,
                        sketch)));
    }

    private static Candidate.Rails rails(JsonFields hazard, JsonFields fields) {
        boolean crossing = hazard.find("hazard").asText().equals(HazardKind.RAIL_CROSSING.word());
        for (String key : List.of("tracks", "angle", "lowGroundSign")) {
            if (fields.has(key) && !crossing) {
                fields.problem(
                        key,
                        "not-of-this-kind",
                        "Only of a rail crossing is \"" + key + "\" reported.",
                        "Leave it out.");
            }
        }
        OptionalInt tracks = fields.findInteger("tracks", 1, MOST_TRACKS);
        OptionalDouble angleRad = fields.has("angle")
                ? OptionalDouble.of(fields.angleRad("angle", 0, Math.PI / 2))
                : OptionalDouble.empty();
        boolean sign = fields.has("lowGroundSign")
                && fields.word("lowGroundSign", List.of("posted")).equals("posted");
        return new Candidate.Rails(tracks, angleRad, sign);
    }

    Candidate candidate() {
        return candidate;
    }

    boolean isDismissed() {
        return candidate.state() == Candidate.State.DISMISSED;
    }

    /** An open candidate has nothing that could be clear; a surveyed one has been surveyed. */
    void requireStateOf(Hazard made) {
        boolean hearsay = isHearsay(made);
        if (candidate.state() == Candidate.State.OPEN && !hearsay) {
            hazard.problem(
                    "candidate",
                    "open-but-surveyed",
                    "This candidate is open, but its hazard says more than was reported.",
                    "Write \"state\": \"surveyed\" when it was measured or read from its sign; until then a height is"
                            + " \"measured\": \"reported\" and limits are \"origin\": \"reported\".");
        }
        if (candidate.state() == Candidate.State.SURVEYED && (hearsay || !made.isSurveyed())) {
            hazard.problem(
                    "candidate",
                    "surveyed-without-survey",
                    "This candidate is said to be surveyed, but its hazard has no survey.",
                    "Add what was measured, or write \"state\": \"open\".");
        }
    }

    /** Whether nothing is known of it, or only what others say. */
    private static boolean isHearsay(Hazard made) {
        if (made instanceof Overhead over) {
            LowStructure structure = over.height();
            return structure.lines().isEmpty()
                    && (structure.measured() == LowStructure.Measured.REPORTED || !structure.isSurveyed());
        }
        if (made instanceof OverheadWire wire) {
            return isHearsay(wire.height());
        }
        if (made instanceof LimitedPlace place) {
            return place.limits().map(l -> l.reported()).orElse(true);
        }
        return !made.isSurveyed() && made.lines().isEmpty();
    }
}
