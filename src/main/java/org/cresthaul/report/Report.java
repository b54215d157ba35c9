package org.cresthaul.report;

import java.util.List;
import org.cresthaul.language.Sentence;

/**
 * What a check found, ready to be shown: the component names are the keys of the report's JSON form, lengths are
 * meters, null stands for "none". The same inputs give an equal report. See docs/api.md.
 */
public record Report(
        String cresthaul,
        String version,
        CheckedRoute route,
        CheckedRig rig,
        Margins margins,
        List<TapeLine> tape,
        List<UncertaintyTerm> uncertainties,
        List<ConfigurationVerdict> configurations,
        List<HazardFindings> hazards,
        LoadReport loads,
        ReversingReport reversing,
        List<Sentence> cautions,
        SurveyFirst surveyFirst) {
    public static final String FORM = "report/1";

    /** Without the readings of a tape, and with every place surveyed. */
    public Report(
            String cresthaul,
            String version,
            CheckedRoute route,
            CheckedRig rig,
            Margins margins,
            List<UncertaintyTerm> uncertainties,
            List<ConfigurationVerdict> configurations,
            List<HazardFindings> hazards,
            LoadReport loads,
            ReversingReport reversing,
            List<Sentence> cautions) {
        this(
                cresthaul,
                version,
                route,
                rig,
                margins,
                List.of(),
                uncertainties,
                configurations,
                hazards,
                loads,
                reversing,
                cautions,
                new SurveyFirst(List.of(), List.of()));
    }
}
