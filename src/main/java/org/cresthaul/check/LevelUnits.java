package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.cresthaul.report.Margins;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Setting;

/**
 * How near coupled units come to each other standing level in transport, configuration by configuration: what holds at
 * every place, whatever is judged there. Each is reckoned once, when first asked for; safe to share.
 */
final class LevelUnits {
    private final Rig rig;
    private final LevelStance stance;
    private final Margins margins;
    private final Map<Setting, UnitCheck.Judged> judged = new ConcurrentHashMap<>();

    LevelUnits(Rig rig, LevelStance stance, Margins margins) {
        this.rig = rig;
        this.stance = stance;
        this.margins = margins;
    }

    /** A place's cell, never better than its configuration stands level. */
    ReportCell under(ReportCell cell, CheckedConfiguration configuration) {
        UnitCheck.Judged level = judged(configuration);
        return cell.standing(level.verdict(), level.reason());
    }

    Verdict verdict(CheckedConfiguration configuration) {
        return judged(configuration).verdict();
    }

    private UnitCheck.Judged judged(CheckedConfiguration configuration) {
        return judged.computeIfAbsent(
                configuration.transport(),
                s -> UnitCheck.onLevelGround(stance, rig, margins).judge(s));
    }

    /** The same for cells in the order of their configurations. */
    List<ReportCell> under(List<ReportCell> cells, List<CheckedConfiguration> configurations) {
        List<ReportCell> all = new ArrayList<>();
        for (int i = 0; i < cells.size(); i++) {
            all.add(under(cells.get(i), configurations.get(i)));
        }
        return List.copyOf(all);
    }
}
