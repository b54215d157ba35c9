package org.cresthaul.exchange.rigfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.Weights;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Weights in rig files: taken as written, refused with every mistake, and seen by the schema where it can. */
class WeightsFileTest {
    private static final double LB = 0.45359237;
    private static final double PSI = 0.45359237 * 9.80665 / (0.0254 * 0.0254);
    private static final Schema SCHEMA = schema();

    private static Schema schema() {
        try (InputStream text = WeightsFileTest.class.getResourceAsStream("/schema/rig-1.schema.json")) {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(text);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    static Stream<Mistake> mistakes() {
        return WeightsTexts.MISTAKES.stream();
    }

    @Test
    void readsWeightsAsWritten() throws Exception {
        Weights weights =
                RigFile.parse(WeightsTexts.RIG).stances().get(0).weights().orElseThrow();

        assertEquals(0.02, weights.accuracy(), 1e-12);
        assertEquals(19_000 * LB, weights.tractor().massKg(), 1e-9);
        assertEquals(0.0508, weights.pieces().get(0).at().offsetM(), 1e-12);
        assertEquals(-10, weights.pieces().get(0).outline().orElseThrow().rearXM(), 1e-12);
        assertEquals(23_000 * LB, weights.ratings().axleKg().get(AxleKind.DRIVE), 1e-9);
        assertEquals(35 * PSI, weights.regulator().orElseThrow().setPa(), 1e-6);
        assertEquals("3/8 in plate", weights.shims().orElseThrow().fitted());
        // Two springs of 7,045 lb, an arm of 1.36, and 800 lb unsprung (air-spring engineering manual p. 56).
        List<ChartPoints.Point> booster =
                weights.gauges().booster().orElseThrow().points();
        assertEquals((2 * 7_045 * 1.36 + 800) * LB, booster.get(1).loadKg(), 1e-6);
        assertEquals(List.of(), SCHEMA.validate(WeightsTexts.RIG, InputFormat.JSON));
    }

    @Test
    void takesARigWithoutWeights() throws Exception {
        assertTrue(RigFile.parse(RigTexts.RIG).stances().get(0).weights().isEmpty());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mistakes")
    void tellsTheMistakeAndWhereItIs(Mistake mistake) {
        String document = mistake.in(WeightsTexts.RIG);
        InputRejected rejected = assertThrows(InputRejected.class, () -> RigFile.parse(document));

        InputProblem problem = rejected.problems().get(0);
        assertEquals(mistake.code(), problem.code(), problem.toString());
        assertEquals(mistake.at(), problem.pointer(), problem.toString());
        assertEquals(
                mistake.shape(), !SCHEMA.validate(document, InputFormat.JSON).isEmpty());
    }

    @Test
    void aChartThatDoesNotRiseIsNoChart() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new ChartPoints(List.of(new ChartPoints.Point(1, 2), new ChartPoints.Point(2, 2)), 0));
        assertThrows(
                IllegalArgumentException.class,
                () -> new ChartPoints(List.of(new ChartPoints.Point(2, 1), new ChartPoints.Point(2, 2)), 0));
        assertThrows(IllegalArgumentException.class, () -> new ChartPoints(List.of(new ChartPoints.Point(1, 2)), 0));
    }
}
