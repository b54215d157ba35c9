package org.cresthaul.plan;

/**
 * What goes along with a plan while it is made, and changes nothing of it.
 *
 * @param kept answers of earlier plans; those of this one are kept as well
 * @param follower hears how far it has come
 */
public record PlanAid(KeptAnswers kept, PlanFollower follower) {
    /** Nothing is known from before, and nobody follows. */
    public static PlanAid none() {
        return new PlanAid(new KeptAnswers(), PlanFollower.NONE);
    }
}
