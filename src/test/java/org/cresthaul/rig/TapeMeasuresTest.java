package org.cresthaul.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.units.Length;
import org.junit.jupiter.api.Test;

/** What a tape finds is told from the file's figures, so that exchanged figures are seen. */
class TapeMeasuresTest {
    private static final Path FILE = Path.of("sample-routes/lowbed-loaded.rig.json");

    private static Map<String, Double> tape(String text) throws Exception {
        Map<String, Double> tape = new LinkedHashMap<>();
        for (TapeMeasures.Measure m :
                TapeMeasures.of(RigFile.parse(text).stances().get(0))) {
            assertEquals(null, tape.put(m.what(), m.meters()), m.what() + " twice");
        }
        return tape;
    }

    private static double meters(String text) throws Exception {
        return Length.parse(text).meters();
    }

    /** By hand, from the figures in the sample's file. */
    @Test
    void theSamplesDistancesAreThoseOfItsFile() throws Exception {
        Map<String, Double> tape = tape(Files.readString(FILE));
        assertEquals(meters("16 ft 10 in"), tape.get("steer axle to drive axle 1"), 1e-9);
        assertEquals(meters("4 ft 4 in"), tape.get("drive axle 1 to drive axle 2"), 1e-9);
        assertEquals(meters("3 ft 2 in"), tape.get("fifth wheel ahead of drive axle 2"), 1e-9);
        assertEquals(meters("40 ft"), tape.get("kingpin to trailer axle 1"), 1e-9);
        assertEquals(meters("4 ft 6 1/2 in"), tape.get("trailer axle 1 to trailer axle 2"), 1e-9);
        assertEquals(meters("4 ft 6 1/2 in"), tape.get("trailer axle 2 to trailer axle 3"), 1e-9);
        assertEquals(meters("3 ft 11 in"), tape.get("height of the fifth wheel"), 1e-9);
        assertEquals(meters("4 1/4 in"), tape.get("raised tire over the ground"), 1e-9);
        assertTrue(tape.values().stream().allMatch(m -> Double.isFinite(m) && Math.abs(m) < 40), tape.toString());
        assertTrue(tape.size() >= 20, tape.toString());
    }

    /**
     * 44 ft 6 1/2 in written as 46 ft 4 1/2 in is taken by the reader; the tape shows axles at distances that are on no
     * trailer.
     */
    @Test
    void exchangedFiguresShow() throws Exception {
        Map<String, Double> told = tape(Files.readString(FILE).replace("\"-44 ft 6 1/2 in\"", "\"-46 ft 4 1/2 in\""));
        assertEquals(meters("6 ft 4 1/2 in"), told.get("trailer axle 1 to trailer axle 2"), 1e-9);
        assertEquals(meters("2 ft 8 1/2 in"), told.get("trailer axle 2 to trailer axle 3"), 1e-9);
    }
}
