package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Plan;
import org.cresthaul.report.ReversingReport;
import org.cresthaul.report.ReversingReport.State;
import org.cresthaul.report.ReversingReport.StraightBack;

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
        List<SheetLine> lines = new ArrayList<>();
        Optional<Sentence> casters = sources.equipment().castering();
        Stream.of(Code.BACKING_GUIDE, Code.BACKING_AIR, Code.BACKING_PIVOT)
                .map(sources::practice)
                .forEach(lines::add);
        casters.ifPresent(axles -> lines.add(wheels(Code.BACKING_CASTERS, axles)));
        Stream.of(Code.BACKING_MOVES, Code.BACKING_AFTER).map(sources::practice).forEach(lines::add);
        casters.ifPresent(axles -> lines.add(wheels(Code.BACKING_CASTERS_AFTER, axles)));
        Map<Integer, String> states = states();
        if (states.keySet().stream().anyMatch(i -> reversing.states().get(i).free() != null)) {
            lines.add(sources.say(Code.BACKING_HOW_FAR)
                    .at("bend")
                    .angle(reversing.bendRad(), AT + "/bendRad")
                    .plain());
        }
        states.forEach((index, letters) -> lines.add(line(index, letters)));
        sources.said(reversing.cautions()).forEach(c -> lines.add(SheetLine.plain(c)));
        return new RunSheet.Card(CardKind.BACKING, sources.catalog().text(Code.CARD_BACKING), null, null, lines);
    }

    private SheetLine wheels(Code code, Sentence axles) {
        return sources.say(code).with("axles", axles).toDo().from(SheetLine.PRACTICE);
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
        if (state.free() == null) {
            return sources.say(Code.BACKING_UNKNOWN)
                    .with("letters", letters)
                    .with("why", state.unknown())
                    .plain();
        }
        String at = AT + "/states/" + index;
        if (state.locked() == null) {
            return sources.say(Code.BACKING_WAY)
                    .with("letters", letters)
                    .with("way", way(state.free(), at + "/free"))
                    .plain();
        }
        return sources.say(Code.BACKING_WAYS)
                .with("letters", letters)
                .with("free", way(state.free(), at + "/free"))
                .with("light", way(state.lockedLight(), at + "/lockedLight"))
                .with("locked", way(state.locked(), at + "/locked"))
                .plain();
    }

    private Say way(StraightBack way, String at) {
        return way.limitMetM() == null
                ? sources.say(Code.BACKING_NO_LIMIT).at("most").way(reversing.mostM(), AT + "/mostM")
                : sources.say(Code.BACKING_LIMIT)
                        .with("coupling", way.coupling())
                        .at("way")
                        .way(way.limitMetM(), at + "/limitMetM");
    }
}
