package org.cresthaul.report;

/** One term of the uncertainty: half-width of a 95 % interval, and where it comes from. */
public record UncertaintyTerm(String term, double valueM, String source) {}
