package org.cresthaul.plan;

import java.util.List;
import java.util.stream.Stream;

/**
 * How things are done on the way, as the trade does them. No result of this program, but for the figures of
 * {@link BackingCard}: the maker's instructions, the carrier's rules and the law go before.
 */
final class DriverCards {
    private DriverCards() {}

    static List<SheetLine> beforeLeaving() {
        return practice(
                "Permit, route and this sheet agree: same roads, same direction, same day, same load.",
                "Load height and width measured at their extremes and written down.",
                "Every axle weighed; the tickets agree with the statement.",
                "Radio checked with escorts; each knows the places where we stop and the numbers to call.",
                "Tape, chocks, gloves, flashlight, spare shim and pins on board.");
    }

    static List<RunSheet.Card> list(Sources sources) {
        return List.of(uncoupling(), coupling(), unloading(), new BackingCard(sources).card(), raising(), stuck());
    }

    private static RunSheet.Card card(String title, String... lines) {
        return new RunSheet.Card(title, null, null, practice(lines));
    }

    private static List<SheetLine> practice(String... lines) {
        return Stream.of(lines).map(SheetLine::practice).toList();
    }

    private static RunSheet.Card uncoupling() {
        return card("Uncoupling the gooseneck",
                "Level, firm ground; deck brakes set, wheels chocked, everybody in sight.",
                "Raise off the stops, stops out of the way; lower until the deck front rests on the ground or its blocks.",
                "Air and electric lines off the deck and capped; air out of the deck's springs if it rests.",
                "Take the weight off the lock pin with the hydraulics, then pull it.",
                "Let the neck down on its own support until the hooks are free; look on both sides.",
                "Pull ahead a foot, stop, look again, then clear. Neck up on its travel stop before driving.");
    }

    private static RunSheet.Card coupling() {
        return card("Coupling the gooseneck",
                "Back in straight, a guide on the driver's side; stop a foot short and look.",
                "Hooks below their seats; back until they meet, then lift with the hydraulics.",
                "Lock pin fully in, keeper on; a second person looks.",
                "Air and electric lines on; brakes charged and tried; lights tried.",
                "Deck up, stops to the notch on the set-up card, down on them, both sides; levelling in auto.",
                "Air up before the chocks come out.");
    }

    private static RunSheet.Card unloading() {
        return card("Unloading",
                "Booster air out before the weight comes off the deck; shim out.",
                "Running empty with the booster down: keep the pressure its set-up card gives, so that its wheels keep turning.",
                "Deck down and resting before ramps or neck are used; nobody beside the machine as it moves.",
                "Chains off last from the side that cannot roll; stand out of their line.",
                "Afterwards the empty stance is another combination: it needs its own check and its own sheet.");
    }

    private static RunSheet.Card raising() {
        return card("Raising over a place and lowering after it",
                "Only where this sheet says so, by the amount it says, measured by the tape.",
                "Stop; clear everybody away; off the transport stops; up; measure both sides.",
                "Crawl across with a person watching the tightest point from the side, in radio contact.",
                "Stop beyond; down onto the stops, both sides seated; levelling in auto; only then road speed.",
                "Nobody goes under a deck that is raised or held by hydraulics.");
    }

    private static RunSheet.Card stuck() {
        return new RunSheet.Card("Stuck, or stopped on a crossing", null, null, List.of(
                SheetLine.practice("Everybody out and away from the tracks, at an angle towards a coming train's side."),
                SheetLine.practice("Call the number on the blue emergency sign first and give the crossing number; then 911."),
                SheetLine.practice("No more tries before the railway says that no train is coming."),
                SheetLine.rule("Do not enter a crossing without room to clear the tracks.", "49 CFR 392.12"),
                SheetLine.rule("Too little undercarriage clearance at a crossing disqualifies the driver.",
                        "49 CFR 383.51(d)")));
    }
}
