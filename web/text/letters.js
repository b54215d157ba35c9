/** Letters for things in their order: A to Z, then AA, AB and so on, no two alike, as on the papers. */
const COUNT = 26;

export const letterOf = index =>
  (index < COUNT ? '' : letterOf(Math.floor(index / COUNT) - 1)) + String.fromCharCode(65 + index % COUNT);
