package org.cresthaul.exchange.track;

import com.fasterxml.aalto.stax.InputFactoryImpl;
import java.io.InputStream;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.codehaus.stax2.typed.TypedXMLStreamReader;
import org.cresthaul.units.InputRejected;

/**
 * XML, element by element, as it comes: no document type, no entity but the five of XML, nothing fetched, nested at
 * most {@link #MOST_DEPTH} deep. Names are taken without their namespace, since files of this trade spell that in many
 * ways. Not for sharing.
 */
public final class XmlPull {
    /** Deepest nesting of elements. */
    public static final int MOST_DEPTH = 64;

    /** Most instructions and namespaces of a large file: a parser keeps the name of each. */
    private static final int MOST_ODD = 200;

    private final XMLStreamReader reader;
    private final int mostOdd;
    private final XmlNumber number = new XmlNumber();
    private int depth;
    private int odd;

    private XmlPull(XMLStreamReader reader, int mostOdd) {
        this.reader = reader;
        this.mostOdd = mostOdd;
    }

    /** A track of at most some megabytes, by the reader of the platform. */
    public static XmlPull ofTrack(InputStream in) throws InputRejected {
        return of(XmlEncoding.of(in));
    }

    /**
     * A map of any size; where it is in UTF-8, as all are, by a reader that takes half the time. That one has no bounds
     * of its own: no tag may be longer than {@link ShortTags#LONGEST}, and who calls bounds the names it meets.
     */
    public static XmlPull ofMap(InputStream in) throws InputRejected {
        XmlEncoding encoding = XmlEncoding.of(in);
        if (!encoding.isUtf8()) {
            return of(encoding);
        }
        try {
            InputStream bytes = new ShortTags(encoding.bytes());
            return new XmlPull(guarded(new InputFactoryImpl()).createXMLStreamReader(bytes, "UTF-8"), MOST_ODD);
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
    }

    private static XmlPull of(XmlEncoding encoding) throws InputRejected {
        try {
            // This reader prints what it cannot decode; so it is decoded for it.
            XMLStreamReader reader =
                    guarded(XMLInputFactory.newDefaultFactory()).createXMLStreamReader(encoding.decoded());
            return new XmlPull(reader, Integer.MAX_VALUE);
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
    }

    private static XMLInputFactory guarded(XMLInputFactory factory) {
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
        factory.setXMLResolver((publicId, systemId, base, namespace) -> {
            throw new XMLStreamException("nothing is fetched");
        });
        return factory;
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
                        start();
                        return true;
                    }
                    case XMLStreamConstants.END_ELEMENT -> {
                        depth--;
                        return true;
                    }
                    case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
                        return true;
                    }
                    case XMLStreamConstants.PROCESSING_INSTRUCTION -> countOdd(1);
                    default -> {
                        // comments and white space say nothing
                    }
                }
            }
            return false;
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
    }

    private void start() throws InputRejected {
        depth++;
        if (depth > MOST_DEPTH) {
            throw Refusals.of(
                    "too-deep",
                    "The file nests deeper than " + MOST_DEPTH + " elements" + where() + ".",
                    "Check what wrote it: no track is so deep.");
        }
        countOdd(reader.getNamespaceCount());
    }

    private void countOdd(int more) throws InputRejected {
        odd = mostOdd == Integer.MAX_VALUE ? 0 : odd + more;
        if (odd > mostOdd) {
            throw Refusals.of(
                    "odd-xml",
                    "The file has more than " + mostOdd + " namespaces and instructions" + where() + ".",
                    "Check what wrote it: a map has none.");
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

    /** How many attributes the element that starts here has. */
    public int attributes() {
        return reader.getAttributeCount();
    }

    /** @param i from 0 */
    public String attributeName(int i) {
        return reader.getAttributeLocalName(i);
    }

    /** @param i from 0 */
    public String attribute(int i) {
        return reader.getAttributeValue(i);
    }

    /**
     * A whole number.
     *
     * @param i from 0
     * @throws NumberFormatException when it is none
     */
    public long wholeNumber(int i) throws InputRejected {
        return number(i).whole();
    }

    /**
     * A decimal number.
     *
     * @param i from 0
     * @throws NumberFormatException when it is none
     */
    public double decimal(int i) throws InputRejected {
        return number(i).decimal();
    }

    private XmlNumber number(int i) throws InputRejected {
        try {
            if (reader instanceof TypedXMLStreamReader typed) {
                typed.getAttributeAs(i, number);
            } else {
                number.decode(reader.getAttributeValue(i));
            }
            return number;
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
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

    private static InputRejected malformed(XMLStreamException e) {
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
