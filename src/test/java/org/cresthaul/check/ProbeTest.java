package org.cresthaul.check;
import java.nio.file.*;
import org.cresthaul.rig.*;
import org.cresthaul.route.*;
import org.junit.jupiter.api.Test;
class ProbeTest {
    @Test void probe() throws Exception {
        Route route = RouteFile.parse(Files.readAllBytes(Path.of("sample-routes/alder-county.route.geojson")));
        var mx = java.lang.management.ManagementFactory.getThreadMXBean();
        for (String r : new String[] {"lowbed-loaded"}) {
        Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/" + r + ".rig.json")));
        for (int rep = 0; rep < 3; rep++)
        for (Hazard hz : route.hazards()) if (hz instanceof RouteCorner c) {
            long t = mx.getCurrentThreadCpuTime();
            var h = CornerFindings.of(c, rig, rig.stances().get(0), Margins.defaults(), CheckedConfiguration.listOf(rig, rig.stances().get(0)));
            System.out.println(h.id() + " " + h.name() + " " + h.notes() + " cpu ms " + (mx.getCurrentThreadCpuTime() - t) / 1e6);
            String last = "";
            if (rep == 2) for (var cc : h.cells()) { String key = cc.configuration().substring(0, cc.configuration().lastIndexOf('/')); if (!key.equals(last)) { last = key;
              var f = cc.corner();
              System.out.println("   " + key + " " + cc.verdict() + " " + (f == null ? "" : String.format("%.3f need %.3f %s %s %s own=%s esc=%b line=R%.1f in%.2f out%.2f a%.2f s%.1f b%.2f wide=%s swing=%s off=%.2f swept=%.2f tail=%.2f front=%.2f steer=%.1f art=%s", f.valueM(), f.requiredM(), f.unit(), f.part(), f.against(), f.ownLanes(), f.escorts(), f.line().radiusM(), f.line().swingInRad(), f.line().swingOutRad(), f.line().offsetInM(), f.line().startM(), f.line().offsetOutM(), f.trailsWideM(), f.pivotSwingM(), f.offtrackingM(), f.sweptWidthM(), f.tailSwingM(), f.frontalSwingM(), Math.toDegrees(f.steerRad()), f.articulationRad())) + " " + (cc.reasons().isEmpty() ? "" : cc.reasons().get(cc.reasons().size() - 1))); } }
        }
        }
    }
}
