package org.cresthaul.fuzz;

import com.networknt.schema.Schema;
import java.util.Optional;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.units.InputRejected;

/** Rig files: refused with help, or taken, kept to by the schema and judged with sense on a small route. */
public final class RigFuzz {
    private static final Schema SCHEMA = Reading.schema("rig-1");

    private RigFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) {
        Optional<Rig> read = read(data);
        if (read.isPresent() && FuzzedDocument.isJudged(data)) {
            for (LevelStance stance : read.get().stances()) {
                Reading.requireSense(SmallFiles.CROSSING, read.get(), stance);
            }
        }
    }

    /** Reads and judges nothing; empty where it is refused. */
    static Optional<Rig> read(byte[] data) {
        String document = FuzzedDocument.of(data, WeightsTexts.RIG);
        try {
            Rig rig = RigFile.parse(document);
            Reading.requireSound(SCHEMA, document);
            return Optional.of(rig);
        } catch (InputRejected e) {
            FuzzedDocument.requireHelp(e);
            return Optional.empty();
        }
    }
}
