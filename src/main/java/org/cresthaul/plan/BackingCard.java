package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.cresthaul.check.ReversingReport;
import org.cresthaul.check.ReversingReport.State;
import org.cresthaul.check.ReversingReport.Way;

/**
 * The card for backing up: what the trade does, and how far each set-up in use goes straight back when nobody steers.
 */
final class BackingCard {
    private static final String AT = "report:/reversing";

    private final Sources sources;
    private final ReversingReport reversing;

    BackingCard(Sources sources) {
        this.sources = sources;
        reversing = sources.report().reversing();
    }

    RunSheet.Card card() {
        List<SheetLine> lines = new ArrayList<>(
                List.of(
                        SheetLine.practice("Guide in sight at the rear, one signal to stop; radio besides."),
                        SheetLine.practice("Booster air let out, so that its axle neither carries nor steers."),
                        SheetLine.practice("Booster pivot locked straight before backing."),
                        SheetLine.practice("Short moves, stop when the guide is out of sight."),
                        SheetLine.practice(
                                "Afterward: pivot unlocked, booster air back to the set-up card, gauge read, before going ahead.")));
        Map<Integer, String> states = states();
        if (states.keySet().stream().anyMatch(i -> reversing.states().get(i).free() != null)) {
            lines.add(sources.say("How far it can be pushed straight back with the steering held straight, from ")
                    .angle(reversing.bendRad(), AT + "/bendRad")
                    .words(" at every coupling, until the coupling named is at its limit:")
                    .plain());
        }
        states.forEach((index, letters) -> lines.add(line(index, letters)));
        reversing.cautions().forEach(c -> lines.add(SheetLine.plain(c)));
        return new RunSheet.Card(CardKind.BACKING, "Backing up", null, null, lines);
    }

    /**
     * Indices into the report's states that the plan uses, with the letters of their set-ups; the notch does not
     * matter.
     */
    private Map<Integer, String> states() {
        Map<Integer, String> states = new LinkedHashMap<>();
        for (Plan.SetUp set : sources.setUps()) {
            Optional<Integer> index = IntStream.range(0, reversing.states().size())
                    .filter(i -> reversing.states().get(i).lift().equals(set.lift())
                            && reversing.states().get(i).booster().equals(set.booster()))
                    .boxed()
                    .findFirst();
            index.ifPresent(i -> states.merge(i, sources.letterOf(set), (before, letter) -> before + ", " + letter));
        }
        return states;
    }

    private SheetLine line(int index, String letters) {
        State state = reversing.states().get(index);
        String name = "Set-up " + letters + ": ";
        if (state.free() == null) {
            return SheetLine.plain(name + state.unknown() + ".");
        }
        String at = AT + "/states/" + index;
        if (state.locked() == null) {
            return way(sources.say(name), state.free(), at + "/free").words(".").plain();
        }
        Say say = way(sources.say(name + "pivot free, "), state.free(), at + "/free");
        way(say.words("; locked and booster air out, "), state.lockedLight(), at + "/lockedLight");
        return way(say.words("; locked with its air, "), state.locked(), at + "/locked")
                .words(".")
                .plain();
    }

    private Say way(Say say, Way way, String at) {
        return way.limitMetM() == null
                ? say.words("no limit within ").way(reversing.mostM(), AT + "/mostM")
                : say.way(way.limitMetM(), at + "/limitMetM").words(" (" + way.coupling() + ")");
    }
}
