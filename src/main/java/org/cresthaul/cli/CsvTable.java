package org.cresthaul.cli;

import java.util.List;

/** A table as text (RFC 4180). A field that would start a formula in a spreadsheet is led by an apostrophe. */
final class CsvTable {
    private final StringBuilder text = new StringBuilder();

    /** What somebody wrote, as a field. */
    static String written(String text) {
        return !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }

    void line(List<String> fields) {
        for (int i = 0; i < fields.size(); i++) {
            String field = fields.get(i);
            boolean quoted = field.chars().anyMatch(ch -> ch == ',' || ch == '"' || ch == '\n' || ch == '\r');
            text.append(i == 0 ? "" : ",").append(quoted ? '"' + field.replace("\"", "\"\"") + '"' : field);
        }
        text.append("\r\n");
    }

    String text() {
        return text.toString();
    }
}
