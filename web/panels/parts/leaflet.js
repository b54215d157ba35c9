/** Leaflet, as index.html has loaded it before the page's own modules: a third of the size of its modules. */
export const L = window.L;
