package org.cresthaul.exchange.osm;

/**
 * Something a person has to know of a map along a route that is no hazard of it.
 *
 * @param extract the file it is about
 * @param code short stable word
 */
public record MapNote(String extract, String code, String message) {}
