package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.Identity;
import org.cresthaul.rig.UnitName;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.Hazard;
import org.cresthaul.sheet.Statement.Row;
import org.cresthaul.units.RoundedFigures;

/** What a permit clerk compares with the application before reading on: which roads, which surveys, which vehicles. */
final class ClerkFacts {
    private final Sources sources;
    private final Identity identity;
    private final List<UnitName> leftOff;

    /** @param leftOff units that the files tell of and the combination runs without */
    ClerkFacts(Sources sources, Identity identity, List<UnitName> leftOff) {
        this.sources = sources;
        this.identity = identity;
        this.leftOff = leftOff;
    }

    /** Every leg with where it begins and ends. */
    List<Row> roads() {
        List<Row> rows = new ArrayList<>();
        for (int k = 0; k < sources.plan().route().legs().size(); k++) {
            var leg = sources.plan().route().legs().get(k);
            String at = "plan:/route/legs/" + k;
            rows.add(new Row(
                    leg.name(),
                    sources.say("from ")
                            .chainage(leg.startChainageM(), at + "/startChainageM")
                            .words(" to ")
                            .chainage(leg.endChainageM(), at + "/endChainageM")
                            .plain()));
        }
        return rows;
    }

    /** Every way in which places were surveyed, when, how accurately, and which; last the places nobody surveyed. */
    List<Row> surveys() {
        Map<Uncertainty, List<String>> places = new LinkedHashMap<>();
        List<String> none = new ArrayList<>();
        for (Hazard hazard : sources.route().hazards()) {
            Optional<Uncertainty> survey = hazard.survey();
            if (hazard.isSurveyed() && survey.isPresent()) {
                places.computeIfAbsent(survey.get(), s -> new ArrayList<>())
                        .add(hazard.place().id());
            } else if (!hazard.isSurveyed()) {
                none.add(hazard.place().id());
            }
        }
        List<Row> rows = new ArrayList<>();
        RoundedFigures figures = new RoundedFigures(sources.units());
        places.forEach((survey, ids) -> rows.add(new Row(
                survey.date().map(Object::toString).orElse("date not given"),
                SheetLine.plain(survey.source() + ", within " + figures.required(survey.valueM()) + ": "
                        + String.join(", ", ids)))));
        if (!none.isEmpty()) {
            rows.add(new Row("not surveyed", SheetLine.plain(String.join(", ", none))));
        }
        List<String> reported = sources.route().candidates().stream()
                .filter(c -> c.candidate().state() == Candidate.State.OPEN)
                .map(c -> c.place().id())
                .toList();
        if (!reported.isEmpty()) {
            rows.add(new Row("known by hearsay alone", SheetLine.plain(String.join(", ", reported))));
        }
        return rows;
    }

    /** Permit, vehicles, load, tires: what the files say, and no value where a person fills it in. */
    List<Row> identity() {
        List<Row> rows = new ArrayList<>();
        rows.add(row("Permit number", sources.route().permit()));
        rows.add(row("Tractor, VIN and plate", identity.tractor()));
        if (sources.equipment().hasJeep()) {
            rows.add(row("Jeep, VIN and plate", coupled(identity.jeep(), UnitName.Kind.JEEP)));
        }
        rows.add(row("Trailer, VIN and plate", identity.trailer()));
        if (sources.equipment().hasBooster()) {
            rows.add(row("Booster, VIN and plate", coupled(identity.booster(), UnitName.Kind.BOOSTER)));
        }
        if (sources.equipment().isLoaded()) {
            rows.add(row("Load, make and serial", identity.load()));
        }
        List<String> tires = Stream.of(AxleKind.values())
                .filter(k -> identity.tires().containsKey(k))
                .filter(k -> k != AxleKind.JEEP || sources.equipment().hasJeep())
                .map(k -> k.word() + " " + identity.tires().get(k))
                .toList();
        rows.add(row(
                "Tires, size and rating", tires.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", tires))));
        return rows;
    }

    /** The file has one text for all jeeps, and one for all boosters: which of them are not there is said behind it. */
    private Optional<String> coupled(Optional<String> all, UnitName.Kind kind) {
        List<String> off = leftOff.stream()
                .filter(u -> u.kind() == kind)
                .map(UnitName::told)
                .toList();
        return off.isEmpty()
                ? all
                : all.map(a -> a + "; of these, " + String.join(" and ", off) + (off.size() == 1 ? " is" : " are")
                        + " left off");
    }

    /** Of the axles of a kind, as the rig file tells them; null where it does not. */
    String tires(AxleKind kind) {
        return identity.tires().get(kind);
    }

    private static Row row(String label, Optional<String> value) {
        return new Row(label, value.map(SheetLine::plain).orElse(null));
    }
}
