package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.SpareKind;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.HazardKind;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.view.CornerView;
import org.cresthaul.view.NotSurveyedException;
import org.cresthaul.view.PassageView;

/**
 * The drawings of a run sheet: the side view and its detail where a place is passed raised, is not clear, or leaves
 * less than twice the margin; corners from above; a map of each leg. Of the same route, rig and stance as the plan.
 */
public final class SheetPictures {
    private final Haul haul;
    private final Plan plan;
    private final Report report;
    private final UnitSystem units;
    private final Catalog catalog;
    private final Optional<CreditedMap> map;
    private final RoundedFigures figures;

    /** @param map to draw beneath the legs, where there is one */
    public SheetPictures(
            Haul haul, Optional<CreditedMap> map, Plan plan, Report report, UnitSystem units, Catalog catalog) {
        this.map = map;
        this.catalog = catalog;
        this.haul = haul;
        this.plan = RoundedRecords.of(plan);
        this.report = report;
        this.units = units;
        figures = new RoundedFigures(units);
    }

    Catalog catalog() {
        return catalog;
    }

    Paper.Picture map(RunSheet.Leg leg) {
        return LegMap.of(haul.route(), map, leg, units, catalog);
    }

    List<Paper.Picture> of(RunSheet.Entry entry) {
        Optional<Plan.HazardPassage> passage = plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(p -> p != null
                        && p.hazard().equals(entry.id())
                        && p.set().configuration().equals(entry.configuration()))
                .findFirst();
        return passage.map(this::of).orElse(List.of());
    }

    private List<Paper.Picture> of(Plan.HazardPassage p) {
        try {
            if (p.kind() == HazardKind.CORNER) {
                return List.of(corner(p));
            }
            boolean side = p.spare() != null
                    && (p.spare().kind() == SpareKind.GROUND || p.spare().kind() == SpareKind.OVERHEAD);
            return side && isClose(p) ? side(p) : List.of();
        } catch (NotSurveyedException nothingKnown) {
            return List.of();
        }
    }

    private boolean isClose(Plan.HazardPassage p) {
        double marginM = p.spare().kind() == SpareKind.GROUND
                ? plan.margins().groundM()
                : plan.margins().overheadM();
        return p.raise() != null || p.verdict() != Verdict.CLEAR || p.spare().value() < 2 * marginM;
    }

    private Paper.Picture corner(Plan.HazardPassage p) {
        CornerView view = CornerView.of(haul, p.hazard(), p.set().configuration());
        return new Paper.Picture(
                CornerDrawing.of(view, radiusM(p), figures, catalog),
                Sentence.of(view.backing() ? Code.CORNER_CAPTION_BACKED : Code.CORNER_CAPTION_DRIVEN)
                                .with("place", p.hazard())
                                .in(catalog)
                        + (view.least().roomM() >= 0 ? catalog.text(Code.CORNER_CAPTION_LEAST) : "")
                        + (view.widths().isEmpty() ? "" : catalog.text(Code.CORNER_CAPTION_WIDTHS))
                        + catalog.text(view.opposing().isEmpty() ? Code.RESERVE_END : Code.CORNER_CAPTION_OPPOSING)
                        + CornerDrawing.marksInWords(view, catalog),
                true);
    }

    /** The governing gap, whole and enlarged, and under a structure the other one enlarged. */
    private List<Paper.Picture> side(Plan.HazardPassage p) {
        List<Paper.Picture> pictures = new ArrayList<>(side(p, p.spare(), true));
        if (p.kind().isOverhead()) {
            p.gaps().stream()
                    .filter(g -> g.kind() != p.spare().kind())
                    .forEach(g -> pictures.addAll(side(p, g, false)));
        }
        return pictures;
    }

    private List<Paper.Picture> side(Plan.HazardPassage p, Plan.Spare spare, boolean whole) {
        boolean overhead = spare.kind() == SpareKind.OVERHEAD;
        Optional<GapFinding> gap = p.raise() == null ? gap(p, overhead) : Optional.empty();
        PassageView view = PassageView.of(
                haul,
                p.hazard(),
                p.set().configuration(),
                gap.map(GapFinding::line),
                gap.map(GapFinding::leveling),
                p.raise() == null ? 0 : p.raise().frontM(),
                p.raise() == null ? 0 : p.raise().rearM());
        String shown = catalog.figure(figures.clearance(spare.value()));
        SideDrawing drawing = new SideDrawing(view, overhead, shown, p.kind() == HazardKind.OVERHEAD_WIRE, catalog);
        if (!drawing.hasGap()) {
            return List.of();
        }
        List<Paper.Picture> pictures = new ArrayList<>();
        if (whole) {
            pictures.add(new Paper.Picture(
                    drawing.whole(),
                    Sentence.of(p.raise() == null ? Code.SIDE_CAPTION_STOPS : Code.SIDE_CAPTION_RAISED)
                            .with("place", p.hazard())
                            .with("line", Names.of(view.line()))
                            .in(catalog)));
        }
        pictures.add(new Paper.Picture(
                drawing.detail(),
                Sentence.of(whole ? Code.SIDE_CIRCLE : Code.SIDE_OTHER)
                        .with("gap", shown)
                        .with("where", Sentence.of(where(p, overhead)))
                        .with("at", spare.at())
                        .in(catalog)));
        return pictures;
    }

    private static Code where(Plan.HazardPassage p, boolean overhead) {
        if (!overhead) {
            return Code.WHERE_GROUND;
        }
        return p.kind() == HazardKind.OVERHEAD_WIRE ? Code.WHERE_WIRE : Code.WHERE_STRUCTURE;
    }

    private OptionalDouble radiusM(Plan.HazardPassage p) {
        return cell(p).map(ReportCell::corner).stream()
                .mapToDouble(c ->
                        c.backing() != null ? c.backing().radiusM() : c.line().radiusM())
                .findFirst();
    }

    private Optional<GapFinding> gap(Plan.HazardPassage p, boolean overhead) {
        return cell(p).map(c -> overhead ? c.overhead() : c.ground());
    }

    private Optional<ReportCell> cell(Plan.HazardPassage p) {
        return report.hazards().stream()
                .filter(h -> h.id().equals(p.hazard()))
                .flatMap(h -> h.cells().stream())
                .filter(c -> c.configuration().equals(p.set().configuration()))
                .findFirst();
    }
}
