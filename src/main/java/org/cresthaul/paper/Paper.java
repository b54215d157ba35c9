package org.cresthaul.paper;

import java.util.List;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.report.Verdict;
import org.cresthaul.sheet.SheetLine;

/**
 * A paper before it is put into a form: parts of blocks, of which PDF and HTML are made alike.
 *
 * @param title of the paper
 * @param subject route and rig, beside the title
 * @param headline on top of every page: whether there is anything to drive by
 * @param drivable false when the headline must not be overlooked
 * @param imprint program, version and hashes, at the foot of every page
 * @param catalog in whose language it is
 * @param large whether it is read at arm's length in sunlight rather than at a desk
 */
record Paper(
        String title,
        String subject,
        String headline,
        boolean drivable,
        List<String> imprint,
        Catalog catalog,
        boolean large,
        List<Part> parts) {
    Paper {
        imprint = List.copyOf(imprint);
        parts = List.copyOf(parts);
    }

    /**
     * What begins a new page, or may begin under the part before where that saves one.
     *
     * @param blocks as wide as the page
     * @param flow after them, in two columns on paper, down the left one first: lines short enough to be read at a
     *     glance; a wide picture goes across both
     * @param ownPage whether it begins a new page in any case
     */
    record Part(String title, List<Block> blocks, List<Block> flow, boolean ownPage) {
        Part {
            blocks = List.copyOf(blocks);
            flow = List.copyOf(flow);
        }

        Part(String title, List<Block> blocks, List<Block> flow) {
            this(title, blocks, flow, true);
        }

        Part(String title, List<Block> blocks) {
            this(title, blocks, List.of());
        }
    }

    sealed interface Block {}

    /** @param level 2 for a section, 3 within it */
    record Heading(int level, String text) implements Block {}

    record Text(Tone tone, String text) implements Block {}

    enum Tone {
        BODY,
        STRONG,
        SMALL,
        ALERT
    }

    record Item(Box box, String text) implements Block {
        /** Of what is common practice; a note tells once what it means. */
        static final String MARK = " *";

        /** A line with its source in brackets after the text, where it has one. */
        static Item of(Box box, SheetLine line, Catalog catalog) {
            String source = line.source() == null
                    ? ""
                    : line.restsOnPractice() ? MARK : " (" + line.source().in(catalog) + ")";
            return new Item(box, line.text() + source);
        }

        String shown() {
            return text;
        }
    }

    enum Box {
        /** To be ticked off. */
        TICK,
        /** Would be ticked off if there were anything to drive by. */
        BARRED,
        /** Only to be read. */
        NONE
    }

    /**
     * A place on the road.
     *
     * @param verdict or null
     * @param minor whether nothing is done there: a limit that begins to apply
     */
    record Milestone(String chainage, String title, Verdict verdict, boolean blocked, boolean minor) implements Block {}

    record Table(String caption, List<Column> columns, List<List<Cell>> rows) implements Block {
        Table {
            columns = List.copyOf(columns);
            rows = rows.stream().map(List::copyOf).toList();
            for (List<Cell> row : rows) {
                if (row.size() != columns.size()) {
                    throw new IllegalArgumentException(
                            "a row of " + row.size() + " cells under " + columns.size() + " columns");
                }
            }
        }
    }

    /** @param share of the table's width */
    record Column(String title, double share, boolean right) {}

    /** @param verdict whose symbol leads the text, or null */
    record Cell(String text, Verdict verdict) {
        Cell(String text) {
            this(text, null);
        }
    }

    static String words(Verdict verdict, boolean blocked, Catalog catalog) {
        String word = catalog.word(verdict);
        return blocked ? catalog.filled(Code.PAPER_BLOCKED, at -> word) : word;
    }

    /** @param wide whether it goes across both columns of a flow */
    record Picture(Drawing drawing, String caption, boolean wide) implements Block {
        Picture(Drawing drawing, String caption) {
            this(drawing, caption, false);
        }
    }

    /** Lines to sign on: who. */
    record Signatures(List<String> who) implements Block {
        Signatures {
            who = List.copyOf(who);
        }
    }

    /** What should not be parted by the end of a page. */
    record Group(List<Block> blocks) implements Block {
        Group {
            blocks = List.copyOf(blocks);
        }
    }
}
