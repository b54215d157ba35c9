package org.cresthaul.exchange.track;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.cresthaul.units.InputRejected;

/** The characters of an XML document, by its byte order mark or by what its first line declares, else UTF-8. */
final class XmlEncoding {
    private static final int HEAD = 256;
    private static final Pattern DECLARED =
            Pattern.compile("^<\\?xml[^>]{0,120}?encoding\\s*=\\s*[\"']([A-Za-z0-9._-]{1,40})[\"']");

    private final InputStream bytes;
    private final Charset charset;

    private XmlEncoding(InputStream bytes, Charset charset) {
        this.bytes = bytes;
        this.charset = charset;
    }

    static Reader decoded(InputStream in) throws InputRejected {
        return of(in).decoded();
    }

    /** Of a document that is at its beginning. */
    static XmlEncoding of(InputStream in) throws InputRejected {
        BufferedInputStream marked = new BufferedInputStream(in, 64 * 1024);
        try {
            marked.mark(HEAD);
            byte[] head = marked.readNBytes(HEAD);
            marked.reset();
            if (head.length > 2 && (head[0] & 0xFF) == 0xEF && (head[1] & 0xFF) == 0xBB) {
                marked.skipNBytes(3);
            }
            return new XmlEncoding(marked, charset(head));
        } catch (IOException e) {
            throw Refusals.of("not-xml", "The file cannot be read to its end.", "Export it again.");
        }
    }

    boolean isUtf8() {
        return charset.equals(StandardCharsets.UTF_8);
    }

    /** Its bytes without a byte order mark of UTF-8. */
    InputStream bytes() {
        return bytes;
    }

    Reader decoded() {
        return new InputStreamReader(
                bytes,
                charset.newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT));
    }

    private static Charset charset(byte[] head) throws InputRejected {
        if (head.length > 1 && ((head[0] & 0xFF) == 0xFE || (head[0] & 0xFF) == 0xFF)) {
            return StandardCharsets.UTF_16;
        }
        if (head.length > 1 && (head[0] == 0 || head[1] == 0)) {
            return head[0] == 0 ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_16LE;
        }
        Matcher declared = DECLARED.matcher(new String(head, StandardCharsets.ISO_8859_1).strip());
        if (!declared.find()) {
            return StandardCharsets.UTF_8;
        }
        try {
            return Charset.forName(declared.group(1));
        } catch (IllegalArgumentException e) {
            throw Refusals.of(
                    "encoding",
                    "The file says that it is written in \"" + declared.group(1) + "\", which is not known here.",
                    "Save it as UTF-8.");
        }
    }
}
