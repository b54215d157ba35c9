/** Places within the text of a JSON document: a part can be written anew while the rest stays as it is. No DOM. */

/**
 * Where a value stands: [from, to] in the text.
 *
 * @param text sound JSON, as JSON.parse has taken it
 * @param path keys of objects and indices of lists, from the outermost
 */
export function spanOf(text, path) {
  let at = blank(text, 0);
  for (const step of path) {
    at = typeof step === 'number' ? itemAt(text, at, step) : memberAt(text, at, step);
  }
  return [at, endOf(text, at)];
}

function blank(text, from) {
  let at = from;
  while (' \n\r\t'.includes(text[at] ?? 'x')) {
    at += 1;
  }
  return at;
}

function itemAt(text, list, index) {
  let at = blank(text, list + 1);
  for (let k = 0; text[list] === '[' && text[at] !== ']'; k++) {
    if (k === index) {
      return at;
    }
    at = next(text, endOf(text, at));
  }
  throw new Error(`there is no item ${index}`);
}

function memberAt(text, object, key) {
  let at = blank(text, object + 1);
  while (text[object] === '{' && text[at] !== '}') {
    const end = endOf(text, at);
    const value = blank(text, blank(text, end) + 1);
    if (JSON.parse(text.slice(at, end)) === key) {
      return value;
    }
    at = next(text, endOf(text, value));
  }
  throw new Error(`there is no ${key}`);
}

/** Where every item of the list at a path stands: [[from, to], ...]; read once, however long the list is. */
export function itemsOf(text, path) {
  const [list] = spanOf(text, path);
  const items = [];
  let at = blank(text, list + 1);
  while (text[list] === '[' && text[at] !== ']') {
    const to = endOf(text, at);
    items.push([at, to]);
    at = next(text, to);
  }
  return items;
}

/** Past the comma behind a value, or at the bracket that ends what it stands in. */
function next(text, end) {
  const at = blank(text, end);
  return text[at] === ',' ? blank(text, at + 1) : at;
}

function endOf(text, from) {
  if (text[from] === '"') {
    return stringEnd(text, from);
  }
  if (text[from] !== '{' && text[from] !== '[') {
    let at = from;
    while (at < text.length && !',]} \n\r\t'.includes(text[at])) {
      at += 1;
    }
    return at;
  }
  let depth = 0;
  for (let at = from; at < text.length; at++) {
    if (text[at] === '"') {
      at = stringEnd(text, at) - 1;
    } else if (text[at] === '{' || text[at] === '[') {
      depth += 1;
    } else if (text[at] === '}' || text[at] === ']') {
      depth -= 1;
      if (depth === 0) {
        return at + 1;
      }
    }
  }
  throw new Error('the text ends within a value');
}

function stringEnd(text, from) {
  let at = from + 1;
  while (text[at] !== '"') {
    at += text[at] === '\\' ? 2 : 1;
    if (at >= text.length) {
      throw new Error('the text ends within a string');
    }
  }
  return at + 1;
}

/** Every member of the object at a path: {key, from, to}, from where its key begins to where its value ends. */
export function membersOf(text, path) {
  const [object] = spanOf(text, path);
  const members = [];
  let at = blank(text, object + 1);
  while (text[object] === '{' && text[at] !== '}') {
    const end = endOf(text, at);
    const to = endOf(text, blank(text, blank(text, end) + 1));
    members.push({ key: JSON.parse(text.slice(at, end)), from: at, to });
    at = next(text, to);
  }
  return members;
}

/**
 * The text with one member of an object set, or taken out by undefined; every other byte stays.
 *
 * @param path of the object
 * @param written JSON text of the value
 */
export function withMember(text, path, key, written) {
  const members = membersOf(text, path);
  const index = members.findIndex(member => member.key === key);
  if (index < 0) {
    return written === undefined ? text : behindAll(text, path, members, `${JSON.stringify(key)}: ${written}`);
  }
  if (written !== undefined) {
    const [from, to] = spanOf(text, [...path, key]);
    return text.slice(0, from) + written + text.slice(to);
  }
  const { from, to } = members[index];
  if (index > 0) {
    return text.slice(0, members[index - 1].to) + text.slice(to);
  }
  return text.slice(0, from) + text.slice(members.length > 1 ? members[1].from : to);
}

function behindAll(text, path, members, member) {
  const at = members.length > 0 ? members.at(-1).to : spanOf(text, path)[0] + 1;
  return `${text.slice(0, at)}${members.length > 0 ? ', ' : ''}${member}${text.slice(at)}`;
}
