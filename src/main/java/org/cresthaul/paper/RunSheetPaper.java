package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.cresthaul.paper.Paper.Block;
import org.cresthaul.paper.Paper.Box;
import org.cresthaul.paper.Paper.Cell;
import org.cresthaul.paper.Paper.Column;
import org.cresthaul.paper.Paper.Tone;
import org.cresthaul.plan.AlikeBlocks;
import org.cresthaul.plan.Banner;
import org.cresthaul.plan.CardKind;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.RunSheet;
import org.cresthaul.plan.SheetLine;
import org.cresthaul.plan.StepKind;
import org.cresthaul.route.HazardKind;
import org.cresthaul.units.UnitSystem;

/**
 * Puts a run sheet on paper: first a page for the cab, then the set-up cards, a page for each leg and its places one by
 * one, the cards of how things are done. Without a way through it is short: what blocks, and what would open it.
 */
final class RunSheetPaper {
    private final RunSheet sheet;
    private final SheetPictures pictures;

    RunSheetPaper(RunSheet sheet, SheetPictures pictures) {
        this.sheet = sheet;
        this.pictures = pictures;
    }

    Paper paper() {
        List<Paper.Part> parts =
                sheet.blocking().isEmpty() ? wayThrough() : List.of(new Paper.Part("What blocks", blocked()));
        return new Paper(
                sheet.banner().drivable() ? "Run sheet" : "Draft, NOT FOR DRIVING",
                sheet.route().name() + ", " + sheet.rig().name() + ", stance "
                        + sheet.rig().stance(),
                sheet.banner().headline(),
                sheet.banner().drivable(),
                Imprint.of(sheet.version(), sheet.route(), sheet.rig()),
                true,
                parts);
    }

    private List<Paper.Part> wayThrough() {
        List<Paper.Part> parts = new ArrayList<>();
        parts.add(new Paper.Part("Cab page", cab()));
        List<Block> first = new ArrayList<>(overview());
        first.addAll(cards(sheet.setUps()));
        parts.add(new Paper.Part("Before leaving", List.of(), first));
        sheet.legs().forEach(l -> parts.add(leg(l)));
        parts.add(new Paper.Part(
                "How it is done",
                List.of(new Paper.Text(
                        Tone.SMALL,
                        "Practice of the trade, no result of a computation. The makers' instructions, the carrier's rules and the law take"
                                + " precedence.")),
                cards(sheet.cards())));
        return parts;
    }

    /** What a driver wants in sight: what to do where, and what to do when stuck. */
    private List<Block> cab() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Text(
                Tone.STRONG, sheet.route().name() + ", " + sheet.rig().name() + "."));
        blocks.add(new Paper.Table(
                "",
                List.of(
                        new Column("At", 1.5, false),
                        new Column("Place, landmark", 6, false),
                        new Column("Set-up", 1, false),
                        new Column("Do", 1.6, false),
                        new Column("Verdict", 2.2, false)),
                sheet.legs().stream()
                        .flatMap(l -> l.entries().stream())
                        .filter(e -> e.kind() != HazardKind.LIMITS)
                        .map(this::cabRow)
                        .toList()));
        sheet.cards().stream()
                .filter(c -> c.about() == CardKind.STUCK)
                .findFirst()
                .ifPresent(c ->
                        c.lines().stream().limit(2).forEach(l -> blocks.add(new Paper.Text(Tone.ALERT, l.text()))));
        return blocks;
    }

    private List<Cell> cabRow(RunSheet.Entry e) {
        List<Cell> cells = new ArrayList<>(row(e));
        String letter = sheet.setUps().stream()
                .filter(c -> c.configuration().equals(e.configuration()))
                .findFirst()
                .map(RunSheet.Card::letter)
                .orElse("");
        cells.add(2, new Cell(letter));
        return cells;
    }

    /** A plan with no way through: what blocks and what would open it. */
    private List<Block> blocked() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Text(
                Tone.STRONG,
                sheet.route().name() + ", " + sheet.rig().name() + ", stance "
                        + sheet.rig().stance() + "."));
        blocks.add(new Paper.Text(
                Tone.BODY,
                "The fewest places that must be resolved to open a way. There is nothing to drive from"
                        + " until a plan has a way through."));
        for (AlikeBlocks alike : AlikeBlocks.of(sheet.blocking())) {
            Plan.Block block = alike.first();
            List<Block> kept = new ArrayList<>();
            kept.add(new Paper.Heading(
                    2,
                    alike.blocks().size() == 1
                            ? block.hazard() + "  " + block.name()
                            : alike.blocks().size() + " places of one kind: "
                                    + block.kind().spoken()));
            kept.add(new Paper.Text(
                    Tone.ALERT,
                    Character.toUpperCase(block.why().charAt(0)) + block.why().substring(1) + "."));
            if (alike.blocks().size() > 1) {
                kept.add(new Paper.Text(Tone.BODY, alike.places()));
            }
            block.relaxations()
                    .forEach(r -> kept.add(
                            new Paper.Item(Box.NONE, r.text() + (r.enough() ? "" : " (to be found out)"), null)));
            blocks.add(new Paper.Group(kept));
        }
        List<String> others = sheet.banner().lines().stream()
                .filter(l -> !Banner.isOfBlocks(l, sheet.blocking()))
                .toList();
        if (!others.isEmpty()) {
            blocks.add(new Paper.Heading(2, "Resolve before driving"));
            others.forEach(l -> blocks.add(new Paper.Text(Tone.BODY, l)));
        }
        blocks.addAll(SurveyFirstTable.of(
                sheet.surveyFirst(), sheet.units().equals("metric") ? UnitSystem.METRIC : UnitSystem.US_CUSTOMARY));
        blocks.add(new Paper.Heading(2, "Cautions"));
        // No step stands on this paper, so nothing is cautioned about that only happens at one.
        List<String> changes = sheet.legs().stream()
                .flatMap(l -> l.entries().stream())
                .filter(e -> e.step() == StepKind.CHANGE)
                .map(e -> e.id() + " " + e.name())
                .toList();
        sheet.cautions().stream()
                .filter(c -> changes.stream().noneMatch(c::contains))
                .forEach(c -> blocks.add(new Paper.Text(Tone.SMALL, c)));
        return blocks;
    }

    private List<Block> overview() {
        List<Block> blocks = new ArrayList<>();
        if (!sheet.banner().lines().isEmpty()) {
            blocks.add(new Paper.Heading(2, "Resolve before driving"));
            sheet.banner().lines().forEach(l -> blocks.add(new Paper.Text(Tone.ALERT, l)));
        }
        blocks.add(new Paper.Heading(2, "Before leaving"));
        sheet.first().forEach(l -> blocks.add(item(l)));
        blocks.add(new Paper.Heading(2, "Cautions"));
        sheet.cautions().forEach(c -> blocks.add(new Paper.Text(Tone.SMALL, c)));
        blocks.add(new Paper.Text(Tone.SMALL, Paper.Item.NOTE + "."));
        return blocks;
    }

    /** What is done at an entry, in a word. */
    private static String does(RunSheet.Entry e) {
        return switch (e.step()) {
            case CHANGE, RAISE, LOWER -> e.step().word();
            default -> e.comes().stream().anyMatch(l -> "still raised".equals(l.code())) ? "stay raised" : "";
        };
    }

    private List<Block> cards(List<RunSheet.Card> cards) {
        List<Block> blocks = new ArrayList<>();
        for (RunSheet.Card card : cards) {
            List<Block> kept = new ArrayList<>();
            kept.add(new Paper.Heading(2, card.title()));
            card.lines().forEach(l -> kept.add(item(l)));
            blocks.add(new Paper.Group(kept));
        }
        return blocks;
    }

    /** The page of a leg: where it goes, what is set, its map, and everything that comes, in driving order. */
    private Paper.Part leg(RunSheet.Leg leg) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Text(Tone.BODY, leg.where().text()));
        leg.entering().forEach(l -> blocks.add(new Paper.Text(Tone.STRONG, l.text())));
        if (leg.entries().isEmpty()) {
            blocks.add(new Paper.Text(Tone.BODY, "Nothing to set and no place to pass on this leg."));
        } else {
            blocks.add(new Paper.Table(
                    "",
                    List.of(
                            new Column("At", 1.7, false),
                            new Column("Place, landmark", 7, false),
                            new Column("Do", 2, false),
                            new Column("Verdict", 2.6, false)),
                    leg.entries().stream().map(this::row).toList()));
        }
        List<Block> flow = new ArrayList<>();
        flow.add(pictures.map(leg));
        Set<String> said = new HashSet<>();
        leg.entries().forEach(entry -> entry(entry, flow, said));
        return new Paper.Part("Leg " + leg.number() + ": " + leg.name(), blocks, flow);
    }

    private List<Cell> row(RunSheet.Entry e) {
        String does = does(e);
        return List.of(
                new Cell(e.chainage().text()),
                new Cell(title(e) + (e.landmark() == null ? "" : ", " + e.landmark())),
                new Cell(does),
                e.verdict() == null ? new Cell("") : new Cell(Paper.words(e.verdict(), e.blocked()), e.verdict()));
    }

    /** @param said cautions that stand on this leg already */
    private void entry(RunSheet.Entry e, List<Block> blocks, Set<String> said) {
        List<Block> first = new ArrayList<>();
        boolean minor = isLimit(e) && !e.blocked();
        first.add(new Paper.Milestone(e.chainage().text(), title(e), e.verdict(), e.blocked(), minor));
        if (e.landmark() != null) {
            first.add(new Paper.Text(
                    Tone.STRONG, (e.kind() == null ? "" : kind(e) + ". ") + "Landmark: " + e.landmark() + "."));
        } else if (e.kind() != null && !minor) {
            first.add(new Paper.Text(Tone.STRONG, kind(e) + "."));
        }
        e.comes()
                .forEach(l -> first.add(
                        new Paper.Text(SheetLine.BLOCKED.equals(l.code()) ? Tone.ALERT : Tone.BODY, l.text())));
        List<Block> sections = new ArrayList<>();
        section("Before", e.before(), sections);
        section("Through", e.through(), sections);
        section("After", e.after(), sections);
        section("Gauges", e.gauges(), sections);
        // A place does not stand alone at the foot of a column: what is done first there follows it.
        int together = Math.min(2, sections.size());
        first.addAll(sections.subList(0, together));
        blocks.add(new Paper.Group(first));
        blocks.addAll(sections.subList(together, sections.size()));
        // Once on a leg: what is said at every place is read at none.
        e.cautions().stream().filter(said::add).forEach(c -> blocks.add(new Paper.Text(Tone.SMALL, c)));
        blocks.addAll(pictures.of(e));
    }

    /** What is only kept to: a limit that begins to apply. */
    private static boolean isLimit(RunSheet.Entry e) {
        return e.kind() != null && !e.kind().standsAtPoint();
    }

    private void section(String title, List<SheetLine> lines, List<Block> blocks) {
        if (!lines.isEmpty()) {
            blocks.add(new Paper.Heading(3, title));
            lines.forEach(l -> blocks.add(item(l)));
        }
    }

    private static String title(RunSheet.Entry e) {
        return e.id() == null || e.name().endsWith(e.id()) ? e.name() : e.id() + "  " + e.name();
    }

    private static String kind(RunSheet.Entry e) {
        String words = e.kind().spoken();
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private Paper.Item item(SheetLine line) {
        return new Paper.Item(
                !line.tick() ? Box.NONE : sheet.banner().drivable() ? Box.TICK : Box.BARRED,
                line.text(),
                line.source());
    }
}
