package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.check.StuckOnTracks;
import org.cresthaul.rig.BoosterState;

/**
 * How things are done on the way, as the trade does them, each card only where the rig has what it is about. No result
 * of this program, but for the figures of {@link BackingCard}: the maker's instructions, the carrier's rules and the
 * law take precedence.
 */
final class DriverCards {
    private final Sources sources;
    private final Equipment rig;

    DriverCards(Sources sources) {
        this.sources = sources;
        rig = sources.equipment();
    }

    List<SheetLine> beforeLeaving() {
        List<SheetLine> lines = new ArrayList<>();
        lines.addAll(practice(
                "Permit, route and this sheet agree: same roads, same direction, same day, same load.",
                rig.isLoaded()
                        ? "Load height and width measured at their extremes and written down."
                        : "Overall height and width measured and written down; nothing left on the deck.",
                "Every axle weighed; the tickets agree with the statement.",
                "Radio checked with escorts; each knows the places where we stop and the numbers to call.",
                rig.hasPlates()
                        ? "Tape, chocks, gloves, flashlight, spare pins and the plates of the booster joint on board."
                        : "Tape, chocks, gloves, flashlight and spare pins on board."));
        lines.add(LeastReserveLine.of(sources));
        return lines;
    }

    List<RunSheet.Card> list() {
        List<RunSheet.Card> cards = new ArrayList<>();
        cards.add(stuck());
        cards.add(raising());
        cards.add(rig.isLoaded() ? unloading() : loading());
        cards.add(uncoupling());
        cards.add(coupling());
        if (rig.has(BoosterState.TRAILING) || rig.has(BoosterState.CLOSE_COUPLED)) {
            cards.add(couplingBooster());
            cards.add(uncouplingBooster());
        }
        if (rig.has(BoosterState.CLOSE_COUPLED)) {
            cards.add(closeCoupling());
        }
        if (rig.has(BoosterState.CARRIED)) {
            cards.add(carrying());
        }
        cards.add(new BackingCard(sources).card());
        return cards;
    }

    private static RunSheet.Card card(CardKind about, String title, String... lines) {
        return new RunSheet.Card(about, title, null, null, practice(lines));
    }

    private static RunSheet.Card card(CardKind about, String title, Stream<String> lines) {
        return new RunSheet.Card(
                about, title, null, null, lines.map(SheetLine::practice).toList());
    }

    private static List<SheetLine> practice(String... lines) {
        return Stream.of(lines).map(SheetLine::practice).toList();
    }

    private static RunSheet.Card uncoupling() {
        return card(
                CardKind.UNCOUPLING,
                "Uncoupling the gooseneck",
                "Level, firm ground; deck brakes set, wheels chocked. Nobody between tractor and deck from here on.",
                "Raise off the stops, stops out of the way; lower until the deck front rests on the ground or its blocks.",
                "Air and electric lines off the deck and capped.",
                "Take the weight off the lock pin with the hydraulics, then pull it.",
                "Let the neck down on its own support until the hooks are free; look on both sides.",
                "Pull ahead a foot, stop, look again, then clear. Neck up on its travel stop; power take-off out before driving.");
    }

    private static RunSheet.Card coupling() {
        return card(
                CardKind.COUPLING,
                "Coupling the gooseneck",
                "Back in straight, a guide on the driver's side; stop a foot short and look. Nobody between tractor and deck.",
                "Hooks below their seats; back until they meet, then lift with the hydraulics.",
                "Lock pin fully in, keeper on: a second person sees it.",
                "Pull test: deck brakes set, pull gently ahead; the pin holds.",
                "Air and electric lines on; brakes charged and tried; lights tried.",
                "Deck up, stops to the notch on the set-up card, down on them, both sides; leveling in auto.",
                "Air up before the chocks come out; power take-off out before road speed.");
    }

    private RunSheet.Card unloading() {
        return card(
                CardKind.UNLOADING,
                "Unloading",
                Stream.of(
                                Optional.of(
                                        "Level, firm ground; parking brakes set, wheels chocked, everyone in sight."),
                                rig.has(BoosterState.TRAILING)
                                        ? Optional.of(
                                                "A trailing booster's air out before any weight moves, so that it does not lift the rear.")
                                        : Optional.<String>empty(),
                                rig.hasLiftAxle()
                                        ? Optional.of(
                                                "Lift axle down before any weight moves; it may go up again once the deck is empty.")
                                        : Optional.<String>empty(),
                                Optional.of("Deck down and resting before ramps or neck are used."),
                                Optional.of("Machine: its brake set, its attachment down on the deck."),
                                Optional.of(
                                        "Chains off in turn, standing out of their line; last the ones that keep the machine from rolling."),
                                Optional.of(
                                        "Nobody beside the machine as it moves; attachment up only as far as it must."),
                                rig.hasPlates()
                                        ? Optional.of(
                                                "Plate at the booster joint as the card of the empty combination says.")
                                        : Optional.<String>empty(),
                                Optional.of(
                                        "The empty combination is another one: it needs its own check and its own sheet."))
                        .flatMap(Optional::stream));
    }

    private RunSheet.Card loading() {
        return card(
                CardKind.LOADING,
                "Loading",
                Stream.of(
                                Optional.of(
                                        "Level, firm ground; parking brakes set, wheels chocked, everyone in sight."),
                                Optional.of(
                                        "Deck down and resting before ramps or neck are used; deck clean of mud, ice and oil."),
                                rig.hasLiftAxle()
                                        ? Optional.of("Lift axle down before any weight moves.")
                                        : Optional.<String>empty(),
                                Optional.of(
                                        "Nobody beside the machine as it moves; stop at the marks measured for this load."),
                                Optional.of(
                                        "Machine: its brake set, its attachment down on the deck, articulation locked."),
                                Optional.of(
                                        "First the chains that keep it from rolling, then the others; binders wrapped and tied."),
                                rig.has(BoosterState.TRAILING)
                                        ? Optional.of("Booster air up only when the whole weight stands on the deck.")
                                        : Optional.<String>empty(),
                                Optional.of(
                                        "The loaded combination is another one: it needs its own check and its own sheet."))
                        .flatMap(Optional::stream));
    }

    private static RunSheet.Card couplingBooster() {
        return card(
                CardKind.COUPLING_BOOSTER,
                "Coupling the booster",
                "Level, firm ground; trailer brakes set, booster chocked. Nobody between trailer and booster while either moves.",
                "Bring the joint together slowly, a guide in sight of both; pins in, keepers on: a second person sees them.",
                "Pull test: booster brakes set, pull gently ahead; the pins hold.",
                "Air, brake and light lines on; brakes charged and tried, lights tried.",
                "Joint, pivot and air as the set-up card says.");
    }

    private static RunSheet.Card uncouplingBooster() {
        return card(
                CardKind.UNCOUPLING_BOOSTER,
                "Uncoupling the booster",
                "Level, firm ground; booster and trailer chocked.",
                "Booster air out; its support down and firm.",
                "Lines off and capped; pins out only when nothing presses on them.",
                "Nobody between trailer and booster; pull ahead a foot, stop, look, then clear.");
    }

    private static RunSheet.Card closeCoupling() {
        return card(
                CardKind.CLOSE_COUPLING,
                "Close-coupling the booster, and opening it",
                "Level, firm ground; chocked. The booster's regulated air out.",
                "Close: draw or fold it up as the maker says; nobody between; pins in, keepers on, seen by a second person.",
                "All lines stay on: air, brake, spring air and lights; its springs share the trailer's air. Try brakes and lights.",
                "Open: pins out only when nothing presses on them; let it back slowly; joint as the set-up card says.");
    }

    private static RunSheet.Card carrying() {
        return card(
                CardKind.CARRYING_BOOSTER,
                "Loading the booster on the deck, and unloading it",
                "Level, firm ground; lifting gear rated for it; nobody under it or within its swing.",
                "Load: lines off and capped first; set it down on the marks; wheels chocked and chains on before the sling comes off.",
                "Unload: sling on and tight, then the chains off; set down and wheels chocked again before the sling comes off."
                        + " Hands away from the sling points.",
                "Tail lights and plate of the trailer show when it is on the deck.");
    }

    private static RunSheet.Card raising() {
        return card(
                CardKind.RAISING,
                "Raising over a place and lowering after it",
                "Only where this sheet says so, by the amount it says, measured by the tape.",
                "Stop; clear everyone away; off the transport stops; up; measure both sides.",
                "Crawl across with a person watching the tightest point from the side, in radio contact.",
                "Stop beyond; down onto the stops, both sides seated; leveling in auto; power take-off out; only then road speed.",
                "Nobody goes under a deck that is raised or held by hydraulics.");
    }

    static final String PEOPLE = "stuck: people";
    static final String CALL = "stuck: call";

    private static RunSheet.Card stuck() {
        return new RunSheet.Card(
                CardKind.STUCK,
                "Stuck, or stopped on a crossing",
                null,
                null,
                List.of(
                        SheetLine.rule(StuckOnTracks.PEOPLE, SheetLine.PRACTICE).as(PEOPLE),
                        SheetLine.rule(StuckOnTracks.call(Optional.empty()), SheetLine.PRACTICE)
                                .as(CALL),
                        SheetLine.rule(
                                "No more tries before the railroad says that no train is coming.", SheetLine.PRACTICE),
                        SheetLine.rule(
                                "Do not enter a crossing without room to drive all the way across.", "49 CFR 392.12"),
                        SheetLine.rule(
                                "A conviction for entering without that room, or for failing to cross for lack of undercarriage"
                                        + " clearance, disqualifies the driver.",
                                "49 CFR 383.51(d)")));
    }
}
