package org.cresthaul.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.clearance.Coupling;
import org.cresthaul.clearance.Demand;
import org.cresthaul.clearance.Footing;
import org.cresthaul.clearance.Passage;
import org.cresthaul.clearance.RaiseNeeded;
import org.cresthaul.clearance.RoadPlace;
import org.cresthaul.clearance.UnitGap;
import org.cresthaul.clearance.UnitSearch;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.FacingUnit;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.RoadProfile;

/** Judges the gaps between coupled units over all lines of a hazard and both levelings. */
final class UnitCheck {
    private final double chainageM;
    private final List<RaiseNeeded.Lane> lanes;
    /** What is left at kingpins, where it was found: it may be asked for again with a booster. */
    private final Map<Drive, UnitSearch.Look> kingpins = new HashMap<>();

    /** One line, by its number, driven in one setting with one leveling. */
    private record Drive(int line, Setting setting, Leveling leveling) {}

    /**
     * The least gap over all lines and levelings, and the verdict.
     *
     * @param gap empty where nothing of the units can meet
     * @param reason why it is not clear
     */
    record Judged(Verdict verdict, Optional<GapFinding> gap, Optional<Sentence> reason) {}

    /** One line with one leveling, and what was found there. */
    private record Passed(RaiseNeeded.Lane lane, Leveling leveling, UnitSearch search, UnitSearch.Look look) {
        Demand demand() {
            return lane.demand();
        }

        UnitGap least() {
            return look.least().orElseThrow();
        }

        double lowM() {
            return least().valueM() - least().provenWithinM();
        }

        Verdict verdict() {
            return switch (look.firstMet(2)) {
                case 0 -> Verdict.CLEAR;
                case 1 -> Verdict.TIGHT;
                default -> Verdict.CONTACT;
            };
        }
    }

    /** @param lanes at least one, all with one demand */
    UnitCheck(double chainageM, List<RaiseNeeded.Lane> lanes) {
        this.chainageM = chainageM;
        this.lanes = List.copyOf(lanes);
    }

    /** On level ground: how the combination stands where no road is known, at every place alike. */
    static UnitCheck onLevelGround(LevelStance stance, Rig rig, Margins margins) {
        RoadProfile level = RoadProfile.level();
        return new UnitCheck(
                0,
                List.of(new RaiseNeeded.Lane(new Passage(stance, level), Optional.empty(), demand(rig, margins, 0))));
    }

    /**
     * What is asked between units: the margin, the tape on both of them, and what survey and ride do to the height of
     * every group of wheels and so to the bend.
     */
    static Demand demand(Rig rig, Margins margins, double surveyM) {
        return new Demand(
                margins.unitM(),
                Math.hypot(surveyM, rig.ride().valueM()),
                Math.hypot(rig.measurement().valueM(), rig.measurement().valueM()),
                true);
    }

    RaiseNeeded.Lane lane(int i) {
        return lanes.get(i);
    }

    List<RaiseNeeded.Lane> lanes() {
        return lanes;
    }

    /**
     * The least gap of all is told; the verdict is the worst, and beside it the place that decides it if that is
     * another.
     */
    Judged judge(Setting setting) {
        return judge(setting, setting);
    }

    /**
     * The same of a setting with boosters that never carry the trailer.
     *
     * @param alone without them, as judged before: then what is left at kingpins is known
     */
    Judged judge(Setting setting, Setting alone) {
        List<Passed> passages = new ArrayList<>();
        for (int i = 0; i < lanes.size(); i++) {
            RaiseNeeded.Lane lane = lanes.get(i);
            List<Demand> demands = List.of(lane.demand(), freeOfContact(lane));
            for (Leveling leveling : setting.levelings()) {
                UnitSearch search = new UnitSearch(lane.passage(), setting, leveling);
                UnitSearch.Look ahead =
                        kingpins.computeIfAbsent(new Drive(i, alone, leveling), w -> search.lookAtKingpins(demands));
                Passed passed = new Passed(lane, leveling, search, search.lookAtHinges(ahead, demands));
                if (passed.look.least().isPresent()) {
                    passages.add(passed);
                }
                if (passed.look.undecided().isPresent()) {
                    Optional<Sentence> reason = because(
                            passed, Reasons.ofUndecided(passed.look.undecided().get(), line(lane.passage())));
                    return new Judged(
                            Verdict.CONTACT,
                            Optional.of(finding(passed, passed.least(), Verdict.CONTACT, null)),
                            reason);
                }
            }
        }
        if (passages.isEmpty()) {
            return new Judged(Verdict.CLEAR, Optional.empty(), Optional.empty());
        }
        Passed told = passages.get(0);
        Passed worst = told;
        for (Passed passed : passages) {
            told = passed.least().valueM() < told.least().valueM() ? passed : told;
            worst = passed.verdict().compareTo(worst.verdict()) > 0 ? passed : worst;
        }
        return judged(told, worst, passages);
    }

    private Judged judged(Passed told, Passed worst, List<Passed> passages) {
        Footing footing = told.search.footingOf(told.least(), told.demand());
        double excludedM =
                told.search.footingOf(told.least(), freeOfContact(told.lane)).uncertaintyM();
        Verdict verdict = worst.verdict();
        if (verdict == Verdict.CLEAR) {
            boolean undeclared = footing.undeclared() && footing.beyondSurveyM() > 0;
            return new Judged(
                    undeclared ? Verdict.TIGHT : verdict,
                    Optional.of(finding(told, told.least(), undeclared ? Verdict.TIGHT : verdict, null)),
                    undeclared ? because(told, Sentence.of(Code.WHY_UNDECLARED)) : Optional.empty());
        }
        Optional<Sentence> reason = because(
                told, Reasons.ofUnits(verdict, told.lowM(), footing, excludedM, told.demand(), touchLevel(told)));
        double needM = verdict == Verdict.CONTACT ? excludedM : told.demand().marginM() + footing.uncertaintyM();
        GapFinding deciding = told.lowM() < needM ? null : deciding(verdict, passages);
        return new Judged(verdict, Optional.of(finding(told, told.least(), verdict, deciding)), reason);
    }

    /** Where gap less need is least of all: that of another position than the least gap's. */
    private GapFinding deciding(Verdict verdict, List<Passed> passages) {
        int missed = verdict == Verdict.CONTACT ? 1 : 0;
        Passed at = passages.get(0);
        for (Passed passed : passages) {
            at = passed.look.spares().get(missed).valueM()
                            < at.look.spares().get(missed).valueM()
                    ? passed
                    : at;
        }
        UnitGap spare = at.look.spares().get(missed);
        UnitGap there = at.search.at(spare.coupling(), spare.steerM());
        return finding(at, there, verdict, null);
    }

    private boolean touchLevel(Passed told) {
        return told.lane.passage().line().steepest() == 0;
    }

    /** Ground nobody declared can keep a passage from being clear; it is no evidence of contact. */
    private static Demand freeOfContact(RaiseNeeded.Lane lane) {
        Demand demand = lane.demand();
        return new Demand(0, demand.surveyM(), demand.otherM(), false);
    }

    /** Units bend with the middles of their axles. */
    private static String line(Passage passage) {
        return passage.place().map(RoadPlace::middle).orElse(passage.line().name());
    }

    private static Optional<Sentence> because(Passed passed, Sentence why) {
        Coupling coupling = passed.least().coupling();
        Sentence where = Sentence.of(Code.AT_UNITS)
                .with("ahead", Names.of(coupling.ahead().word()))
                .with("behind", Names.of(coupling.behind().word()));
        return Optional.of(Sentence.of(Code.REASON).with("where", where).with("why", why));
    }

    private GapFinding finding(Passed passed, UnitGap at, Verdict verdict, GapFinding deciding) {
        boolean excluding = deciding == null && verdict == Verdict.CONTACT;
        Footing footing = passed.search.footingOf(at, passed.demand());
        double distanceM = passed.search.distanceM(at);
        return new GapFinding(
                at.valueM(),
                passed.demand().marginM() + footing.uncertaintyM(),
                passed.demand().marginM(),
                footing.uncertaintyM(),
                verdict,
                at.coupling().behind().word(),
                at.behind().xM(),
                at.behind().hM(),
                at.behind().part(),
                distanceM,
                chainageM + distanceM,
                at.steerM(),
                line(passed.lane.passage()),
                passed.leveling.word(),
                footing.beyondSurveyM(),
                !footing.undeclared(),
                at.provenWithinM(),
                null,
                passed.lane.passage().place().map(p -> p.drivenRightM()).orElse(null),
                deciding,
                new FacingUnit(
                        at.coupling().ahead().word(),
                        at.ahead().xM(),
                        at.ahead().hM(),
                        at.ahead().part(),
                        at.bendRad()));
    }
}
