package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.language.Catalog;
import org.cresthaul.paper.Paper.Block;
import org.cresthaul.paper.Paper.Box;
import org.cresthaul.paper.Paper.Cell;
import org.cresthaul.paper.Paper.Column;
import org.cresthaul.paper.Paper.Tone;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.Route;
import org.cresthaul.sheet.Envelope;
import org.cresthaul.sheet.SheetLine;
import org.cresthaul.sheet.Statement;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;

/** Puts a statement on paper. */
final class StatementPaper {
    private final Statement statement;
    private final Route route;
    private final Optional<CreditedMap> map;
    private final UnitSystem units;
    private final WaitingTogether waiting;

    StatementPaper(Statement statement, Route route, Optional<CreditedMap> map) {
        this.statement = statement;
        this.route = route;
        this.map = map;
        waiting = new WaitingTogether(statement.surveyFirst());
        units = statement.units();
    }

    Paper paper() {
        return new Paper(
                statement.banner().drivable() ? "Statement" : "Statement, NOT FOR DRIVING",
                statement.route().name() + ", " + statement.rig().name() + ", stance "
                        + statement.rig().stance(),
                statement.banner().headline(),
                statement.banner().drivable(),
                Imprint.of(statement.version(), statement.route(), statement.rig(), Catalog.ENGLISH),
                Catalog.ENGLISH,
                false,
                List.of(
                        new Paper.Part("Statement for the permit office", first()),
                        new Paper.Part("Evidence: the combination", combination()),
                        new Paper.Part("Evidence: places along the route", places()),
                        new Paper.Part("Evidence: limits of this statement", limits())));
    }

    /** What a clerk decides by, on one page: decision, conditions, roads, crossings, surveys, rig, load, map. */
    private List<Block> first() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Text(
                statement.banner().drivable() ? Tone.STRONG : Tone.ALERT,
                "Decision: " + statement.banner().outcome() + "."));
        List<String> blocked = statement.hazards().stream()
                .filter(Statement.HazardEntry::blocked)
                .map(h -> h.verdict() + ": " + h.id() + " " + h.name())
                .toList();
        if (!blocked.isEmpty()) {
            blocks.add(new Paper.Heading(3, "Blocked at"));
            together(blocked).forEach(l -> blocks.add(new Paper.Item(Box.NONE, waiting.in(l))));
        }
        blocks.add(new Paper.Heading(3, "Conditions"));
        List<String> conditions = Stream.concat(
                        together(statement.conditions().stream()
                                        .map(Statement.Row::label)
                                        .toList())
                                .stream(),
                        ofPassages())
                .toList();
        (conditions.isEmpty() ? List.of("none") : conditions)
                .forEach(l -> blocks.add(new Paper.Item(Box.NONE, waiting.in(l))));
        blocks.add(new Paper.Table("", List.of(new Column("", 1.6, false), new Column("", 6, false)), summary()));
        blocks.add(StatementMap.of(statement, route, map, waiting, units));
        statement.wording().forEach(w -> blocks.add(new Paper.Text(Tone.SMALL, w)));
        return blocks;
    }

    /** The haul at a glance: where, what, how large. */
    private List<List<Cell>> summary() {
        List<List<Cell>> rows = new ArrayList<>();
        statement.identity().stream().limit(1).forEach(r -> rows.add(cells(r)));
        rows.add(List.of(
                new Cell("Roads"),
                new Cell(statement.route().name() + ". "
                        + statement.roads().stream()
                                .map(r -> r.label() + " " + r.value().text())
                                .collect(Collectors.joining("; "))
                        + ".")));
        rows.add(List.of(
                new Cell("Rail crossings"),
                new Cell(
                        statement.crossings().isEmpty()
                                ? "none on the plan"
                                : waiting.in(statement.crossings().stream()
                                                .map(r -> r.label() + ", "
                                                        + r.value().text().split(";", 2)[0])
                                                .collect(Collectors.joining("; "))
                                        + "."))));
        statement
                .surveys()
                .forEach(r -> rows.add(List.of(
                        new Cell("Survey, " + r.label()),
                        new Cell(waiting.in(r.value().text())))));
        rows.add(List.of(
                new Cell("Rig"),
                new Cell(statement.rig().name() + ", stance " + statement.rig().stance())));
        List<Statement.Row> told = statement.identity().stream()
                .skip(1)
                .filter(r -> r.value() != null)
                .toList();
        if (!told.isEmpty()) {
            rows.add(List.of(
                    new Cell("Vehicles, load, tires"),
                    new Cell(told.stream()
                                    .map(r -> r.label().split(",")[0] + ": "
                                            + r.value().text())
                                    .collect(Collectors.joining("; "))
                            + ".")));
        }
        statement.identity().stream().skip(1).filter(r -> r.value() == null).forEach(r -> rows.add(cells(r)));
        RoundedFigures figures = new RoundedFigures(units);
        rows.add(each("Length", e -> figures.distance(e.lengthM())));
        rows.add(each("Width", e -> e.widthM() == null ? "unknown" : figures.required(e.widthM())));
        rows.add(each(
                "Height",
                e -> figures.required(e.heightM())
                        + (e.raisedHeightM() == null ? "" : ", raised " + figures.required(e.raisedHeightM()))));
        rows.add(each("Gross weight", e -> e.grossKg() == null ? "unknown" : figures.weight(e.grossKg())));
        return rows;
    }

    /** "what: where" of a list, with every place of the same what in one line. */
    private static List<String> together(List<String> lines) {
        Map<String, String> places = new LinkedHashMap<>();
        lines.forEach(l -> places.merge(
                l.substring(0, l.indexOf(": ")), l.substring(l.indexOf(": ") + 2), (a, b) -> a + "; " + b));
        return places.entrySet().stream()
                .map(e -> e.getKey() + ": " + e.getValue())
                .toList();
    }

    /**
     * How places are passed: each rule with its places, those of one kind in one line: "At 3 mph at most: C1, H02".
     * What people settle stands before it, what blocks above.
     */
    private Stream<String> ofPassages() {
        Set<String> settledByPeople =
                statement.conditions().stream().map(c -> c.value().text()).collect(Collectors.toSet());
        Map<Object, Map<String, Set<String>>> kinds = new LinkedHashMap<>();
        statement.hazards().stream()
                .filter(h -> !h.blocked())
                .forEach(h -> h.conditions().stream()
                        .filter(c -> !settledByPeople.contains(c.text()))
                        .forEach(c -> kinds.computeIfAbsent(
                                        c.code() == null ? c.text() : (Object) c.code(), k -> new LinkedHashMap<>())
                                .computeIfAbsent(c.text().replaceAll("\\.$", ""), t -> new LinkedHashSet<>())
                                .add(h.id())));
        return kinds.values().stream()
                .map(rules -> rules.entrySet().stream()
                                .map(e -> e.getKey() + ": " + String.join(", ", e.getValue()))
                                .collect(Collectors.joining(". "))
                        + ".");
    }

    /** A figure of every set-up, told once where it is the same: "83 ft 3 in (A, B), 77 ft 9 in (C, D)". */
    private List<Cell> each(String label, Function<Envelope, String> figure) {
        Map<String, String> letters = new LinkedHashMap<>();
        statement.sideViews().forEach(e -> letters.merge(figure.apply(e), e.letter(), (a, b) -> a + ", " + b));
        return List.of(
                new Cell(label),
                new Cell(
                        letters.size() == 1
                                ? letters.keySet().iterator().next()
                                : letters.entrySet().stream()
                                        .map(e -> e.getKey() + " (set-up " + e.getValue() + ")")
                                        .collect(Collectors.joining("; "))));
    }

    private static List<Cell> cells(Statement.Row row) {
        return List.of(
                new Cell(row.label()),
                new Cell(
                        row.value() == null
                                ? "______________________________"
                                : row.value().text()));
    }

    private List<Block> combination() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Heading(2, "Envelope, as declared"));
        blocks.add(rows(statement.envelope(), 3, 5));
        statement
                .sideViews()
                .forEach(e -> blocks.add(new Paper.Picture(
                        EnvelopeDrawing.of(e, units),
                        "Set-up " + e.letter() + ": " + e.label() + ", on level ground.")));
        blocks.add(new Paper.Heading(2, "Axle loads, computed from the declared weights"));
        for (Statement.AxleTable table : statement.axles()) {
            List<Block> kept = new ArrayList<>();
            if (table.rows().isEmpty()) {
                kept.add(new Paper.Text(Tone.STRONG, "Set-up " + table.letter() + ": " + table.label()));
            } else {
                kept.add(new Paper.Table(
                        "Set-up " + table.letter() + ": " + table.label(),
                        List.of(
                                new Column("Axle", 2.4, false),
                                new Column("Tires", 2.6, false),
                                new Column("Behind the one ahead", 2.4, true),
                                new Column("Load", 1.8, true),
                                new Column("", 0.3, false),
                                new Column("Limit applied", 4.4, false),
                                new Column("Group", 3.2, false)),
                        table.rows().stream()
                                .map(r -> List.of(
                                        new Cell(r.axle()),
                                        new Cell(r.tires() == null ? "" : r.tires()),
                                        new Cell(
                                                r.behind() == null
                                                        ? ""
                                                        : r.behind().text()),
                                        new Cell(r.load().text()),
                                        new Cell(""),
                                        new Cell(r.limit().text()),
                                        new Cell(r.group().text())))
                                .toList()));
            }
            table.total().forEach(t -> kept.add(new Paper.Text(Tone.BODY, t.text())));
            blocks.add(new Paper.Group(kept));
        }
        return blocks;
    }

    private List<Block> places() {
        List<Block> blocks = new ArrayList<>();
        if (!statement.banner().lines().isEmpty()) {
            blocks.add(new Paper.Heading(2, "Conditions and blocked places, in full"));
            statement.banner().lines().forEach(l -> blocks.add(new Paper.Text(Tone.ALERT, waiting.in(l))));
        }
        blocks.add(new Paper.Text(
                Tone.SMALL,
                "Verdicts hold in the set-up named, and with the conditions beside. Margin: what was found and"
                        + " what is needed, uncertainty included."));
        blocks.add(new Paper.Table(
                "",
                List.of(
                        new Column("At", 1.4, false),
                        new Column("Place", 2.5, false),
                        new Column("Set-up", 1, false),
                        new Column("Verdict", 2, false),
                        new Column("Margin", 4.6, false),
                        new Column("Conditions", 4, false)),
                statement.hazards().stream()
                        .filter(h -> !waits(h))
                        .map(h -> List.of(
                                new Cell(h.chainage().text()),
                                new Cell((h.name().endsWith(h.id()) ? "" : h.id() + " ") + h.name() + ", "
                                        + h.kind().spoken()),
                                new Cell(h.letter()),
                                new Cell(Paper.words(h.verdict(), h.blocked(), Catalog.ENGLISH), h.verdict()),
                                new Cell(margins(h)),
                                new Cell(h.conditions().stream()
                                        .map(SheetLine::text)
                                        .distinct()
                                        .collect(Collectors.joining(" ")))))
                        .toList()));
        blocks.addAll(waiting());
        return blocks;
    }

    /** Of a place that nobody surveyed the table of those tells all there is. */
    private boolean waits(Statement.HazardEntry place) {
        return place.verdict() == Verdict.NOT_SURVEYED
                && place.margins().isEmpty()
                && statement.surveyFirst().places().stream().anyMatch(p -> p.id().equals(place.id()));
    }

    private List<Block> waiting() {
        List<Block> blocks = new ArrayList<>();
        List<Statement.HazardEntry> places =
                statement.hazards().stream().filter(this::waits).toList();
        if (!places.isEmpty()) {
            blocks.add(new Paper.Text(
                    Tone.ALERT,
                    waiting.in((places.size() == 1 ? "1 place is" : places.size() + " places are")
                            + " not surveyed and so not clear: "
                            + places.stream()
                                    .map(h -> h.id() + (h.blocked() ? " (blocked)" : ""))
                                    .collect(Collectors.joining(", "))
                            + ".")));
        }
        // What holds at each of them, once with all its places.
        Map<String, List<String>> conditions = new LinkedHashMap<>();
        places.forEach(h -> h.conditions().stream()
                .map(SheetLine::text)
                .distinct()
                .forEach(c ->
                        conditions.computeIfAbsent(c, t -> new ArrayList<>()).add(h.id())));
        conditions.forEach((text, ids) -> blocks.add(new Paper.Item(
                Box.NONE, (ids.size() == places.size() ? "" : waiting.in(String.join(", ", ids) + ": ")) + text)));
        blocks.addAll(SurveyFirstTable.of(statement.surveyFirst(), units, Catalog.ENGLISH));
        return blocks;
    }

    /** Rows that tell the same, once with all their labels. */
    private static List<Statement.Row> alike(List<Statement.Row> rows) {
        Map<String, List<Statement.Row>> same = new LinkedHashMap<>();
        rows.forEach(r ->
                same.computeIfAbsent(r.value().text(), t -> new ArrayList<>()).add(r));
        return same.values().stream()
                .map(rs -> new Statement.Row(
                        rs.stream().map(Statement.Row::label).collect(Collectors.joining(", ")),
                        rs.get(0).value()))
                .toList();
    }

    private static String margins(Statement.HazardEntry place) {
        String gaps = place.margins().isEmpty()
                ? "unknown"
                : place.margins().stream().map(SheetLine::text).collect(Collectors.joining(" "));
        return place.heights() == null ? gaps : place.heights().text() + " " + gaps;
    }

    private List<Block> limits() {
        List<Block> blocks = new ArrayList<>();
        if (!statement.crossings().isEmpty()) {
            blocks.add(new Paper.Heading(2, "Rail crossings in time, from a stop"));
            blocks.add(rows(
                    alike(statement.crossings()).stream()
                            .map(r -> new Statement.Row(waiting.in(r.label()), r.value()))
                            .toList(),
                    2,
                    6));
        }
        if (!statement.robustness().isEmpty()) {
            blocks.add(new Paper.Heading(2, "What is left when what was declared is off"));
            blocks.add(rows(statement.robustness(), 2, 6));
        }
        blocks.add(new Paper.Heading(2, "What was not checked"));
        waiting.lines(statement.notChecked(), ": not surveyed.").forEach(n -> blocks.add(new Paper.Item(Box.NONE, n)));
        blocks.add(new Paper.Heading(2, "Inputs"));
        blocks.addAll(inputs());
        // Who signs has the cautions on the same page.
        List<Block> end = new ArrayList<>();
        end.add(new Paper.Heading(2, "Cautions"));
        statement.cautions().forEach(c -> end.add(new Paper.Text(Tone.SMALL, waiting.in(c.toString()))));
        end.add(new Paper.Heading(2, "Signatures"));
        end.add(new Paper.Text(Tone.SMALL, "Signing confirms this was read; it is no warranty."));
        end.add(new Paper.Signatures(statement.signatures()));
        blocks.add(new Paper.Group(end));
        return blocks;
    }

    /** Short rows beside each other, long ones as wide as the page, in the order in which they are told. */
    private List<Block> inputs() {
        List<Block> blocks = new ArrayList<>();
        List<Statement.Row> alike = new ArrayList<>();
        for (Statement.Row row : statement.inputs()) {
            if (!alike.isEmpty() && isShort(row) != isShort(alike.get(0))) {
                blocks.add(table(alike));
                alike.clear();
            }
            alike.add(row);
        }
        blocks.add(table(alike));
        return blocks;
    }

    private static final int SHORT = 14;

    private static boolean isShort(Statement.Row row) {
        return row.value().text().length() <= SHORT;
    }

    private static Paper.Table table(List<Statement.Row> alike) {
        if (!isShort(alike.get(0))) {
            return rows(alike, 2, 6);
        }
        List<List<Cell>> lines = new ArrayList<>();
        for (int i = 0; i < alike.size(); i += 2) {
            List<Cell> line = new ArrayList<>(cells(alike.get(i)));
            line.addAll(i + 1 < alike.size() ? cells(alike.get(i + 1)) : List.of(new Cell(""), new Cell("")));
            lines.add(line);
        }
        return new Paper.Table(
                "",
                List.of(
                        new Column("", 3, false),
                        new Column("", 1, false),
                        new Column("", 3, false),
                        new Column("", 1, false)),
                lines);
    }

    private static Paper.Table rows(List<Statement.Row> rows, double label, double value) {
        return new Paper.Table(
                "",
                List.of(new Column("", label, false), new Column("", value, false)),
                rows.stream()
                        .map(r ->
                                List.of(new Cell(r.label()), new Cell(r.value().text())))
                        .toList());
    }
}
