package org.cresthaul.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.units.InputRejected;

/**
 * Rig files drawn from all that docs/file-formats.md allows, ends of the ranges as often as what lies between: what no
 * carrier drives, but what a file can say. Every one has been through the reader.
 */
public final class RangeRigs {
    private final RandomGenerator random;

    private RangeRigs(RandomGenerator random) {
        this.random = random;
    }

    /** The text of a rig that the reader takes. */
    public static String text(RandomGenerator random) {
        while (true) {
            String text = new RangeRigs(random).draw();
            if (read(text).isPresent()) {
                return text;
            }
        }
    }

    /** The rig in a text, if the reader takes it. */
    public static Optional<Rig> read(String text) {
        try {
            return Optional.of(RigFile.parse(text));
        } catch (InputRejected e) {
            return Optional.empty();
        }
    }

    /** Anywhere between, but often one of the ends. */
    private double within(double least, double most) {
        return switch (random.nextInt(5)) {
            case 0 -> least;
            case 1 -> most;
            case 2 -> least + (most - least) * Math.pow(random.nextDouble(), 4);
            default -> least + (most - least) * random.nextDouble();
        };
    }

    private static String m(double meters) {
        return String.format(Locale.ROOT, "\"%.4f m\"", meters);
    }

    private static String point(double x, double h) {
        return "{\"x\": " + m(x) + ", \"h\": " + m(h) + "}";
    }

    private double radius() {
        return random.nextBoolean() ? 0.5 : within(0.2, 1.2);
    }

    /** Front to rear, from at most {@code first}. */
    private String axles(List<Double> into, double first, double spread) {
        StringBuilder text = new StringBuilder();
        int n = random.nextInt(3) == 0 ? random.nextInt(1, 13) : random.nextInt(1, 4);
        double x = first - within(0, 2);
        for (int i = 0; i < n; i++) {
            into.add(x);
            text.append(i == 0 ? "" : ", ").append("{\"x\": " + m(x) + ", \"radius\": " + m(radius()) + "}");
            x -= random.nextBoolean() ? 1.4 : 0.01 + within(0, spread);
        }
        return text.toString();
    }

    private String outline(double rear, double front, double lowest, double highest) {
        int n = random.nextInt(4) == 0 ? random.nextInt(2, 60) : random.nextInt(2, 6);
        List<Double> x = new ArrayList<>();
        x.add(rear);
        x.add(front);
        for (int i = 2; i < n; i++) {
            x.add(rear + (front - rear) * random.nextDouble());
        }
        x.sort(null);
        StringBuilder text = new StringBuilder("[");
        for (int i = 0; i < n; i++) {
            text.append(i == 0 ? "" : ", ").append(point(x.get(i), within(lowest, highest)));
        }
        return text.append("]").toString();
    }

    private String draw() {
        double split = random.nextBoolean() ? 0.9 : within(0, 8);
        double lowest = random.nextBoolean() ? Math.min(0.3, split) : 0;
        double highest = random.nextBoolean() ? Math.max(split, 4) : 8;
        List<Double> drive = new ArrayList<>();
        String driveText = axles(drive, -1.5, 8);
        double driveRear = drive.get(drive.size() - 1);
        double wheelH = random.nextBoolean() ? 1.25 : within(0, 2.5);
        double wheelX = -Math.max(0.001, within(0, 1.5 - driveRear));
        List<Double> axles = new ArrayList<>();
        String axleText = axles(axles, -2, random.nextBoolean() ? 2 : 8);
        boolean lift = axles.size() > 1 && random.nextBoolean();
        int valve = random.nextInt(lift ? axles.size() - 1 : axles.size());
        double last = axles.get(axles.size() - 1);
        double deckFront = Math.max(-0.001 - within(0, 40), axles.get(valve) + 1);
        double deckRear = Math.max(-60, deckFront - 0.01 - within(0, 30));
        double up = travel();
        double down = travel();
        double turn = 0.2 * (deckFront - axles.get(valve)) - 1e-4;
        double most = Math.min(turn, random.nextBoolean() ? 0.04 : 0.5);
        int notches = random.nextInt(3) == 0 ? random.nextInt(2, 8) : 1;
        StringBuilder notch = new StringBuilder("{\"name\": \"r\", \"offset\": \"0 m\"}");
        for (int i = 1; i < notches; i++) {
            notch.append(", {\"name\": \"" + i + "\", \"offset\": " + m(most * i / (notches - 1)) + "}");
        }
        if (random.nextBoolean()) {
            notch.insert(0, "{\"name\": \"low\", \"offset\": " + m(-Math.max(0.001, within(0, most))) + "}, ");
        }
        double rise = random.nextBoolean() ? Math.min(0.04, down) : random.nextBoolean() ? down : -up;
        boolean booster = random.nextInt(3) > 0;
        double hingeX = Math.max(-60, random.nextBoolean() ? last - 1 : -Math.max(0.001, within(0, 8 - last)));
        // Underside and topside of a unit end alike.
        double rear = Math.min(last, deckRear);
        double front = within(0, 3);
        double tractorRear = driveRear - within(0, 3);
        double tractorFront = within(0, 3);
        return "{ \"cresthaul\": \"rig/1\", \"name\": \"Anything\", \"note\": \"Invented.\","
                + "\"measurement\": {\"accuracy\": \"10 mm\", \"source\": \"tape\"},"
                + "\"ride\": {\"accuracy\": \"15 mm\", \"source\": \"estimate\"},"
                + "\"notches\": [" + notch + "], \"stances\": [{ \"name\": \"any\", \"tractor\": {"
                + "\"steer\": {\"x\": \"0 m\", \"radius\": " + m(radius()) + "},"
                + "\"drive\": {\"axles\": [" + driveText + "], \"travelUp\": " + m(travel()) + ", \"travelDown\": "
                + m(travel()) + "}, \"fifthWheel\": " + point(Math.max(-60, wheelX), wheelH) + ","
                + "\"underside\": " + outline(tractorRear, tractorFront, lowest, split) + ","
                + "\"topside\": " + outline(tractorRear, tractorFront, split, highest) + "},"
                + "\"trailer\": {\"kingpin\": {\"x\": \"0 m\"}, \"deckFront\": "
                + point(deckFront, within(lowest, highest))
                + ", \"deckRear\": " + point(deckRear, within(lowest, highest)) + ", \"axles\": [" + axleText + "],"
                + "\"travelUp\": " + m(up) + ", \"travelDown\": " + m(down) + ", \"valveAxle\": " + (valve + 1) + ","
                + (lift ? "\"liftAxle\": {\"gap\": " + m(within(0, 1)) + ", \"secondaryRise\": " + m(rise) + "}," : "")
                + "\"hydraulicRaiseLimit\": " + m(Math.min(turn, Math.max(most, within(0, 1))))
                + ", \"manualRaiseLimit\": "
                + m(within(0, down)) + (random.nextInt(3) == 0 ? ", \"deckSag\": " + m(within(0, 0.5)) : "") + ","
                + "\"underside\": " + outline(rear, front, lowest, split) + ","
                + "\"topside\": " + outline(rear, front, split, highest) + ","
                + (random.nextBoolean()
                        ? "\"load\": [{\"name\": \"load\", \"outline\": "
                                + outline(rear, random.nextBoolean() ? deckFront : 5, lowest, highest) + "}],"
                        : "")
                + "\"boosterHinge\": " + point(hingeX, random.nextBoolean() ? 0.8 : within(0, 2.5)) + "}"
                + (booster ? ", \"booster\": " + booster(last, lowest, split, highest) : "")
                + (random.nextBoolean() ? ", \"plan\": " + plan(booster) : "") + "}]}";
    }

    private String plan(boolean booster) {
        return "{\"tractor\": {" + widths() + ", \"steerLimit\": \"40 deg\", \"lockDistance\": \"5 m\"}, \"trailer\": {"
                + widths()
                + ", \"kingpinLimit\": \"85 deg\"}"
                + (booster ? ", \"booster\": {" + widths() + ", \"pivotLimit\": \"35 deg\"}" : "") + "}";
    }

    private String widths() {
        double body = within(0.5, random.nextBoolean() ? 4 : 12);
        return "\"width\": " + m(body) + ", \"overTires\": " + m(random.nextBoolean() ? body : within(0.5, 12));
    }

    private double travel() {
        return switch (random.nextInt(4)) {
            case 0 -> 0;
            case 1 -> 0.08;
            default -> within(0, 0.5);
        };
    }

    private String hinge() {
        return switch (random.nextInt(4)) {
            case 0 -> "\"0 deg\"";
            case 1 -> "\"45 deg\"";
            default -> String.format(Locale.ROOT, "\"%.4f deg\"", within(0, 12));
        };
    }

    private String booster(double last, double lowest, double split, double highest) {
        double axle = -Math.max(0.5, within(0.5, random.nextBoolean() ? 4 : 30));
        double rear = axle - within(0, 2);
        double close = Math.max(-60, last - 0.001 - within(0, 5));
        return "{\"hinge\": {\"x\": \"0 m\"}, \"axle\": {\"x\": " + m(axle) + ", \"radius\": " + m(radius()) + "},"
                + "\"underside\": " + outline(rear, 0, lowest, split) + ","
                + "\"topside\": " + outline(rear, 0, split, highest) + ","
                + "\"states\": [\"none\", \"trailing\"" + (close < last ? ", \"close-coupled\"" : "") + "],"
                + "\"hingeUp\": " + hinge() + ", \"hingeDown\": " + hinge() + ", \"closeCoupledAxle\": {\"x\": "
                + m(close)
                + "}}";
    }
}
