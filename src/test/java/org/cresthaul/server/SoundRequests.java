package org.cresthaul.server;

import java.util.LinkedHashMap;
import java.util.Map;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.route.RouteTexts;

/** A sound request for every address that takes a body. */
public final class SoundRequests {
    private SoundRequests() {}

    /** Bodies by address, in a fixed order. */
    public static Map<String, String> byAddress() {
        String files =
                "{\"route\":" + RouteTexts.ROUTE + ",\"rig\":" + WeightsTexts.RIG + ",\"limits\":" + LimitsTexts.LIMITS
                        + ",\"stance\":\"loaded\",\"margins\":{\"ground\":\"2 in\",\"overhead\":\"3 in\",\"side\":\"6 in\"}";
        String plan = ",\"plan\":{\"times\":{\"notch\":\"20 min\"},\"forbid\":[\"up/none/3\"],\"fix\":\"down/none/3\","
                + "\"avoidRaising\":true,\"acceptTight\":[\"H01\"],\"setAside\":[\"H04\"]}";
        Map<String, String> sound = new LinkedHashMap<>();
        sound.put("/api/route", RouteTexts.ROUTE);
        sound.put("/api/check", files + "}");
        sound.put(
                "/api/passage",
                files + ",\"hazard\":\"H01\",\"configuration\":\"down/none/3\",\"line\":\"left\","
                        + "\"leveling\":\"held\",\"frontRaise\":\"1 in\",\"rearRaise\":\"0 in\"}");
        sound.put("/api/corner", files + ",\"hazard\":\"H05\",\"configuration\":\"down/none/3\"}");
        sound.put(
                "/api/loads",
                files + ",\"configuration\":\"down/trailing/3\",\"hazard\":\"H01\",\"piece\":\"wheel loader\","
                        + "\"pieceAt\":\"5 m\",\"regulator\":\"35 psi\",\"readings\":{\"trailer\":\"40 psi\",\"booster\":\"35 psi\"}}");
        sound.put("/api/plan", files + plan + "}");
        sound.put("/api/comparison", files + plan + "}");
        sound.put("/api/combinations", files + plan + "}");
        sound.put("/api/runsheet", files + plan + ",\"form\":\"html\",\"paper\":\"a4\",\"units\":\"metric\"}");
        sound.put("/api/statement", files + plan + ",\"form\":\"pdf\"}");
        return sound;
    }
}
