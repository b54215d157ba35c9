package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.AxlePlace;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.AxleSteering;
import org.cresthaul.rig.LevelStance;

/** The axles behind the tractor whose wheels turn, by name; each empty where there are none. */
public record TurningWheels(Optional<Sentence> castering, Optional<Sentence> commanded) {
    /** Of a stance, whatever state it runs in. */
    public static TurningWheels of(LevelStance stance) {
        List<Axle> jeeps =
                stance.jeeps().stream().flatMap(j -> j.axles().axles().stream()).toList();
        List<Axle> boosters = stance.boosters().stream()
                .flatMap(b -> b.axles().axles().stream())
                .toList();
        return new TurningWheels(
                named(stance, jeeps, boosters, AxleSteering.Castering.class),
                named(stance, jeeps, boosters, AxleSteering.Commanded.class));
    }

    private static Optional<Sentence> named(
            LevelStance stance, List<Axle> jeeps, List<Axle> boosters, Class<? extends AxleSteering> how) {
        List<Sentence> names = new ArrayList<>();
        add(names, AxleKind.JEEP, jeeps, how);
        add(names, AxleKind.TRAILER, stance.trailer().axles().axles(), how);
        add(names, AxleKind.BOOSTER, boosters, how);
        return names.isEmpty() ? Optional.empty() : Optional.of(Sentence.listed(names, ", "));
    }

    private static void add(List<Sentence> names, AxleKind kind, List<Axle> axles, Class<? extends AxleSteering> how) {
        for (int i = 0; i < axles.size(); i++) {
            if (axles.get(i).steering().filter(how::isInstance).isPresent()) {
                int number = kind == AxleKind.BOOSTER && axles.size() == 1 ? AxlePlace.ONLY : i + 1;
                names.add(new AxlePlace(kind, kind, number, axles.get(i).xM()).label());
            }
        }
    }
}
