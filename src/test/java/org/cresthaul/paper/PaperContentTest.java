package org.cresthaul.paper;

import static org.cresthaul.paper.PaperSample.pages;
import static org.cresthaul.paper.PaperSample.solid;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.cresthaul.language.English;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.StepKind;
import org.cresthaul.report.ReversingReport;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.sheet.Envelope;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.sheet.SheetLine;
import org.cresthaul.sheet.SheetTopic;
import org.cresthaul.sheet.Statement;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What both papers of both samples hold, before it is laid out: traced, complete, and one with the other. */
class PaperContentTest {
    /**
     * The side view of a set-up stands on the ground, reaches its height and length, and carries the axle table's
     * figures.
     */
    @ParameterizedTest
    @EnumSource
    void everySetUpHasADimensionedSideView(PaperSample sample) {
        assertEquals(
                sample.statement.axles().size(), sample.statement.sideViews().size());
        int raised = 0;
        for (int i = 0; i < sample.statement.sideViews().size(); i++) {
            Envelope e = sample.statement.sideViews().get(i);
            Statement.AxleTable table = sample.statement.axles().get(i);
            assertEquals(table.letter(), e.letter());
            List<Envelope.Wheel> down =
                    e.wheels().stream().filter(w -> !w.lifted()).toList();
            assertEquals(table.rows().size(), down.size());
            List<String> lettering = EnvelopeDrawing.of(e, UnitSystem.US_CUSTOMARY).shapes().stream()
                    .filter(Drawing.Lettering.class::isInstance)
                    .map(s -> ((Drawing.Lettering) s).text())
                    .toList();
            for (int k = 0; k < down.size(); k++) {
                Statement.AxleRow row = table.rows().get(k);
                assertEquals(row.axle(), down.get(k).axle());
                assertTrue(lettering.contains(row.load().text()), row.load().text());
                assertTrue(
                        row.behind() == null || lettering.contains(row.behind().text()),
                        lettering + " " + row.behind());
                assertTrue(row.tires() != null && !row.tires().isBlank(), "the sample tells its tires");
                // A wheel that stands touches level ground: its center is a loaded radius up, but for what the air lets
                // it move.
                assertEquals(down.get(k).radiusM(), down.get(k).hM(), 1e-3);
            }
            for (Statement.Row row : sample.statement.envelope()) {
                if (row.label().endsWith(" " + e.letter()) && !row.label().startsWith("Gross")) {
                    assertTrue(
                            lettering.stream()
                                    .anyMatch(l -> l.endsWith(" " + row.value().text())),
                            row + " " + lettering);
                }
            }
            double top = e.outlines().stream()
                    .flatMap(o -> o.points().stream())
                    .mapToDouble(p -> p.get(1))
                    .max()
                    .orElseThrow();
            // Of the two levelings the higher counts.
            assertTrue(top <= e.heightM() + 1e-3 && top > e.heightM() - 0.1, top + " " + e.heightM());
            double front = e.outlines().stream()
                    .flatMap(o -> o.points().stream())
                    .mapToDouble(p -> p.get(0))
                    .max()
                    .orElseThrow();
            double rear = e.outlines().stream()
                    .flatMap(o -> o.points().stream())
                    .mapToDouble(p -> p.get(0))
                    .min()
                    .orElseThrow();
            // A notch pitches the deck: the drawing's extent is the declared length to less than anybody measures.
            assertEquals(e.lengthM(), front - rear, 0.05);
            raised += e.raisedHeightM() == null ? 0 : 1;
            assertTrue(e.raisedHeightM() == null || e.raisedHeightM() > e.heightM() - 0.02);
        }
        assertEquals(
                sample.plan.steps().stream()
                        .map(Plan.Step::passage)
                        .filter(p -> p != null && p.raise() != null)
                        .map(p -> p.set().configuration())
                        .distinct()
                        .count(),
                raised);
    }

    /** A clerk reads what stands under a place as one text: every line of it is a sentence. */
    @ParameterizedTest
    @EnumSource
    void whatStandsUnderAPlaceIsSentences(PaperSample sample) {
        int lines = 0;
        for (Statement.HazardEntry place : sample.statement.hazards()) {
            for (SheetLine line : place.conditions()) {
                assertTrue(line.text().matches("(?s)[A-Z0-9].*[.)]"), place.id() + ": " + line.text());
                lines++;
            }
        }
        assertTrue(lines > 10, lines + " lines");
    }

    /** What the sheet tells to lower, the statement does too, and what stays raised stays so on both: step by step. */
    @ParameterizedTest
    @EnumSource
    void sheetAndStatementAgreeStepByStep(PaperSample sample) {
        List<RunSheet.Entry> entries = sample.sheet.legs().stream()
                .flatMap(l -> l.entries().stream())
                .filter(e -> e.step() == StepKind.PASSAGE)
                .toList();
        List<Statement.HazardEntry> places = sample.statement.hazards();
        assertEquals(places.size(), entries.size());
        List<Plan.HazardPassage> passages = sample.plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(Objects::nonNull)
                .toList();
        int raised = 0;
        for (int i = 0; i < places.size(); i++) {
            Statement.HazardEntry place = places.get(i);
            RunSheet.Entry entry = entries.get(i);
            assertEquals(place.id(), entry.id());
            assertEquals(place.verdict(), entry.verdict());
            assertEquals(place.configuration(), entry.configuration());
            assertEquals(place.blocked(), entry.blocked());
            assertEquals(
                    place.margins(),
                    entry.comes().stream()
                            .filter(l -> place.margins().contains(l))
                            .toList());
            assertEquals(
                    passages.get(i).gaps().isEmpty()
                            ? passages.get(i).spare() == null ? 0 : 1
                            : passages.get(i).gaps().size(),
                    place.margins().size(),
                    place.id());
            String to = place.conditions().stream()
                    .filter(c -> c.code() == SheetTopic.RAISED)
                    .map(SheetLine::to)
                    .findFirst()
                    .orElse(null);
            boolean stays = entry.after().stream().anyMatch(l -> l.code() == SheetTopic.STAYS_RAISED);
            boolean isRaised = entry.comes().stream().anyMatch(l -> l.code() == SheetTopic.STILL_RAISED);
            assertEquals(!isRaised ? null : stays ? "stays raised" : "lowered after it", to, place.id());
            raised += isRaised ? 1 : 0;
            if (place.kind().word().equals("low-structure")) {
                assertTrue(entry.comes().contains(place.heights()), place.id());
            }
        }
        assertTrue(raised > 0);
    }

    /** Every figure on either paper that comes from the plan or the report stands there, at the place it names. */
    @ParameterizedTest
    @EnumSource
    void everyFigureIsTracedToAResult(PaperSample sample) throws Exception {
        ObjectMapper json = new ObjectMapper();
        JsonNode plan = json.readTree(JsonAnswer.bytes(sample.plan));
        JsonNode report = json.readTree(JsonAnswer.bytes(sample.report));
        int traced = 0;
        List<String> lost = new ArrayList<>();
        for (Object paper : List.of(sample.sheet, sample.statement)) {
            for (JsonNode figures : json.readTree(JsonAnswer.bytes(paper)).findValues("figures")) {
                for (JsonNode figure : figures) {
                    String from = figure.path("from").asText();
                    if (from.startsWith("plan:/") || from.startsWith("report:/")) {
                        JsonNode found =
                                (from.startsWith("plan:") ? plan : report).at(from.substring(from.indexOf('/')));
                        if (!found.isNumber()
                                || Math.abs(found.asDouble()
                                                - figure.path("value").asDouble())
                                        > 1e-9) {
                            lost.add(figure + " is " + found);
                        }
                        traced++;
                    } else if (!from.startsWith("rig:")
                            && !from.startsWith("route:")
                            && !from.startsWith("report:difference of")) {
                        lost.add("from nowhere: " + figure);
                    }
                }
            }
        }
        assertEquals(List.of(), lost);
        assertTrue(traced > 100, traced + " figures");
    }

    /**
     * Every set-up in use is on the card for backing up, with the ways of its own state in the report, and the
     * cautions.
     */
    @ParameterizedTest
    @EnumSource
    void theCardForBackingUpTellsHowFar(PaperSample sample) throws Exception {
        RunSheet.Card card = sample.sheet.cards().stream()
                .filter(c -> c.title().equals("Backing up"))
                .findFirst()
                .orElseThrow();
        String pdf = solid(String.join("", pages(sample.sheetPdf(PaperSize.LETTER))));
        if (sample.drivable) {
            card.lines().forEach(l -> assertTrue(pdf.contains(solid(l.text())), l.text()));
        }
        English.of(sample.report.reversing().cautions())
                .forEach(caution ->
                        assertTrue(card.lines().stream().anyMatch(l -> l.text().equals(caution)), caution));
        int told = 0;
        for (RunSheet.Card setUp : sample.sheet.setUps()) {
            String[] key = setUp.configuration().split("/");
            ReversingReport.State state = sample.report.reversing().states().stream()
                    .filter(s ->
                            s.lift().word().equals(key[0]) && s.booster().word().equals(key[1]))
                    .findFirst()
                    .orElseThrow();
            SheetLine line = card.lines().stream()
                    .filter(l -> l.text().matches("Set-up [A-Z, ]*\\b" + setUp.letter() + "\\b.*"))
                    .findFirst()
                    .orElseThrow();
            List<Double> values =
                    line.figures().stream().map(SheetLine.Figure::value).toList();
            for (ReversingReport.StraightBack way : Arrays.asList(state.free(), state.locked(), state.lockedLight())) {
                if (way != null) {
                    assertTrue(values.contains(RoundedRecords.of(way).limitMetM()), way + " in " + line);
                    told++;
                }
            }
        }
        assertTrue(told >= sample.sheet.setUps().size(), told + " ways");
    }

    /** What is at the joint is what the rig file says is fitted, in its own words. */
    @ParameterizedTest
    @EnumSource
    void aTrailingBoostersCardTellsThePlateOfTheRigFile(PaperSample sample) {
        int told = 0;
        for (RunSheet.Card card : sample.sheet.setUps()) {
            Plan.SetUp set = sample.plan.steps().stream()
                    .flatMap(s -> Stream.of(
                            s.set(), s.change() == null ? null : s.change().to()))
                    .filter(Objects::nonNull)
                    .filter(s -> s.configuration().equals(card.configuration()))
                    .findFirst()
                    .orElseThrow();
            boolean trails = set.booster().word().equals("trailing");
            assertEquals(trails, set.shim() != null);
            List<String> plates = card.lines().stream()
                    .map(SheetLine::text)
                    .filter(t -> t.contains("booster joint"))
                    .toList();
            assertEquals(trails ? 1 : 0, plates.size(), card.title());
            if (trails) {
                assertEquals(
                        set.shim().hasThickness(),
                        plates.get(0).contains(set.shim().name()),
                        plates.toString());
                told++;
            }
        }
        assertTrue(told > 0);
    }
}
