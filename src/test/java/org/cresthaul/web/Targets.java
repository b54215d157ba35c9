package org.cresthaul.web;

import java.util.List;

/** How large everything is that can be pressed on the page as it stands. */
final class Targets {
    /** Pixels, by a finger and by a mouse: issue 14, and WCAG 2.2, 2.5.5 and 2.5.8. */
    static final int BY_FINGER = 44;

    static final int BY_MOUSE = 24;

    /**
     * Whatever is seen and can be pressed. A box or a dot is pressed by the label around it. A link within a sentence
     * is as high as its line (the exception of both criteria), and what is out of sight until it has the focus is no
     * target before. Symbols and numbers within drawings need not be as large as a finger, dimensions of a corner not
     * even as a mouse: what they lead to is reached by a table or a form beside them (the exception for equivalents).
     */
    private static final String SMALL = """
            const least = arguments[0];
            const pressed = document.querySelectorAll(
              'button, a[href], select, summary, input:not([type=hidden]), textarea, [role=button], [role=slider]');
            const inSentence = node => node.tagName === 'A' && getComputedStyle(node).display === 'inline'
              && node.parentElement.textContent.trim() !== node.textContent.trim();
            const equivalents = least > 24 ? 'svg *, .plan-hazard, .plan-stop' : '.template-dim';
            return [...pressed].filter(node => !node.matches(equivalents)).filter(node => node.checkVisibility({ visibilityProperty: true })).map(node => {
              const label = /^(checkbox|radio)$/.test(node.type) ? node.closest('label') : null;
              const box = (label ?? node).getBoundingClientRect();
              return { node, box };
            }).filter(({ node, box }) => box.width > 0 && box.height > 0 && box.bottom + scrollY > 0
              && !inSentence(node) && (box.width < least - 0.01 || box.height < least - 0.01))
              .map(({ node, box }) => `${Math.round(box.width)} x ${Math.round(box.height)}: `
                + `${node.tagName.toLowerCase()}${node.id && '#' + node.id}.${node.className.baseVal ?? node.className} `
                + `"${(node.textContent || node.ariaLabel || node.name || '').trim().slice(0, 40)}" in ${
                  node.closest('[id]:not(button, a, select, input, summary)')?.id}`);
            """;

    private Targets() {}

    /** Whatever is smaller than {@code leastPx} one way or the other, in words. */
    @SuppressWarnings("unchecked")
    static List<String> smallerThan(Browser browser, int leastPx) {
        return (List<String>) browser.run(SMALL, leastPx);
    }
}
