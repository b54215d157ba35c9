/** A picture from above under the outlines: loaded, and placed by two spots. It stays in this browser. */
import { el, say } from '../../dom.js';
import { dimension, distanceOf, round } from '../../text/format.js';
import { LEAST_PIXELS, qualityOf } from '../../drawing/aerial.js';
import { coordinatesOf } from '../../line/typed.js';
import { field as fieldOf } from '../parts/lineforms.js';

/** Larger ones are made smaller: a map shows no more. */
const MOST_PIXELS = 3000;

export function createAerial({ store }) {
  const file = el('input', { id: 'aerial-file', type: 'file', accept: 'image/*', on: { change: load } });
  const canvas = el('canvas', { id: 'aerial-picture', hidden: true, on: { click: press } });
  const spots = [0, 1].map(k => ({
    across: field(`across${k}`, 'Pixels across'), down: field(`down${k}`, 'Pixels down'),
    place: field(`place${k}`, 'Latitude, longitude'),
  }));
  const measured = field('measured', 'Measured between them, if it was', { placeholder: '250 ft' });
  const told = el('p', { id: 'aerial-told', role: 'status' });
  const body = el('div', { class: 'survey-body', hidden: true },
    el('p', {}, 'Press two spots in the picture, far apart, and write where each of them is.'), canvas,
    spots.map(({ across, down, place }, k) => el('fieldset', { class: 'line-row' },
      el('legend', {}, k === 0 ? 'First spot' : 'Second spot'), across, down, place)),
    measured, told);
  const node = el('details', { id: 'aerial', on: { input: placed } },
    el('summary', {}, 'Over a picture from above'),
    el('label', { class: 'field file-field' }, el('span', {}, 'Picture; it stays in this browser'), file), body);
  let next = 0;

  function field(name, label, attributes = {}) {
    return fieldOf(name, label, { within: 'aerial', ...attributes });
  }

  const value = one => one.querySelector('input').value.trim();

  async function load() {
    const [picture] = file.files;
    if (!picture) {
      return;
    }
    try {
      const bitmap = await createImageBitmap(picture);
      const scale = Math.min(1, MOST_PIXELS / Math.max(bitmap.width, bitmap.height));
      Object.assign(canvas, { width: Math.round(bitmap.width * scale), height: Math.round(bitmap.height * scale) });
      canvas.getContext('2d').drawImage(bitmap, 0, 0, canvas.width, canvas.height);
      canvas.hidden = body.hidden = false;
      next = 0;
      placed();
    } catch {
      body.hidden = false;
      say(told, `${picture.name} is no picture that this browser can show.`);
    }
  }

  /** A press fills in the spot whose turn it is. */
  function press(event) {
    const box = canvas.getBoundingClientRect();
    const at = [(event.clientX - box.left) * canvas.width / box.width,
      (event.clientY - box.top) * canvas.height / box.height];
    [spots[next].across, spots[next].down].forEach((one, k) => {
      one.querySelector('input').value = Math.round(at[k]);
    });
    next = 1 - next;
    placed();
  }

  /** Puts the picture on the map when both spots are known, and tells how good that is. */
  function placed() {
    const pairs = spots.map(({ across, down, place }) => {
      const pixel = [across, down].map(one => Number(value(one) || NaN));
      return { pixel: pixel.every(Number.isFinite) ? pixel : null, lonLat: coordinatesOf(value(place)) };
    });
    const wrong = spots.find(({ place }) => value(place) !== '' && coordinatesOf(value(place)) === null);
    const distance = value(measured) === '' ? null : distanceOf(value(measured));
    const unread = value(measured) !== '' && distance === null;
    const quality = canvas.hidden || wrong || unread ? null : qualityOf(pairs, distance);
    const near = quality !== null && quality.pixels < LEAST_PIXELS;
    store.set({ aerial: quality === null || near ? null : { canvas, pairs, leastM: quality.leastM } });
    const { units } = store.get();
    say(told, wrong ? `"${value(wrong.place)}" is no point on earth. Write latitude and longitude.`
      : unread ? `"${value(measured)}" is no distance. Write it as 250 ft or 80 m.`
        : near ? `The spots are nearer than ${round(LEAST_PIXELS, 'pixels')}: take two that are farther apart.`
          : quality === null ? 'Both spots are needed before the picture lies on the map.'
            : `The spots are ${dimension(quality.apartM, units)} apart by their coordinates; a pixel is `
              + `${dimension(quality.pixelM, units)} on the ground. An edge drawn over it is off by `
              + `${dimension(quality.leastM, units)} at least, and by what the coordinates are off.`);
  }

  return { node };
}
