/** Projects that are looked for, in the order that is asked for. No DOM. */

/** Key, and in words. */
export const ORDERS = [['saved', 'saved last first'], ['name', 'by name'], ['author', 'by who saved last']];

/** How many make a list that is looked through by eye. */
export const FEW = 5;

/**
 * @param find every word of it stands somewhere in name, author or reason; upper and lower case are one
 */
export function orderedProjects(projects, { find, order }) {
  const words = find.toLowerCase().split(/\s+/).filter(word => word !== '');
  const says = ({ name, author, reason }) => `${name} ${author} ${reason}`.toLowerCase();
  const found = projects.filter(one => words.every(word => says(one).includes(word)));
  const by = { saved: () => 0, name: compare('name'), author: compare('author') }[order];
  const last = (a, b) => (a.saved < b.saved ? 1 : a.saved > b.saved ? -1 : 0);
  return found.sort((a, b) => by(a, b) || last(a, b));
}

/** As people write lists: 2 before 10. Nobody's name comes last. */
const compare = key => (a, b) => (a[key] === '') - (b[key] === '')
  || a[key].localeCompare(b[key], 'en', { numeric: true, sensitivity: 'base' });
