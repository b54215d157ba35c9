package org.cresthaul.report;

/** The rig that was checked. */
public record CheckedRig(String name, String note, String sha256, String stance) {}
