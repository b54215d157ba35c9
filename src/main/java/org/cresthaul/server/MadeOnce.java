package org.cresthaul.server;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.cresthaul.check.CheckFollower;
import org.cresthaul.geometry.StopSignal;

/**
 * The answers that were made last: equal questions have equal answers, and one that is asked while its equal is
 * answered waits for that. Safe to share.
 *
 * @param <Q> a question with everything that its answer hangs on, by value
 * @param <A> the answer
 */
final class MadeOnce<Q, A> {
    private static final long LOOK_MS = 50;

    private final Map<Q, Making<A>> underway = new ConcurrentHashMap<>();
    private final LastMade<Q, A> made;

    /** @param answer empty when the work ends without one */
    private record Making<A>(CompletableFuture<Optional<A>> answer, CheckFollower follower) {}

    /** @param most how many answers are kept */
    MadeOnce(int most) {
        made = new LastMade<>(most);
    }

    /**
     * The answer: the one that is there; else that of an equal question that is being answered, when it comes to one;
     * else made now. Work that was stopped leaves nothing.
     *
     * @param follower told of the other's when it waits for it
     */
    A of(Q question, CheckFollower follower, Supplier<A> make) {
        while (true) {
            Optional<A> known = made.find(question);
            if (known.isPresent()) {
                return known.get();
            }
            Making<A> mine = new Making<>(new CompletableFuture<>(), follower);
            Making<A> other = underway.putIfAbsent(question, mine);
            if (other == null) {
                return make(question, mine, make);
            }
            follower.waitsFor(other.follower);
            Optional<A> theirs = await(other.answer);
            if (theirs.isPresent()) {
                return theirs.get();
            }
        }
    }

    private A make(Q question, Making<A> mine, Supplier<A> make) {
        Optional<A> answer = Optional.empty();
        try {
            answer = Optional.of(make.get());
            made.keep(question, answer.get());
            return answer.get();
        } finally {
            underway.remove(question, mine);
            mine.answer.complete(answer);
        }
    }

    /** What another's work comes to, as long as this one's asker waits for it; empty when it ends without an answer. */
    private static <A> Optional<A> await(CompletableFuture<Optional<A>> other) {
        StopSignal stop = StopSignal.current();
        while (true) {
            stop.poll();
            try {
                return other.get(LOOK_MS, TimeUnit.MILLISECONDS);
            } catch (TimeoutException waiting) {
                // Not yet.
            } catch (InterruptedException | ExecutionException e) {
                throw new IllegalStateException("waiting for an equal question was broken off", e);
            }
        }
    }
}
