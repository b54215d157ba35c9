package org.cresthaul.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cresthaul.check.StuckOnTracks;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.English;
import org.cresthaul.plan.CrossingTime;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanCase;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoadCase;
import org.cresthaul.plan.StepKind;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Report;
import org.cresthaul.rig.Identity;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.CrossingTraffic;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.Route;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every card and step of both samples, and of 200 random rigs and 200 random plans, held to rules on the data. */
class RunSheetRulesTest {
    private static final int CASES = 200;
    private static final List<SheetTopic> CROSSING_ORDER = List.of(
            SheetTopic.CROSSING_STOP,
            SheetTopic.CROSSING_LOOK,
            SheetTopic.CROSSING_SIGHT,
            SheetTopic.CROSSING_SECOND_TRACK,
            SheetTopic.CROSSING_ROOM);

    @ParameterizedTest
    @CsvSource({
        "sorrel-valley, lowbed-loaded",
        "sorrel-valley, lowbed-empty",
        "alder-county, lowbed-loaded",
        "alder-county, lowbed-empty"
    })
    void samplesKeepTheRules(String route, String rig) throws Exception {
        RoadCase c = RoadCase.sample(route, rig);
        Plan plan = c.plan(PlanOptions.defaults());
        for (UnitSystem units : UnitSystem.values()) {
            RunSheet sheet = RunSheet.of(plan, c.report(), c.route(), c.stance(), units);
            assertRules(plan, c.report(), c.stance(), sheet);
            assertStatement(plan, c.report(), c.route(), c.stance(), sheet, units);
        }
        assertTrue(plan.crossings().size() >= 4);
    }

    /** Stances of every make: with and without load, weights, lift axle, booster, its states, plates by odd names. */
    @Test
    void randomRigsKeepTheRules() {
        SplittableRandom random = new SplittableRandom(12_1);
        int loaded = 0;
        int trailing = 0;
        for (int i = 0; i < CASES; i++) {
            RoadCase c = RoadCase.of(RoadCase.road(RoadCase.bridge("300,000 lb")), rig(random));
            List<ConfigurationVerdict> all = c.report().configurations();
            Plan plan = c.plan(c.keeping(all.get(random.nextInt(all.size())).key()));
            RunSheet sheet = RunSheet.of(plan, c.report(), c.route(), c.stance(), UnitSystem.US_CUSTOMARY);
            assertRules(plan, c.report(), c.stance(), sheet);
            assertStatement(plan, c.report(), c.route(), c.stance(), sheet, UnitSystem.US_CUSTOMARY);
            loaded += c.stance().trailer().load().isEmpty() ? 0 : 1;
            trailing += sheet.setUps().get(0).configuration().contains("/trailing/") ? 1 : 0;
        }
        assertTrue(loaded > 40 && loaded < CASES - 40 && trailing > 20, loaded + " loaded, " + trailing + " trailing");
    }

    private static String rig(SplittableRandom random) {
        boolean weighed = random.nextBoolean();
        String text = weighed ? WeightsTexts.RIG : RigTexts.RIG;
        if (random.nextBoolean()) {
            text = JsonEdit.edit(text, "/stances/0/trailer/liftAxle", "absent");
            if (weighed) {
                text = JsonEdit.edit(text, "/stances/0/weights/gauges/trailerUp", "absent");
            }
        }
        boolean loaded = random.nextBoolean();
        if (!loaded) {
            text = JsonEdit.edit(text, "/stances/0/trailer/load", "absent");
            if (weighed) {
                text = JsonEdit.edit(
                        JsonEdit.edit(text, "/stances/0/weights/pieces", "[]"), "/stances/0/weights/gross", "absent");
            }
        }
        // A name says nothing: "empty" may be loaded.
        text = JsonEdit.edit(text, "/stances/0/name", random.nextBoolean() ? "\"loaded\"" : "\"empty\"");
        if (weighed && random.nextBoolean()) {
            text = text.replace("no plate", "thick")
                    .replace("3/16 in plate", "none")
                    .replace("3/8 in plate", "bare");
        }
        if (weighed) {
            String fitted = random.nextBoolean()
                    ? "/stances/0/weights/shims/plates/0/name"
                    : "/stances/0/weights/shims/plates/2/name";
            String name = fitted.contains("/0/name")
                    ? text.contains("\"thick\"") ? "thick" : "no plate"
                    : text.contains("\"bare\"") ? "bare" : "3/8 in plate";
            text = JsonEdit.edit(text, "/stances/0/weights/shims/fitted", "\"" + name + "\"");
        }
        List<String> states = new ArrayList<>(List.of("none", "trailing", "close-coupled", "carried"));
        while (states.size() > 1 && random.nextInt(3) > 0) {
            states.remove(random.nextInt(states.size()));
        }
        return JsonEdit.edit(text, "/stances/0/booster/states", "[\"" + String.join("\", \"", states) + "\"]");
    }

    @Test
    void randomPlansKeepTheRules() {
        SplittableRandom random = new SplittableRandom(12_2);
        int raised = 0;
        int onTracks = 0;
        for (int i = 0; i < CASES; i++) {
            PlanCase c = PlanCase.random(random.split());
            Plan plan = c.plan();
            RunSheet sheet = RunSheet.of(plan, c.report(), c.route(), c.stance(), UnitSystem.METRIC);
            assertRules(plan, c.report(), c.stance(), sheet);
            assertStatement(plan, c.report(), c.route(), c.stance(), sheet, UnitSystem.METRIC);
            raised += plan.steps().stream().anyMatch(s -> s.lift() != null) ? 1 : 0;
            OnTracks tracks = new OnTracks(plan.steps());
            for (int k = 0; k < plan.steps().size(); k++) {
                onTracks += tracks.head(k) == k ? 0 : 1;
            }
        }
        assertTrue(raised > 10 && onTracks > 10, raised + " raised, " + onTracks + " on tracks");
    }

    private static void assertRules(Plan found, Report checked, LevelStance stance, RunSheet sheet) {
        Plan plan = RoundedRecords.of(found);
        Report report = RoundedRecords.of(checked);
        sheet.setUps().forEach(card -> assertSetUp(card, plan, report, stance));
        assertCards(sheet, stance);
        assertSteps(sheet, plan);
        assertEighthsAtMost(sheet);
        plan.crossings()
                .forEach(c -> assertTrue(
                        !Boolean.TRUE.equals(c.fits())
                                || c.reserveSeconds() >= c.reserveNeededSeconds() && c.reserveNeededSeconds() >= 1,
                        c.toString()));
    }

    /** A driver has no finer scale. Names of plates are what the rig file calls them. */
    private static void assertEighthsAtMost(RunSheet sheet) {
        Stream<SheetLine> ofLegs = sheet.legs().stream()
                .flatMap(l -> l.entries().stream())
                .flatMap(e -> Stream.of(e.comes(), e.before(), e.through(), e.after(), e.gauges()))
                .flatMap(List::stream);
        Stream<SheetLine> ofCards =
                Stream.concat(sheet.setUps().stream(), sheet.cards().stream()).flatMap(c -> c.lines().stream());
        Stream.of(sheet.first().stream(), ofLegs, ofCards)
                .flatMap(s -> s)
                .flatMap(l -> l.figures().stream())
                .forEach(f -> assertTrue(!f.text().matches(".*/(16|32|64)\\b.*"), f.text() + " of " + f.from()));
    }

    // -------------------------------------------------------------- statement

    /** Statement and sheet never contradict each other, and the statement can be made again from what it tells. */
    private static void assertStatement(
            Plan found, Report report, Route route, LevelStance stance, RunSheet sheet, UnitSystem units) {
        Plan plan = RoundedRecords.of(found);
        Sources sources = new Sources(plan, report, route, stance, units, Catalog.ENGLISH);
        Statement statement =
                new StatementParts(sources, stance, new ClerkFacts(sources, Identity.UNKNOWN, List.of())).statement();
        assertEquals(sheet.banner(), statement.banner());
        List<RunSheet.Entry> passages = sheet.legs().stream()
                .flatMap(l -> l.entries().stream())
                .filter(e -> e.step() == StepKind.PASSAGE)
                .toList();
        assertEquals(passages.size(), statement.hazards().size());
        for (int i = 0; i < passages.size(); i++) {
            assertSameStep(passages.get(i), statement.hazards().get(i));
        }
        assertEquals(plan.conditions().size(), statement.conditions().size());
        assertEquals(
                plan.crossings().stream().map(c -> c.hazard() + " " + c.name()).toList(),
                statement.crossings().stream().map(Statement.Row::label).toList());
        // Asked again by these alone: margins, every option, the files by their hashes.
        assertEquals(plan.margins(), statement.margins());
        assertEquals(plan.options(), statement.options());
        assertEquals(plan.route(), statement.route());
        assertEquals(plan.rig(), statement.rig());
        // Every set-up that is used has its card, its side view and its axles, with a limit or a word beside each.
        List<String> setUps =
                sheet.setUps().stream().map(RunSheet.Card::configuration).toList();
        assertEquals(
                setUps,
                statement.sideViews().stream().map(Envelope::configuration).toList());
        assertEquals(
                setUps,
                statement.axles().stream()
                        .map(Statement.AxleTable::configuration)
                        .toList());
        for (int k = 0; k < setUps.size(); k++) {
            Envelope view = statement.sideViews().get(k);
            Statement.AxleTable table = statement.axles().get(k);
            assertTrue(view.heightM() > 0.5 && view.lengthM() > 5, view.toString());
            double raised = plan.steps().stream()
                    .map(Plan.Step::passage)
                    .filter(p -> p != null
                            && p.raise() != null
                            && p.set().configuration().equals(view.configuration()))
                    .mapToDouble(p -> p.raise().frontM() + p.raise().rearM())
                    .max()
                    .orElse(Double.NaN);
            assertEquals(Double.isNaN(raised), view.raisedHeightM() == null);
            if (!table.rows().isEmpty()) {
                assertEquals(
                        table.rows().stream().map(Statement.AxleRow::axle).toList(),
                        view.wheels().stream()
                                .filter(w -> !w.lifted())
                                .map(Envelope.Wheel::axle)
                                .toList());
                assertTrue(table.rows().stream().allMatch(r -> !r.limit().text().isBlank()));
            }
        }
    }

    private static void assertSameStep(RunSheet.Entry entry, Statement.HazardEntry place) {
        assertEquals(place.id(), entry.id());
        assertEquals(place.verdict(), entry.verdict());
        assertEquals(place.configuration(), entry.configuration());
        assertEquals(place.blocked(), entry.blocked());
        assertEquals(place.chainage(), entry.chainage());
        // The gaps of both are the very same lines; under a structure the heights too.
        assertTrue(entry.comes().containsAll(place.margins()), entry.comes() + "\n" + place.margins());
        if (place.kind().word().equals("low-structure")) {
            assertTrue(entry.comes().contains(place.heights()), place.id());
        }
        boolean isRaised = entry.comes().stream().anyMatch(l -> l.code() == SheetTopic.STILL_RAISED);
        boolean stays = entry.after().stream().anyMatch(l -> l.code() == SheetTopic.STAYS_RAISED);
        assertEquals(
                !isRaised ? null : stays ? StatementParts.STAYS : StatementParts.LOWERED,
                place.conditions().stream()
                        .filter(c -> c.code() == SheetTopic.RAISED)
                        .map(SheetLine::to)
                        .findFirst()
                        .orElse(null),
                place.id());
        // As high as the other says, and crawling where the other crawls.
        assertEquals(
                figures(place.conditions().stream().filter(c -> c.code() == SheetTopic.RAISED)),
                figures(entry.comes().stream().filter(l -> l.code() == SheetTopic.STILL_RAISED)),
                place.id());
        assertEquals(
                figures(place.conditions().stream()).stream()
                        .filter(RunSheetRulesTest::isCrawl)
                        .toList(),
                figures(entry.through().stream()).stream()
                        .filter(RunSheetRulesTest::isCrawl)
                        .distinct()
                        .toList(),
                place.id());
    }

    private static List<SheetLine.Figure> figures(Stream<SheetLine> lines) {
        return lines.flatMap(l -> l.figures().stream()).toList();
    }

    private static boolean isCrawl(SheetLine.Figure figure) {
        return figure.from().endsWith("/options/times/crawlMps");
    }

    // ------------------------------------------------------------------ cards

    private static Map<SheetTopic, String> settings(List<SheetLine> lines) {
        Map<SheetTopic, String> settings = new HashMap<>();
        for (SheetLine line : lines) {
            if (line.to() != null) {
                assertNull(settings.put(line.code(), line.to()), "told twice: " + line.code());
            }
        }
        return settings;
    }

    /** No two lines of a card set the same thing, and what is set is what the plan and the rig file have. */
    private static void assertSetUp(RunSheet.Card card, Plan plan, Report report, LevelStance stance) {
        Plan.SetUp set = plan.steps().stream()
                .flatMap(s -> Stream.of(
                        Optional.ofNullable(s.set()),
                        Optional.ofNullable(s.change()).map(Plan.Change::to)))
                .flatMap(Optional::stream)
                .filter(s -> s.configuration().equals(card.configuration()))
                .findFirst()
                .orElseThrow();
        Map<SheetTopic, String> told = settings(card.lines());
        boolean lift = !stance.trailer().lift().isEmpty();
        boolean booster = stance.booster().isPresent();
        boolean trailing = set.booster().word().equals("trailing");
        boolean cargo =
                !stance.trailer().load().isEmpty() || set.booster().word().equals("carried");
        assertEquals(set.notch(), told.get(SheetTopic.NOTCH));
        assertEquals("auto", told.get(SheetTopic.LEVELING));
        assertEquals("out", told.get(SheetTopic.POWER_TAKE_OFF));
        assertEquals(lift ? set.lift().word() : null, told.get(SheetTopic.LIFT_AXLE));
        assertEquals(booster ? set.booster().word() : null, told.get(SheetTopic.BOOSTER));
        assertEquals(
                !booster ? null : trailing || set.booster().word().equals("close-coupled") ? "connected" : "capped",
                told.get(SheetTopic.BOOSTER_LINES),
                card.title());
        assertEquals(trailing ? "off" : null, told.get(SheetTopic.PIVOT_LOCK));
        assertEquals(trailing && set.regulatorPa() != null ? "on" : null, told.get(SheetTopic.REGULATOR));
        assertEquals(cargo ? "tight" : null, told.get(SheetTopic.CHAINS));
        // Machines of 10,000 lb and more, 49 CFR 393.130(a); a load that nobody weighed may be one.
        boolean heavy = !stance.trailer().load().isEmpty()
                && (stance.weights().isEmpty()
                        || stance.weights().get().pieces().stream()
                                .anyMatch(p -> p.at().massKg() >= 10_000 * 0.45359237));
        assertEquals(
                heavy,
                card.lines().stream().anyMatch(l -> "49 CFR 393.130".equals(String.valueOf(l.source()))),
                card.title());
        Optional<LoadSheet.ShimLine> fitted = report.loads().states().stream()
                .filter(s -> s.sheet() != null
                        && s.booster().equals(set.booster())
                        && s.lift().equals(set.lift()))
                .flatMap(s -> s.sheet().shims().stream())
                .filter(LoadSheet.ShimLine::fitted)
                .findFirst();
        assertEquals(
                fitted.map(f -> f.thicknessM() > 0 ? f.shim() : SetUpCards.NO_PLATE)
                        .orElse(null),
                told.get(SheetTopic.PLATE));
        // Securement is looked at again, by its rule, wherever there is something to secure.
        assertEquals(
                cargo,
                card.lines().stream().anyMatch(l -> !l.tick() && "49 CFR 392.9".equals(String.valueOf(l.source()))));
    }

    /** A card only where the rig has what it is about; people come before the call. */
    private static void assertCards(RunSheet sheet, LevelStance stance) {
        Set<String> about = sheet.cards().stream().map(c -> c.about().word()).collect(Collectors.toSet());
        Set<String> states = stance.booster().isEmpty()
                ? Set.of()
                : stance.boosterStates().stream().map(s -> s.word()).collect(Collectors.toSet());
        boolean loaded = !stance.trailer().load().isEmpty();
        assertEquals(loaded, about.contains("unloading"));
        assertEquals(!loaded, about.contains("loading"));
        boolean behind = states.contains("trailing") || states.contains("close-coupled");
        assertEquals(behind, about.contains("coupling booster"));
        assertEquals(behind, about.contains("uncoupling booster"));
        assertEquals(states.contains("close-coupled"), about.contains("close-coupling"));
        assertEquals(states.contains("carried"), about.contains("carrying booster"));
        assertTrue(about.containsAll(Set.of("stuck", "raising", "uncoupling", "coupling", "backing")));
        for (RunSheet.Card card : sheet.cards()) {
            settings(card.lines());
            if (card.about() == CardKind.STUCK) {
                List<SheetTopic> codes = card.lines().stream()
                        .map(SheetLine::code)
                        .filter(Objects::nonNull)
                        .toList();
                assertEquals(List.of(SheetTopic.STUCK_PEOPLE, SheetTopic.STUCK_CALL), codes);
                assertEquals(SheetTopic.STUCK_PEOPLE, card.lines().get(0).code(), "people first");
            }
        }
    }

    // ------------------------------------------------------------------ steps

    private static Stream<SheetLine> ticks(RunSheet.Entry entry) {
        return Stream.of(entry.comes(), entry.before(), entry.through(), entry.after(), entry.gauges())
                .flatMap(List::stream)
                .filter(SheetLine::tick);
    }

    private static void assertSteps(RunSheet sheet, Plan plan) {
        List<RunSheet.Entry> entries =
                sheet.legs().stream().flatMap(l -> l.entries().stream()).toList();
        assertEquals(plan.steps().size(), entries.size());
        List<Plan.HazardPassage> crossings = plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(Objects::nonNull)
                .filter(p -> p.kind().word().equals("rail-crossing"))
                .toList();
        for (int i = 0; i < entries.size(); i++) {
            RunSheet.Entry entry = entries.get(i);
            for (Plan.HazardPassage x : crossings) {
                boolean between = entry.chainageM() > x.fromChainageM()
                        && entry.chainageM() < x.toChainageM()
                        && !x.hazard().equals(entry.id());
                if (between && (entry.step() == StepKind.PASSAGE)) {
                    assertEquals(
                            List.of(), ticks(entry).toList(), entry.name() + " while on the tracks of " + x.hazard());
                }
            }
            if (entry.kind() == HazardKind.RAIL_CROSSING) {
                assertCrossing(entry, plan, i);
            }
        }
    }

    private static void assertCrossing(RunSheet.Entry entry, Plan plan, int step) {
        assertFalse(entry.through().stream().anyMatch(SheetLine::tick), "nothing to tick on the tracks");
        assertTrue(entry.through().stream().anyMatch(l -> l.code() == SheetTopic.CROSSING_GO));
        OnTracks tracks = new OnTracks(plan.steps());
        if (tracks.head(step) != step) {
            assertTrue(entry.comes().stream().anyMatch(l -> l.code() == SheetTopic.DO_NOT_STOP));
            return;
        }
        long followers = tracks.followers(step).stream()
                .filter(k -> plan.steps().get(k).passage().kind().word().equals("rail-crossing"))
                .count();
        List<SheetLine> own = entry.before().stream()
                .filter(l -> l.code() != null && CROSSING_ORDER.contains(l.code()))
                .toList();
        assertEquals(
                1,
                own.stream().filter(l -> l.code() == SheetTopic.CROSSING_STOP).count(),
                "one stop for a chain of crossings");
        assertEquals(
                1 + followers,
                own.stream().filter(l -> l.code() == SheetTopic.CROSSING_ROOM).count());
        List<Integer> order = new ArrayList<>();
        for (SheetLine line : own) {
            order.add(CROSSING_ORDER.indexOf(line.code()));
            if (line.code() == SheetTopic.CROSSING_ROOM) {
                break;
            }
        }
        assertEquals(order.stream().sorted().toList(), order, "stop, look, sight, second track, room");
        Optional<CrossingTime> time = plan.crossings().stream()
                .filter(c -> c.hazard().equals(entry.id()))
                .findFirst();
        time.ifPresent(c -> {
            if (c.warning() == CrossingTraffic.Warning.PASSIVE) {
                SheetLine sight = own.stream()
                        .filter(l -> l.code() == SheetTopic.CROSSING_SIGHT)
                        .findFirst()
                        .orElseThrow();
                assertEquals(
                        c.sightNeededM() == null ? List.of() : List.of(c.sightNeededM()),
                        sight.figures().stream().map(SheetLine.Figure::value).toList());
            }
            assertEquals(
                    c.tracks() == null || c.tracks() > 1,
                    own.stream().anyMatch(l -> l.code() == SheetTopic.CROSSING_SECOND_TRACK));
        });
    }

    /** People, then the railroad, then 911, in one wording: report, plan, sheet and card, and what the README says. */
    @Test
    void peopleComeFirstEverywhere() throws Exception {
        RoadCase c = RoadCase.sample("sorrel-valley", "lowbed-loaded");
        Plan plan = c.plan(PlanOptions.defaults());
        RunSheet sheet = RunSheet.of(plan, c.report(), c.route(), c.stance(), UnitSystem.US_CUSTOMARY);
        String readme = Files.readString(Path.of("README.md")).replaceAll("\\s+", " ");
        assertTrue(readme.contains(StuckOnTracks.caution(Optional.empty()).toString()), readme);
        for (CrossingTime crossing : plan.crossings()) {
            assertNotNull(crossing.crossingNumber());
            String words = StuckOnTracks.caution(Optional.of(crossing.crossingNumber()))
                    .toString();
            assertTrue(words.indexOf("everyone out") < words.indexOf("blue sign")
                    && words.indexOf("blue sign") < words.indexOf("911"));
            assertTrue(c.report().hazards().stream()
                    .filter(h -> h.id().equals(crossing.hazard()))
                    .allMatch(h -> English.of(h.cautions()).contains(words)));
            assertTrue(plan.steps().stream()
                    .map(Plan.Step::passage)
                    .filter(Objects::nonNull)
                    .filter(p -> p.hazard().equals(crossing.hazard()))
                    .allMatch(p -> English.of(p.cautions()).contains(words)));
            assertTrue(sheet.legs().stream()
                    .flatMap(l -> l.entries().stream())
                    .filter(e -> crossing.hazard().equals(e.id()))
                    .allMatch(e -> e.cautions().contains(words)));
        }
    }
}
