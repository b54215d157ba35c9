package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.Inputs;
import org.cresthaul.check.Margins;
import org.cresthaul.check.Report;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.check.StandingLoads;
import org.cresthaul.language.Catalog;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.PlanTimes;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigFile;
import org.cresthaul.route.Leg;
import org.cresthaul.route.Route;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is done at a stop between the states of a trailer whose second and third axle can be up. Times: the defaults, 3
 * min to stop and 3 min for every axle that moves.
 */
class SeveralLiftChangesTest {
    private static final StoppingPlace STOP = PlanCase.stop("P1", 1000, true, 200);

    private static ConfigurationChanges changes(String rating) throws Exception {
        String text = Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"));
        String chart = new ObjectMapper()
                .readTree(text)
                .at("/stances/0/weights/gauges/trailerUp")
                .toString();
        text = JsonEdit.edit(text, "/stances/0/weights/ratings/axles/trailer", "\"" + rating + "\"");
        text = JsonEdit.edit(text, "/stances/0/weights/gauges/trailerUp", "absent");
        text = JsonEdit.edit(text, "/stances/0/trailer/liftAxle", "absent");
        text = JsonEdit.edit(
                text,
                "/stances/0/trailer/liftAxles",
                "[{\"axle\": 2, \"gap\": \"4 in\"}, {\"axle\": 3, \"gap\": \"4 in\"}]");
        text = JsonEdit.edit(
                text,
                "/stances/0/trailer/liftStates",
                "[{\"up\": [3], \"secondaryRise\": \"1 in\", \"gauge\": " + chart
                        + "}, {\"up\": [2], \"secondaryRise\": \"1 in\"}, {\"up\": [2, 3], \"secondaryRise\": \"2 in\"}]");
        Rig rig = RigFile.parse(text);
        LevelStance stance = rig.stances().get(0);
        Route route = new Route(
                "Invented",
                "",
                PlanCase.LINE,
                List.of(new Leg("all", 0, PlanCase.LINE.size() - 1, 0, PlanCase.LINE.lengthM())),
                List.of(),
                List.of(STOP),
                Optional.of(ChangeOrderTest.GENEROUS));
        Report report = RouteCheck.check(route, rig, stance, Margins.defaults(), new Inputs("0", "0"));
        return new ConfigurationChanges(stance, report, PlanTimes.defaults(), new StandingLoads(route, stance));
    }

    private static Plan.SetUp setUp(ConfigurationChanges changes, String key) {
        return changes.setUps().stream()
                .filter(s -> s.configuration().equals(key))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest(name = "{0} to {1}")
    @CsvSource(delimiter = '|', textBlock = """
                    down/none/4   | up-3/none/4   | raise trailer axle 3                            | 6
                    up-3/none/4   | down/none/4   | lower trailer axle 3                            | 6
                    up-3/none/4   | up-2-3/none/4 | raise trailer axle 2                            | 6
                    up-2-3/none/4 | up-3/none/4   | lower trailer axle 2                            | 6
                    down/none/4   | up-2-3/none/4 | raise trailer axles 2, 3                        | 9
                    up-2-3/none/4 | down/none/4   | lower trailer axles 2, 3                        | 9
                    up-3/none/4   | up-2/none/4   | lower trailer axle 3, then raise trailer axle 2 | 9
                    """)
    void onlyWhatDiffersMovesAndNothingComesUpBeforeTheOtherIsDown(String from, String to, String told, long minutes)
            throws Exception {
        ConfigurationChanges changes = changes("90,000 lb");
        Plan.SetUp a = setUp(changes, from);
        Plan.SetUp b = setUp(changes, to);
        assertEquals(
                told,
                String.join(
                        ", then ",
                        changes.actions(a, b, STOP).stream()
                                .map(Plan.Action::text)
                                .map(s -> s.in(Catalog.ENGLISH))
                                .toList()));
        assertEquals(minutes * 60, changes.seconds(a, b, STOP));
    }
}
