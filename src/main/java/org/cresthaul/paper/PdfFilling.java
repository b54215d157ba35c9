package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;

/** Fills pages and columns with strips, and keeps together what belongs together. */
final class PdfFilling {
    /** Of a page's height: less on the last one and it begins earlier. */
    private static final double LEAST_SHARE = 0.25;

    private static final double STEP_PT = 3;

    private final boolean loose;

    /** @param loose whether strips of one number may be parted; what must follow on the same page never is */
    PdfFilling(boolean loose) {
        this.loose = loose;
    }

    /** Pages or columns, of which the last takes from the one before it what makes it worth a page. */
    List<List<Strip>> filled(List<Strip> strips, List<Double> heightsPt) {
        List<List<Strip>> pages = parted(strips, heightsPt, -1, 0);
        double missingPt = LEAST_SHARE * heightsPt.get(heightsPt.size() - 1) - height(pages.get(pages.size() - 1));
        if (pages.size() < 2 || missingPt <= 0) {
            return pages;
        }
        List<List<Strip>> evened = parted(strips, heightsPt, pages.size() - 2, missingPt);
        return evened.size() > pages.size() ? pages : evened;
    }

    List<List<Strip>> parted(List<Strip> strips, List<Double> heightsPt) {
        return parted(strips, heightsPt, -1, 0);
    }

    /** The same strips in as many columns of one height, the least that holds them. */
    List<List<Strip>> evened(List<List<Strip>> columns, int count) {
        List<Strip> strips = columns.stream().flatMap(List::stream).toList();
        double mostPt = columns.stream().mapToDouble(PdfFilling::height).max().orElse(0);
        for (double pt = height(strips) / count; pt < mostPt; pt += STEP_PT) {
            List<List<Strip>> tried = parted(strips, List.of(pt), -1, 0);
            double heightPt =
                    tried.stream().mapToDouble(PdfFilling::height).max().orElse(0);
            if (tried.size() <= count && heightPt < mostPt) {
                return tried;
            }
        }
        return columns;
    }

    /**
     * Fills pages or columns: strips that belong together go in one where one can hold them.
     *
     * @param heightsPt of the first, the second and so on; the last is that of all further ones
     * @param shorter which of them is left emptier at its foot, by {@code lessPt}; -1 for none
     */
    private List<List<Strip>> parted(List<Strip> strips, List<Double> heightsPt, int shorter, double lessPt) {
        List<List<Strip>> pages = new ArrayList<>();
        List<Strip> page = new ArrayList<>();
        double used = 0;
        double most = heightsPt.get(heightsPt.size() - 1);
        for (int i = 0; i < strips.size(); ) {
            double heightPt = heightsPt.get(Math.min(pages.size(), heightsPt.size() - 1));
            int end = bundleEnd(strips, i);
            double needed = height(strips.subList(i, end));
            if (needed > most) {
                end = chainEnd(strips, i);
                needed = height(strips.subList(i, end));
            }
            if (used + needed > heightPt - (pages.size() == shorter ? lessPt : 0)
                    && (!page.isEmpty() || heightPt < most)) {
                pages.add(page);
                page = new ArrayList<>();
                used = 0;
                if (heightPt < most && pages.size() < heightsPt.size()) {
                    continue;
                }
                if (strips.get(i).header() != null) {
                    page.add(strips.get(i).header());
                    used = strips.get(i).header().heightPt();
                }
            }
            for (Strip strip : strips.subList(i, end)) {
                if (!(page.isEmpty() && strip.marks().isEmpty())) {
                    page.add(strip);
                    used += strip.heightPt();
                }
            }
            i = end;
        }
        if (!page.isEmpty()) {
            pages.add(page);
        }
        return pages;
    }

    static double height(List<Strip> strips) {
        return strips.stream().mapToDouble(Strip::heightPt).sum();
    }

    private static int chainEnd(List<Strip> strips, int from) {
        int end = from + 1;
        while (end < strips.size() && strips.get(end - 1).withNext()) {
            end++;
        }
        return end;
    }

    private int bundleEnd(List<Strip> strips, int from) {
        int end = chainEnd(strips, from);
        while (!loose
                && end < strips.size()
                && strips.get(end - 1).keep() != 0
                && strips.get(end).keep() == strips.get(end - 1).keep()) {
            end = chainEnd(strips, end);
        }
        return end;
    }
}
