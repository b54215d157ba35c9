package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.cresthaul.paper.Paper.Block;
import org.cresthaul.paper.Paper.Box;
import org.cresthaul.paper.Paper.Cell;
import org.cresthaul.paper.Paper.Column;
import org.cresthaul.paper.Paper.Tone;
import org.cresthaul.plan.SheetLine;
import org.cresthaul.plan.Statement;

/** Puts a statement on paper. */
final class StatementPaper {
    private final Statement statement;

    StatementPaper(Statement statement) {
        this.statement = statement;
    }

    Paper paper() {
        return new Paper(statement.banner().drivable() ? "Statement" : "Statement, NOT FOR DRIVING",
                statement.route().name() + ", " + statement.rig().name() + ", stance " + statement.rig().stance(),
                statement.banner().headline(), statement.banner().drivable(),
                Imprint.of(statement.version(), statement.route(), statement.rig()), false,
                List.of(new Paper.Part("Statement of the combination", combination()),
                        new Paper.Part("Places along the route", places()),
                        new Paper.Part("Limits of this statement", limits())));
    }

    private List<Block> combination() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Text(Tone.STRONG, statement.rig().name() + ", stance " + statement.rig().stance()));
        blocks.add(new Paper.Text(Tone.STRONG, statement.route().name()));
        statement.wording().forEach(w -> blocks.add(new Paper.Text(Tone.BODY, w)));
        if (!statement.banner().lines().isEmpty()) {
            blocks.add(new Paper.Heading(2, "Conditions and blocks"));
            statement.banner().lines().forEach(l -> blocks.add(new Paper.Text(Tone.ALERT, l)));
        }
        blocks.add(new Paper.Heading(2, "To be filled in"));
        blocks.add(new Paper.Table("", List.of(new Column("", 3, false), new Column("", 5, false)),
                statement.identity().stream().map(i -> List.of(new Cell(i), new Cell("________________________________"))).toList()));
        blocks.add(new Paper.Heading(2, "Envelope, as declared"));
        blocks.add(rows(statement.envelope(), 3, 5));
        blocks.add(new Paper.Heading(2, "Axle loads, computed from the declared weights"));
        for (Statement.AxleTable table : statement.axles()) {
            List<Block> kept = new ArrayList<>();
            if (table.rows().isEmpty()) {
                kept.add(new Paper.Text(Tone.STRONG, "Set-up " + table.letter() + ": " + table.label()));
            } else {
                kept.add(new Paper.Table("Set-up " + table.letter() + ": " + table.label(),
                        List.of(new Column("Axle", 3, false), new Column("Behind the one ahead", 2.4, true), new Column("Load", 1.8, true),
                                new Column("", 0.3, false), new Column("Limit applied", 4.4, false),
                                new Column("Group", 3.2, false)),
                        table.rows().stream()
                                .map(r -> List.of(new Cell(r.axle()), new Cell(r.behind() == null ? "" : r.behind().text()),
                                        new Cell(r.load().text()), new Cell(""), new Cell(r.limit().text()), new Cell(r.group().text())))
                                .toList()));
            }
            table.total().forEach(t -> kept.add(new Paper.Text(Tone.BODY, t.text())));
            blocks.add(new Paper.Group(kept));
        }
        return blocks;
    }

    private List<Block> places() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Text(Tone.SMALL, "Verdicts hold in the set-up named, and with the conditions beside. Margin: what was found and"
                + " what is needed, uncertainty included."));
        blocks.add(new Paper.Table("",
                List.of(new Column("At", 1.4, false), new Column("Place", 2.5, false), new Column("Set-up", 1, false),
                        new Column("Verdict", 2, false), new Column("Margin", 3, false), new Column("Conditions", 5.6, false)),
                statement.hazards().stream()
                        .map(h -> List.of(new Cell(h.chainage().text()),
                                new Cell((h.name().endsWith(h.id()) ? "" : h.id() + " ") + h.name() + ", " + h.kind().replace('-', ' ')),
                                new Cell(h.letter()),
                                new Cell(h.blocked() ? "BLOCKED, " + h.verdict() : h.verdict(), h.verdict()),
                                new Cell(margins(h)),
                                new Cell(h.conditions().stream().map(SheetLine::text).distinct().collect(Collectors.joining(" ")))))
                        .toList()));
        return blocks;
    }

    private static String margins(Statement.Place place) {
        String gaps = place.margins().isEmpty()
                ? "unknown"
                : place.margins().stream().map(SheetLine::text).collect(Collectors.joining(" "));
        return place.heights() == null ? gaps : place.heights().text() + " " + gaps;
    }

    private List<Block> limits() {
        List<Block> blocks = new ArrayList<>();
        if (!statement.crossings().isEmpty()) {
            blocks.add(new Paper.Heading(2, "Rail crossings in time, from a stop"));
            blocks.add(rows(statement.crossings(), 2, 6));
        }
        if (!statement.robustness().isEmpty()) {
            blocks.add(new Paper.Heading(2, "What is left when what was declared is off"));
            blocks.add(rows(statement.robustness(), 2, 6));
        }
        blocks.add(new Paper.Heading(2, "What was not checked"));
        statement.notChecked().forEach(n -> blocks.add(new Paper.Item(Box.NONE, n, null)));
        blocks.add(new Paper.Heading(2, "Inputs"));
        blocks.add(rows(statement.inputs(), 2, 6));
        blocks.add(new Paper.Heading(2, "Cautions"));
        statement.cautions().forEach(c -> blocks.add(new Paper.Text(Tone.SMALL, c)));
        blocks.add(new Paper.Heading(2, "Signatures"));
        blocks.add(new Paper.Text(Tone.SMALL, "Signing confirms this was read; it is no warranty."));
        blocks.add(new Paper.Signatures(statement.signatures()));
        return blocks;
    }

    private static Paper.Table rows(List<Statement.Row> rows, double label, double value) {
        return new Paper.Table("", List.of(new Column("", label, false), new Column("", value, false)),
                rows.stream().map(r -> List.of(new Cell(r.label()), new Cell(r.value().text()))).toList());
    }
}
