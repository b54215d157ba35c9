package org.cresthaul.check;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.cresthaul.units.JsonEdit;

/** The loaded sample rig with lift axles of a list in place of its one. Invented. */
public final class TwoLiftAxles {
    private TwoLiftAxles() {}

    /** @param states the first with the third axle up alone: it gets the chart of the sample's lift axle */
    public static String of(String axles, String states) throws IOException {
        String text = Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"));
        String upChart = "/stances/0/weights/gauges/trailerUp";
        String chart = new ObjectMapper().readTree(text).at(upChart).toString();
        text = JsonEdit.edit(text, upChart, "absent");
        text = JsonEdit.edit(text, "/stances/0/trailer/liftAxle", "absent");
        text = JsonEdit.edit(text, "/stances/0/trailer/liftAxles", axles);
        text = JsonEdit.edit(text, "/stances/0/trailer/liftStates", states);
        return JsonEdit.edit(text, "/stances/0/trailer/liftStates/0/gauge", chart);
    }
}
