package org.cresthaul.exchange.track;

import java.io.InputStream;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.cresthaul.units.InputRejected;

/**
 * XML, element by element, as it comes: no document type, no entity but the five of XML, nothing fetched, nested at
 * most {@link #MOST_DEPTH} deep. Names are taken without their namespace, since files of this trade spell that in many
 * ways. Not for sharing.
 */
public final class XmlPull {
    /** Deepest nesting of elements. */
    public static final int MOST_DEPTH = 64;

    private final XMLStreamReader reader;
    private int depth;

    public XmlPull(InputStream in) throws InputRejected {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
        factory.setXMLResolver((publicId, systemId, base, namespace) -> {
            throw new XMLStreamException("nothing is fetched");
        });
        try {
            // The parser prints what it cannot decode; so it is decoded for it.
            reader = factory.createXMLStreamReader(XmlEncoding.decoded(in));
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
    }

    /** Goes on to the next start, end or text; false at the end of the document. */
    public boolean next() throws InputRejected {
        try {
            while (reader.hasNext()) {
                int event = reader.next();
                switch (event) {
                    case XMLStreamConstants.DTD, XMLStreamConstants.ENTITY_REFERENCE ->
                        throw Refusals.of(
                                "document-type",
                                "The file declares a document type or entities of its own" + where() + ".",
                                "Export it again as plain XML without a DOCTYPE.");
                    case XMLStreamConstants.START_ELEMENT -> {
                        depth++;
                        if (depth > MOST_DEPTH) {
                            throw Refusals.of(
                                    "too-deep",
                                    "The file nests deeper than " + MOST_DEPTH + " elements" + where() + ".",
                                    "Check what wrote it: no track is so deep.");
                        }
                        return true;
                    }
                    case XMLStreamConstants.END_ELEMENT -> {
                        depth--;
                        return true;
                    }
                    case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
                        return true;
                    }
                    default -> {
                        // comments, instructions and white space say nothing
                    }
                }
            }
            return false;
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
    }

    public boolean isStart() {
        return reader.getEventType() == XMLStreamConstants.START_ELEMENT;
    }

    public boolean isStart(String name) {
        return isStart() && reader.getLocalName().equals(name);
    }

    public boolean isEnd() {
        return reader.getEventType() == XMLStreamConstants.END_ELEMENT;
    }

    public boolean isEnd(String name) {
        return isEnd() && reader.getLocalName().equals(name);
    }

    public boolean isText() {
        return !isStart() && !isEnd();
    }

    /** Of the element that starts or ends here. */
    public String name() {
        return reader.getLocalName();
    }

    /** How many elements are open, the one that starts here among them. */
    public int depth() {
        return depth;
    }

    /** An attribute of the element that starts here; null when there is none. */
    public String attribute(String name) {
        return reader.getAttributeValue(null, name);
    }

    public int line() {
        return Math.max(0, reader.getLocation().getLineNumber());
    }

    /** Of the text that stands here. */
    public String text() {
        return reader.getText();
    }

    /** The text in the element that starts here, to its end, without what is in its children; cut where it is long. */
    public String elementText(int longest) throws InputRejected {
        StringBuilder all = new StringBuilder();
        int outside = depth - 1;
        while (next() && depth > outside) {
            if (isText() && depth == outside + 1 && all.length() < longest) {
                String more = text();
                all.append(more, 0, Math.min(more.length(), longest - all.length()));
            }
        }
        return all.toString();
    }

    private String where() {
        int line = reader.getLocation().getLineNumber();
        return line > 0 ? " (line " + line + ")" : "";
    }

    private InputRejected malformed(XMLStreamException e) {
        String where = Optional.ofNullable(e.getLocation())
                .filter(l -> l.getLineNumber() > 0)
                .map(l -> " (line " + l.getLineNumber() + ", column " + l.getColumnNumber() + ")")
                .orElse("");
        return Refusals.of(
                "not-xml",
                "The file is not whole and sound XML" + where + ".",
                "Export it again; a transfer that broke off leaves it cut short.");
    }
}
