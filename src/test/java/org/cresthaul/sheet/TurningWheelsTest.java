package org.cresthaul.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoadCase;
import org.cresthaul.report.Report;
import org.cresthaul.rig.AxleSteering;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.turning.TurningCombination;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;

/** A rig whose wheels turn behind the tractor, from its file to the driver's cards. */
class TurningWheelsTest {
    private static final String LAST = "/stances/0/trailer/axles/2/steering";
    private static final String CASTERING = "{\"wheels\": \"castering\", \"limit\": \"18 deg\"}";
    private static final String COMMANDED = "{\"wheels\": \"commanded\", \"limit\": \"25 deg\", \"ratio\": \"60 %\"}";
    private static final String LOCKED = "{\"wheels\": \"locked\", \"limit\": \"25 deg\", \"ratio\": \"60 %\"}";

    /** The thirteen-axle sample, its trailer axles 45 ft, 49 ft 6 1/2 in and 54 ft 1 in behind the kingpin. */
    private static LevelStance thirteenAxles(String edited) throws Exception {
        String text = Files.readString(Path.of("sample-routes/lowbed-with-two-boosters.rig.json"));
        return RigFile.parse((edited.isEmpty() ? text : JsonEdit.edit(text, LAST, edited)).getBytes("UTF-8"))
                .stances()
                .get(0);
    }

    private static TurningCombination ahead(LevelStance stance) {
        return TurningCombination.of(stance, LiftState.DOWN, BoosterState.TRAILING)
                .orElseThrow();
    }

    private static TurningCombination backing(LevelStance stance) {
        return TurningCombination.backing(stance, LiftState.DOWN, BoosterState.TRAILING)
                .orElseThrow();
    }

    @Test
    void theFileSaysHowTheyTurn() throws Exception {
        assertEquals(
                Optional.of(new AxleSteering.Castering(Math.toRadians(18))),
                thirteenAxles(CASTERING).trailer().axles().axles().get(2).steering());
        assertEquals(
                Optional.of(new AxleSteering.Commanded(0.6, Math.toRadians(25))),
                thirteenAxles(COMMANDED).trailer().axles().axles().get(2).steering());
        assertEquals(thirteenAxles(""), thirteenAxles(LOCKED));
    }

    /** Σx²/Σx by hand, in feet: of 45 and 49.5417 ahead; backing, of all three as ever. */
    @Test
    void castersGuideBackingOnly() throws Exception {
        LevelStance stance = thirteenAxles(CASTERING);
        double second = 49 + 6.5 / 12;
        double two = (45 * 45 + second * second) / (45 + second) * 0.3048;

        assertEquals(two, ahead(stance).chain().get(2).hitchToAxleM(), 1e-9);
        assertEquals(backing(thirteenAxles("")), backing(stance));
        assertNotEquals(ahead(thirteenAxles("")), ahead(stance));
        // The pivot is held by the hinge, whatever axle the unit is told from.
        assertEquals(
                ahead(thirteenAxles("")).lengthM(), ahead(stance).lengthM(), 1e-9, "straight it is as long as ever");
    }

    @Test
    void lockedPivotsKeepWhatTurns() throws Exception {
        TurningCombination locked = ahead(thirteenAxles(COMMANDED)).pivotLocked();
        TurningCombination plain = ahead(thirteenAxles("")).pivotLocked();
        int last = locked.chain().size() - 1;

        assertEquals(
                plain.chain().get(last).hitchToAxleM(), locked.chain().get(last).hitchToAxleM(), 1e-9);
        assertEquals(
                1, locked.chain().get(last).steered().orElseThrow().commanded().size());
        assertEquals(
                5, locked.chain().get(last).steered().orElseThrow().fixedM().size());
    }

    private static RunSheet sheet(RoadCase c) {
        return RunSheet.of(c.plan(PlanOptions.defaults()), c.report(), c.route(), c.stance(), UnitSystem.US_CUSTOMARY);
    }

    private static RoadCase road(String at, String steering) {
        return RoadCase.of(
                RoadCase.road(RoadCase.bridge("300,000 lb")), JsonEdit.edit(RigTexts.RIG, at + "/steering", steering));
    }

    private static List<String> general(Report report) {
        return report.cautions().stream().map(Sentence::toString).toList();
    }

    @Test
    void cardsSayWhenToLockThem() {
        RoadCase c = road("/stances/0/trailer/axles/1", CASTERING);
        List<String> backing = sheet(c).cards().stream()
                .filter(card -> card.about() == CardKind.BACKING)
                .findFirst()
                .orElseThrow()
                .lines()
                .stream()
                .map(SheetLine::text)
                .toList();
        int lock = backing.indexOf("Castering wheels locked straight before backing: trailer axle 2.");
        int move = backing.indexOf("Short moves, stop when the guide is out of sight.");
        int unlock = backing.indexOf("Afterward: castering wheels unlocked before going ahead: trailer axle 2.");

        assertTrue(0 <= lock && lock < move && move < unlock, backing.toString());
        assertTrue(
                general(c.report()).stream().anyMatch(t -> t.contains("trailer axle 2 are castering")),
                general(c.report()).toString());
    }

    @Test
    void commandedWheelsAreCautionedAboutAndNotLocked() {
        RoadCase c = road("/stances/0/trailer/axles/1", COMMANDED);

        assertTrue(
                general(c.report()).stream().anyMatch(t -> t.contains("trailer axle 2 are steered by the coupling")));
        assertTrue(sheet(c).cards().stream()
                .flatMap(card -> card.lines().stream())
                .noneMatch(line -> line.text().contains("Castering")));
    }
}
