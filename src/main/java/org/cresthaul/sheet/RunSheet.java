package org.cresthaul.sheet;

import java.util.List;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanCautions;
import org.cresthaul.plan.StepKind;
import org.cresthaul.report.CheckedRig;
import org.cresthaul.report.CheckedRoute;
import org.cresthaul.report.Report;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.Route;
import org.cresthaul.units.UnitSystem;

/**
 * The driver's sheet: a plan in driving order with what to do, ready to be shown. The component names are the keys of
 * its JSON form; chainages are meters; null stands for "none". Every figure names where in the plan or the report it
 * stands.
 *
 * @param units of the figures in the texts
 * @param blocking what blocks, and what would open it; empty with a way through
 * @param first before leaving
 * @param legs one part for each leg of the route
 * @param setUps a card for each configuration that is used, in the order of use
 * @param cards how to do what is done on the way
 * @param cautions of the plan
 * @param crossings every rail crossing of the route, with what its emergency sign says
 */
public record RunSheet(
        String cresthaul,
        String version,
        UnitSystem units,
        CheckedRoute route,
        CheckedRig rig,
        Banner banner,
        List<Plan.Block> blocking,
        List<SheetLine> first,
        List<Leg> legs,
        List<Card> setUps,
        List<Card> cards,
        List<Sentence> cautions,
        List<Crossing> crossings,
        SurveyFirst surveyFirst) {
    public static final String FORM = "runsheet/1";

    public RunSheet {
        blocking = List.copyOf(blocking);
        first = List.copyOf(first);
        legs = List.copyOf(legs);
        setUps = List.copyOf(setUps);
        cards = List.copyOf(cards);
        cautions = List.copyOf(cautions);
        crossings = List.copyOf(crossings);
    }

    /**
     * A rail crossing and whom to call from it.
     *
     * @param number of the crossing, or null where the route file has none
     * @param phone telephone number on its emergency sign, or null likewise
     */
    public record Crossing(String hazard, String name, String number, String phone) {
        static List<Crossing> listOf(Route route) {
            return route.hazards().stream()
                    .filter(RailCrossing.class::isInstance)
                    .map(RailCrossing.class::cast)
                    .map(c -> new Crossing(
                            c.place().id(),
                            c.place().name(),
                            c.crossingNumber().orElse(null),
                            c.emergencyPhone().orElse(null)))
                    .toList();
        }
    }

    /**
     * One leg.
     *
     * @param number from 1
     * @param where from where to where
     * @param entering what is set and in force when it begins
     */
    public record Leg(
            int number,
            String name,
            double startChainageM,
            double endChainageM,
            SheetLine where,
            List<SheetLine> entering,
            List<Entry> entries) {
        public Leg {
            entering = List.copyOf(entering);
            entries = List.copyOf(entries);
        }
    }

    /**
     * One step of the plan.
     *
     * @param id of the hazard or stop, or null
     * @param kind of the hazard, or null
     * @param verdict of the plan there, or null
     * @param configuration in force when it is done
     * @param chainage where the front comes to it
     * @param landmark to know it by, or null
     * @param comes what it is
     * @param before what to do before
     * @param through how to go over, under or round
     * @param after what to undo or look at after
     * @param gauges what they should read from here
     * @param cautions the usual ones that belong here
     */
    public record Entry(
            StepKind step,
            String id,
            HazardKind kind,
            String name,
            Verdict verdict,
            boolean blocked,
            String configuration,
            double chainageM,
            SheetLine chainage,
            String landmark,
            List<SheetLine> comes,
            List<SheetLine> before,
            List<SheetLine> through,
            List<SheetLine> after,
            List<SheetLine> gauges,
            List<String> cautions) {
        public Entry {
            comes = List.copyOf(comes);
            before = List.copyOf(before);
            through = List.copyOf(through);
            after = List.copyOf(after);
            gauges = List.copyOf(gauges);
            cautions = List.copyOf(cautions);
        }
    }

    /**
     * A card.
     *
     * @param letter of a set-up, or null
     * @param configuration its key, or null
     */
    public record Card(CardKind about, String title, String letter, String configuration, List<SheetLine> lines) {
        public Card {
            lines = List.copyOf(lines);
        }
    }

    /** Whether a caution is about what is done in a change of configuration. */
    public static boolean isOfChange(Sentence caution) {
        return PlanCautions.isOfChange(caution);
    }

    /** The sheet of a plan; {@code report}, {@code route} and {@code stance} are those it was made from. */
    public static RunSheet of(Plan plan, Report report, Route route, LevelStance stance, UnitSystem units) {
        return of(plan, report, route, stance, units, Catalog.ENGLISH);
    }

    /** In a language. */
    public static RunSheet of(
            Plan plan, Report report, Route route, LevelStance stance, UnitSystem units, Catalog catalog) {
        Sources sources = new Sources(plan, report, route, stance, units, catalog);
        DriverCards cards = new DriverCards(sources);
        return new RunSheet(
                FORM,
                plan.version(),
                units,
                sources.plan().route(),
                sources.plan().rig(),
                Banner.of(sources.plan(), catalog),
                sources.plan().blocking(),
                cards.beforeLeaving(),
                new LegSheets(sources).list(),
                new SetUpCards(sources).list(),
                cards.list(),
                plan.cautions(),
                Crossing.listOf(route),
                report.surveyFirst());
    }
}
