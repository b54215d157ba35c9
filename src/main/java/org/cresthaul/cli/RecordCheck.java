package org.cresthaul.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.server.JsonDifferences;
import org.cresthaul.server.PaperRecord;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Problems;

/** Makes a paper again from its record and tells whether it is the same. */
final class RecordCheck {
    private final Cresthaul program;

    RecordCheck(Cresthaul program) {
        this.program = program;
    }

    /** @return the exit code */
    int of(InputFile file) throws Refused {
        Mistakes mistakes = new Mistakes();
        PaperRecord.Again again = file.parse(
                        document -> PaperRecord.parse(document).again(), mistakes)
                .orElse(null);
        mistakes.refuseIfAny();
        String versions = "Issued " + again.issued() + " by version " + again.version() + "; made again by version "
                + PaperRecord.now() + ".\n";
        if (again.identical()) {
            program.print(
                    versions + "Identical: made again from its record, the paper is the same to the last byte.\n");
            return ExitCode.CLEAR;
        }
        program.print(versions + differences(again));
        return ExitCode.NOT_CLEAR;
    }

    private static String differences(PaperRecord.Again again) {
        if (again.then().isEmpty()) {
            return "NOT identical: the paper made again is another. Issue it as JSON to see each value that differs.\n";
        }
        List<JsonDifferences.Difference> found =
                JsonDifferences.of(tree(again.then().get()), tree(again.now().orElseThrow()));
        return found.isEmpty()
                ? "NOT identical: the record's paper does not have the hash that the record tells.\n"
                : VerifyCommand.listed(found, "in the record");
    }

    private static JsonNode tree(byte[] document) {
        try {
            Problems none = new Problems();
            JsonNode tree = JsonText.read(document, none);
            none.throwIfAny();
            return tree;
        } catch (InputRejected e) {
            throw new IllegalStateException("a paper reads back", e);
        }
    }
}
