package org.cresthaul.cli;

import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.LimitsFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.server.StanceChoice;
import org.cresthaul.units.InputProblem;

/** A route and a rig read from files, to be checked against each other. */
record Question(Route route, Rig rig, LevelStance stance, Inputs inputs) {
    /** @throws Refused with every mistake of both files */
    static Question of(InputFile routeFile, InputFile rigFile, Optional<String> stanceName) throws Refused {
        return of(routeFile, rigFile, stanceName, Optional.empty());
    }

    /** With weight limits of the whole route instead of the route file's. */
    static Question of(
            InputFile routeFile, InputFile rigFile, Optional<String> stanceName, Optional<InputFile> limitsFile)
            throws Refused {
        Mistakes mistakes = new Mistakes();
        Optional<Route> route = routeFile.parse(RouteFile::parse, mistakes);
        Optional<Rig> rig = rigFile.parse(RigFile::parse, mistakes);
        Optional<LevelStance> stance = rig.flatMap(r -> StanceChoice.of(r, stanceName));
        if (rig.isPresent() && stance.isEmpty()) {
            mistakes.add(
                    "--stance",
                    List.of(new InputProblem(
                            StanceChoice.CODE, StanceChoice.message(rig.get(), stanceName), "", StanceChoice.REMEDY)));
        }
        Optional<WeightLimits> limits = limitsFile.flatMap(f -> f.parse(LimitsFile::parse, mistakes));
        mistakes.refuseIfAny();
        Inputs inputs = new Inputs(routeFile.sha256(), rigFile.sha256(), limitsFile.map(InputFile::sha256));
        return new Question(
                limits.map(route.orElseThrow()::withLimits).orElse(route.orElseThrow()),
                rig.orElseThrow(),
                stance.orElseThrow(),
                inputs);
    }

    Haul haul(Margins margins) {
        return new Haul(route, rig, stance, margins);
    }

    Report answer(Margins margins) {
        return RouteCheck.check(haul(margins), inputs);
    }
}
