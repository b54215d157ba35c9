package org.cresthaul.whatif;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.check.CheckedConfiguration;
import org.cresthaul.check.PlaceCheck;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Alterations;
import org.cresthaul.plan.Plan.Relaxation;
import org.cresthaul.plan.RelaxationKind;
import org.cresthaul.plan.Texts;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Notch;

/** Raises and notches that the rig does not have, or may not use, where a gap is too small. */
final class RaiseRelaxations {
    private static final double INCH_M = 0.0254;
    /** A raise is looked for up to this over the reference notch, and by hand at the rear. */
    static final double LIFTED_TO_M = 24 * INCH_M;
    /** Notches below the lowest are tried in such steps, so far down. */
    private static final double STEP_M = INCH_M / 4;

    private static final double LOWEST_M = 12 * INCH_M;
    private static final double HAIR_M = 1e-6;

    private final Haul haul;
    private final boolean avoidRaising;
    private final Map<String, CheckedConfiguration> configurations = new HashMap<>();

    /** A raise beyond the limits. */
    private record Beyond(String configuration, RaiseFinding raise, Notch notch, double frontOverM, double rearOverM) {
        double overM() {
            return frontOverM + rearOverM;
        }

        double deckFrontM() {
            return notch.offsetM() + raise.frontM();
        }
    }

    RaiseRelaxations(Haul haul, boolean avoidRaising) {
        this.haul = haul;
        this.avoidRaising = avoidRaising;
        CheckedConfiguration.listOf(haul.rig(), haul.stance()).forEach(c -> configurations.put(c.key(), c));
    }

    /** @param cells of the hazard that may be used */
    List<Relaxation> at(HazardFindings hazard, List<ReportCell> cells) {
        List<Relaxation> found = new ArrayList<>();
        if (!hazard.surveyed() || !hazard.limits().isEmpty()) {
            return found;
        }
        cells.stream()
                .filter(c -> c.raise() != null)
                .min(Comparator.comparingDouble(
                        c -> c.raise().frontM() + c.raise().rearM()))
                .filter(c -> avoidRaising)
                .ifPresent(c -> found.add(new Relaxation(
                        RelaxationKind.RAISE,
                        c.configuration(),
                        Math.max(c.raise().frontM(), c.raise().rearM()),
                        true,
                        Sentence.of(Code.OPEN_RAISED).with("raise", words(c.raise())))));
        LevelStance lifted = Alterations.raisable(haul.stance(), LIFTED_TO_M);
        PlaceCheck check = new PlaceCheck(haul.standing(lifted));
        boolean within = cells.stream().anyMatch(c -> c.raise() != null);
        List<Beyond> beyond = within
                ? List.of()
                : cells.stream()
                        .map(c -> beyond(check, hazard.id(), c))
                        .flatMap(Optional::stream)
                        .toList();
        beyond.stream()
                .filter(b -> b.overM() > 0)
                .min(Comparator.comparingDouble(Beyond::overM))
                .ifPresent(b -> found.add(new Relaxation(
                        RelaxationKind.RAISE,
                        b.configuration,
                        b.overM(),
                        true,
                        Sentence.of(Code.OPEN_BEYOND)
                                .with("raise", words(b.raise))
                                .with("beyond", over(b)))));
        notchAbove(hazard.id(), cells, check)
                .or(() -> notchBelow(hazard.id(), cells, check))
                .ifPresent(found::add);
        return found;
    }

    private Optional<Beyond> beyond(PlaceCheck check, String hazardId, ReportCell declared) {
        // How far it may be raised is all that is another: transport is as it was found.
        return check.raise(hazardId, declared.configuration(), declared.verdict())
                .map(raise -> {
                    Notch notch = notch(declared.configuration());
                    double frontOverM = Math.max(
                            0,
                            notch.offsetM()
                                    + raise.frontM()
                                    - Math.max(
                                            notch.offsetM(),
                                            haul.stance().trailer().hydraulicRaiseLimitM()));
                    double rearOverM =
                            Math.max(0, raise.rearM() - haul.stance().trailer().manualRaiseLimitM());
                    return new Beyond(declared.configuration(), raise, notch, frontOverM, rearOverM);
                });
    }

    private static Sentence words(RaiseFinding raise) {
        List<Sentence> parts = new ArrayList<>();
        if (raise.frontM() > 0) {
            parts.add(Sentence.of(Code.RAISE_FRONT).figure("up", Texts.lacking(raise.frontM())));
        }
        if (raise.rearM() > 0) {
            parts.add(Sentence.of(Code.RAISE_REAR).figure("up", Texts.lacking(raise.rearM())));
        }
        return Sentence.listed(parts, ", ");
    }

    private static Sentence over(Beyond b) {
        List<Sentence> parts = new ArrayList<>();
        if (b.frontOverM > 0) {
            parts.add(Sentence.of(Code.BEYOND_FRONT).figure("over", Texts.lacking(b.frontOverM)));
        }
        if (b.rearOverM > 0) {
            parts.add(Sentence.of(Code.BEYOND_REAR).figure("over", Texts.lacking(b.rearOverM)));
        }
        return Sentence.listed(parts, ", ");
    }

    /** A notch does in transport what the same raise of the front alone does. */
    private Optional<Relaxation> notchAbove(String hazardId, List<ReportCell> cells, PlaceCheck lifted) {
        Notch top = haul.rig().notches().get(haul.rig().notches().size() - 1);
        return cells.stream()
                .flatMap(c -> beyond(lifted, hazardId, c).stream())
                .filter(b -> b.raise.rearM() == 0 && b.raise.frontM() > 0)
                .min(Comparator.comparingDouble(Beyond::deckFrontM))
                .flatMap(b -> tryNotch(hazardId, b, top, lifted));
    }

    private Optional<Relaxation> tryNotch(String hazardId, Beyond b, Notch top, PlaceCheck check) {
        double exactM = Math.ceil((b.deckFrontM() - HAIR_M) * 1e4) / 1e4;
        double stepsM = Math.ceil((b.deckFrontM() - HAIR_M) / STEP_M) * STEP_M;
        for (double offsetM : new double[] {stepsM, exactM}) {
            Optional<String> key = clearAt(hazardId, b.configuration, offsetM, check);
            if (key.isPresent()) {
                Notch below = haul.rig().notches().stream()
                        .filter(n -> n.offsetM() < offsetM)
                        .reduce((first, second) -> second)
                        .orElse(top);
                double moreM = offsetM - below.offsetM();
                return Optional.of(new Relaxation(
                        RelaxationKind.NOTCH,
                        b.configuration,
                        moreM,
                        true,
                        Sentence.of(below.equals(top) ? Code.OPEN_NOTCH_TOP : Code.OPEN_NOTCH_ABOVE)
                                .figure("more", Texts.lacking(moreM))
                                .with("notch", below.name())));
            }
        }
        return Optional.empty();
    }

    /** Lower helps overhead; how a tail that rises with it counts is told by trying. */
    private Optional<Relaxation> notchBelow(String hazardId, List<ReportCell> cells, PlaceCheck check) {
        Notch bottom = haul.rig().notches().get(0);
        List<String> lowest = cells.stream()
                .filter(c -> c.overhead() != null && c.overhead().verdict() != Verdict.CLEAR)
                .map(ReportCell::configuration)
                .filter(c -> notch(c).equals(bottom))
                .toList();
        for (double lessM = STEP_M; lessM <= LOWEST_M + HAIR_M; lessM += STEP_M) {
            for (String configuration : lowest) {
                if (check.isClearAt(hazardId, configuration, bottom.offsetM() - lessM)) {
                    return Optional.of(new Relaxation(
                            RelaxationKind.NOTCH,
                            configuration,
                            lessM,
                            true,
                            Sentence.of(Code.OPEN_NOTCH_BELOW)
                                    .figure("less", Texts.lacking(lessM))
                                    .with("notch", bottom.name())));
                }
            }
        }
        return Optional.empty();
    }

    /** The check of a rig with one more notch; empty unless the place is clear there. */
    private Optional<String> clearAt(String hazardId, String configuration, double offsetM, PlaceCheck check) {
        if (haul.rig().notches().stream().anyMatch(n -> Math.abs(n.offsetM() - offsetM) < HAIR_M)) {
            return Optional.empty();
        }
        String name = haul.rig().notches().stream().map(Notch::name).reduce("+", String::concat);
        return check.isClearAt(hazardId, configuration, offsetM)
                ? Optional.of(configurations
                        .get(configuration)
                        .at(new Notch(name, offsetM))
                        .key())
                : Optional.empty();
    }

    private Notch notch(String configuration) {
        return configurations.get(configuration).notch();
    }
}
