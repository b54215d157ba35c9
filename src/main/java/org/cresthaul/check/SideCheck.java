package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.clearance.Clearance;
import org.cresthaul.clearance.Demand;
import org.cresthaul.clearance.Footing;
import org.cresthaul.clearance.PassageSearch;
import org.cresthaul.clearance.RaiseNeeded;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;

/** Judges one side of a hazard, the ground below or the structure above, over all its lines and both levelings. */
public final class SideCheck {
    private final double chainageM;
    private final List<RaiseNeeded.Lane> lanes;
    private final double marginM;
    private final double sagM;
    private final Code where;
    /** The same lines, in the order in which they are asked for a place that falls short. */
    private final List<RaiseNeeded.Lane> shortest;

    /**
     * The least gap over all lines and levelings, and the verdict.
     *
     * @param reason why it is not clear
     * @param decider where gap less need is least, if another place than that of the least gap decides; null otherwise
     */
    public record JudgedSide(
            Verdict verdict,
            GapFinding gap,
            Optional<Sentence> reason,
            Clearance least,
            RaiseNeeded.Lane lane,
            Leveling leveling,
            Clearance decider) {}

    private record Passed(RaiseNeeded.Lane lane, Leveling leveling, PassageSearch search, double firstLookM) {
        /** The least gap below a ceiling, and what is shown, by {@link Shown}. */
        PassageSearch.Look look(double ceilingM, boolean spared) {
            List<Demand> open = spared ? List.of() : List.of(lane.demand(), freeOfContact(lane.demand()));
            return search.look(lane.soffit(), ceilingM, open);
        }
    }

    /**
     * One side.
     *
     * @param chainageM of the hazard's point, meters
     * @param lanes at least one, all with one demand: margin, sag allowance and accuracies
     * @param marginM what of the demand's margin is the margin proper, meters
     * @param sagM what of it is for an unknown sag, meters
     * @param where what opens a reason
     */
    SideCheck(double chainageM, List<RaiseNeeded.Lane> lanes, double marginM, double sagM, Code where) {
        this.chainageM = chainageM;
        this.lanes = List.copyOf(lanes);
        shortest = new ArrayList<>(lanes);
        this.marginM = marginM;
        this.sagM = sagM;
        this.where = where;
    }

    List<RaiseNeeded.Lane> lanes() {
        return lanes;
    }

    /**
     * What is told is the least gap of all; the verdict is the worst, which another line or place may have that is less
     * tight but less sure. Then that place is told beside it.
     */
    JudgedSide judge(Setting setting) {
        return judge(setting, false);
    }

    /**
     * Whether some position is found at which what is demanded is not there, so that no judgment can be clear; false
     * says nothing. The line that fell short last is asked first.
     */
    boolean fallsShort(Setting setting) {
        for (int i = 0; i < shortest.size(); i++) {
            RaiseNeeded.Lane lane = shortest.get(i);
            for (Leveling leveling : setting.levelings()) {
                if (new PassageSearch(lane.passage(), setting, leveling).fallsShort(lane.soffit(), lane.demand())) {
                    shortest.add(0, shortest.remove(i));
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether a trailing booster changes nothing in what was found without one. */
    boolean isUnchangedBy(Setting trailing, JudgedSide alone) {
        double rounding = 1e-9;
        return alone.least.proven()
                && alone.decider == null
                && lanes.stream()
                        .allMatch(lane -> trailing.levelings().stream()
                                .allMatch(leveling -> new PassageSearch(lane.passage(), trailing, leveling)
                                        .boosterKeeps(
                                                lane.soffit(),
                                                alone.least.valueM() + rounding,
                                                openDemand(alone, lane))));
    }

    /** What a verdict needs every other passage to meet. */
    private static Optional<Demand> openDemand(JudgedSide alone, RaiseNeeded.Lane lane) {
        return switch (alone.verdict) {
            case CLEAR -> Optional.of(lane.demand());
            case TIGHT -> Optional.of(freeOfContact(lane.demand()));
            default -> Optional.empty();
        };
    }

    /** As {@link #judge(Setting)}, of a setting that is known to have its margin at every position. */
    JudgedSide judgeSpared(Setting setting) {
        return judge(setting, true);
    }

    private JudgedSide judge(Setting setting, boolean spared) {
        List<Passed> passages = new ArrayList<>();
        for (RaiseNeeded.Lane lane : lanes) {
            for (Leveling leveling : setting.levelings()) {
                PassageSearch search = new PassageSearch(lane.passage(), setting, leveling);
                passages.add(new Passed(lane, leveling, search, search.firstLookM(lane.soffit())));
            }
        }
        // The likely tightest first: the others then need no closer look than to be above it.
        passages.sort(Comparator.comparingDouble(p -> p.firstLookM));
        Passed tightest = null;
        Clearance least = null;
        List<Shown> shown = new ArrayList<>();
        for (Passed passed : passages) {
            double ceilingM = least == null ? Double.POSITIVE_INFINITY : least.valueM();
            PassageSearch.Look look = passed.look(ceilingM, spared);
            shown.add(Shown.values()[look.firstMet()]);
            if (look.below().isPresent()) {
                tightest = passed;
                least = look.below().get();
                if (!least.proven()) {
                    return judge(tightest, least, Shown.NOTHING);
                }
            }
        }
        JudgedSide told = judge(tightest, least, shown.get(passages.indexOf(tightest)));
        JudgedSide worst = told;
        for (int i = 0; i < passages.size(); i++) {
            Passed passed = passages.get(i);
            if (passed != tightest && shown.get(i).atBest.compareTo(worst.verdict) > 0) {
                PassageSearch.Look look = passed.look(Double.POSITIVE_INFINITY, spared);
                JudgedSide other = judge(passed, look.below().orElseThrow(), shown.get(i));
                worst = other.verdict.compareTo(worst.verdict) > 0 ? other : worst;
            }
        }
        // Where every position keeps its need there is none that falls short: the reason is another.
        return shown.stream().allMatch(s -> s == Shown.SPARE) ? told : decided(told, worst, passages);
    }

    /** The least gap with the worst verdict, and the place that decides it where the gap told does not. */
    private JudgedSide decided(JudgedSide told, JudgedSide worst, List<Passed> passages) {
        Demand missed = worst.verdict == Verdict.CONTACT ? freeOfContact(worst.lane.demand()) : worst.lane.demand();
        if (told.verdict == worst.verdict
                && (worst.verdict == Verdict.CLEAR || isShort(told, missed, tellerOf(told, passages)))) {
            return told;
        }
        Passed at = null;
        Clearance decider = null;
        for (Passed passed : passages) {
            double ceilingM = decider == null ? Double.POSITIVE_INFINITY : decider.valueM();
            Optional<Clearance> spare = passed.search.leastSpareBelow(passed.lane.soffit(), missed, ceilingM);
            if (spare.isPresent() && (decider == null || spare.get().valueM() < decider.valueM())) {
                at = passed;
                decider = spare.get();
            }
        }
        // A search that had to end has no least to tell: then that of the passage with the worst verdict stands for it.
        GapFinding deciding =
                decider.proven() ? finding(at, gapOf(decider, missed, at), missed, worst.verdict, null) : worst.gap;
        GapFinding gap = finding(tellerOf(told, passages), told.least, told.lane.demand(), worst.verdict, deciding);
        return new JudgedSide(worst.verdict, gap, worst.reason, told.least, told.lane, told.leveling, decider);
    }

    /** Whether the gap told does not show its own need. */
    private static boolean isShort(JudgedSide told, Demand missed, Passed teller) {
        double needM =
                missed.marginM() + teller.search.footingOf(told.least, missed).uncertaintyM();
        return told.least.valueM() - told.least.provenWithinM() < needM;
    }

    private static Passed tellerOf(JudgedSide told, List<Passed> passages) {
        return passages.stream()
                .filter(p -> p.lane == told.lane && p.leveling == told.leveling)
                .findFirst()
                .orElseThrow();
    }

    /** The gap at a place whose gap less need was sought. */
    private static Clearance gapOf(Clearance spare, Demand demand, Passed at) {
        double needM = demand.marginM() + at.search.footingOf(spare, demand).uncertaintyM();
        return new Clearance(
                spare.valueM() + needM,
                spare.provenWithinM(),
                spare.unit(),
                spare.point(),
                spare.raisedTire(),
                spare.distanceM(),
                spare.steerM(),
                spare.undecided());
    }

    /** What a search has shown at every position. */
    private enum Shown {
        /** Margin and uncertainty. */
        SPARE(Verdict.CLEAR),
        /** No contact. */
        NO_CONTACT(Verdict.TIGHT),
        NOTHING(Verdict.CONTACT);

        final Verdict atBest;

        Shown(Verdict atBest) {
            this.atBest = atBest;
        }
    }

    /** Ground nobody declared can keep a passage from being clear; it is no evidence of contact. */
    private static Demand freeOfContact(Demand demand) {
        return new Demand(0, demand.surveyM(), demand.otherM(), false);
    }

    private JudgedSide judge(Passed passed, Clearance least, Shown shown) {
        Demand demand = passed.lane.demand();
        Footing footing = passed.search.footingOf(least, demand);
        double excluded = passed.search.footingOf(least, freeOfContact(demand)).uncertaintyM();
        double low = least.valueM() - least.provenWithinM();
        Verdict verdict;
        Optional<Sentence> reason = Optional.empty();
        if (!least.proven()) {
            verdict = Verdict.CONTACT;
            reason = because(Reasons.ofUndecided(
                    least.undecided().orElseThrow(), passed.lane.passage().name()));
        } else if (low >= demand.marginM() + footing.uncertaintyM() && shown == Shown.SPARE) {
            verdict = Verdict.CLEAR;
        } else if (low >= excluded && shown != Shown.NOTHING) {
            verdict = Verdict.TIGHT;
        } else {
            verdict = Verdict.CONTACT;
        }
        if (verdict == Verdict.CLEAR && footing.undeclared() && footing.beyondSurveyM() > 0) {
            verdict = Verdict.TIGHT;
            reason = because(Sentence.of(Code.WHY_UNDECLARED));
        } else if (verdict != Verdict.CLEAR && least.proven()) {
            reason = because(Reasons.of(verdict, low, footing, excluded, demand, sagM));
        }
        return new JudgedSide(
                verdict,
                finding(passed, least, demand, verdict, null),
                reason,
                least,
                passed.lane,
                passed.leveling,
                null);
    }

    private Optional<Sentence> because(Sentence why) {
        return Optional.of(
                Sentence.of(Code.REASON).with("where", Sentence.of(where)).with("why", why));
    }

    private GapFinding finding(Passed passed, Clearance at, Demand demand, Verdict verdict, GapFinding deciding) {
        Footing footing = passed.search.footingOf(at, demand);
        double wantedM = demand.marginM() > 0 ? marginM + sagM : 0;
        return new GapFinding(
                at.valueM(),
                wantedM + footing.uncertaintyM(),
                wantedM,
                footing.uncertaintyM(),
                verdict,
                at.unit().word(),
                at.point().xM(),
                at.point().hM(),
                at.point().part(),
                at.distanceM(),
                chainageM + at.distanceM(),
                at.steerM(),
                passed.lane.passage().name(),
                passed.leveling.word(),
                footing.beyondSurveyM(),
                !footing.undeclared(),
                at.provenWithinM(),
                passed.lane.passage().place().map(p -> p.rightM(at)).orElse(null),
                passed.lane.passage().place().map(p -> p.drivenRightM()).orElse(null),
                deciding);
    }
}
