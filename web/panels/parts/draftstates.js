/** What is said of numbers that were typed into a survey or a corner, by how far they have come. */
export const DRAFT_STATES = {
  same: 'The route has these numbers.',
  changed: 'Not in the route yet.',
  sent: 'Being put into the route and checked…',
  unread: 'Not in the route: mend what is told below.',
  refused: 'Not in the route: mend what is told below.',
  unsent: 'Not in the route: see the message at the top of the page.',
};
