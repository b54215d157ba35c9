package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.plan.CrossingTime;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.Robustness;
import org.cresthaul.plan.Texts;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.TapeLine;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.route.CrossingTraffic.Warning;
import org.cresthaul.sheet.Statement.AxleRow;
import org.cresthaul.sheet.Statement.AxleTable;
import org.cresthaul.sheet.Statement.HazardEntry;
import org.cresthaul.sheet.Statement.Row;

/** Makes the statement of a plan. */
final class StatementParts {
    static final String LOWERED = "lowered after it";
    static final String STAYS = "stays raised";

    private final Sources sources;
    private final Plan plan;
    private final LevelStance stance;
    private final ClerkFacts facts;

    StatementParts(Sources sources, LevelStance stance, ClerkFacts facts) {
        this.sources = sources;
        this.stance = stance;
        this.facts = facts;
        plan = sources.plan();
    }

    Statement statement() {
        List<Envelope> envelopes = sources.setUps().stream()
                .map(s -> Envelope.of(sources, stance, s))
                .toList();
        return new Statement(
                Statement.FORM,
                plan.version(),
                sources.units(),
                plan.route(),
                plan.rig(),
                Banner.of(plan, sources.catalog()),
                List.of(
                        "This statement tells what was computed from the combination as declared and the route as surveyed,"
                                + " with the files named under Inputs. It is not a warranty, and no survey.",
                        "It supports, and never replaces, the permit, local codes, a qualified survey and the person at the"
                                + " wheel. A place that is not surveyed is not clear."),
                facts.roads(),
                facts.surveys(),
                envelope(envelopes),
                envelopes,
                sources.setUps().stream().map(this::axles).toList(),
                places(),
                plan.conditions().stream()
                        .map(c -> new Row(
                                c.what()
                                        + (c.isOpen()
                                                ? ""
                                                : ", settled by " + c.settled().by() + " on "
                                                        + c.settled().date())
                                        + ": " + c.hazard() + " " + c.name(),
                                SheetLine.plain(c.told().toString())))
                        .toList(),
                NotChecked.of(plan, sources.report(), stance),
                inputs(),
                facts.identity(),
                crossings(),
                robustness(),
                plan.margins(),
                plan.options(),
                List.of("Prepared by", "Carrier", "Received by"),
                plan.cautions(),
                sources.report().surveyFirst());
    }

    private List<Row> envelope(List<Envelope> envelopes) {
        List<Row> rows = new ArrayList<>();
        for (Envelope e : envelopes) {
            rows.add(new Row(
                    "Overall length, set-up " + e.letter(),
                    sources.say()
                            .distance(e.lengthM(), sources.pointer(setUp(e)) + "/lengthM")
                            .plain()));
        }
        rows.add(new Row("Overall width", width(envelopes)));
        for (Envelope e : envelopes) {
            rows.add(new Row(
                    "Overall height, set-up " + e.letter(),
                    sources.say()
                            .required(e.heightM(), "rig:highest point, standing level at this set-up")
                            .plain()));
            if (e.raisedHeightM() != null) {
                rows.add(new Row(
                        "Greatest height while raised, set-up " + e.letter(),
                        sources.say()
                                .required(
                                        e.raisedHeightM(),
                                        "rig:highest point, standing level, raised as far as the plan has it")
                                .plain()));
            }
        }
        for (Plan.SetUp set : sources.setUps()) {
            Optional<Sources.Loads> loads = sources.loads(set);
            rows.add(new Row(
                    "Gross weight, set-up " + sources.letterOf(set),
                    loads.isEmpty()
                            ? SheetLine.plain("unknown: weights are not declared")
                            : sources.say()
                                    .weight(
                                            loads.get().sheet().grossKg(),
                                            loads.get().pointer() + "/grossKg")
                                    .plain()));
        }
        return rows;
    }

    private Plan.SetUp setUp(Envelope e) {
        return sources.setUps().stream()
                .filter(s -> s.configuration().equals(e.configuration()))
                .findFirst()
                .orElseThrow();
    }

    private SheetLine width(List<Envelope> envelopes) {
        return envelopes.isEmpty() || envelopes.get(0).widthM() == null
                ? SheetLine.plain("unknown: widths are not declared")
                : sources.say()
                        .required(envelopes.get(0).widthM(), "rig:widest of tractor, trailer, booster and load")
                        .plain();
    }

    private AxleTable axles(Plan.SetUp set) {
        Optional<Sources.Loads> loads = sources.loads(set);
        if (loads.isEmpty()) {
            return new AxleTable(
                    sources.letterOf(set),
                    set.configuration(),
                    set.label(),
                    List.of(),
                    List.of(SheetLine.plain("Axle loads are unknown: weights are not declared.")));
        }
        LoadSheet sheet = loads.get().sheet();
        String at = loads.get().pointer();
        List<AxleRow> rows = new ArrayList<>();
        for (int i = 0; i < sheet.axles().size(); i++) {
            rows.add(axle(sheet, at, i));
        }
        List<SheetLine> total = new ArrayList<>();
        total.add(gross(sheet, at));
        if (sheet.governing() != null) {
            LoadFinding g = sheet.governing();
            total.add(sources.say("Least left under the limits of the whole route and the ratings: " + g.rule() + ", "
                            + g.axles() + ", ")
                    .weight(g.loadKg(), at + "/governing/loadKg")
                    .words(" against ")
                    .weight(g.limitKg(), at + "/governing/limitKg")
                    .words(", left ")
                    .weightLeft(g.marginKg(), at + "/governing/marginKg")
                    .words(" (" + g.source() + "; " + g.verdict() + ").")
                    .plain());
        }
        return new AxleTable(sources.letterOf(set), set.configuration(), set.label(), rows, total);
    }

    private SheetLine gross(LoadSheet sheet, String at) {
        Say line =
                sources.say("Gross ").weight(sheet.grossKg(), at + "/grossKg").words("; on the fifth wheel");
        for (int i = 0; i < sheet.fifthWheels().size(); i++) {
            LoadSheet.FifthWheel wheel = sheet.fifthWheels().get(i);
            String of = sheet.fifthWheels().size() == 1 ? "" : (i == 0 ? "s: " : ", ") + wheel.unit();
            line = line.words(of + " ").weight(wheel.loadKg(), at + "/fifthWheels/" + i + "/loadKg");
        }
        return line.words(".").plain();
    }

    private AxleRow axle(LoadSheet sheet, String at, int i) {
        LoadSheet.AxleLine a = sheet.axles().get(i);
        SheetLine behind = i == 0
                ? null
                : sources.say()
                        .spacing(
                                sheet.axles().get(i - 1).xM() - a.xM(),
                                "report:difference of " + at.substring(7) + "/axles/" + (i - 1) + "/xM and "
                                        + at.substring(7) + "/axles/" + i + "/xM")
                        .plain();
        SheetLine group = SheetLine.plain("");
        for (int g = 0; g < sheet.groups().size(); g++) {
            LoadSheet.GroupLine line = sheet.groups().get(g);
            if (line.group().equals(a.group())
                    && (i == 0 || !sheet.axles().get(i - 1).group().equals(a.group()))) {
                group = sources.say(line.label() + ", ")
                        .weight(line.loadKg(), at + "/groups/" + g + "/loadKg")
                        .plain();
            }
        }
        return new AxleRow(
                a.label(),
                facts.tires(a.kind()),
                behind,
                sources.say().weight(a.loadKg(), at + "/axles/" + i + "/loadKg").plain(),
                limit(sheet, at, a),
                group);
    }

    /** What an axle's group may carry by the rule that leaves it the least, for each axle. */
    private SheetLine limit(LoadSheet sheet, String at, LoadSheet.AxleLine axle) {
        for (int g = 0; g < sheet.groups().size(); g++) {
            LoadSheet.GroupLine line = sheet.groups().get(g);
            if (line.group().equals(axle.group())
                    && line.finding() != null
                    && !line.finding().least()) {
                return sources.say()
                        .weight(line.finding().limitKg(), at + "/groups/" + g + "/finding/limitKg")
                        .words(" (" + line.finding().rule() + ", "
                                + line.finding().axles() + ", " + line.finding().source() + ")")
                        .plain();
            }
        }
        return SheetLine.plain("none given");
    }

    private List<HazardEntry> places() {
        List<HazardEntry> places = new ArrayList<>();
        for (int i = 0; i < plan.steps().size(); i++) {
            Plan.HazardPassage p = plan.steps().get(i).passage();
            if (p == null) {
                continue;
            }
            String at = "plan:/steps/" + i;
            places.add(new HazardEntry(
                    p.hazard(),
                    p.kind(),
                    p.name(),
                    p.standsAtPoint()
                            ? sources.say()
                                    .chainage(p.chainageM(), at + "/passage/chainageM")
                                    .plain()
                            : sources.say()
                                    .chainage(plan.steps().get(i).chainageM(), at + "/chainageM")
                                    .plain(),
                    sources.letterOf(p.set()),
                    p.set().configuration(),
                    p.verdict(),
                    p.blocked(),
                    Stream.concat(
                                    PassageSheet.margins(sources, p, at + "/passage").stream(),
                                    BridgeSheet.together(sources, p).stream())
                            .toList(),
                    new StructureHeights(sources).line(p).orElse(null),
                    conditions(p, at + "/passage")));
        }
        return places;
    }

    private List<SheetLine> conditions(Plan.HazardPassage p, String at) {
        List<SheetLine> lines = new ArrayList<>();
        if (p.blocked()) {
            plan.blocking().stream().filter(b -> b.hazard().equals(p.hazard())).forEach(b -> {
                lines.add(SheetLine.plain("Blocks: " + b.why() + "."));
                b.relaxations()
                        .forEach(r -> lines.add(
                                SheetLine.plain((r.enough() ? "Would open it: " : "May open it: ") + r.text() + ".")));
            });
        }
        plan.conditions().stream()
                .filter(c -> c.hazard().equals(p.hazard()))
                .map(c -> SheetLine.plain(c.told().toString()))
                .forEach(lines::add);
        if (p.raise() != null) {
            lines.add(sources.say("Raised, at least: front ")
                    .raise(p.raise().frontM(), p.raise().frontEndM(), at + "/raise/frontM")
                    .words(", rear ")
                    .raise(p.raise().rearM(), p.raise().rearEndM(), at + "/raise/rearM")
                    .words(p.lowers() ? "; back on the stops after it." : "; stays raised for the next place.")
                    .plain()
                    .as(SheetTopic.RAISED, p.lowers() ? LOWERED : STAYS));
        }
        if (p.crawls()) {
            lines.add(sources.say("At ")
                    .speed(plan.options().times().crawlMps(), "plan:/options/times/crawlMps")
                    .words(" at most.")
                    .plain()
                    .as(SheetTopic.SPEED));
        }
        if (p.mostMps() != null) {
            lines.add(sources.say("At ")
                    .speedDown(p.mostMps(), at + "/mostMps")
                    .words(" at most, for bounce.")
                    .plain()
                    .as(SheetTopic.SPEED));
        }
        sources.hazard(p.hazard()).ifPresent(f -> {
            if (!f.hazard().surveyed()) {
                lines.add(SheetLine.plain("To be surveyed."));
            }
            f.hazard().limits().forEach(l -> lines.add(SheetLine.plain("Not called clear: " + l + ".")));
            if (f.cell(p.set()).cell().corner() != null
                    && f.cell(p.set()).cell().corner().escorts()
                    && plan.conditions().stream().noneMatch(c -> c.hazard().equals(p.hazard()))) {
                lines.add(SheetLine.plain("Escorts hold the oncoming lane, as the permit says."));
            }
        });
        return lines;
    }

    /** Every crossing by its number, with its times. */
    private List<Row> crossings() {
        List<Row> rows = new ArrayList<>();
        for (int k = 0; k < plan.crossings().size(); k++) {
            CrossingTime c = plan.crossings().get(k);
            String at = "plan:/crossings/" + k;
            Say say = sources.say("crossing number " + (c.crossingNumber() == null ? "unknown" : c.crossingNumber())
                            + "; clears in ")
                    .seconds(c.clearSeconds(), at + "/clearSeconds");
            if (c.warningSeconds() != null) {
                say.words("; least warning ").seconds(c.warningSeconds(), at + "/warningSeconds");
            }
            if (c.warning() == Warning.PASSIVE && c.sightNeededM() != null && c.sightM() != null) {
                say.words("; signs only, see along the track ").distance(c.sightNeededM(), at + "/sightNeededM");
                say.words(", seen ").distance(c.sightM(), at + "/sightM");
            }
            if (c.reserveSeconds() != null) {
                say.words("; reserve ").secondsLeft(c.reserveSeconds(), at + "/reserveSeconds");
            }
            say.words(c.fits() == null ? "; unknown whether that is enough" : c.fits() ? "; enough" : "; NOT ENOUGH");
            say.words("; room needed beyond ").distance(c.storageNeededM(), at + "/storageNeededM");
            say.words(
                    c.storageFits() == null
                            ? ", unknown whether there is that much."
                            : c.storageFits() ? ", available." : ", NOT AVAILABLE.");
            rows.add(new Row(c.hazard() + " " + c.name(), say.plain()));
        }
        return rows;
    }

    /** What is left when what was declared is off, in the robustness table's worst case. */
    private List<Row> robustness() {
        List<Row> rows = new ArrayList<>();
        rows.add(new Row("Least reserve", LeastReserveLine.of(sources)));
        if (plan.robustness() == null) {
            return rows;
        }
        for (int i = 0; i < plan.robustness().rows().size(); i++) {
            Robustness.Row row = plan.robustness().rows().get(i);
            String at = "plan:/robustness/rows/" + i;
            boolean load = row.kind().isWeight();
            Say say = sources.say("as declared ");
            left(say, load, row.spare(), at + "/spare");
            say.words("; everything off together ");
            if (row.worst() == null) {
                say.words("unknown");
            } else {
                left(say, load, row.worst(), at + "/worst");
            }
            rows.add(new Row(
                    row.hazard() + " " + Texts.side(row.kind()),
                    say.words(" (" + row.verdict() + ").").plain()));
        }
        if (plan.robustness().resurvey() != null) {
            rows.add(new Row(
                    "Re-survey that would help most",
                    SheetLine.plain(plan.robustness().resurvey().hazard() + " "
                            + plan.robustness().resurvey().text())));
        }
        return rows;
    }

    private static void left(Say say, boolean load, double left, String from) {
        if (load) {
            say.weightLeft(left, from);
        } else {
            say.gap(left, from);
        }
    }

    private List<Row> inputs() {
        List<Row> rows = new ArrayList<>();
        rows.add(new Row("Route", SheetLine.plain(plan.route().name())));
        rows.add(new Row("Route file, SHA-256", SheetLine.plain(plan.route().sha256())));
        if (plan.route().limitsSha256() != null) {
            rows.add(
                    new Row("Limits file, SHA-256", SheetLine.plain(plan.route().limitsSha256())));
        }
        rows.add(new Row(
                "Rig",
                SheetLine.plain(plan.rig().name() + ", stance " + plan.rig().stance())));
        rows.add(new Row("Rig file, SHA-256", SheetLine.plain(plan.rig().sha256())));
        List<TapeLine> tape = sources.report().tape();
        for (int i = 0; i < tape.size(); i++) {
            rows.add(new Row(
                    "Tape: " + tape.get(i).what(),
                    sources.say()
                            .dimension(tape.get(i).valueM(), "report:/tape/" + i + "/valueM")
                            .plain()));
        }
        rows.add(new Row(
                "Margins beyond uncertainty",
                sources.say("over the ground ")
                        .required(plan.margins().groundM(), "plan:/margins/groundM")
                        .words(", under structures ")
                        .required(plan.margins().overheadM(), "plan:/margins/overheadM")
                        .words(", beside ")
                        .required(plan.margins().sideM(), "plan:/margins/sideM")
                        .words(", between units ")
                        .required(plan.margins().unitM(), "plan:/margins/unitM")
                        .plain()));
        sources.report().loads().limits().stream()
                .filter(l -> l.place() == null)
                .forEach(l -> rows.add(new Row(
                        "Weight limits", SheetLine.plain(l.name() + " (" + l.source() + ", " + l.date() + ")"))));
        rows.addAll(new AskedRows(sources).rows());
        rows.add(new Row("Program", SheetLine.plain("Cresthaul " + plan.version())));
        return rows;
    }
}
