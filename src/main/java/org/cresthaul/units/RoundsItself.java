package org.cresthaul.units;

/** A record whose figures are rounded by what it holds; {@link Rounded} does where the rule is always the same. */
public interface RoundsItself {
    /** As it is written: of its own kind. */
    Record rounded();
}
