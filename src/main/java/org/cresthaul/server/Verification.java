package org.cresthaul.server;

import java.util.List;
import org.cresthaul.store.PaperKind;
import org.cresthaul.units.InputRejected;

/**
 * What comes of making a paper again from its record.
 *
 * @param version of the program that issued it, when, and the version that made it again
 * @param identical to the last byte
 * @param differing how many values are not the same, or null where the paper is no JSON
 * @param differences the first of them
 */
record Verification(
        PaperKind paper,
        String version,
        String issued,
        String now,
        boolean identical,
        Integer differing,
        List<Difference> differences) {
    private static final int MOST_LISTED = 40;

    /** A pointer (RFC 6901) into the paper, with what it said and what it says made again. */
    record Difference(String pointer, String then, String again) {}

    /** @throws Refusal when it is no record, or what was asked is no longer taken */
    static Verification of(byte[] record) {
        try {
            PaperRecord.Again again = PaperRecord.parse(record).again();
            List<JsonDifferences.Difference> found = again.then().isEmpty() || again.identical()
                    ? List.of()
                    : JsonDifferences.of(again.then().get(), again.now().orElseThrow());
            return new Verification(
                    again.paper(),
                    again.version(),
                    again.issued(),
                    PaperRecord.now(),
                    again.identical(),
                    again.then().isEmpty() ? null : found.size(),
                    found.stream()
                            .limit(MOST_LISTED)
                            .map(d -> new Difference(d.pointer(), d.first(), d.second()))
                            .toList());
        } catch (InputRejected rejected) {
            throw Refusal.of(rejected.problems());
        }
    }
}
