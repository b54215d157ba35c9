package org.cresthaul.cli;

import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;

/** One sign for each verdict, where words have no room; {@link #KEY} says them in words. */
final class Marks {
    static final String KEY = "+ clear   ~ tight   X contact, or cannot be ruled out   ? not surveyed, so never clear\n"
            + "% outside weight limits   ! loads not known, so never within limits\n"
            + "^ behind a mark: clear when raised as the report says, at crawling speed only\n";

    private Marks() {}

    static String of(Verdict verdict) {
        return switch (verdict) {
            case CLEAR -> "+";
            case TIGHT -> "~";
            case NOT_SURVEYED -> "?";
            case LOADS_NOT_KNOWN -> "!";
            case OUTSIDE_LIMITS -> "%";
            case CONTACT -> "X";
        };
    }

    static String of(ReportCell cell) {
        return of(cell.verdict()) + (cell.raise() == null ? "" : "^");
    }
}
