package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.cresthaul.check.Caution.When;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.OverheadWire;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCandidate;
import org.cresthaul.route.RouteCorner;

/** The usual cautions, each where it belongs. They defer to the permit, local codes and the person at the wheel. */
public final class Cautions {
    private static final String RAISED =
            "Raised stance: crawling speed only, and back on the transport stops with leveling in auto before road speed.";
    private static final String UNDER = "Nobody goes under a deck that is raised or held by hydraulics.";
    private static final String CROSSING_RULES =
            "49 CFR 392.11: slow down and see that the tracks are clear. 49 CFR 392.12: do not enter without room to drive"
                    + " all the way across. 49 CFR 383.51(d): a conviction for breaking either, or for failing to cross for"
                    + " lack of undercarriage clearance, disqualifies the driver.";
    private static final String ESCORT = "Escorts and flaggers as the permit says.";

    private static final String ESCORTED = ESCORT + " Nobody enters an oncoming lane before they hold it.";

    private Cautions() {}

    static List<String> general() {
        return List.of(
                "These results support, and never replace, the permit, local codes, a qualified survey and the person at"
                        + " the wheel.",
                "Clearances hold for the combination as declared and the road as surveyed. A place that is not surveyed"
                        + " is not clear.",
                ESCORT);
    }

    /** Those of every route, and what is known of this one only by hearsay. */
    static List<String> of(Route route) {
        List<String> all = new ArrayList<>(general());
        List<RouteCandidate> open = route.candidates().stream()
                .filter(c -> c.candidate().state() == Candidate.State.OPEN)
                .toList();
        if (!open.isEmpty()) {
            all.add((open.size() == 1 ? "One place is" : open.size() + " places are")
                    + " known by hearsay alone and not surveyed; no such place is clear: "
                    + open.stream().map(c -> c.place().id()).collect(Collectors.joining(", ")) + ".");
        }
        route.candidates().stream()
                .filter(c -> c.candidate().state() == Candidate.State.DISMISSED)
                .forEach(c -> all.add(
                        "Not judged: " + c.place().name() + " (" + c.place().id() + "), "
                                + c.candidate().told() + "; dismissed by "
                                + c.candidate().by().orElseThrow() + ": "
                                + c.candidate().why().orElseThrow()));
        return List.copyOf(all);
    }

    static List<String> reversing() {
        return List.of(
                "With the steering held straight: it shows how fast a bend grows, not how far to back; a driver who corrects in time"
                        + " gets farther.",
                "A pivot left free can fold faster than steering can correct. Lock it before backing, keep a spotter in"
                        + " sight, and follow the maker's instructions and local rules.");
    }

    /**
     * Those of a hazard's cautions that bear on one of its cells: a raise and escorts are cautioned about only where
     * that cell has them.
     */
    public static List<String> of(Report.HazardFindings hazard, Report.Cell cell) {
        return IntStream.range(0, hazard.cautions().size())
                .filter(i -> hazard.cautionsWhen().get(i).happensIn(cell))
                .mapToObj(hazard.cautions()::get)
                .toList();
    }

    static List<Caution> at(Hazard hazard, List<Report.Cell> cells) {
        List<Caution> cautions = new ArrayList<>();
        if (hazard instanceof RailCrossing crossing) {
            cautions.add(Caution.always(StuckOnTracks.caution(crossing.crossingNumber())));
            cautions.add(Caution.always(CROSSING_RULES));
        }
        if (hazard instanceof LowStructure) {
            cautions.add(Caution.always(
                    "Heights change with every overlay and every load: measure the load, and the structure when in"
                            + " doubt, before going under."));
        }
        if (hazard instanceof OverheadWire) {
            cautions.add(
                    Caution.always(
                            "Every wire counts as live until its owner has switched it off and grounded it. Its owner decides how"
                                    + " near anything may come, and alone lifts or moves it: ask before the day of the move. Keep it away from"
                                    + " the load; nobody on the load and nobody touching the combination under it. When it has been touched,"
                                    + " stay in the cab unless it burns, keep everybody away and call its owner and the emergency number."));
        }
        if (hazard instanceof RouteCorner) {
            cautions.add(Caution.always(
                    "Low speed, on the line as found. The room allows for a driver off that line, or turning in early or"
                            + " late, by no more than the tolerances named; beyond them the combination cuts the corner or swings wide."
                            + " Watch the tail when pulling away from a wall, pole or queue."));
        }
        if (cells.stream().anyMatch(c -> c.corner() != null && c.corner().escorts())) {
            cautions.add(new Caution(ESCORTED, When.ESCORTED));
        }
        if (hazard instanceof LimitedPlace) {
            cautions.add(Caution.always(
                    "The scales and the sign at the place decide; the limits and the permit are the authority's."));
        }
        if (cells.stream().anyMatch(c -> c.raise() != null)) {
            cautions.add(new Caution(RAISED, When.RAISED));
            cautions.add(new Caution(UNDER, When.RAISED));
        }
        return List.copyOf(cautions);
    }
}
