package org.cresthaul.route;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Mistake;

/** Sets of weight limits, alone and on the small route, and mistakes people make in them. Invented. */
public final class LimitsTexts {
    private LimitsTexts() {}

    public static final String LIMITS = """
            { "cresthaul": "limits/1", "name": "trial permit", "note": "Invented.", "source": "permit 0", "date": "2026-11-02",
              "gross": "140,000 lb", "axle": "24,000 lb", "steerAxle": "13,000 lb",
              "groups": [{"axles": 2, "weight": "46,000 lb"}, {"axles": 3, "weight": "60,000 lb"}],
              "grossByAxles": [{"axles": 5, "weight": "90,000 lb"}, {"axles": 6, "weight": "110,000 lb"}],
              "spans": [{"name": "tandem", "over": "40 in", "upTo": "96 in", "weight": "46,000 lb"}],
              "bridgeFormula": "federal" }
            """;

    private static final String BRIDGE = """
            {"type": "Feature", "geometry": {"type": "Point", "coordinates": %s},
             "properties": {"hazard": "posted-bridge", "id": "B01", "name": "Mill race",
               "limits": {"source": "sign", "date": "2026-10-01", "gross": "80,000 lb", "axle": "20,000 lb"}}}
            """;

    private static final String STRETCH = """
            {"type": "Feature", "geometry": {"type": "Point", "coordinates": %s},
             "properties": {"hazard": "stretch", "id": "S01", "name": "Thin pavement", "extent": ["-50 m", "200 m"],
               "applies": "instead", "limits": {"source": "county order", "date": "2026-10-01", "axle": "18,000 lb"}}}
            """;

    /** The small route with limits of its own, a posted bridge at feature 0 and a stretch at feature 1. */
    public static final String ROUTE = route();

    private static String route() {
        String point =
                RouteTexts.ROUTE.replaceAll("(?s).*?\"type\": ?\"Point\", ?\"coordinates\": ?(\\[[^]]*\\]).*", "$1");
        String limited = RouteTexts.ROUTE.replaceFirst(
                "\"features\": ?\\[",
                "\"features\": [" + BRIDGE.formatted(point) + "," + STRETCH.formatted(point) + ",");
        return JsonEdit.edit(limited, "/limits", LIMITS.replace("\"cresthaul\": \"limits/1\", ", ""));
    }

    public static final List<Mistake> FILE_MISTAKES = Stream.of(
                    "no format                | /cresthaul | absent | missing | = | shape",
                    "no name                  | /name | absent | missing | = | shape",
                    "no source                | /source | absent | missing | = | shape",
                    "no date                  | /date | absent | missing | = | shape",
                    "a date in words          | /date | \"2 Nov\" | wrong-date | = | shape",
                    "a thirteenth month       | /date | \"2026-13-02\" | wrong-date | = | sense",
                    "a bare weight            | /gross | 140000 | unit-missing | = | shape",
                    "a weight in feet         | /axle | \"24 ft\" | unit-unknown | = | shape",
                    "a weight of nothing      | /axle | \"0 lb\" | out-of-range | = | sense",
                    "groups without an axle   | /axle | absent | missing | = | shape",
                    "a group of no axle       | /groups/0/axles | 0 | wrong-number | = | shape",
                    "a group twice            | /groups/1/axles | 2 | axles-twice | = | sense",
                    "a group without weight   | /groups/1/weight | absent | missing | = | shape",
                    "a span that is a text    | /spans/0 | \"NaN\" | wrong-type | = | shape",
                    "a span turned round      | /spans/0/upTo | \"30 in\" | order | = | sense",
                    "another formula          | /bridgeFormula | \"state\" | unknown-word | = | shape",
                    "an unknown field         | /tridem | \"60,000 lb\" | unknown-key | = | shape")
            .map(Mistake::of)
            .toList();

    public static final List<Mistake> ROUTE_MISTAKES = Stream.of(
                    "limits without a name    | /limits/name | absent | missing | = | shape",
                    "limits of nothing        | P0/limits | {\"source\":\"sign\",\"date\":\"2026-10-01\"} | no-limit | = | shape",
                    "a bridge with a profile  | P0/survey | {\"accuracy\":\"1 cm\",\"source\":\"x\"} | not-judged | = | shape",
                    "a stretch without extent | P1/extent | absent | missing | = | shape",
                    "a stretch of one end     | P1/extent | [\"0 m\"] | wrong-count | = | shape",
                    "a stretch backward      | P1/extent | [\"50 m\", \"-50 m\"] | order | = | sense",
                    "a stretch beyond the road| P1/extent | [\"0 m\", \"90 km\"] | beyond-route | = | sense",
                    "instead of what          | P1/limits | absent | instead-of-nothing | P1/applies | shape",
                    "another way to apply     | P1/applies | \"maybe\" | unknown-word | = | shape",
                    "on a bridge of no length | P0/limits/onBridge | \"60,000 lb\" | no-length | = | shape",
                    "a bridge backward        | P0/extent | [\"20 m\", \"-2 m\"] | order | = | sense",
                    "a term nobody knows      | P0/limits/terms | [\"alone\", \"at night\"] | unknown-word | P0/limits/terms/1 | shape",
                    "a term twice             | P0/limits/terms | [\"alone\", \"alone\"] | term-twice | P0/limits/terms/1 | shape",
                    "terms of a stretch       | P1/limits/terms | [\"alone\"] | unknown-key | = | shape",
                    "a bridge with a soffit   | P0/clearance | \"4 m\" | unknown-key | = | shape")
            .map(row -> Mistake.of(row.replace("P0", "/features/0/properties").replace("P1", "/features/1/properties")))
            .toList();
}
