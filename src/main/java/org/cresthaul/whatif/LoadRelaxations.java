package org.cresthaul.whatif;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.check.PlaceCheck;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Plan.Relaxation;
import org.cresthaul.plan.RelaxationKind;
import org.cresthaul.plan.Texts;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.Haul;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Weights;
import org.cresthaul.view.LoadAnswer;
import org.cresthaul.view.LoadQuestion;
import org.cresthaul.view.LoadsView;

/** How much lighter the heaviest piece would have to be, or where it would have to lie, for limits to be kept. */
final class LoadRelaxations {
    /** Reductions are told in whole steps of this. */
    static final double STEP_KG = 50;

    private final Haul haul;

    LoadRelaxations(Haul haul) {
        this.haul = haul;
    }

    /**
     * At a place, or under the limits of the whole route.
     *
     * @param configurations that may be used
     */
    List<Relaxation> at(Optional<String> place, List<ConfigurationVerdict> configurations) {
        List<Relaxation> found = new ArrayList<>();
        List<String> keys = states(configurations);
        PlaceCheck declared = new PlaceCheck(haul);
        if (!keys.isEmpty() && keys.stream().allMatch(k -> isUnknown(cell(declared, place, k)))) {
            found.add(new Relaxation(
                    RelaxationKind.SURVEY,
                    null,
                    null,
                    false,
                    Sentence.of(haul.stance().weights().isEmpty() ? Code.OPEN_NO_LOADS : Code.OPEN_FIND_LIMITS)));
            return found;
        }
        List<String> blocked =
                keys.stream().filter(k -> !isClear(cell(declared, place, k))).toList();
        Optional<Weights.Piece> heaviest = haul.stance()
                .weights()
                .flatMap(w -> w.pieces().stream().max(Comparator.comparingDouble(p -> p.at().massKg())));
        heaviest.flatMap(p -> lighter(place, blocked, p)).ifPresent(found::add);
        heaviest.flatMap(p -> moved(place, blocked)).ifPresent(found::add);
        return found;
    }

    /** One configuration for each state: the notch does not matter to loads. */
    private static List<String> states(List<ConfigurationVerdict> configurations) {
        Map<String, String> first = new LinkedHashMap<>();
        configurations.forEach(c -> first.putIfAbsent(c.lift() + "/" + c.booster(), c.key()));
        return List.copyOf(first.values());
    }

    private static ReportCell cell(PlaceCheck check, Optional<String> place, String key) {
        return place.isPresent() ? check.inTransport(place.get(), key) : check.wholeRoute(key);
    }

    private static boolean isUnknown(ReportCell cell) {
        return cell.verdict() == Verdict.LOADS_NOT_KNOWN || cell.verdict() == Verdict.NOT_SURVEYED;
    }

    private static boolean isClear(ReportCell cell) {
        return cell.verdict() == Verdict.CLEAR;
    }

    /**
     * The smallest whole step, each put to the check: less weight can also leave a braked axle too light, so that what
     * is enough need not stay enough.
     */
    private Optional<Relaxation> lighter(Optional<String> place, List<String> keys, Weights.Piece piece) {
        for (double lessKg = STEP_KG; !keys.isEmpty() && lessKg <= piece.at().massKg(); lessKg += STEP_KG) {
            PlaceCheck check = new PlaceCheck(haul.standing(lighter(piece, lessKg)));
            for (String key : keys) {
                if (isClear(cell(check, place, key))) {
                    return Optional.of(new Relaxation(
                            RelaxationKind.LIGHTER,
                            key,
                            lessKg,
                            true,
                            Sentence.of(Code.OPEN_LIGHTER)
                                    .with("piece", piece.name())
                                    .figure("less", Texts.mass(lessKg))));
                }
            }
        }
        return Optional.empty();
    }

    private LevelStance lighter(Weights.Piece piece, double lessKg) {
        Weights weights = haul.stance().weights().orElseThrow();
        return haul.stance()
                .withWeights(weights.withPieces(weights.pieces().stream()
                        .map(p -> p.name().equals(piece.name())
                                ? new Weights.Piece(
                                        p.name(), p.at().withMassKg(Math.max(0, p.at().massKg() - lessKg)), p.outline())
                                : p)
                        .toList()));
    }

    /** The best place of the window in which every limit is kept, where the check calls it clear: the shortest move. */
    private Optional<Relaxation> moved(Optional<String> place, List<String> keys) {
        Relaxation best = null;
        for (String key : keys) {
            LoadsView.Plot plot = ask(place, key, OptionalDouble.empty()).position();
            if (plot == null || plot.allowed() == null) {
                continue;
            }
            double at = plot.best().at();
            double moveM = Math.abs(at - plot.at());
            if (moveM > 0
                    && (best == null || moveM < best.amount())
                    && ask(place, key, OptionalDouble.of(at)).verdict() == Verdict.CLEAR) {
                best = new Relaxation(
                        RelaxationKind.POSITION,
                        key,
                        moveM,
                        true,
                        Sentence.of(at > plot.at() ? Code.OPEN_MOVED_BACK : Code.OPEN_MOVED_FORWARD)
                                .with("piece", plot.piece())
                                .figure("at", Texts.length(at))
                                .figure("move", Texts.length(moveM))
                                .figure("from", Texts.length(plot.allowed().get(0)))
                                .figure("to", Texts.length(plot.allowed().get(1))));
            }
        }
        return Optional.ofNullable(best);
    }

    private LoadsView ask(Optional<String> place, String key, OptionalDouble at) {
        return LoadAnswer.of(
                haul.route(),
                haul.rig(),
                haul.stance(),
                new LoadQuestion(key, place, Optional.empty(), at, OptionalDouble.empty(), Map.of()));
    }
}
