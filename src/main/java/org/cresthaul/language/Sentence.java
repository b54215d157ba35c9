package org.cresthaul.language;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Something said, before it is said in a language: a code with figures and names. It is compared by them, never by its
 * words; {@link #toString()} is English.
 */
public final class Sentence {
    private final Code code;
    private final Map<String, Object> parts;

    private Sentence(Code code, Map<String, Object> parts) {
        this.code = code;
        this.parts = parts;
    }

    /** A figure as it is read in English, "11 ft 3 in": the units are the catalog's. */
    private record Figure(String english) {}

    private record Listed(List<Sentence> all, String between) {}

    private record Capital(Sentence sentence) {}

    public static Sentence of(Code code) {
        return new Sentence(code, Map.of());
    }

    /** What somebody wrote in a file, or a name: the same in every language. */
    public static Sentence verbatim(String text) {
        return of(Code.VERBATIM).with("text", text);
    }

    /** The word for one of a closed set of values. */
    public static Sentence word(Enum<?> value) {
        return of(codeOf(value));
    }

    static Code codeOf(Enum<?> value) {
        String type = value.getDeclaringClass().getSimpleName().replaceAll("(?<=[a-z])(?=[A-Z])", "_");
        return Code.valueOf(type.toUpperCase(Locale.ROOT) + "_" + value.name());
    }

    /** One after the other, with nothing but punctuation between. */
    public static Sentence listed(List<Sentence> all, String between) {
        return of(Code.VERBATIM).and("text", new Listed(List.copyOf(all), between));
    }

    /** The same with its first letter as at the beginning of a sentence. */
    public Sentence capital() {
        return of(Code.VERBATIM).and("text", new Capital(this));
    }

    /** With a name, as it stands in a file. */
    public Sentence with(String place, String name) {
        return and(place, name);
    }

    public Sentence with(String place, long count) {
        return and(place, Long.toString(count));
    }

    public Sentence with(String place, Sentence part) {
        return and(place, part);
    }

    /** With a figure as English writes it, "11 ft 3 in". */
    public Sentence figure(String place, String english) {
        return and(place, new Figure(english));
    }

    private Sentence and(String place, Object part) {
        Map<String, Object> more = new TreeMap<>(parts);
        more.put(place, Objects.requireNonNull(part, place));
        return new Sentence(code, Map.copyOf(more));
    }

    public Code code() {
        return code;
    }

    public String in(Catalog catalog) {
        return catalog.filled(code, place -> {
            Object part = parts.get(place);
            if (part == null) {
                throw new IllegalArgumentException(code + " wants " + place);
            }
            return shown(part, catalog);
        });
    }

    private static String shown(Object part, Catalog catalog) {
        if (part instanceof Sentence sentence) {
            return sentence.in(catalog);
        }
        if (part instanceof Figure figure) {
            return catalog.figure(figure.english);
        }
        if (part instanceof Listed listed) {
            return listed.all.stream().map(s -> s.in(catalog)).collect(Collectors.joining(listed.between));
        }
        if (part instanceof Capital capital) {
            return Sentence.capital(capital.sentence.in(catalog));
        }
        return (String) part;
    }

    /** A text with its first letter as at the beginning of a sentence. */
    public static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Sentence sentence && code == sentence.code && parts.equals(sentence.parts);
    }

    @Override
    public int hashCode() {
        return Objects.hash(code, parts);
    }

    @Override
    public String toString() {
        return in(Catalog.ENGLISH);
    }
}
