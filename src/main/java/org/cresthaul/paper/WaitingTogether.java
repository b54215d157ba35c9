package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.report.SurveyFirst;

/**
 * Shortens lists of places that wait for a survey: more than {@link #MOST} one after the other are told by their number
 * and the table that has them all, with an order. What is said of all of them stays; what is said of some keeps their
 * names.
 */
final class WaitingTogether {
    /** Most that are named one by one. */
    static final int MOST = 12;

    private static final String NUMBER = ", crossing number unknown";
    private static final String BLOCKED = " (blocked)";

    private final Map<String, Integer> order;
    private final Pattern place;

    WaitingTogether(SurveyFirst first) {
        // Longer ones before those they begin with.
        String names = first.places().stream()
                .flatMap(p -> java.util.stream.Stream.of(p.id() + " " + p.name(), p.id()))
                .sorted(Comparator.comparingInt(String::length).reversed())
                .map(Pattern::quote)
                .collect(Collectors.joining("|"));
        order = first.places().size() <= MOST
                ? Map.of()
                : first.places().stream()
                        .collect(Collectors.toMap(SurveyFirst.PlaceToSurvey::id, SurveyFirst.PlaceToSurvey::rank));
        place = first.places().size() <= MOST
                ? null
                : Pattern.compile("(?<![\\w-])(?:" + names + ")(?:" + NUMBER + "|" + Pattern.quote(BLOCKED)
                        + ")?(?=[,;:.]? |[.]?$)");
    }

    /** How a place is called where there is little room: by its number in the table, where that is long. */
    String shortly(String id) {
        return order.containsKey(id) ? order.get(id).toString() : id;
    }

    /** Whether places are called by their numbers. */
    boolean hasNumbers() {
        return !order.isEmpty();
    }

    /** With every long list of them in a few words. */
    String in(String text) {
        if (place == null) {
            return text;
        }
        StringBuilder told = new StringBuilder();
        List<MatchResult> run = new ArrayList<>();
        int from = 0;
        for (MatchResult next : place.matcher(text).results().toList()) {
            if (!run.isEmpty()
                    && !text.substring(run.get(run.size() - 1).end(), next.start())
                            .matches("[,;] ")) {
                from = close(text, run, from, told);
            }
            run.add(next);
        }
        from = close(text, run, from, told);
        return told.append(text, from, text.length()).toString();
    }

    /** @return up to where the text is told */
    private static int close(String text, List<MatchResult> run, int from, StringBuilder told) {
        if (run.isEmpty()) {
            return from;
        }
        int end = run.get(run.size() - 1).end();
        boolean marked = isMixed(run, BLOCKED) || isMixed(run, NUMBER);
        if (run.size() <= MOST || marked) {
            told.append(text, from, end);
        } else {
            told.append(text, from, run.get(0).start())
                    .append(run.size())
                    .append(" places of the table \"")
                    .append(Catalog.ENGLISH.text(Code.FIRST_SURVEY))
                    .append('"')
                    .append(run.get(0).group().endsWith(NUMBER) ? ", crossing numbers unknown" : "")
                    .append(run.get(0).group().endsWith(BLOCKED) ? " (all blocked)" : "");
        }
        run.clear();
        return end;
    }

    private static boolean isMixed(List<MatchResult> run, String mark) {
        Predicate<MatchResult> has = m -> m.group().endsWith(mark);
        return run.stream().anyMatch(has) && !run.stream().allMatch(has);
    }

    /** Lines that say the same of one of them each, in one. */
    List<String> lines(List<String> lines, String said) {
        if (place == null) {
            return lines;
        }
        List<String> alike = lines.stream()
                .filter(l -> l.endsWith(said)
                        && place.matcher(l.substring(0, l.length() - said.length()))
                                .matches())
                .toList();
        if (alike.size() <= MOST) {
            return lines;
        }
        List<String> all = new ArrayList<>(lines);
        all.set(
                lines.indexOf(alike.get(0)),
                in(alike.stream()
                                .map(l -> l.substring(0, l.length() - said.length()))
                                .collect(Collectors.joining(", ")))
                        + said);
        all.removeAll(alike);
        return all;
    }
}
