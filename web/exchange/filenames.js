/** What files that are saved are called. No DOM. */

/** A route's name as a file's name. */
export const routeFileName = name => `${plainName(name)}.route.geojson`;

/** A rig's name as a file's name. */
export const rigFileName = name => `${plainName(name.replace(/(\.rig)?\.json$/i, ''), 'rig')}.rig.json`;

/** A limits file's name as it is saved. */
export const limitsFileName = name => `${plainName(name.replace(/(\.limits)?\.json$/i, ''), 'limits')}.limits.json`;

/** What its base map is called, so that it is found beside it. */
export const baseMapFileName = name => `${plainName(name)}.basemap.geojson`;

const plainName = (name, otherwise = 'route') =>
  name.toLowerCase().replace(/\.(route\.)?(geo)?json$/, '').replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '')
    .slice(0, 60) || otherwise;
