package org.cresthaul.sheet;

import java.util.List;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.CheckedRig;
import org.cresthaul.report.CheckedRoute;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LeftOff;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.Route;
import org.cresthaul.units.UnitSystem;

/**
 * The statement for the permit clerk: how large and heavy the combination is as declared, what was found at every place
 * as surveyed, under which conditions, and what was not checked. No warranty. The component names are the keys of its
 * JSON form; null stands for "none".
 *
 * @param units of the figures in the texts
 * @param wording what the statement is and is not
 * @param roads every leg of the route
 * @param surveys when and how places were surveyed, and which
 * @param envelope length, width, height, gross weight
 * @param sideViews what they measure, one for each configuration the plan uses
 * @param axles one table for each configuration the plan uses
 * @param hazards every place of the plan, in driving order
 * @param conditions what a person must resolve: what and where in the label, the whole text in the value
 * @param notChecked what nobody looked at
 * @param inputs files, hashes, margins and version
 * @param identity permit, vehicles, load, tires; the value is null where no file tells it and a person fills it in
 * @param crossings every rail crossing by its number, with its times
 * @param robustness what is left when what was declared is off
 * @param margins that were asked for
 * @param options everything that was asked of the plan
 * @param signatures who signs
 */
public record Statement(
        String cresthaul,
        String version,
        UnitSystem units,
        CheckedRoute route,
        CheckedRig rig,
        Banner banner,
        List<String> wording,
        List<Row> roads,
        List<Row> surveys,
        List<Row> envelope,
        List<Envelope> sideViews,
        List<AxleTable> axles,
        List<HazardEntry> hazards,
        List<Row> conditions,
        List<String> notChecked,
        List<Row> inputs,
        List<Row> identity,
        List<Row> crossings,
        List<Row> robustness,
        Margins margins,
        PlanOptions options,
        List<String> signatures,
        List<Sentence> cautions,
        SurveyFirst surveyFirst) {
    public static final String FORM = "statement/1";

    public Statement {
        wording = List.copyOf(wording);
        roads = List.copyOf(roads);
        surveys = List.copyOf(surveys);
        envelope = List.copyOf(envelope);
        sideViews = List.copyOf(sideViews);
        axles = List.copyOf(axles);
        hazards = List.copyOf(hazards);
        conditions = List.copyOf(conditions);
        notChecked = List.copyOf(notChecked);
        inputs = List.copyOf(inputs);
        identity = List.copyOf(identity);
        crossings = List.copyOf(crossings);
        robustness = List.copyOf(robustness);
        signatures = List.copyOf(signatures);
        cautions = List.copyOf(cautions);
    }

    public record Row(String label, SheetLine value) {}

    /**
     * What every axle carries in one configuration.
     *
     * @param letter of the set-up
     * @param rows front to rear; empty when the loads are not known
     * @param total gross weight and what governs, or why nothing is known
     */
    public record AxleTable(
            String letter, String configuration, String label, List<AxleRow> rows, List<SheetLine> total) {
        public AxleTable {
            rows = List.copyOf(rows);
            total = List.copyOf(total);
        }
    }

    /**
     * @param behind distance behind the axle ahead, or null for the first
     * @param load in level stance
     * @param limit the least that its rating or a limit on it or its group allows it
     * @param group whose air it shares, and what its group carries
     * @param tires size and rating as the rig file tells them, or null
     */
    public record AxleRow(
            String axle, String tires, SheetLine behind, SheetLine load, SheetLine limit, SheetLine group) {}

    /**
     * One place.
     *
     * @param verdict of the plan there
     * @param margins what is left, one line for each gap that is judged; empty when nothing is known
     * @param heights of a low structure and of the load under it, or null
     * @param conditions escort, raise, speed, survey
     */
    public record HazardEntry(
            String id,
            HazardKind kind,
            String name,
            SheetLine chainage,
            String letter,
            String configuration,
            Verdict verdict,
            boolean blocked,
            List<SheetLine> margins,
            SheetLine heights,
            List<SheetLine> conditions) {
        public HazardEntry {
            margins = List.copyOf(margins);
            conditions = List.copyOf(conditions);
        }
    }

    /**
     * The statement of a plan; {@code report}, {@code route}, {@code rig} and {@code stance} are those it was made
     * from.
     */
    public static Statement of(Plan plan, Report report, Route route, Rig rig, LevelStance stance, UnitSystem units) {
        Sources sources = new Sources(plan, report, route, stance, units, Catalog.ENGLISH);
        return new StatementParts(
                        sources, stance, new ClerkFacts(sources, rig.identity(), LeftOff.unitsOf(rig, stance)))
                .statement();
    }
}
