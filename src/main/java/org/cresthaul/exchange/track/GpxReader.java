package org.cresthaul.exchange.track;

import org.cresthaul.exchange.track.TrackNote.Done;
import org.cresthaul.units.InputRejected;

/**
 * Reads GPX 1.0 and 1.1: tracks with their segments, routes, and waypoints as marked places. Where a file has tracks,
 * its routes are left out: they say again, with fewer points, what the tracks say.
 */
final class GpxReader {
    private static final int LONGEST_TIME = 60;

    private final XmlPull xml;
    private final String file;
    private final Gathering tracks;
    private final Gathering routes;

    private GpxReader(XmlPull xml, String file) {
        this.xml = xml;
        this.file = file;
        tracks = new Gathering(file);
        routes = new Gathering(file);
    }

    /** @param xml at the start of the root element */
    static TrackContent read(XmlPull xml, String file) throws InputRejected {
        return new GpxReader(xml, file).document();
    }

    private TrackContent document() throws InputRejected {
        String version = xml.attribute("version");
        while (xml.next()) {
            if (!xml.isStart()) {
                continue;
            }
            switch (xml.name()) {
                case "wpt" -> waypoint();
                case "trk" -> line(tracks, "trkseg", "trkpt");
                case "rte" -> line(routes, "", "rtept");
                case "metadata" -> metadata();
                case "name" -> tracks.name(xml.elementText(Gathering.LONGEST_NAME));
                default -> xml.elementText(0);
            }
        }
        String format = "GPX" + ("1.0".equals(version) || "1.1".equals(version) ? " " + version : "");
        boolean driven = tracks.hasLegs();
        TrackContent planned = routes.content(format);
        if (driven && !planned.legs().isEmpty()) {
            tracks.note(new TrackNote(
                    file,
                    Done.LEFT_OUT,
                    "route-beside-track",
                    0,
                    0,
                    "The file has " + planned.points()
                            + " points of routes beside its tracks; the tracks were taken."));
        }
        planned.notes().forEach(tracks::note);
        TrackContent content = tracks.content(format);
        return driven
                ? content
                : new TrackContent(file, format, content.name(), planned.legs(), content.places(), content.notes());
    }

    private void metadata() throws InputRejected {
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("name") && xml.depth() == outside + 2) {
                tracks.name(xml.elementText(Gathering.LONGEST_NAME));
            }
        }
    }

    private void waypoint() throws InputRejected {
        String lon = xml.attribute("lon");
        String lat = xml.attribute("lat");
        int line = xml.line();
        int outside = xml.depth() - 1;
        String name = "";
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("name")) {
                name = xml.elementText(Gathering.LONGEST_NAME);
            }
        }
        tracks.place(name, lon, lat, line);
    }

    private void line(Gathering into, String segment, String pointName) throws InputRejected {
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("name") && xml.depth() == outside + 2) {
                into.legName(xml.elementText(Gathering.LONGEST_NAME));
            } else if (xml.isStart(pointName)) {
                point(into);
            } else if (xml.isEnd(segment)) {
                into.endPart();
            }
        }
        into.endLeg();
    }

    private void point(Gathering into) throws InputRejected {
        String lon = xml.attribute("lon");
        String lat = xml.attribute("lat");
        int line = xml.line();
        int outside = xml.depth() - 1;
        String time = null;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("time")) {
                time = xml.elementText(LONGEST_TIME);
            }
        }
        into.point(lon, lat, time, line);
    }
}
