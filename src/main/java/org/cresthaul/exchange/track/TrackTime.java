package org.cresthaul.exchange.track;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/** A point in time as files give it, ISO 8601; without a zone it is taken as UTC, as GPX asks for. */
public final class TrackTime {
    /** "2026-01-02T03:04:05Z" */
    private static final int PLAIN = 20;

    private TrackTime() {}

    /** Seconds since 1970; NaN for what is no time. */
    public static double seconds(String text) {
        try {
            return text.length() == PLAIN && text.charAt(PLAIN - 1) == 'Z' ? plain(text) : any(text);
        } catch (DateTimeException | NumberFormatException e) {
            return Double.NaN;
        }
    }

    /** A track has a hundred thousand of these: the parser of the platform takes a third of the import for them. */
    private static double plain(String text) {
        boolean formed = text.charAt(4) == '-'
                && text.charAt(7) == '-'
                && text.charAt(10) == 'T'
                && text.charAt(13) == ':'
                && text.charAt(16) == ':';
        if (!formed) {
            return any(text);
        }
        int hour = number(text, 11, 13, 23);
        int minute = number(text, 14, 16, 59);
        int second = number(text, 17, 19, 59);
        LocalDate day = LocalDate.of(number(text, 0, 4, 9999), number(text, 5, 7, 12), number(text, 8, 10, 31));
        return day.toEpochDay() * 86_400.0 + hour * 3600 + minute * 60 + second;
    }

    private static int number(String text, int from, int to, int most) {
        int value = 0;
        for (int i = from; i < to; i++) {
            int digit = text.charAt(i) - '0';
            if (digit < 0 || digit > 9) {
                throw new NumberFormatException(text);
            }
            value = 10 * value + digit;
        }
        if (value > most) {
            throw new NumberFormatException(text);
        }
        return value;
    }

    private static double any(String text) {
        boolean zoned = text.endsWith("Z") || text.indexOf('+', 10) > 0 || text.indexOf('-', 10) > 0;
        OffsetDateTime at =
                zoned ? OffsetDateTime.parse(text) : LocalDateTime.parse(text).atOffset(ZoneOffset.UTC);
        return at.toEpochSecond() + at.getNano() * 1e-9;
    }
}
