package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.CheckedLeg;
import org.cresthaul.report.CheckedRig;
import org.cresthaul.report.CheckedRoute;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.Margins;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.ReversingReport;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.CornerSource;
import org.cresthaul.route.CrossingTraffic;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.Leg;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.PostedBridge;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.RoadFrame;
import org.cresthaul.route.RoadHump;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.route.RouteLine;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.route.Stretch;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;

/**
 * An invented straight road with places on it, what a check is said to have found there, and what the planner allows.
 */
public record PlanCase(Route route, LevelStance stance, Report report, PlanOptions options, RaiseJudge judge) {
    /** About 3.9 km due east. */
    public static final RouteLine LINE = line();

    private static final List<String> VERDICTS =
            List.of("clear", "clear", "clear", "clear", "tight", "contact", "not surveyed", "outside limits");

    private static final double HALF_WAY_M = 700;

    private static RouteLine line() {
        RouteLine.Builder builder = new RouteLine.Builder();
        builder.add(new LonLat(-93.1, 44.6));
        builder.add(new LonLat(-93.05, 44.6));
        return builder.build();
    }

    public Plan plan() {
        return RoutePlan.of(route, stance, report, options, judge);
    }

    public PlanCase with(PlanOptions other) {
        return new PlanCase(route, stance, report, other, judge);
    }

    PlanCase withSetAside(List<String> ids) {
        List<String> all = new ArrayList<>(options.setAside());
        all.addAll(ids);
        return with(new PlanOptions(
                options.times(),
                options.forbid(),
                options.fix(),
                options.avoidRaising(),
                options.acceptTight(),
                all,
                options.leastReserve(),
                options.fewestConditions(),
                options.settled()));
    }

    PlanCase withStops(List<StoppingPlace> stops) {
        return new PlanCase(routeOf(route.hazards(), stops), stance, report, options, judge);
    }

    static Route routeOf(List<Hazard> hazards, List<StoppingPlace> stops) {
        return routeOf(LINE, hazards, stops);
    }

    static Route routeOf(RouteLine line, List<Hazard> hazards, List<StoppingPlace> stops) {
        Leg leg = new Leg("all", 0, line.size() - 1, 0, line.lengthM());
        List<Hazard> sortedHazards = new ArrayList<>(hazards);
        sortedHazards.sort(java.util.Comparator.comparingDouble(h -> h.place().chainageM()));
        List<StoppingPlace> sortedStops = new ArrayList<>(stops);
        sortedStops.sort(java.util.Comparator.comparingDouble(s -> s.place().chainageM()));
        return new Route("Invented", "", line, List.of(leg), sortedHazards, sortedStops, Optional.empty());
    }

    public static HazardPlace place(String id, double chainageM) {
        return new HazardPlace(id, "place " + id, Optional.empty(), new LonLat(-93.09, 44.6), chainageM, 0);
    }

    static StoppingPlace stop(String id, double chainageM, boolean setUpArea, double roomM) {
        return new StoppingPlace(place(id, chainageM), setUpArea, roomM);
    }

    static Hazard crossing(String id, double chainageM) {
        return new RailCrossing(
                place(id, chainageM), Optional.empty(), List.of(), Optional.empty(), List.of(), List.of());
    }

    /** A crossing of one track with active devices, and room beyond. */
    static Hazard timedCrossing(String id, double chainageM, double warningS, double storageM) {
        return new RailCrossing(
                place(id, chainageM),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                List.of(0.0),
                List.of(),
                new CrossingTraffic(
                        Optional.of(CrossingTraffic.Warning.ACTIVE),
                        OptionalDouble.of(warningS),
                        OptionalDouble.of(storageM),
                        OptionalDouble.empty(),
                        OptionalDouble.empty()));
    }

    public static Hazard dip(String id, double chainageM) {
        return new RoadHump(place(id, chainageM), HazardKind.DIP, List.of(), Optional.empty());
    }

    public static Hazard bridge(String id, double chainageM) {
        return new PostedBridge(place(id, chainageM), Optional.empty(), Optional.empty());
    }

    public static Hazard corner(String id, double chainageM) {
        return new RouteCorner(
                place(id, chainageM),
                Optional.empty(),
                Optional.empty(),
                new RoadFrame(new LonLat(-93.09, 44.6), 0),
                CornerSource.ROUTE_LINE,
                Optional.empty());
    }

    static Hazard stretch(String id, double chainageM, double toM) {
        return new Stretch(place(id, chainageM), 0, toM, Optional.empty(), false);
    }

    /** The small rig with two notches and these booster states, no lift axle: four configurations with two states. */
    public static Rig rig(String... boosterStates) {
        try {
            String text = JsonEdit.edit(
                    RigTexts.RIG,
                    "/notches",
                    "[{\"name\": \"1\", \"offset\": \"-1 in\"}, {\"name\": \"2\", \"offset\": \"0 in\"}]");
            text = JsonEdit.edit(
                    text, "/stances/0/booster/states", "[\"" + String.join("\", \"", boosterStates) + "\"]");
            return RigFile.parse(JsonEdit.edit(text, "/stances/0/trailer/liftAxle", "absent"));
        } catch (InputRejected e) {
            throw new IllegalArgumentException(e);
        }
    }

    /** Configurations as a report lists them: by booster state, then notch. */
    public static List<ConfigurationVerdict> configurations(Rig rig, List<String> wholeRouteLoads) {
        List<ConfigurationVerdict> all = new ArrayList<>();
        rig.stances()
                .get(0)
                .boosterStates()
                .forEach(b -> rig.notches().forEach(n -> {
                    Verdict loads = wholeRouteLoads.isEmpty()
                            ? Verdict.CLEAR
                            : verdict(wholeRouteLoads.get(
                                    all.size() / rig.notches().size()));
                    all.add(new ConfigurationVerdict(
                            "down/" + b.word() + "/" + n.name(),
                            b.word() + " " + n.name(),
                            LiftState.DOWN,
                            3,
                            List.of(),
                            b,
                            n.name(),
                            n.offsetM(),
                            Verdict.CLEAR,
                            0,
                            0,
                            0,
                            0,
                            0,
                            0,
                            0,
                            loads));
                }));
        return all;
    }

    /**
     * A report of these hazards; no word on loads when {@code wholeRouteLoads} is empty, else one for each booster
     * state.
     */
    static Report report(Rig rig, List<HazardFindings> hazards, List<String> wholeRouteLoads) {
        List<LoadReport.StateLoads> states = new ArrayList<>();
        for (int i = 0; i < rig.stances().get(0).boosterStates().size(); i++) {
            Verdict loads = wholeRouteLoads.isEmpty() ? Verdict.CLEAR : verdict(wholeRouteLoads.get(i));
            states.add(new LoadReport.StateLoads(
                    LiftState.DOWN, rig.stances().get(0).boosterStates().get(i), 3, "state", loads, null, null));
        }
        return new Report(
                Report.FORM,
                "test",
                new CheckedRoute(
                        "Invented", "", "", null, LINE.lengthM(), List.of(new CheckedLeg("all", 0, LINE.lengthM()))),
                new CheckedRig("rig", "", "", "loaded"),
                Margins.defaults(),
                List.of(),
                configurations(rig, wholeRouteLoads),
                hazards,
                new LoadReport(
                        !wholeRouteLoads.isEmpty(),
                        null,
                        null,
                        List.of(),
                        !wholeRouteLoads.isEmpty(),
                        states,
                        List.of(),
                        List.of()),
                new ReversingReport(0.01745, 91.44, List.of(), List.of()),
                List.of());
    }

    public static HazardFindings findings(Hazard hazard, List<Double> extentM, List<ReportCell> cells) {
        HazardPlace p = hazard.place();
        return new HazardFindings(
                p.id(),
                hazard.kind(),
                p.name(),
                null,
                p.chainageM(),
                0,
                List.of(-93.09, 44.6),
                true,
                List.of(),
                extentM,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                cells,
                List.of());
    }

    /** Of its word: cases are written in words. */
    static Verdict verdict(String word) {
        return Stream.of(Verdict.values())
                .filter(v -> v.word().equals(word))
                .findFirst()
                .orElseThrow();
    }

    static ReportCell cell(ConfigurationVerdict c, String verdict, RaiseFinding raise) {
        return new ReportCell(
                c.key(),
                verdict(verdict),
                null,
                null,
                raise,
                null,
                verdict.equals("clear") ? List.of() : List.of(Sentence.verbatim("said so")));
    }

    /** The same with a gap that leaves so much beyond the 5 cm required. */
    static ReportCell cell(ConfigurationVerdict c, String verdict, RaiseFinding raise, double leftM) {
        ReportCell plain = cell(c, verdict, raise);
        return new ReportCell(
                plain.configuration(), plain.verdict(), gap(0.05 + leftM), null, raise, null, plain.reasons());
    }

    /** Any small case: up to six places, up to three stops, four configurations. */
    public static PlanCase random(SplittableRandom random) {
        Rig rig = random.nextBoolean() ? rig("none", "trailing") : rig("trailing", "close-coupled");
        List<StoppingPlace> stops = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            stops.add(stop(
                    "P" + i,
                    spot(random),
                    random.nextInt(3) > 0,
                    List.of(15.0, 24.0, 60.0, 80.0).get(random.nextInt(4))));
        }
        // Some cases are such that a change half-way is likely to be what opens them.
        boolean split = random.nextInt(3) == 0;
        int[] favored = {random.nextInt(4), random.nextInt(4)};
        if (split) {
            stops.add(stop("PM", HALF_WAY_M, random.nextInt(4) > 0, 80));
        }
        List<String> loads =
                split || random.nextInt(3) > 0 ? List.of() : List.of(verdict(random, false), verdict(random, false));
        List<Hazard> hazards = new ArrayList<>();
        List<HazardFindings> findings = new ArrayList<>();
        for (int i = 1 + random.nextInt(6); i > 0; i--) {
            Hazard hazard = hazard(random, "H" + i);
            hazards.add(hazard);
            boolean raisable = hazard instanceof RailCrossing || hazard instanceof RoadHump;
            List<ReportCell> cells = new ArrayList<>();
            // As with a real rig: some places are alike in every configuration, at others each is its own.
            boolean alike = random.nextInt(4) == 0;
            String same = verdict(random, raisable);
            for (ConfigurationVerdict c : configurations(rig, List.of())) {
                boolean fits = cells.size() == favored[hazard.place().chainageM() < HALF_WAY_M ? 0 : 1];
                String verdict = split
                        ? fits ? "clear" : List.of("clear", "contact").get(random.nextInt(2))
                        : alike ? same : verdict(random, raisable);
                boolean raise = raisable && List.of("tight", "contact").contains(verdict) && random.nextBoolean();
                RaiseFinding finding = raise
                        ? new RaiseFinding(
                                0.05 * random.nextInt(3),
                                0.02 * random.nextInt(2) + 0.01,
                                0.09 + 0.01 * random.nextInt(3),
                                0.09)
                        : null;
                // Of some clear places nobody has figures, as of one that nothing reaches.
                cells.add(
                        verdict.equals("clear") && random.nextInt(5) > 0
                                ? cell(c, verdict, finding, 0.01 * random.nextInt(5))
                                : verdict.equals("tight")
                                        ? cell(c, verdict, finding, -0.004)
                                        : cell(c, verdict, finding));
            }
            List<Double> extent = hazard instanceof Stretch s
                    ? List.of(s.fromM(), s.toM())
                    : raisable && random.nextBoolean() ? List.of(-4.0, 6.0) : List.of();
            findings.add(findings(hazard, extent, cells));
        }
        Route route = routeOf(hazards, stops);
        findings.sort(java.util.Comparator.comparingDouble(HazardFindings::chainageM));
        Report report = report(rig, findings, loads);
        long salt = random.nextLong();
        return new PlanCase(route, rig.stances().get(0), report, options(random, report), anyJudge(salt));
    }

    /** Of raises, without rhyme or reason, but always the same. */
    static RaiseJudge anyJudge(long salt) {
        return new AnyJudge(salt);
    }

    private record AnyJudge(long salt) implements RaiseJudge {
        @Override
        public Optional<RaisedCheck.Raised> at(String hazard, String configuration, double front, double rear) {
            int roll = roll(hazard + configuration + front + "/" + rear);
            return roll == 9
                    ? Optional.empty()
                    : Optional.of(new RaisedCheck.Raised(
                            roll < 6 ? Verdict.CLEAR : roll < 8 ? Verdict.TIGHT : Verdict.CONTACT,
                            gap(0.06 + 0.01 * (roll % 3)),
                            null,
                            null));
        }

        @Override
        public Optional<RaisedCheck.Least> least(String hazard, String configuration, double share) {
            int roll = roll(hazard + configuration + share);
            return roll > 6
                    ? Optional.empty()
                    : Optional.of(new RaisedCheck.Least(0.1 + 0.02 * (roll % 3), roll < 3 ? 0 : 0.04));
        }

        private int roll(String what) {
            return new SplittableRandom(salt ^ what.hashCode()).nextInt(10);
        }
    }

    private static GapFinding gap(double valueM) {
        return new GapFinding(
                valueM, 0.05, 0.05, 0, Verdict.CLEAR, "trailer", 0, 0, "", 0, 0, 0, "center", "held", 0, true, 0);
    }

    private static double spot(SplittableRandom random) {
        return random.nextInt(12) == 0 ? 0 : random.nextInt(12) == 0 ? LINE.lengthM() : 30 * random.nextInt(1, 45);
    }

    private static Hazard hazard(SplittableRandom random, String id) {
        double at = spot(random);
        return switch (random.nextInt(6)) {
            case 0 -> crossing(id, at);
            case 1 -> timedCrossing(id, at, 16 + 2 * random.nextInt(12), 18 + 2 * random.nextInt(10));
            case 2 -> dip(id, at);
            case 3 -> bridge(id, at);
            case 4 -> random.nextBoolean() ? corner(id, at) : dip(id, at);
            default -> stretch(id, at, 25 * (1 + random.nextInt(12)));
        };
    }

    private static String verdict(SplittableRandom random, boolean gaps) {
        return VERDICTS.get(random.nextInt(gaps ? 6 : 8));
    }

    private static PlanOptions options(SplittableRandom random, Report report) {
        PlanTimes d = PlanTimes.defaults();
        PlanTimes times = random.nextBoolean()
                ? d
                : new PlanTimes(
                        random.nextInt(3) * 60,
                        random.nextInt(3) * 60,
                        60,
                        random.nextInt(100),
                        30,
                        60,
                        random.nextInt(200),
                        120 * random.nextInt(3),
                        90,
                        60,
                        45,
                        30,
                        30,
                        0.5 + random.nextInt(3));
        List<String> tight = report.hazards().stream()
                .filter(h -> h.cells().stream().anyMatch(c -> c.verdict() == Verdict.TIGHT) && random.nextInt(3) > 0)
                .map(HazardFindings::id)
                .toList();
        List<String> aside = report.hazards().stream()
                .map(HazardFindings::id)
                .filter(id -> random.nextInt(8) == 0)
                .toList();
        List<String> forbid = report.configurations().stream()
                .map(ConfigurationVerdict::key)
                .filter(k -> random.nextInt(6) == 0)
                .limit(3)
                .toList();
        return new PlanOptions(times, forbid, null, random.nextInt(4) == 0, tight, aside);
    }
}
