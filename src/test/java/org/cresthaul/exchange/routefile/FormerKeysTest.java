package org.cresthaul.exchange.routefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A file written before the keys were spelled the American way is refused, and every refusal names the key of today.
 */
class FormerKeysTest {
    @ParameterizedTest
    @CsvSource({"overTyres, overTires, 3", "tyres, tires, 1"})
    void aRigFileIsToldTheKeyOfToday(String former, String now, int least) {
        refused(former, now, least, problemsOf(() -> RigFile.parse(renamed(WeightsTexts.RIG, former, now))));
    }

    @ParameterizedTest
    @CsvSource({"kerb, curb, 1"})
    void aRouteFileIsToldTheKeyOfToday(String former, String now, int least) {
        refused(former, now, least, problemsOf(() -> RouteFile.parse(renamed(RouteTexts.ROUTE, former, now))));
    }

    /** A road line's name is the surveyor's own word, not a key: it is kept as it was written. */
    @Test
    void theNameOfALineIsTheSurveyorsOwn() throws Exception {
        Route route = RouteFile.parse(RouteTexts.ROUTE.replace("\"center\"", "\"centre\""));
        assertEquals(
                List.of("centre"),
                route.hazards().stream()
                        .filter(h -> h.place().id().equals("H02"))
                        .flatMap(h -> h.lines().stream())
                        .map(line -> line.name())
                        .toList());
    }

    private static String renamed(String file, String former, String now) {
        String renamed = file.replace("\"" + now + "\":", "\"" + former + "\":");
        assertTrue(!renamed.equals(file), now + " stands in the file");
        return renamed;
    }

    private static void refused(String former, String now, int least, List<InputProblem> problems) {
        List<InputProblem> unknown = problems.stream()
                .filter(p -> p.pointer().endsWith("/" + former))
                .toList();
        assertTrue(unknown.size() >= least, problems.toString());
        for (InputProblem problem : unknown) {
            assertEquals("unknown-key", problem.code(), problem.toString());
            assertEquals("Did you mean \"" + now + "\"?", problem.remedy());
        }
    }

    private static List<InputProblem> problemsOf(Executable reading) {
        return assertThrows(InputRejected.class, reading).problems();
    }
}
