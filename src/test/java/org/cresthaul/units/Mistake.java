package org.cresthaul.units;

import java.util.List;

/**
 * One mistake put into a sound document.
 *
 * @param situation in words
 * @param pointer where the change is made
 * @param value JSON put there, or "absent"
 * @param code of the problem expected
 * @param at pointer of the problem expected
 * @param shape whether the JSON Schema finds it as well; it does not compare one field with another
 */
public record Mistake(String situation, String pointer, String value, String code, String at, boolean shape) {
    /** One row of a table: situation | pointer | value | code | at | shape or sense. */
    public static Mistake of(String row) {
        String[] cells = row.split("\\|", -1);
        if (cells.length != 6) {
            throw new IllegalArgumentException("six cells: " + row);
        }
        for (int i = 0; i < cells.length; i++) {
            cells[i] = cells[i].strip();
        }
        if (!cells[5].equals("shape") && !cells[5].equals("sense")) {
            throw new IllegalArgumentException("shape or sense: " + row);
        }
        return new Mistake(
                cells[0],
                cells[1],
                cells[2],
                cells[3],
                cells[4].equals("=") ? cells[1] : cells[4],
                cells[5].equals("shape"));
    }

    public String in(String document) {
        return JsonEdit.edit(document, pointer, value);
    }

    /** Whether what a reader says tells it, by its code and at its place. */
    public boolean isToldIn(List<InputProblem> problems) {
        return problems.stream()
                .anyMatch(p -> p.code().equals(code) && p.pointer().equals(at));
    }

    @Override
    public String toString() {
        return situation;
    }
}
