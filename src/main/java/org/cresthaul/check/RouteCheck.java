package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.report.CheckedLeg;
import org.cresthaul.report.CheckedRig;
import org.cresthaul.report.CheckedRoute;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.HumpLadder;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.LeastSetting;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.SketchGap;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.report.TapeLine;
import org.cresthaul.report.UncertaintyTerm;
import org.cresthaul.report.Verdict;
import org.cresthaul.report.Version;
import org.cresthaul.rig.TapeMeasures;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.RouteCorner;

/** Checks a route against a rig: every hazard, every configuration. */
public final class RouteCheck {
    private final Haul haul;
    private final Inputs inputs;
    private final KeptFindings kept;
    private final CheckFollower follower;
    private final List<CheckedConfiguration> configurations;
    private final RouteLoads loads;
    private final JoinedCorners joined;
    private final LevelUnits level;
    private final FirstLook firstLook;

    private RouteCheck(Haul haul, Inputs inputs, KeptFindings kept, CheckFollower follower) {
        this.haul = haul;
        this.inputs = inputs;
        this.kept = kept;
        this.follower = follower;
        configurations = CheckedConfiguration.listOf(haul.rig(), haul.stance());
        loads = new RouteLoads(haul.route(), haul.stance());
        joined = new JoinedCorners(haul.route(), haul.stance());
        level = new LevelUnits(haul.rig(), haul.stance(), haul.margins());
        firstLook = new FirstLook(haul, configurations);
    }

    /**
     * The report on one stance of a rig over one route. Hazards are checked side by side; the result does not depend on
     * it.
     */
    public static Report check(Haul haul, Inputs inputs) {
        return check(haul, inputs, new KeptFindings(), CheckFollower.NONE);
    }

    /**
     * The same, place by place told to whoever follows it.
     *
     * @param inputs whose rig is that of the stance: what is kept is found again by it
     * @param kept findings of earlier checks; those of this one are kept as well
     */
    public static Report check(Haul haul, Inputs inputs, KeptFindings kept, CheckFollower follower) {
        return new RouteCheck(haul, inputs, kept, follower).report();
    }

    private Report report() {
        follower.begins(haul.route().hazards().size(), configurations.size());
        HazardFindings[] found = new HazardFindings[haul.route().hazards().size()];
        List<ForkJoinTask<?>> all = places(found);
        List<Integer> tracksThatWait = SurveyOrder.waitingTracks(SurveyOrder.places(haul.route()));
        List<ForkJoinTask<HumpLadder>> humps = new ArrayList<>();
        for (int tracks : tracksThatWait) {
            humps.add(ForkJoinTask.adapt(() -> HumpLadders.of(tracks, haul.rig(), haul.stance(), haul.margins())));
        }
        Map<String, ForkJoinTask<SketchGap>> sketches = SketchGaps.tasks(haul);
        all.addAll(sketches.values());
        all.addAll(0, humps);
        ForkJoinTask.invokeAll(all);
        List<HazardFindings> findings = Stream.of(found)
                .map(h -> haul.route()
                        .findCandidate(h.id())
                        .map(c -> h.withNote(c.told().toString()))
                        .orElse(h))
                .toList();
        return new Report(
                Report.FORM,
                Version.NUMBER,
                checkedRoute(),
                new CheckedRig(
                        haul.rig().name(),
                        haul.rig().note(),
                        inputs.rigSha256(),
                        haul.stance().name()),
                haul.margins(),
                TapeMeasures.of(haul.stance()).stream()
                        .map(m -> new TapeLine(m.what(), m.meters()))
                        .toList(),
                List.of(
                        term("rig measurement", haul.rig().measurement()),
                        term("tire and ride height", haul.rig().ride())),
                routeVerdicts(configurations, findings, loads),
                findings,
                loads.report(),
                ReversingCheck.of(haul.rig(), haul.stance()),
                Stream.of(Cautions.of(haul.route()), Cautions.of(haul.stance()), Cautions.leftOff(haul))
                        .flatMap(List::stream)
                        .toList(),
                new SurveyFirst(
                        SurveyOrder.places(
                                haul.route(),
                                SketchGaps.done(sketches),
                                haul.margins().groundM()),
                        humps.stream().map(ForkJoinTask::join).toList()));
    }

    /**
     * One task each: hazards differ too much in work to be dealt out in equal numbers. Whichever task is run next takes
     * the next in the order of travel, so that who follows hears of the first ones first: of the first place, of those
     * that no configuration passes, then of all the others.
     */
    private List<ForkJoinTask<?>> places(HazardFindings[] found) {
        List<Hazard> hazards = haul.route().hazards();
        List<Runnable> inTurn = new ArrayList<>();
        for (int i = 0; i < found.length; i++) {
            int place = i;
            inTurn.add(() -> {
                found[place] = findings(hazards.get(place));
                follower.judged(found[place]);
            });
        }
        List<Runnable> looks = new ArrayList<>();
        hazards.stream().skip(1).filter(h -> h.kind().isRaisable()).forEach(h -> looks.add(() -> lookFirst(h)));
        inTurn.addAll(Math.min(1, inTurn.size()), looks);
        AtomicInteger next = new AtomicInteger();
        List<ForkJoinTask<?>> all = new ArrayList<>();
        inTurn.forEach(any -> all.add(
                ForkJoinTask.adapt(() -> inTurn.get(next.getAndIncrement()).run())));
        return all;
    }

    private void lookFirst(Hazard hazard) {
        if (!kept.has(question(hazard)) && firstLook.refuses(hazard)) {
            follower.refused(hazard);
        }
    }

    private CheckedRoute checkedRoute() {
        return new CheckedRoute(
                haul.route().name(),
                haul.route().note(),
                inputs.routeSha256(),
                inputs.limitsSha256().orElse(null),
                haul.route().lengthM(),
                haul.route().legs().stream()
                        .map(l -> new CheckedLeg(l.name(), l.startChainageM(), l.endChainageM()))
                        .toList());
    }

    /** What limits say is found anew each time: it takes next to nothing, and hangs on the whole route. */
    private HazardFindings findings(Hazard hazard) {
        if (hazard instanceof LimitedPlace place) {
            return findings(place, loads, configurations, level);
        }
        if (hazard instanceof RouteCorner corner) {
            JoinedCorners.Judging judging = joined.of(corner);
            return kept.of(question(judging), () -> judged(judging));
        }
        return kept.of(question(hazard), () -> judged(hazard));
    }

    private HazardFindings judged(JoinedCorners.Judging judging) {
        HazardFindings found =
                CornerFindings.of(judging, haul.rig(), haul.stance(), haul.margins(), configurations, level);
        configurations.forEach(c -> follower.judges(found.id()));
        return found;
    }

    private KeptFindings.Question question(Object judged) {
        return new KeptFindings.Question(
                judged,
                inputs.rigSha256(),
                haul.stance().name(),
                haul.margins(),
                configurations.stream().map(loads::raisesFront).toList());
    }

    private static UncertaintyTerm term(String name, Uncertainty u) {
        return new UncertaintyTerm(name, u.valueM(), u.source());
    }

    private HazardFindings judged(Hazard hazard) {
        HazardCheck check = new HazardCheck(hazard, haul.rig(), haul.stance(), haul.margins());
        Surroundings around = check.surroundings();
        boolean mayRaise = !firstLook.hasRefused(hazard);
        List<ReportCell> cells = new ArrayList<>();
        for (CheckedConfiguration c : configurations) {
            cells.add(level.under(deliverable(check.cell(c, mayRaise), c, loads), c));
            follower.judges(hazard.place().id());
        }
        HazardPlace place = hazard.place();
        return new HazardFindings(
                place.id(),
                hazard.kind(),
                place.name(),
                place.landmark().orElse(null),
                place.chainageM(),
                place.offsetM(),
                List.of(place.position().lonDeg(), place.position().latDeg()),
                hazard.isSurveyed(),
                around.lines().stream().map(RoadProfile::name).toList(),
                extent(around),
                around.terms(),
                around.limits(),
                around.notes(),
                Cautions.at(hazard, cells),
                cells,
                leastSettings(configurations, cells));
    }

    /** A raise that the power take-off cannot give is none. */
    static ReportCell deliverable(ReportCell cell, CheckedConfiguration configuration, RouteLoads loads) {
        return cell.raise() == null || cell.raise().frontM() == 0 || loads.raisesFront(configuration)
                ? cell
                : cell.withoutRaise("a raise would make it clear, but the power take-off cannot raise this front");
    }

    static HazardFindings findings(
            LimitedPlace limited, RouteLoads loads, List<CheckedConfiguration> configurations, LevelUnits level) {
        HazardPlace place = limited.place();
        List<ReportCell> cells = configurations.stream()
                .map(c -> level.under(loads.cell(limited, c), c))
                .toList();
        return new HazardFindings(
                        place.id(),
                        limited.kind(),
                        place.name(),
                        place.landmark().orElse(null),
                        place.chainageM(),
                        place.offsetM(),
                        List.of(place.position().lonDeg(), place.position().latDeg()),
                        limited.isSurveyed(),
                        List.of(),
                        List.of(limited.fromChainageM() - place.chainageM(), limited.toChainageM() - place.chainageM()),
                        List.of(),
                        List.of(),
                        limited.replacesOthers()
                                ? List.of("these limits hold instead of those of the whole route")
                                : List.of(),
                        Cautions.at(limited, cells),
                        cells,
                        leastSettings(configurations, cells).stream()
                                .map(RouteCheck::inLoads)
                                .toList())
                .withBridge(loads.bridge(limited));
    }

    /** Loads do not depend on the notch. */
    private static LeastSetting inLoads(LeastSetting least) {
        return new LeastSetting(
                least.lift(),
                least.booster(),
                least.notch(),
                least.notch() == null ? "not within limits at any notch" : "within limits at every notch");
    }

    private static List<Double> extent(Surroundings around) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (RoadProfile line : around.judgesGround() ? around.lines() : List.<RoadProfile>of()) {
            from = Math.min(from, line.startM());
            to = Math.max(to, line.endM());
        }
        for (Surroundings.Lane lane : around.lanes()) {
            if (lane.soffit().isPresent()) {
                from = Math.min(from, lane.soffit().get().startM());
                to = Math.max(to, lane.soffit().get().endM());
            }
        }
        return from > to ? List.of() : List.of(from, to);
    }

    private static List<LeastSetting> leastSettings(List<CheckedConfiguration> configurations, List<ReportCell> cells) {
        List<LeastSetting> least = new ArrayList<>();
        int i = 0;
        while (i < configurations.size()) {
            CheckedConfiguration first = configurations.get(i);
            String notch = null;
            // Notches of one state follow one another, lowest first.
            for (;
                    i < configurations.size()
                            && configurations.get(i).lift().equals(first.lift())
                            && configurations.get(i).booster() == first.booster();
                    i++) {
                if (notch == null && cells.get(i).verdict() == Verdict.CLEAR) {
                    notch = configurations.get(i).notch().name();
                }
            }
            least.add(new LeastSetting(
                    first.lift(),
                    first.booster(),
                    notch,
                    notch == null ? "no notch clears" : "lowest notch that clears: " + notch));
        }
        return least;
    }

    static List<ConfigurationVerdict> routeVerdicts(
            List<CheckedConfiguration> configurations, List<HazardFindings> hazards, RouteLoads loads) {
        List<ConfigurationVerdict> verdicts = new ArrayList<>();
        for (int i = 0; i < configurations.size(); i++) {
            CheckedConfiguration c = configurations.get(i);
            int[] count = new int[Verdict.values().length];
            int raisedOnly = 0;
            Verdict carried = loads.baseVerdict(c);
            // A file that names no hazard tells that nobody looked, not that there is none.
            Verdict unseen = hazards.isEmpty() ? Verdict.NOT_SURVEYED : Verdict.CLEAR;
            Verdict worst = loads.counts() ? carried.orWorse(unseen) : unseen;
            for (HazardFindings hazard : hazards) {
                ReportCell cell = hazard.cells().get(i);
                count[cell.verdict().ordinal()]++;
                worst = worst.orWorse(cell.verdict());
                if (cell.raise() != null) {
                    raisedOnly++;
                }
            }
            verdicts.add(new ConfigurationVerdict(
                    c.key(),
                    c.label().toString(),
                    c.lift(),
                    c.axles(),
                    c.lift().named(),
                    c.booster(),
                    c.notch().name(),
                    c.notch().offsetM(),
                    worst,
                    count[Verdict.CLEAR.ordinal()],
                    count[Verdict.TIGHT.ordinal()],
                    count[Verdict.CONTACT.ordinal()],
                    count[Verdict.NOT_SURVEYED.ordinal()],
                    count[Verdict.OUTSIDE_LIMITS.ordinal()],
                    count[Verdict.LOADS_NOT_KNOWN.ordinal()],
                    raisedOnly,
                    carried));
        }
        return List.copyOf(verdicts);
    }
}
