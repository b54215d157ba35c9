package org.cresthaul.exchange.track;

import java.util.ArrayDeque;
import org.cresthaul.exchange.track.TrackNote.Done;
import org.cresthaul.units.InputRejected;

/**
 * Reads KML 2.x: the lines of its placemarks as legs, tracks with their times, points as marked places. What it points
 * to outside itself is never fetched; that it does is told.
 */
final class KmlReader {
    private final XmlPull xml;
    private final String file;
    private final Gathering into;

    private KmlReader(XmlPull xml, String file) {
        this.xml = xml;
        this.file = file;
        into = new Gathering(file);
    }

    /** @param xml at the start of the root element */
    static TrackContent read(XmlPull xml, String file, String format) throws InputRejected {
        return new KmlReader(xml, file).document(format);
    }

    private TrackContent document(String format) throws InputRejected {
        while (xml.next()) {
            if (xml.isStart("Placemark")) {
                placemark();
            } else if (xml.isStart("name") && xml.depth() <= 3) {
                into.name(xml.elementText(Gathering.LONGEST_NAME));
            } else if (xml.isStart("NetworkLink")) {
                into.note(new TrackNote(
                        file,
                        Done.LEFT_OUT,
                        "points-outward",
                        xml.line(),
                        0,
                        "The file points to another one elsewhere; nothing is fetched."));
                xml.elementText(0);
            }
        }
        return into.content(format);
    }

    private void placemark() throws InputRejected {
        int outside = xml.depth() - 1;
        String name = "";
        while (xml.next() && xml.depth() > outside) {
            if (!xml.isStart()) {
                continue;
            }
            switch (xml.name()) {
                case "name" -> {
                    name = xml.elementText(Gathering.LONGEST_NAME);
                    into.legName(name);
                }
                case "LineString" -> line();
                case "Track" -> track();
                case "Point" -> point(name);
                case "Polygon", "Model", "LinearRing" -> {
                    into.note(new TrackNote(
                            file,
                            Done.LEFT_OUT,
                            "not-a-line",
                            xml.line(),
                            0,
                            "A " + xml.name() + " is neither a line nor a point."));
                    xml.elementText(0);
                }
                default -> {
                    // MultiGeometry and MultiTrack hold the above; the rest is for looks
                }
            }
        }
        into.endLeg();
    }

    private void line() throws InputRejected {
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("coordinates")) {
                tuples();
            }
        }
        into.endPart();
    }

    /** Tuples "longitude,latitude[,altitude]" with white space between, in texts of whatever length. */
    private void tuples() throws InputRejected {
        StringBuilder tuple = new StringBuilder();
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (!xml.isText()) {
                continue;
            }
            String text = xml.text();
            for (int i = 0; i < text.length(); i++) {
                char c = text.charAt(i);
                if (!Character.isWhitespace(c)) {
                    if (tuple.length() < 200) {
                        tuple.append(c);
                    }
                } else if (tuple.length() > 0) {
                    tuple(tuple.toString(), ",", null);
                    tuple.setLength(0);
                }
            }
        }
        if (tuple.length() > 0) {
            tuple(tuple.toString(), ",", null);
        }
    }

    private void tuple(String text, String between, String time) throws InputRejected {
        String[] numbers = text.strip().split(between, 4);
        into.point(numbers[0], numbers.length > 1 ? numbers[1] : null, time, xml.line());
    }

    /** Times and positions of a track stand beside each other, in the same order. */
    private void track() throws InputRejected {
        ArrayDeque<String> times = new ArrayDeque<>();
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("when")) {
                times.add(xml.elementText(60));
                if (times.size() > Gathering.MOST_POINTS) {
                    throw Refusals.of("too-many", "The track has too many times.", "Thin the track.");
                }
            } else if (xml.isStart("coord")) {
                String text = xml.elementText(200);
                tuple(text, "\\s+", times.poll());
            }
        }
        into.endPart();
    }

    private void point(String name) throws InputRejected {
        int outside = xml.depth() - 1;
        int line = xml.line();
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("coordinates")) {
                String[] numbers = xml.elementText(200).strip().split(",", 4);
                into.place(name, numbers[0], numbers.length > 1 ? numbers[1] : null, line);
            }
        }
    }
}
