package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.paper.Paper.Block;
import org.cresthaul.paper.Paper.Box;
import org.cresthaul.paper.Paper.Cell;
import org.cresthaul.paper.Paper.Column;
import org.cresthaul.paper.Paper.Tone;
import org.cresthaul.plan.Plan;
import org.cresthaul.route.HazardKind;
import org.cresthaul.sheet.AlikeBlocks;
import org.cresthaul.sheet.CardKind;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.sheet.SheetLine;
import org.cresthaul.sheet.SheetTopic;

/**
 * Puts a run sheet on paper: first a page for the cab, then the set-up cards, a page for each leg and its places one by
 * one, the cards of how things are done. Without a way through it is short: what blocks, and what would open it.
 */
final class RunSheetPaper {
    private final RunSheet sheet;
    private final SheetPictures pictures;
    private final Catalog catalog;

    RunSheetPaper(RunSheet sheet, SheetPictures pictures) {
        this.sheet = sheet;
        this.pictures = pictures;
        catalog = pictures.catalog();
    }

    Paper paper() {
        List<Paper.Part> parts = sheet.blocking().isEmpty()
                ? wayThrough()
                : List.of(new Paper.Part(text(Code.PAPER_WHAT_BLOCKS), blocked()));
        return new Paper(
                text(sheet.banner().drivable() ? Code.PAPER_RUN_SHEET : Code.PAPER_DRAFT),
                names(Code.PAPER_SUBJECT).with("stance", sheet.rig().stance()).in(catalog),
                sheet.banner().headline(),
                sheet.banner().drivable(),
                Imprint.of(sheet.version(), sheet.route(), sheet.rig(), catalog),
                catalog,
                true,
                parts);
    }

    private String text(Code code) {
        return catalog.text(code);
    }

    private Sentence names(Code code) {
        return Sentence.of(code)
                .with("route", sheet.route().name())
                .with("rig", sheet.rig().name());
    }

    private List<Paper.Part> wayThrough() {
        List<Paper.Part> parts = new ArrayList<>();
        parts.add(new Paper.Part(text(Code.PAPER_CAB), cab()));
        List<Block> first = new ArrayList<>(overview());
        first.addAll(cards(sheet.setUps()));
        parts.add(new Paper.Part(text(Code.PAPER_BEFORE_LEAVING), List.of(), first));
        sheet.legs().forEach(l -> parts.add(leg(l)));
        parts.add(new Paper.Part(
                text(Code.PAPER_HOW),
                List.of(new Paper.Text(Tone.SMALL, text(Code.PAPER_HOW_NOTE))),
                cards(sheet.cards()),
                false));
        return parts;
    }

    /**
     * What a driver tapes to the dash: how long, high and heavy each set-up is; every place and stop with what to do
     * there, structures with their height, crossings with their number; and what to do when stuck.
     */
    private List<Block> cab() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Text(Tone.STRONG, names(Code.PAPER_NAMES).in(catalog)));
        sheet.setUps().forEach(c -> blocks.add(new Paper.Text(Tone.BODY, c.title() + ". " + measures(c))));
        blocks.add(new Paper.Table(
                "",
                List.of(
                        new Column(text(Code.PAPER_AT), 1.5, false),
                        new Column(text(Code.PAPER_PLACE), 6, false),
                        new Column(text(Code.PAPER_SET_UP), 1, false),
                        new Column(text(Code.PAPER_DO), 1.6, false),
                        new Column(text(Code.PAPER_VERDICT), 2.2, false)),
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
        cells.set(1, new Cell(cells.get(1).text() + known(e)));
        String letter = sheet.setUps().stream()
                .filter(c -> c.configuration().equals(e.configuration()))
                .findFirst()
                .map(RunSheet.Card::letter)
                .orElse("");
        cells.add(2, new Cell(letter));
        return cells;
    }

    private static String measures(RunSheet.Card card) {
        return card.lines().stream()
                .filter(l -> l.code() == SheetTopic.MEASURE)
                .map(l -> l.text().strip())
                .collect(Collectors.joining(" "));
    }

    /** A structure's height beside the combination's; a crossing's number, and whom to call. */
    private String known(RunSheet.Entry e) {
        Stream<String> heights =
                e.comes().stream().filter(l -> l.code() == SheetTopic.HEIGHTS).map(SheetLine::text);
        Stream<String> crossing = sheet.crossings().stream()
                .filter(c -> c.hazard().equals(e.id()))
                .flatMap(c -> Stream.of(c.number(), c.phone()))
                .filter(Objects::nonNull);
        return Stream.concat(heights, crossing).map(t -> "; " + t).collect(Collectors.joining());
    }

    /** A plan with no way through: what blocks and what would open it. */
    private List<Block> blocked() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Text(
                Tone.STRONG,
                names(Code.PAPER_NAMES_STANCE)
                        .with("stance", sheet.rig().stance())
                        .in(catalog)));
        blocks.add(new Paper.Text(Tone.BODY, text(Code.PAPER_FEWEST)));
        for (AlikeBlocks alike : AlikeBlocks.of(sheet.blocking())) {
            Plan.Block block = alike.first();
            List<Block> kept = new ArrayList<>();
            Sentence heading = alike.blocks().size() == 1
                    ? Sentence.of(Code.PLACE_TITLE).with("id", block.hazard()).with("name", block.name())
                    : Sentence.of(Code.PLACES_OF_KIND)
                            .with("count", alike.blocks().size())
                            .with("kind", Sentence.word(block.kind()));
            kept.add(new Paper.Heading(2, heading.in(catalog)));
            kept.add(new Paper.Text(
                    Tone.ALERT,
                    Sentence.of(Code.SENTENCE)
                            .with("sentence", block.why().capital())
                            .in(catalog)));
            if (alike.blocks().size() > 1) {
                kept.add(new Paper.Text(Tone.BODY, alike.places().in(catalog)));
            }
            block.relaxations()
                    .forEach(r -> kept.add(new Paper.Item(
                            Box.NONE,
                            (r.enough()
                                            ? r.text()
                                            : Sentence.of(Code.PAPER_FIND_OUT).with("text", r.text()))
                                    .in(catalog))));
            blocks.add(new Paper.Group(kept));
        }
        // The banner names what blocks first, then the conditions.
        List<String> others = sheet.banner().lines().stream()
                .skip(AlikeBlocks.of(sheet.blocking()).size())
                .toList();
        if (!others.isEmpty()) {
            blocks.add(new Paper.Heading(2, text(Code.PAPER_RESOLVE)));
            others.forEach(l -> blocks.add(new Paper.Text(Tone.BODY, l)));
        }
        blocks.addAll(SurveyFirstTable.of(sheet.surveyFirst(), sheet.units(), catalog));
        addCautionsHead(blocks);
        // No step stands on this paper, so nothing is cautioned about that only happens at one.
        sheet.cautions().stream()
                .filter(c -> !RunSheet.isOfChange(c))
                .forEach(c -> blocks.add(new Paper.Text(Tone.SMALL, c.in(catalog))));
        return blocks;
    }

    /** The heading, and under it that the words are translated, where they are. */
    private void addCautionsHead(List<Block> blocks) {
        blocks.add(new Paper.Heading(2, text(Code.PAPER_CAUTIONS)));
        if (!catalog.name().equals(Catalog.ENGLISH.name())) {
            blocks.add(new Paper.Text(Tone.ALERT, text(Code.PAPER_TRANSLATED)));
        }
    }

    private List<Block> overview() {
        List<Block> blocks = new ArrayList<>();
        if (!sheet.banner().lines().isEmpty()) {
            blocks.add(new Paper.Heading(2, text(Code.PAPER_RESOLVE)));
            sheet.banner().lines().forEach(l -> blocks.add(new Paper.Text(Tone.ALERT, l)));
        }
        blocks.add(new Paper.Heading(2, text(Code.PAPER_BEFORE_LEAVING)));
        sheet.first().forEach(l -> blocks.add(item(l)));
        addCautionsHead(blocks);
        sheet.cautions().forEach(c -> blocks.add(new Paper.Text(Tone.SMALL, c.in(catalog))));
        blocks.add(new Paper.Text(
                Tone.SMALL,
                Sentence.of(Code.PAPER_NOTE).with("source", SheetLine.PRACTICE).in(catalog)));
        return blocks;
    }

    /** What is done at an entry, in a word. */
    private String does(RunSheet.Entry e) {
        return switch (e.step()) {
            case CHANGE, RAISE, LOWER -> catalog.word(e.step());
            default ->
                e.comes().stream().anyMatch(l -> l.code() == SheetTopic.STILL_RAISED)
                        ? text(Code.PAPER_STAY_RAISED)
                        : "";
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
            blocks.add(new Paper.Text(Tone.BODY, text(Code.PAPER_NOTHING)));
        } else {
            blocks.add(new Paper.Table(
                    "",
                    List.of(
                            new Column(text(Code.PAPER_AT), 1.7, false),
                            new Column(text(Code.PAPER_PLACE), 7, false),
                            new Column(text(Code.PAPER_DO), 2, false),
                            new Column(text(Code.PAPER_VERDICT), 2.6, false)),
                    leg.entries().stream().map(this::row).toList()));
        }
        List<Block> flow = new ArrayList<>();
        flow.add(pictures.map(leg));
        Set<String> said = new HashSet<>();
        leg.entries().forEach(entry -> entry(entry, flow, said));
        return new Paper.Part(
                Sentence.of(Code.PAPER_LEG)
                        .with("number", leg.number())
                        .with("name", leg.name())
                        .in(catalog),
                blocks,
                flow);
    }

    private List<Cell> row(RunSheet.Entry e) {
        String does = does(e);
        return List.of(
                new Cell(e.chainage().text()),
                new Cell(title(e) + (e.landmark() == null ? "" : ", " + e.landmark())),
                new Cell(does),
                e.verdict() == null
                        ? new Cell("")
                        : new Cell(Paper.words(e.verdict(), e.blocked(), catalog), e.verdict()));
    }

    /** @param said cautions that stand on this leg already */
    private void entry(RunSheet.Entry e, List<Block> blocks, Set<String> said) {
        List<Block> first = new ArrayList<>();
        boolean minor = isLimit(e) && !e.blocked();
        first.add(new Paper.Milestone(e.chainage().text(), title(e), e.verdict(), e.blocked(), minor));
        if (e.landmark() != null) {
            Sentence landmark = e.kind() == null
                    ? Sentence.of(Code.PAPER_LANDMARK)
                    : Sentence.of(Code.PAPER_KIND_LANDMARK).with("kind", kind(e));
            first.add(new Paper.Text(
                    Tone.STRONG, landmark.with("landmark", e.landmark()).in(catalog)));
        } else if (e.kind() != null && !minor) {
            first.add(new Paper.Text(
                    Tone.STRONG,
                    Sentence.of(Code.SENTENCE).with("sentence", kind(e)).in(catalog)));
        }
        e.comes()
                .forEach(l ->
                        first.add(new Paper.Text(l.code() == SheetTopic.BLOCKED ? Tone.ALERT : Tone.BODY, l.text())));
        List<Block> sections = new ArrayList<>();
        section(Code.PAPER_BEFORE, e.before(), sections);
        section(Code.PAPER_THROUGH, e.through(), sections);
        section(Code.PAPER_AFTER, e.after(), sections);
        section(Code.PAPER_GAUGES, e.gauges(), sections);
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

    private void section(Code title, List<SheetLine> lines, List<Block> blocks) {
        if (!lines.isEmpty()) {
            blocks.add(new Paper.Heading(3, text(title)));
            lines.forEach(l -> blocks.add(item(l)));
        }
    }

    private String title(RunSheet.Entry e) {
        return e.id() == null || e.id().equals(Plan.WHOLE_ROUTE) || e.name().endsWith(e.id())
                ? e.name()
                : Sentence.of(Code.PLACE_TITLE)
                        .with("id", e.id())
                        .with("name", e.name())
                        .in(catalog);
    }

    private static Sentence kind(RunSheet.Entry e) {
        return Sentence.word(e.kind()).capital();
    }

    private Paper.Item item(SheetLine line) {
        Box box = !line.tick() ? Box.NONE : sheet.banner().drivable() ? Box.TICK : Box.BARRED;
        return Paper.Item.of(box, line, catalog);
    }
}
