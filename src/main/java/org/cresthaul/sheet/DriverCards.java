package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.language.Code;
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
        List<SheetLine> lines = new ArrayList<>(practice(Stream.of(
                Code.FIRST_PERMIT,
                rig.isLoaded() ? Code.FIRST_LOAD : Code.FIRST_EMPTY,
                Code.FIRST_WEIGHED,
                Code.FIRST_RADIO,
                rig.hasPlates() ? Code.FIRST_TOOLS_PLATES : Code.FIRST_TOOLS)));
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

    private RunSheet.Card card(CardKind about, Code title, Code... lines) {
        return card(about, title, practice(Stream.of(lines)));
    }

    private RunSheet.Card card(CardKind about, Code title, List<SheetLine> lines) {
        return new RunSheet.Card(about, sources.catalog().text(title), null, null, lines);
    }

    private List<SheetLine> practice(Stream<Code> lines) {
        return lines.map(sources::practice).toList();
    }

    /** What is said only where the rig has it. */
    private static Optional<Code> where(boolean has, Code line) {
        return has ? Optional.of(line) : Optional.empty();
    }

    private RunSheet.Card uncoupling() {
        return card(
                CardKind.UNCOUPLING,
                Code.CARD_UNCOUPLING,
                Code.UNCOUPLING_1,
                Code.UNCOUPLING_2,
                Code.UNCOUPLING_3,
                Code.UNCOUPLING_4,
                Code.UNCOUPLING_5,
                Code.UNCOUPLING_6);
    }

    private RunSheet.Card coupling() {
        return card(
                CardKind.COUPLING,
                Code.CARD_COUPLING,
                Code.COUPLING_1,
                Code.COUPLING_2,
                Code.COUPLING_3,
                Code.COUPLING_4,
                Code.COUPLING_5,
                Code.COUPLING_6,
                Code.COUPLING_7);
    }

    private RunSheet.Card unloading() {
        return card(
                CardKind.UNLOADING,
                Code.CARD_UNLOADING,
                practice(Stream.of(
                                Optional.of(Code.GROUND_FIRM),
                                where(rig.has(BoosterState.TRAILING), Code.UNLOADING_AIR),
                                where(
                                        rig.hasLiftAxle(),
                                        rig.hasLiftAxles() ? Code.UNLOADING_LIFTS : Code.UNLOADING_LIFT),
                                Optional.of(Code.UNLOADING_DECK),
                                Optional.of(Code.UNLOADING_MACHINE),
                                Optional.of(Code.UNLOADING_CHAINS),
                                Optional.of(Code.UNLOADING_BESIDE),
                                where(rig.hasPlates(), Code.UNLOADING_PLATE),
                                Optional.of(Code.UNLOADING_OTHER))
                        .flatMap(Optional::stream)));
    }

    private RunSheet.Card loading() {
        return card(
                CardKind.LOADING,
                Code.CARD_LOADING,
                practice(Stream.of(
                                Optional.of(Code.GROUND_FIRM),
                                Optional.of(Code.LOADING_DECK),
                                where(rig.hasLiftAxle(), rig.hasLiftAxles() ? Code.LOADING_LIFTS : Code.LOADING_LIFT),
                                Optional.of(Code.LOADING_BESIDE),
                                Optional.of(Code.LOADING_MACHINE),
                                Optional.of(Code.LOADING_CHAINS),
                                where(rig.has(BoosterState.TRAILING), Code.LOADING_AIR),
                                Optional.of(Code.LOADING_OTHER))
                        .flatMap(Optional::stream)));
    }

    private RunSheet.Card couplingBooster() {
        return card(
                CardKind.COUPLING_BOOSTER,
                Code.CARD_COUPLING_BOOSTER,
                Code.COUPLING_BOOSTER_1,
                Code.COUPLING_BOOSTER_2,
                Code.COUPLING_BOOSTER_3,
                Code.COUPLING_BOOSTER_4,
                Code.COUPLING_BOOSTER_5);
    }

    private RunSheet.Card uncouplingBooster() {
        return card(
                CardKind.UNCOUPLING_BOOSTER,
                Code.CARD_UNCOUPLING_BOOSTER,
                Code.UNCOUPLING_BOOSTER_1,
                Code.UNCOUPLING_BOOSTER_2,
                Code.UNCOUPLING_BOOSTER_3,
                Code.UNCOUPLING_BOOSTER_4);
    }

    private RunSheet.Card closeCoupling() {
        return card(
                CardKind.CLOSE_COUPLING,
                Code.CARD_CLOSE_COUPLING,
                Code.CLOSE_COUPLING_1,
                Code.CLOSE_COUPLING_2,
                Code.CLOSE_COUPLING_3,
                Code.CLOSE_COUPLING_4);
    }

    private RunSheet.Card carrying() {
        return card(
                CardKind.CARRYING_BOOSTER,
                Code.CARD_CARRYING,
                Code.CARRYING_1,
                Code.CARRYING_2,
                Code.CARRYING_3,
                Code.CARRYING_4);
    }

    private RunSheet.Card raising() {
        return card(
                CardKind.RAISING,
                Code.CARD_RAISING,
                Code.RAISING_1,
                Code.RAISING_2,
                Code.RAISING_3,
                Code.RAISING_4,
                Code.NOBODY_UNDER);
    }

    private RunSheet.Card stuck() {
        return card(
                CardKind.STUCK,
                Code.CARD_STUCK,
                List.of(
                        sources.rule(Code.STUCK_PEOPLE, SheetLine.PRACTICE).as(SheetTopic.STUCK_PEOPLE),
                        sources.rule(Code.STUCK_CALL, SheetLine.PRACTICE).as(SheetTopic.STUCK_CALL),
                        sources.rule(Code.STUCK_TRIES, SheetLine.PRACTICE),
                        sources.rule(Code.STUCK_ROOM, SheetLine.cited("49 CFR 392.12")),
                        sources.rule(Code.STUCK_CONVICTION, SheetLine.cited("49 CFR 383.51(d)"))));
    }
}
