package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.cresthaul.check.TwoLiftAxles;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.language.Catalog;
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

    private static ConfigurationChanges changes() throws Exception {
        String text = TwoLiftAxles.of(
                "[{\"axle\": 2, \"gap\": \"4 in\"}, {\"axle\": 3, \"gap\": \"4 in\"}]",
                "[{\"up\": [3], \"secondaryRise\": \"1 in\"}, {\"up\": [2], \"secondaryRise\": \"1 in\"},"
                        + " {\"up\": [2, 3], \"secondaryRise\": \"2 in\"}]");
        // One axle alone may carry it: what is looked at here is the order, not the loads.
        text = JsonEdit.edit(text, "/stances/0/weights/ratings/axles/trailer", "\"90,000 lb\"");
        return ChangeOrderTest.at(STOP, RigFile.parse(text));
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
        ConfigurationChanges changes = changes();
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
