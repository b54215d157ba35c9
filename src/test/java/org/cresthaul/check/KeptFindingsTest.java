package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListMap;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.geometry.WorkStopped;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Findings that were kept serve again for the very same place, rig and margins and for nothing else: whatever is
 * changed, the report is byte for byte that of a check that keeps nothing.
 */
class KeptFindingsTest {
    private final KeptFindings kept = new KeptFindings();

    /** What was judged anew: by hazard, in how many configurations. */
    private static final class Anew implements CheckFollower {
        final Map<String, Integer> judged = new ConcurrentSkipListMap<>();

        @Override
        public void begins(int places, int configurations) {}

        @Override
        public void judges(String hazard) {
            judged.merge(hazard, 1, Integer::sum);
        }

        @Override
        public void judged(HazardFindings place) {}
    }

    /** What is judged anew; the report is held to a fresh one. */
    private Map<String, Integer> anew(String routeText, String rigText, Margins margins) throws InputRejected {
        return anew(routeText, rigText, margins, true);
    }

    private Map<String, Integer> anew(String routeText, String rigText, Margins margins, boolean compared)
            throws InputRejected {
        Route route = RouteFile.parse(routeText.getBytes(StandardCharsets.UTF_8));
        Rig rig = RigFile.parse(rigText.getBytes(StandardCharsets.UTF_8));
        LevelStance stance = rig.stances().get(0);
        Inputs inputs = new Inputs(routeText, rigText);
        Anew follower = new Anew();
        Report report = RouteCheck.check(new Haul(route, rig, stance, margins), inputs, kept, follower);
        if (compared) {
            Report fresh = RouteCheck.check(new Haul(route, rig, stance, margins), inputs);
            assertEquals(
                    new String(JsonAnswer.bytes(fresh), StandardCharsets.UTF_8),
                    new String(JsonAnswer.bytes(report), StandardCharsets.UTF_8));
        }
        // A bend that nobody surveyed is called by its place on the line, so that a longer line has another.
        follower.judged.keySet().removeIf(id -> id.startsWith("turn-"));
        return new TreeMap<>(follower.judged);
    }

    private Map<String, Integer> anew(String routeText) throws InputRejected {
        return anew(routeText, RigTexts.RIG, Margins.defaults());
    }

    /** The corner takes as long as all others: it has a test of its own. */
    private static final String OPEN = withoutCorner(RouteTexts.ROUTE);

    private static String withoutCorner(String route) {
        String feature = "{ \"type\": \"Feature\"";
        int corner = route.indexOf("\"hazard\": \"corner\"");
        return route.substring(0, route.lastIndexOf(feature, corner)) + route.substring(route.indexOf(feature, corner));
    }

    private static final Set<String> ALL = Set.of("H01", "H02", "H03", "H04");

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            nothing                          | zzz                      | zzz                      |
            a point of one line              | ["-1 m", "0.3 m"]        | ["-1 m", "0.301 m"]      | H01
            what is known of the approach    | "1.5 %", "accuracy"      | "1.6 %", "accuracy"      | H01
            how well it was surveyed         | "10 mm", "source": "level and | "9 mm", "source": "level and | H01
            a phone number                   | 800-555-0100             | 800-555-0101             | H01
            where it lies                    | [-93.095, 44.6]          | [-93.0951, 44.6]         | H01
            the underside of a structure     | 104.2 m                  | 104.3 m                  | H02
            a posted height                  | 14 ft 2 in               | 14 ft 3 in               | H03
            a name                           | Ford                     | Ford lane                | H04
            the route's own note             | Invented for the tests.  | Invented.                |
            the line behind all of them      | [-93.08, 44.62, 250.5]   | [-93.08, 44.62, 250.5], [-93.08, 44.63] |
            the line ahead of all of them    | [-93.1, 44.6]            | [-93.101, 44.6]          | H01 H02 H03 H04
            """)
    void aChangeCostsThePlacesItChanges(String what, String now, String then, String changed) throws InputRejected {
        assertEquals(ALL, anew(OPEN).keySet(), "nothing was kept before");

        assertEquals(!what.equals("nothing"), OPEN.contains(now));
        Set<String> anew = anew(OPEN.replace(now, then)).keySet();

        assertEquals(changed == null ? Set.of() : Set.of(changed.split(" ")), anew, what);
        assertEquals(Set.of(), anew(OPEN).keySet(), "both are kept");
    }

    @Test
    void whatWasKeptForOneRigOrMarginServesNoOther() throws InputRejected {
        anew(OPEN);
        Margins wider = new Margins(0.1, 0.1, 0.1, 0.1, 0.6, 0.02);

        Map<String, Integer> other = anew(OPEN, RigTexts.RIG, wider);
        assertEquals(ALL, other.keySet());
        assertEquals(1, Set.copyOf(other.values()).size(), "each in every configuration: " + other);
        assertEquals(ALL, anew(OPEN, RigTexts.RIG + " ", Margins.defaults()).keySet());
    }

    @Test
    void aCornerIsJudgedAnewWhereItChanges() throws InputRejected {
        for (String[] change : new String[][] {
            {"zzz", "zzz", "H01 H02 H03 H04 H05"},
            {"800-555-0100", "800-555-0101", "H01"},
            {"\"radius\": \"0.1 m\"", "\"radius\": \"0.2 m\"", "H05"}
        }) {
            String route = RouteTexts.ROUTE.replace(change[0], change[1]);
            assertEquals(
                    Set.of(change[2].split(" ")),
                    anew(route, RigTexts.RIG, Margins.defaults(), change[0].equals("zzz"))
                            .keySet(),
                    change[1]);
        }
    }

    @Test
    void noMoreIsKeptThanTwentyThousandCells() throws InputRejected {
        int places = 0;
        Route route = RouteFile.parse(RouteTexts.ROUTE.getBytes(StandardCharsets.UTF_8));
        Rig rig = RigFile.parse(RigTexts.RIG.getBytes(StandardCharsets.UTF_8));
        HazardFindings findings = RouteCheck.check(
                        new Haul(route, rig, rig.stances().get(0), Margins.defaults()), new Inputs("r", "g"))
                .hazards()
                .get(0);
        int most = 20_000 / findings.cells().size();
        for (int i = 0; i < most + 10; i++) {
            kept.of(question(i), () -> findings);
        }
        for (int i = most + 9; i >= 0; i--) {
            boolean[] judged = {false};
            kept.of(question(i), () -> {
                judged[0] = true;
                return findings;
            });
            assertEquals(i < 10, judged[0], "place " + i + " of " + (most + 10));
            places++;
        }
        assertEquals(most + 10, places);
    }

    private static KeptFindings.Question question(int place) {
        return new KeptFindings.Question(place, "rig", "stance", Margins.defaults(), List.of());
    }

    @Test
    void aCheckThatWasStoppedLeavesNothing() throws InputRejected {
        assertThrows(
                WorkStopped.class,
                () -> kept.of(question(1), () -> {
                    throw new WorkStopped();
                }));
        boolean[] judged = {false};
        assertThrows(
                IllegalStateException.class,
                () -> kept.of(question(1), () -> {
                    judged[0] = true;
                    throw new IllegalStateException();
                }));
        assertTrue(judged[0], "judged again");
    }
}
