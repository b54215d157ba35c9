package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;

/**
 * A piece of a page that is not parted: marks relative to its upper left corner, in points, y downward.
 *
 * @param keep strips with the same number stay on one page where a page can hold them; zero for none
 * @param withNext whether the next strip must follow on the same page
 * @param header of the table it belongs to, to be repeated on a new page; null for none
 */
record Strip(double heightPt, List<Mark> marks, int keep, boolean withNext, Strip header) {
    Strip {
        marks = List.copyOf(marks);
    }

    Strip(double heightPt, List<Mark> marks) {
        this(heightPt, marks, 0, false, null);
    }

    static Strip space(double heightPt) {
        return new Strip(heightPt, List.of());
    }

    Strip kept(int number) {
        return new Strip(heightPt, marks, number, withNext, header);
    }

    Strip withNext(boolean next) {
        return new Strip(heightPt, marks, keep, next, header);
    }

    Strip under(Strip tableHeader) {
        return new Strip(heightPt, marks, keep, withNext, tableHeader);
    }

    /** The same marks as decoration: not read out again. */
    Strip repeated() {
        return new Strip(heightPt, marks.stream().map(m -> m.tagged(null)).toList(), keep, true, null);
    }

    sealed interface Mark {
        Mark tagged(Tag tag);
    }

    /** Text on its baseline; never wider than {@code boxPt}. */
    record Written(double x, double y, double boxPt, double size, boolean bold, Ink ink, String text, Tag tag)
            implements Mark {
        @Override
        public Mark tagged(Tag other) {
            return new Written(x, y, boxPt, size, bold, ink, text, other);
        }
    }

    /** A drawing with its upper left corner there, {@code scale} points a unit. */
    record Drawn(double x, double y, double scale, Drawing drawing, Tag tag) implements Mark {
        @Override
        public Mark tagged(Tag other) {
            return new Drawn(x, y, scale, drawing, other);
        }
    }

    /**
     * What the marks are, for those who have the page read out: a tree of the standard types of ISO 32000-1, 14.8.4.
     */
    static final class Tag {
        private final String type;
        private final String alt;
        private final List<Tag> kids = new ArrayList<>();

        Tag(String type, String alt) {
            this.type = type;
            this.alt = alt;
        }

        Tag add(String kidType) {
            return add(kidType, null);
        }

        Tag add(String kidType, String kidAlt) {
            Tag kid = new Tag(kidType, kidAlt);
            kids.add(kid);
            return kid;
        }

        String type() {
            return type;
        }

        String alt() {
            return alt;
        }

        List<Tag> kids() {
            return kids;
        }
    }
}
