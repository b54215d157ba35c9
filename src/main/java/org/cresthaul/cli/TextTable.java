package org.cresthaul.cli;

import java.util.ArrayList;
import java.util.List;

/** Rows of text in columns just wide enough, all left-aligned. Not for sharing. */
final class TextTable {
    private static final String GAP = "  ";

    private final String indent;
    private final List<List<String>> rows = new ArrayList<>();

    TextTable(String indent) {
        this.indent = indent;
    }

    void add(List<String> row) {
        rows.add(List.copyOf(row));
    }

    void add(String... row) {
        add(List.of(row));
    }

    /** One line for each row, with line breaks. */
    String text() {
        List<Integer> widths = new ArrayList<>();
        for (List<String> row : rows) {
            for (int i = 0; i < row.size(); i++) {
                int width = row.get(i).codePointCount(0, row.get(i).length());
                if (i == widths.size()) {
                    widths.add(width);
                }
                widths.set(i, Math.max(widths.get(i), width));
            }
        }
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder(indent);
            for (int i = 0; i < row.size(); i++) {
                String cell = row.get(i);
                line.append(cell);
                line.append(" ".repeat(widths.get(i) - cell.codePointCount(0, cell.length())))
                        .append(GAP);
            }
            text.append(line.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }
}
