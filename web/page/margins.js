/** The margins a check keeps: one row each, for its field, the address, the title block and the merging. No DOM. */

/**
 * {key: in a request and in the report, with M behind it; id: of its field; address: in the page's address; field: its
 * label; kept: in the title block, from a length in words; merged: where two versions differ}
 */
export const MARGINS = [
  {
    key: 'ground', id: 'margin-ground', address: 'ground', field: 'Margin over the ground',
    kept: length => `ground ${length}`, merged: 'margin over the ground',
  },
  {
    key: 'overhead', id: 'margin-overhead', address: 'overhead', field: 'Margin under structures',
    kept: length => `overhead ${length}`, merged: 'margin overhead',
  },
  {
    key: 'side', id: 'margin-side', address: 'side', field: 'Margin beside in corners',
    kept: length => `beside ${length}`, merged: 'margin beside',
  },
  {
    key: 'unit', id: 'margin-unit', address: 'unit', field: 'Margin between units',
    kept: length => `between units ${length}`, merged: 'margin between units',
  },
  {
    // "line" in an address is the line of a survey that is on show.
    key: 'line', id: 'margin-line', address: 'off', field: 'Driver off the line, corners',
    kept: length => `driver ${length} off the line`, merged: 'how far off its line',
  },
  {
    key: 'turnIn', id: 'margin-turn-in', address: 'turnIn', field: 'Turn-in early or late',
    kept: length => `turn-in ${length} early or late`, merged: 'how early or late it turns in',
  },
];

/** Those that a report was made with, as {key: meters}. */
export const marginsOf = report => Object.fromEntries(MARGINS.map(({ key }) => [key, report.margins[`${key}M`]]));

/** Those that are said of {key: text or null}; null where none is. */
export function saidMargins(texts) {
  const said = MARGINS.map(({ key }) => [key, texts[key]]).filter(([, text]) => text);
  return said.length > 0 ? Object.fromEntries(said) : null;
}
