package org.cresthaul.fuzz;

import com.networknt.schema.Schema;
import java.util.Optional;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.exchange.routefile.LimitsFile;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.units.InputRejected;

/** Limits files: refused with help, or taken, kept to by the schema and judged with sense on a bare road. */
public final class LimitsFuzz {
    private static final Schema SCHEMA = Reading.schema("limits-1");

    private LimitsFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) {
        read(data)
                .ifPresent(limits -> Reading.requireSense(
                        SmallFiles.ROAD.withLimits(limits),
                        SmallFiles.WEIGHED,
                        SmallFiles.WEIGHED.stances().get(0)));
    }

    /** Reads and judges nothing; empty where it is refused. */
    static Optional<WeightLimits> read(byte[] data) {
        String document = FuzzedDocument.of(data, LimitsTexts.LIMITS);
        try {
            WeightLimits limits = LimitsFile.parse(document);
            Reading.requireSound(SCHEMA, document);
            return Optional.of(limits);
        } catch (InputRejected e) {
            FuzzedDocument.requireHelp(e);
            return Optional.empty();
        }
    }
}
