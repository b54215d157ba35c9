package org.cresthaul.server;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.cresthaul.exchange.RouteImport;
import org.cresthaul.exchange.osm.MapProgress;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.units.InputRejected;

/**
 * Imports an invented track again and again for a few seconds while nobody waits: what a fresh program has to load and
 * to compile is there when the first real track comes, which else takes twice as long as the next.
 */
final class ImportRehearsal {
    /** Of the track; they lie {@link #STEP_DEG} apart along the equator. */
    static final int POINTS = 20_000;

    /** About 7 m. */
    static final double STEP_DEG = 1.0 / 16_384;

    private static final long LONG_NS = 3_000_000_000L;

    private ImportRehearsal() {}

    static void run() {
        long from = System.nanoTime();
        while (System.nanoTime() - from < LONG_NS) {
            once();
        }
    }

    /** The answer to one import, as it would be sent. */
    static byte[] once() {
        try {
            RouteImport.Imported imported = RouteImport.of(
                    List.of(TrackFile.parse(track(), "rehearsal.gpx")),
                    new RouteImport.Options("", 0.25, 250, List.of(), List.of(), Optional.empty(), MapProgress.UNTOLD));
            return JsonAnswer.bytes(ImportDesk.Answer.of(new ImportRequest.Made(imported, Optional.empty())));
        } catch (InputRejected e) {
            throw new IllegalStateException("an invented track is sound", e);
        }
    }

    /** It wavers by 1 m, so that its points are not thinned out. */
    private static byte[] track() {
        StringBuilder text = new StringBuilder("<gpx version=\"1.1\"><trk><name>Rehearsal</name><trkseg>\n");
        for (int i = 0; i < POINTS; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "<trkpt lat=\"%.7f\" lon=\"%.7f\"><ele>300.1</ele><time>2026-01-01T%02d:%02d:%02dZ</time></trkpt>%n",
                    i % 2 * 9e-6,
                    i * STEP_DEG,
                    i / 3600,
                    i / 60 % 60,
                    i % 60));
        }
        return text.append("</trkseg></trk></gpx>").toString().getBytes(StandardCharsets.UTF_8);
    }
}
