package org.cresthaul.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoadCase;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What must come before what on the cards, because somebody is hurt the other way round. Common practice of the trade;
 * the words looked for stand once on their card.
 */
class DriverCardsTest {
    private static List<RunSheet.Card> cards(String rig) {
        RoadCase c = rig.equals("carrying")
                ? RoadCase.of(
                        RoadCase.road(RoadCase.bridge("300,000 lb")),
                        JsonEdit.edit(RigTexts.RIG, "/stances/0/booster/states", "[\"none\", \"carried\"]"))
                : RoadCase.sample("sorrel-valley", rig);
        Plan plan = c.plan(PlanOptions.defaults());
        return RunSheet.of(plan, c.report(), c.route(), c.stance(), UnitSystem.US_CUSTOMARY)
                .cards();
    }

    private static List<String> lines(List<RunSheet.Card> cards, String about) {
        return cards.stream().filter(c -> c.about().word().equals(about)).findFirst().orElseThrow().lines().stream()
                .map(SheetLine::text)
                .toList();
    }

    @ParameterizedTest(name = "{1}: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "lowbed-loaded | unloading | chocked < booster's air out < Lift axle down < Deck down < attachment down < Chains off < rolling < as it moves",
                "lowbed-empty  | loading   | chocked < Deck down < Lift axle down < as it moves < attachment down < keep it from rolling < Booster air up",
                "lowbed-loaded | uncoupling | chocked < Nobody between < rests on the ground < lines off < off the lock pin < then pull it < Let the neck down < Pull ahead < power take-off out",
                "lowbed-loaded | coupling  | Nobody between < lift with < second person sees < Pull test < brakes charged < stops to the notch < leveling in auto < chocks come out < power take-off out before road speed",
                "lowbed-loaded | coupling booster | chocked < Nobody between < second person sees < Pull test < brakes charged",
                "lowbed-loaded | uncoupling booster | chocked < air out < Lines off < pins out < Nobody between",
                "lowbed-loaded | close-coupling | air out < seen by a second person < lines stay on < Try brakes < Open",
                "carrying      | carrying booster | Level, firm ground < nobody under it < lines off and capped < set it down on the marks < chocked and chains on < sling comes off < sling on and tight < then the chains off < chocked again < Hands away < Tail lights",
                "lowbed-loaded | raising | clear everyone away < off the transport stops < measure both sides < Crawl across < down onto the stops < power take-off out < road speed",
                "lowbed-loaded | stuck | everyone out < blue sign < 911 < No more tries",
            })
    void whatProtectsSomebodyComesFirst(String rig, String about, String order) {
        String card = String.join("\n", lines(cards(rig), about));
        List<Integer> places = new ArrayList<>();
        for (String words : order.split(" < ")) {
            int at = card.indexOf(words);
            assertTrue(at >= 0, words + " in:\n" + card);
            places.add(at);
        }
        assertEquals(places.stream().sorted().toList(), places, order + "\n" + card);
    }

    /**
     * On the deck it is a load: its set-up card has it chocked and chained, its lines off, and the trailer's own
     * lights.
     */
    @Test
    void aCarriedBoosterIsALoad() {
        RoadCase c = RoadCase.of(
                RoadCase.road(RoadCase.bridge("300,000 lb")),
                JsonEdit.edit(
                        JsonEdit.edit(RigTexts.RIG, "/stances/0/trailer/load", "absent"),
                        "/stances/0/booster/states",
                        "[\"carried\"]"));
        Plan plan = c.plan(PlanOptions.defaults());
        List<RunSheet.Card> setUps = RunSheet.of(plan, c.report(), c.route(), c.stance(), UnitSystem.US_CUSTOMARY)
                .setUps();
        assertTrue(!setUps.isEmpty());
        for (RunSheet.Card card : setUps) {
            String text =
                    String.join("\n", card.lines().stream().map(SheetLine::text).toList());
            Stream.of(
                            "carried on the deck, its wheels chocked",
                            "off and capped",
                            "tail lights",
                            "Chains and binders on the carried" + " booster tight")
                    .forEach(words -> assertTrue(text.contains(words), words + " in:\n" + text));
        }
    }

    /** A booster drawn up close still stands on the road: nothing of it is stowed but its own air setting. */
    @Test
    void aCloseCoupledBoosterKeepsItsLines() {
        String card = String.join("\n", lines(cards("lowbed-loaded"), "close-coupling"));
        Stream.of("air", "brake", "lights", "springs").forEach(line -> assertTrue(card.contains(line), line));
        Stream.of("stowed", "capped", "Lines off").forEach(wrong -> assertTrue(!card.contains(wrong), wrong));
    }

    /**
     * 49 CFR 392.9(b): within the first 50 miles, then at a change of duty status, after 3 hours or 150 miles; 393.130:
     * accessories lowered and secured, articulation restrained, four tie-downs at least (both rules from memory).
     */
    @Test
    void theRulesOfSecurementAreCitedForWhatTheySay() {
        RoadCase c = RoadCase.sample("sorrel-valley", "lowbed-loaded");
        Plan plan = c.plan(PlanOptions.defaults());
        for (RunSheet.Card card : RunSheet.of(plan, c.report(), c.route(), c.stance(), UnitSystem.US_CUSTOMARY)
                .setUps()) {
            String again = told(card, "49 CFR 392.9");
            Stream.of(
                            "Chains and binders",
                            "first 50 miles",
                            "150 miles or 3 hours, whichever comes first",
                            "change of duty status")
                    .forEach(words -> assertTrue(again.contains(words), words + " in " + again));
            String machine = told(card, "49 CFR 393.130");
            Stream.of("10,000 lb or more", "lowered and secured", "articulation locked", "at least four tie-downs")
                    .forEach(words -> assertTrue(machine.contains(words), words + " in " + machine));
        }
    }

    private static String told(RunSheet.Card card, String source) {
        return String.join(
                " ",
                card.lines().stream()
                        .filter(l -> source.equals(String.valueOf(l.source())))
                        .map(SheetLine::text)
                        .toList());
    }

    /**
     * 49 CFR 383.51(d) is about convictions: of entering without room, and of failing for lack of clearance underneath.
     */
    @ParameterizedTest
    @ValueSource(strings = {"lowbed-loaded", "lowbed-empty"})
    void theRulesOfCrossingsAreCitedForWhatTheySay(String rig) {
        List<SheetLine> stuck = cards(rig).stream()
                .filter(c -> c.about() == CardKind.STUCK)
                .findFirst()
                .orElseThrow()
                .lines();
        SheetLine convicted = stuck.stream()
                .filter(l -> "49 CFR 383.51(d)".equals(String.valueOf(l.source())))
                .findFirst()
                .orElseThrow();
        assertTrue(
                convicted.text().startsWith("A conviction ") && convicted.text().contains("undercarriage clearance"),
                convicted.text());
        SheetLine room = stuck.stream()
                .filter(l -> "49 CFR 392.12".equals(String.valueOf(l.source())))
                .findFirst()
                .orElseThrow();
        assertTrue(room.text().contains("without room"), room.text());
    }
}
