package org.cresthaul.paper;

import java.io.IOException;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.paper.Strip.Tag;

/** Writes laid out pages into a tagged PDF document. */
final class PdfWriter {
    /** Stands for the time of writing in the file's identifier, so that equal papers are equal files. */
    private static final long FIXED_ID = 1;

    private final PDDocument document;
    private final PdfFonts fonts;
    private final PaperSize size;
    private final Map<Tag, PDStructureElement> elements = new IdentityHashMap<>();

    PdfWriter(PDDocument document, PdfFonts fonts, PaperSize size) {
        this.document = document;
        this.fonts = fonts;
        this.size = size;
    }

    void write(Paper paper, List<PdfPaper.Page> pages, Tag root) throws IOException {
        describe(paper);
        PDStructureTreeRoot tree = new PDStructureTreeRoot();
        document.getDocumentCatalog().setStructureTreeRoot(tree);
        grow(root, tree);
        Map<Integer, PDParentTreeValue> parents = new TreeMap<>();
        for (int i = 0; i < pages.size(); i++) {
            parents.put(i, new PDParentTreeValue(write(pages.get(i), i)));
        }
        PDNumberTreeNode numbers = new PDNumberTreeNode(PDParentTreeValue.class);
        numbers.setNumbers(parents);
        tree.setParentTree(numbers);
        tree.setParentTreeNextKey(pages.size());
    }

    private void describe(Paper paper) {
        PDDocumentInformation information = document.getDocumentInformation();
        information.setTitle(paper.title() + ": " + paper.subject());
        information.setSubject(Sentence.of(Code.PAPER_PDF_SUBJECT)
                .with("headline", paper.headline())
                .in(paper.catalog()));
        information.setCreator("Cresthaul");
        information.setProducer(String.join("; ", paper.imprint()));
        document.setDocumentId(FIXED_ID);
        document.getDocumentCatalog().setLanguage(paper.catalog().tag());
        PDMarkInfo marked = new PDMarkInfo();
        marked.setMarked(true);
        document.getDocumentCatalog().setMarkInfo(marked);
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(preferences);
    }

    private void grow(Tag tag, PDStructureNode parent) {
        PDStructureElement element = new PDStructureElement(tag.type(), parent);
        if (tag.alt() != null) {
            element.setAlternateDescription(tag.alt());
        }
        parent.appendKid(element);
        elements.put(tag, element);
        tag.kids().forEach(k -> grow(k, element));
    }

    /** @return the elements of the marks on the page, by their number */
    private COSArray write(PdfPaper.Page page, int index) throws IOException {
        PDPage sheet = new PDPage(new PDRectangle((float) size.widthPt(), (float) size.heightPt()));
        sheet.setStructParents(index);
        sheet.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
        document.addPage(sheet);
        COSArray owners = new COSArray();
        try (PDPageContentStream out = new PDPageContentStream(document, sheet)) {
            PdfInk ink = new PdfInk(out, fonts, size.heightPt());
            out.beginMarkedContent(COSName.ARTIFACT);
            ink.frame(size.widthPt(), PdfPaper.MARGIN_PT);
            out.endMarkedContent();
            for (PdfPaper.Placed placed : page.placed()) {
                Tag tag = placed.mark() instanceof Strip.Written w ? w.tag() : ((Strip.Drawn) placed.mark()).tag();
                if (tag == null) {
                    out.beginMarkedContent(COSName.ARTIFACT);
                } else {
                    PDStructureElement element = elements.get(tag);
                    PDMarkedContentReference reference = new PDMarkedContentReference();
                    reference.setPage(sheet);
                    reference.setMCID(owners.size());
                    element.appendKid(reference);
                    out.beginMarkedContent(COSName.getPDFName(tag.type()), owners.size());
                    owners.add(element.getCOSObject());
                }
                ink.put(placed);
                out.endMarkedContent();
            }
        }
        return owners;
    }
}
