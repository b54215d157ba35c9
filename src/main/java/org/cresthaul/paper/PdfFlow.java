package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * What follows in two columns under what is as wide as the page, and now and then goes across both: there if the page
 * has room under the columns so far, else on top of the next page, and the columns go on beside the break.
 */
final class PdfFlow {
    static final int COLUMNS = 2;

    private final PdfFilling filling;
    private final double bodyPt;
    private List<List<Band>> pages = new ArrayList<>();
    /** Not on a page yet. */
    private final List<Strip> strips = new ArrayList<>();
    /** What stands on top of the pages to come, by how many pages on from the last one. */
    private final TreeMap<Integer, List<Strip>> tops = new TreeMap<>();

    /** Strips in one column as wide as the page, or in two. */
    record Band(List<List<Strip>> columns) {
        double heightPt() {
            return columns.stream().mapToDouble(PdfFilling::height).max().orElse(0);
        }
    }

    /**
     * @param above what stands on the first page already
     * @param wide pages of strips across, on the last of which the columns begin
     */
    PdfFlow(PdfFilling filling, double bodyPt, List<Band> above, List<List<Strip>> wide) {
        this.filling = filling;
        this.bodyPt = bodyPt;
        wide.forEach(page -> pages.add(new ArrayList<>(List.of(new Band(List.of(page))))));
        pages.get(0).addAll(0, above);
    }

    void add(List<Strip> more) {
        strips.addAll(more);
    }

    void across(List<Strip> picture) {
        double heightPt = PdfFilling.height(picture);
        List<List<Band>> tried = laid(true);
        if (tried.size() - pages.size() >= last(tops) && leftPt(tried) >= heightPt) {
            pages = tried;
            strips.clear();
            tops.clear();
            pages.get(pages.size() - 1).add(new Band(List.of(picture)));
        } else {
            tops.put(Math.max(tried.size() - pages.size(), last(tops)) + 1, picture);
        }
    }

    List<List<Band>> pages() {
        return laid(false);
    }

    private static int last(TreeMap<Integer, List<Strip>> tops) {
        return tops.isEmpty() ? 0 : tops.lastKey();
    }

    private double leftPt(List<List<Band>> laid) {
        return bodyPt
                - laid.get(laid.size() - 1).stream().mapToDouble(Band::heightPt).sum();
    }

    /** @param evenly whether columns end at one height where the strips end, for what follows under them */
    private List<List<Band>> laid(boolean evenly) {
        List<List<Band>> laid = new ArrayList<>();
        pages.forEach(page -> laid.add(new ArrayList<>(page)));
        List<List<Strip>> columns = strips.isEmpty()
                ? List.of()
                : evenly ? filling.parted(strips, heightsPt()) : filling.filled(strips, heightsPt());
        int count = (columns.size() + COLUMNS - 1) / COLUMNS;
        for (int page = 0; page <= Math.max(count - 1, last(tops)); page++) {
            if (page > 0) {
                laid.add(new ArrayList<>());
            }
            List<Band> bands = laid.get(laid.size() - 1);
            if (tops.containsKey(page)) {
                bands.add(new Band(List.of(tops.get(page))));
            }
            if (page < count) {
                List<List<Strip>> beside =
                        columns.subList(page * COLUMNS, Math.min((page + 1) * COLUMNS, columns.size()));
                bands.add(new Band(evenly && page == count - 1 ? filling.evened(beside, COLUMNS) : beside));
            }
        }
        return laid;
    }

    /** Of the columns on the last page, on those with something on top, and on all further ones. */
    private List<Double> heightsPt() {
        List<Double> heights = new ArrayList<>();
        for (int page = 0; page <= last(tops); page++) {
            double onTopPt = tops.containsKey(page) ? PdfFilling.height(tops.get(page)) : 0;
            for (int c = 0; c < COLUMNS; c++) {
                heights.add(page == 0 ? leftPt(pages) : bodyPt - onTopPt);
            }
        }
        heights.add(bodyPt);
        return heights;
    }
}
