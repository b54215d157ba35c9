package org.cresthaul.language;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The texts of one language, each with the places of its figures and names in braces. A catalog has every code, or it
 * is not made.
 */
public final class Catalog {
    private static final Pattern PLACE = Pattern.compile("\\{(\\w+)\\}");
    private static final Pattern UNIT = Pattern.compile("(\\S+) (km/h|[a-z]+)(?=[ ,);.]|$)");

    public static final Catalog ENGLISH = read("en", "en-US");
    public static final Catalog SPANISH = read("es", "es-US");
    /** English first: what is said where nobody chose. */
    public static final List<Catalog> ALL = List.of(ENGLISH, SPANISH);

    private final String name;
    private final String tag;
    private final Map<Code, Template> templates;

    /** Texts, and between each two of them a figure or a name. */
    private record Template(List<String> texts, List<String> places) {
        static Template of(String text, UnaryOperator<String> shown) {
            List<String> texts = new ArrayList<>();
            List<String> places = new ArrayList<>();
            Matcher place = PLACE.matcher(text);
            int from = 0;
            while (place.find()) {
                texts.add(shown.apply(text.substring(from, place.start())));
                places.add(place.group(1));
                from = place.end();
            }
            texts.add(shown.apply(text.substring(from)));
            return new Template(List.copyOf(texts), List.copyOf(places));
        }
    }

    private Catalog(String name, String tag, Properties texts, UnaryOperator<String> shown) {
        this.name = name;
        this.tag = tag;
        templates = new EnumMap<>(Code.class);
        for (Code code : Code.values()) {
            String text = texts.getProperty(code.key());
            if (text == null) {
                throw new IllegalArgumentException("the catalog " + name + " has no " + code.key());
            }
            templates.put(code, Template.of(text, shown));
        }
        if (texts.size() != templates.size()) {
            throw new IllegalArgumentException("the catalog " + name + " has keys of no code");
        }
    }

    private static Catalog read(String name, String tag) {
        return new Catalog(name, tag, texts(name), UnaryOperator.identity());
    }

    private static Properties texts(String name) {
        Properties texts = new Properties();
        try (Reader reader = new InputStreamReader(
                Catalog.class.getResourceAsStream("/language/" + name + ".properties"), StandardCharsets.UTF_8)) {
            texts.load(reader);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return texts;
    }

    /** The same with every text changed, for tests: what does not come from it shows. */
    Catalog changed(UnaryOperator<String> shown) {
        return new Catalog(name, tag, texts(name), shown);
    }

    /** By its name in requests and options, "en" or "es". */
    public static Optional<Catalog> find(String name) {
        return ALL.stream().filter(c -> c.name.equals(name)).findFirst();
    }

    /** Of all of them, in their order. */
    public static List<String> names() {
        return ALL.stream().map(Catalog::name).toList();
    }

    /** "en" or "es". */
    public String name() {
        return name;
    }

    /** Of the language, by BCP 47: "en-US". */
    public String tag() {
        return tag;
    }

    /** A text without figures or names. */
    public String text(Code code) {
        return filled(code, place -> {
            throw new IllegalArgumentException(code + " wants " + place);
        });
    }

    /** A text with what stands at its places, asked for in the order in which they stand. */
    public String filled(Code code, Function<String, String> at) {
        Template template = templates.get(code);
        StringBuilder text = new StringBuilder(template.texts.get(0));
        for (int i = 0; i < template.places.size(); i++) {
            text.append(at.apply(template.places.get(i))).append(template.texts.get(i + 1));
        }
        return text.toString();
    }

    /** What a code's places are called. */
    public List<String> places(Code code) {
        return List.copyOf(new TreeSet<>(templates.get(code).places));
    }

    /** The word for one of a closed set of values: of {@code Verdict.CLEAR} the text of {@code VERDICT_CLEAR}. */
    public String word(Enum<?> value) {
        return text(Sentence.codeOf(value));
    }

    /** A figure with its units as this language writes them; numbers are the same in all. */
    public String figure(String english) {
        Matcher unit = UNIT.matcher(english);
        StringBuilder text = new StringBuilder();
        int from = 0;
        while (unit.find()) {
            text.append(english, from, unit.start(2)).append(text(unitOf(unit.group(1), unit.group(2))));
            from = unit.end();
        }
        return text.append(english.substring(from)).toString();
    }

    private static Code unitOf(String number, String unit) {
        if (unit.equals("ft") && number.equals("1")) {
            return Code.UNIT_FT_ONE;
        }
        return Code.valueOf("UNIT_" + unit.replace("/", "").toUpperCase(java.util.Locale.ROOT));
    }
}
