package org.cresthaul.view;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.rig.AxleKind;

/**
 * What is asked about the loads of one configuration.
 *
 * @param configuration key, as in the report
 * @param hazard place whose limits are held against; those of the whole route when empty
 * @param piece which piece of load is moved; the heaviest when empty
 * @param pieceBehindDeckFrontM where its center of gravity is, behind the deck front; where the file has it when empty
 * @param regulatorPa what the booster's regulator is set to; the file's setting when empty
 * @param readingsPa what gauges show, by the axles whose bags they are on: the trailer's or the booster's
 */
public record LoadQuestion(
        String configuration,
        Optional<String> hazard,
        Optional<String> piece,
        OptionalDouble pieceBehindDeckFrontM,
        OptionalDouble regulatorPa,
        Map<AxleKind, Double> readingsPa) {}
