package org.cresthaul.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.cresthaul.axleload.AxleLoads;
import org.cresthaul.axleload.GaugeChart;
import org.cresthaul.axleload.LoadBound;
import org.cresthaul.axleload.LoadGroup;
import org.cresthaul.axleload.LoadWindow;
import org.cresthaul.axleload.Reading;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.check.CheckedConfiguration;
import org.cresthaul.check.LoadCase;
import org.cresthaul.check.LoadJudge;
import org.cresthaul.check.LoadSheets;
import org.cresthaul.check.RouteLoads;
import org.cresthaul.check.UnknownNameException;
import org.cresthaul.check.Weighed;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.Weights;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.Route;

/** Answers what is asked about the loads of one configuration. */
public final class LoadAnswer {
    /** A piece that lies at an end of the deck lies on it, whatever the last digit says. */
    private static final double SLACK_M = 1e-6;

    private final LoadQuestion question;
    private final LevelStance stance;
    private final CheckedConfiguration configuration;
    private final LoadCase loadCase;
    private final Optional<Weights.Piece> piece;
    private final List<WeightLimits> sets;
    private final boolean limitsUnknown;

    private LoadAnswer(Route route, Rig rig, LevelStance declared, LoadQuestion question) {
        this.question = question;
        configuration = CheckedConfiguration.listOf(rig, declared).stream()
                .filter(c -> c.key().equals(question.configuration()))
                .findFirst()
                .orElseThrow(() -> new UnknownNameException(
                        "the rig has no configuration " + question.configuration(), "configuration"));
        Optional<LimitedPlace> place = question.hazard().map(id -> limited(route, id));
        piece = piece(declared, question.piece());
        stance = moved(declared);
        loadCase = LoadCase.of(stance, configuration.lift(), configuration.booster(), question.regulatorPa());
        RouteLoads loads = new RouteLoads(route, stance);
        sets = place.map(p -> loads.limitsAt(p, configuration.booster())).orElse(List.of(loads.base()));
        limitsUnknown = place.map(p -> p.limits().isEmpty()).orElse(false);
    }

    /**
     * The loads of one configuration of a stance under the limits of a route, or of a place on it.
     *
     * @throws UnknownNameException when the route or rig has no such place, configuration, piece or gauge, or the piece
     *     cannot be set there
     */
    public static LoadsView of(Route route, Rig rig, LevelStance stance, LoadQuestion question) {
        return new LoadAnswer(route, rig, stance, question).view();
    }

    private static LimitedPlace limited(Route route, String id) {
        Hazard hazard = route.findHazard(id)
                .orElseThrow(() -> new UnknownNameException("the route has no hazard " + id, "hazard"));
        if (hazard instanceof LimitedPlace place) {
            return place;
        }
        throw new UnknownNameException(id + " has no weight limits: it is judged by gaps", "hazard");
    }

    private static Optional<Weights.Piece> piece(LevelStance stance, Optional<String> name) {
        List<Weights.Piece> pieces = stance.weights().map(Weights::pieces).orElse(List.of());
        if (name.isEmpty()) {
            return pieces.stream().max(Comparator.comparingDouble(p -> p.at().massKg()));
        }
        return Optional.of(pieces.stream()
                .filter(p -> p.name().equals(name.get()))
                .findFirst()
                .orElseThrow(() -> new UnknownNameException("the stance has no piece " + name.get(), "piece")));
    }

    private static Weights with(Weights weights, Weights.Piece other) {
        return weights.withPieces(weights.pieces().stream()
                .map(p -> p.name().equals(other.name()) ? other : p)
                .toList());
    }

    private LevelStance moved(LevelStance declared) {
        if (question.pieceBehindDeckFrontM().isEmpty()) {
            return declared;
        }
        if (piece.isEmpty()) {
            throw new UnknownNameException("there is no piece to be moved", "pieceAt");
        }
        double at = question.pieceBehindDeckFrontM().getAsDouble();
        double[] reach = reach(declared.trailer(), piece.get());
        if (at < reach[0] - 1e-6 || at > reach[1] + 1e-6) {
            throw new UnknownNameException(
                    "the piece would hang over an end there: its center of gravity may be "
                            + Math.ceil(reach[0] * 100) / 100 + " to " + Math.floor(reach[1] * 100) / 100
                            + " m behind the deck front",
                    "pieceAt");
        }
        return declared.withWeights(
                with(declared.weights().orElseThrow(), placed(declared.trailer(), piece.get(), at)));
    }

    private static Weights.Piece placed(Trailer trailer, Weights.Piece piece, double behindM) {
        return piece.shiftedBy(trailer.deckFront().xM() - behindM - piece.at().xM());
    }

    /**
     * How far behind the deck front a piece's center of gravity may be so that the piece stays on the level it lies on:
     * the deck, the gooseneck ahead of it or what is behind. One that lies across an end of the deck stays where it is;
     * of one that nobody has drawn the center of gravity stays on the deck.
     */
    private static double[] reach(Trailer trailer, Weights.Piece piece) {
        double frontXM = trailer.deckFront().xM();
        double rearXM = trailer.deckRear().xM();
        double at = frontXM - piece.at().xM();
        if (piece.outline().isEmpty()) {
            return new double[] {Math.min(0, at), Math.max(frontXM - rearXM, at)};
        }
        Outline outline = piece.outline().get();
        double aheadXM = frontXM;
        double asternXM = rearXM;
        if (outline.rearXM() >= frontXM - SLACK_M) {
            aheadXM = Math.max(frontXM, trailer.topside().frontXM());
            asternXM = frontXM;
        } else if (outline.frontXM() <= rearXM + SLACK_M) {
            aheadXM = rearXM;
            asternXM = Math.min(rearXM, trailer.topside().rearXM());
        }
        return outline.frontXM() > aheadXM + SLACK_M || outline.rearXM() < asternXM - SLACK_M
                ? new double[] {at, at}
                : new double[] {
                    Math.min(at, at + outline.frontXM() - aheadXM), Math.max(at, at + outline.rearXM() - asternXM)
                };
    }

    private LoadsView view() {
        Optional<LoadJudge> judge = loadCase.isKnown() ? Optional.of(new LoadJudge(loadCase)) : Optional.empty();
        Verdict verdict = limitsUnknown
                ? Verdict.NOT_SURVEYED
                : judge.filter(j -> j.unknownUnder(sets).isEmpty())
                        .map(j -> j.verdictOf(j.tests(sets)))
                        .orElse(Verdict.LOADS_NOT_KNOWN);
        return new LoadsView(
                configuration.key(),
                configuration.label().toString(),
                question.hazard().orElse(null),
                verdict,
                loadCase.unknown()
                        .or(() -> judge.flatMap(j -> j.unknownUnder(sets)))
                        .orElse(null),
                judge.map(j -> LoadSheets.of(loadCase, j, sets)).orElse(null),
                new LevelDrawing(stance, loadCase, piece).units(),
                new LevelDrawing(stance, loadCase, piece).wheels(),
                stance.weights()
                        .map(w -> w.pieces().stream().map(Weights.Piece::name).toList())
                        .orElse(List.of()),
                judge.flatMap(this::positionPlot).orElse(null),
                judge.flatMap(this::regulatorPlot).orElse(null),
                judge.map(this::readings).orElse(List.of()),
                RouteLoads.CAUTIONS);
    }

    private List<LoadBound> bounds(LoadJudge judge) {
        return Stream.concat(judge.ownBounds().stream(), judge.boundsOf(sets).stream())
                .toList();
    }

    private Optional<LoadsView.Plot> positionPlot(LoadJudge judge) {
        if (piece.isEmpty()) {
            return Optional.empty();
        }
        Trailer trailer = stance.trailer();
        Weights weights = loadCase.weights().orElseThrow();
        Weights.Piece now = weights.pieces().stream()
                .filter(p -> p.name().equals(piece.get().name()))
                .findFirst()
                .orElseThrow();
        double[] reach = reach(trailer, now);
        DoubleFunction<AxleLoads> at =
                d -> loadCase.statics(with(weights, placed(trailer, now, d)), loadCase.boosterKg())
                        .level();
        LoadWindow window = LoadWindow.of(at, reach[0], reach[1], bounds(judge));
        double here = trailer.deckFront().xM() - now.at().xM();
        Axis axis = new Axis("position", now.name(), d -> d, "to the rear");
        return Optional.of(plot(judge, axis, window, here, List.of(reach[0], reach[1]), at));
    }

    private Optional<LoadsView.Plot> regulatorPlot(LoadJudge judge) {
        Weights weights = loadCase.weights().orElseThrow();
        if (loadCase.booster() != BoosterState.TRAILING || weights.regulator().isEmpty()) {
            return Optional.empty();
        }
        ChartPoints points = weights.gauges().booster().orElseThrow();
        GaugeChart chart = new GaugeChart(points);
        Weights.Regulator regulator = weights.regulator().get();
        double least = chart.loadKg(regulator.leastPa()).orElseThrow();
        double most = chart.loadKg(regulator.mostPa()).orElseThrow();
        List<Double> places = new ArrayList<>();
        places.add(least);
        points.points().stream()
                .mapToDouble(ChartPoints.Point::loadKg)
                .filter(kg -> kg > least && kg < most)
                .forEach(places::add);
        places.add(most);
        LoadWindow window = LoadSheets.regulatorWindow(loadCase, judge, sets);
        Axis axis = new Axis(
                "pressure",
                null,
                kg -> chart.pressurePa(Math.max(chart.leastKg(), Math.min(chart.mostKg(), kg)))
                        .orElseThrow(),
                "on the booster");
        return Optional.of(plot(
                judge,
                axis,
                window,
                loadCase.boosterKg(),
                places,
                kg -> loadCase.statics(weights, kg).level()));
    }

    /**
     * What a plot goes along.
     *
     * @param piece of load that is moved, or null
     * @param shown turns a place of the window into what the axis shows
     * @param more where weight goes along it
     */
    private record Axis(String of, String piece, DoubleUnaryOperator shown, String more) {
        double at(double place) {
            return shown.applyAsDouble(place);
        }
    }

    private static LoadsView.Plot plot(
            LoadJudge judge,
            Axis axis,
            LoadWindow window,
            double here,
            List<Double> places,
            DoubleFunction<AxleLoads> loadsAt) {
        List<AxleLoads> loads = places.stream().map(loadsAt::apply).toList();
        List<LoadsView.PlotLine> lines = new ArrayList<>();
        for (LoadGroup group : judge.loads().groups()) {
            List<Integer> members = Stream.iterate(
                            0, i -> i < judge.loads().axles().size(), i -> i + 1)
                    .filter(i -> judge.loads().axles().get(i).place().group().equals(group))
                    .toList();
            lines.add(line(judge, window, group, members, axis, places, loads));
        }
        return new LoadsView.Plot(
                axis.of(),
                axis.piece(),
                axis.at(window.from()),
                axis.at(window.to()),
                axis.at(here),
                window.allowed()
                        .map(r -> List.of(axis.at(r.from()), axis.at(r.to())))
                        .orElse(null),
                window.best()
                        .map(b -> new LoadsView.Best(
                                axis.at(b.at()), b.relativeMargin(), LoadSheets.rule(judge, b.governing())))
                        .orElse(null),
                window.conflict()
                        .map(c -> LoadSheets.conflict(judge, c, axis.more()))
                        .orElse(null),
                lines);
    }

    private static LoadsView.PlotLine line(
            LoadJudge judge,
            LoadWindow window,
            LoadGroup group,
            List<Integer> members,
            Axis axis,
            List<Double> places,
            List<AxleLoads> loads) {
        int first = members.get(0);
        int last = members.get(members.size() - 1);
        List<List<Double>> points = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            points.add(List.of(axis.at(places.get(i)), Weighed.near(loads.get(i).sumKg(first, last))));
        }
        Double most = null;
        String rule = null;
        Double least = null;
        for (LoadBound bound : window.bounds()) {
            if (bound.part() == LoadBound.Part.AXLES && bound.first() >= first && bound.last() <= last) {
                // Axles of a group carry equally: what holds for some of them holds for all in proportion.
                double kg = bound.limitKg() * members.size() / (bound.last() - bound.first() + 1);
                if (bound.least()) {
                    least = least == null ? kg : Math.max(least, kg);
                } else if (most == null || kg < most) {
                    most = kg;
                    rule = bound.rule().toString();
                }
            }
        }
        return new LoadsView.PlotLine(
                group.word(),
                LoadSheets.label(group, members.size()),
                points,
                most == null ? null : Weighed.near(most),
                rule,
                least == null ? null : Weighed.near(least));
    }

    private List<LoadsView.ReadingView> readings(LoadJudge judge) {
        List<LoadsView.ReadingView> views = new ArrayList<>();
        for (Map.Entry<AxleKind, Double> reading : question.readingsPa().entrySet()) {
            AxleKind gauge = reading.getKey();
            Optional<ChartPoints> chart = gauge == AxleKind.TRAILER
                    ? loadCase.trailerChart()
                    : loadCase.weights().flatMap(w -> w.gauges().booster());
            OptionalDouble declared = judge.loads().perAxleKg(gauge);
            views.add(reading(judge, gauge, reading.getValue(), chart, declared));
        }
        return views;
    }

    private LoadsView.ReadingView reading(
            LoadJudge judge,
            AxleKind gauge,
            double pressurePa,
            Optional<ChartPoints> points,
            OptionalDouble declaredKg) {
        if (points.isEmpty() || declaredKg.isEmpty()) {
            return new LoadsView.ReadingView(
                    gauge.word(),
                    pressurePa,
                    null,
                    null,
                    null,
                    null,
                    null,
                    points.isEmpty() ? "no chart is given for this gauge" : "no axle of this gauge is on the road");
        }
        Optional<Reading> reading = Reading.of(
                new GaugeChart(points.get()),
                pressurePa,
                declaredKg.getAsDouble(),
                loadCase.weights().orElseThrow().accuracy());
        if (reading.isEmpty()) {
            return new LoadsView.ReadingView(
                    gauge.word(),
                    pressurePa,
                    null,
                    Weighed.near(declaredKg.getAsDouble()),
                    null,
                    null,
                    null,
                    "the reading is beyond the chart");
        }
        Reading r = reading.get();
        return new LoadsView.ReadingView(
                gauge.word(),
                pressurePa,
                Weighed.near(r.readKg()),
                Weighed.near(r.declaredKg()),
                Weighed.near(r.toleranceKg()),
                r.agrees(),
                pieceOff(gauge, r).orElse(null),
                r.agrees()
                        ? "the reading agrees with the declared load"
                        : "the reading does not agree with the declared load: "
                                + (r.differenceKg() > 0 ? "heavier than declared" : "lighter than declared"));
    }

    /**
     * The change of the piece's weight that would bring the group to what the gauge says, were everything else right.
     */
    private Optional<Double> pieceOff(AxleKind gauge, Reading reading) {
        if (reading.agrees() || piece.isEmpty() || gauge != AxleKind.TRAILER) {
            return Optional.empty();
        }
        Weights weights = loadCase.weights().orElseThrow();
        Weights.Piece now = weights.pieces().stream()
                .filter(p -> p.name().equals(piece.get().name()))
                .findFirst()
                .orElseThrow();
        double oneTonne = 1000;
        Weights.Piece heavier =
                new Weights.Piece(now.name(), now.at().withMassKg(now.at().massKg() + oneTonne), now.outline());
        double perAxle = loadCase.statics(with(weights, heavier), loadCase.boosterKg())
                        .level()
                        .perAxleKg(AxleKind.TRAILER)
                        .orElseThrow()
                - reading.declaredKg();
        return Math.abs(perAxle) < 1
                ? Optional.empty()
                : Optional.of(Weighed.near(oneTonne * reading.differenceKg() / perAxle));
    }
}
