package org.cresthaul.plan;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.plan.KeptAnswers.Asked;

/** A judge of raises whose answers are kept from one plan to the next. */
record KeptRaises(RaiseJudge judge, KeptAnswers.OfPlan kept) implements RaiseJudge {
    @Override
    public Optional<RaisedCheck.Raised> at(String hazard, String configuration, double frontM, double rearM) {
        return answer(
                hazard,
                Asked.RAISED,
                List.of(configuration, frontM, rearM),
                () -> judge.at(hazard, configuration, frontM, rearM));
    }

    @Override
    public Optional<RaisedCheck.Top> above(
            String hazard, String configuration, double frontM, double rearM, double share) {
        return answer(
                hazard,
                Asked.HIGHEST,
                List.of(configuration, frontM, rearM, share),
                () -> judge.above(hazard, configuration, frontM, rearM, share));
    }

    @Override
    public Optional<RaisedCheck.Least> least(String hazard, String configuration, double share) {
        return answer(
                hazard, Asked.LEAST, List.of(configuration, share), () -> judge.least(hazard, configuration, share));
    }

    @SuppressWarnings("unchecked")
    private <T> Optional<T> answer(String hazard, Asked asked, List<Object> more, Supplier<Optional<T>> find) {
        return kept.of(hazard, asked, more, Optional.class, find::get);
    }
}
