/**
 * Words of the cab page's own, beside the sheet's, in the languages of run sheets. Where the sheet's catalog has the
 * word, it is the same; a test compares them.
 */
export const WORDS = {
  en: {
    title: 'Cab page', next: 'Next', then: 'Then', places: 'Places', cards: 'Cards', sheets: 'Sheets',
    before: 'Before', through: 'Through', after: 'After', gauges: 'Gauges', cautions: 'Cautions',
    beforeLeaving: 'Before leaving', resolve: 'Resolve before driving', blocks: 'What blocks',
    landmark: 'Landmark', open: 'Open this place', passed: 'Passed: next', back: 'Back', following: 'Next place',
    done: 'done', nothing: 'No step is left.',
    stuck: 'Stuck on a crossing', whichCrossing: 'Which crossing', crossingNumber: 'Number of the crossing',
    numberUnknown: 'not in the route file: read it from the blue sign',
    call: 'Call', callUnknown: 'The telephone number is not in the route file. It is on the blue sign at the crossing.',
    noCrossing: 'This sheet passes no rail crossing.', leave: 'Back to the sheet',
    at: 'at', since: (distance, place) => `${distance} after ${place}`, left: distance => `${distance} to go`,
    past: 'The phone is past this place.', offRoute: 'The phone is not on the route.',
    position: 'Show my position', positionStop: 'Position off', positionWait: 'Waiting for a position',
    positionRefused: 'No position: the phone or the driver does not allow it. The sheet does not need it.',
    accuracy: distance => `± ${distance}`,
    night: 'Night colors', day: 'Day colors', openFile: 'Open a kept sheet', remove: 'Remove', use: 'Use this sheet',
    none: 'No sheet is kept on this phone. Make one on the planner\'s page, under Papers, or open a kept file.',
    unreadable: 'This file is no kept run sheet.', full: 'The phone has no room to keep this sheet.',
    kept: 'Kept on this phone; works with no signal.',
    notKept: 'Works with a signal alone: this address is not secure.',
    barred: 'NOT FOR DRIVING: nothing can be ticked off.',
    steps: {
      depart: 'leave', change: 'change', raise: 'raise', passage: '', lower: 'lower', arrive: 'arrive',
    },
    verdicts: {
      clear: 'clear', tight: 'tight', contact: 'contact', 'not surveyed': 'not surveyed',
      'outside limits': 'outside limits', 'loads not known': 'loads not known',
    },
    blocked: verdict => `BLOCKED, ${verdict}`,
    translated: '',
  },
  es: {
    title: 'Página de cabina', next: 'Sigue', then: 'Luego', places: 'Lugares', cards: 'Tarjetas', sheets: 'Hojas',
    before: 'Antes', through: 'Al pasar', after: 'Después', gauges: 'Manómetros', cautions: 'Precauciones',
    beforeLeaving: 'Antes de salir', resolve: 'Resolver antes de conducir', blocks: 'Lo que bloquea',
    landmark: 'Punto de referencia', open: 'Abrir este lugar', passed: 'Pasado: siguiente', back: 'Atrás',
    following: 'Lugar siguiente', done: 'hecho', nothing: 'No queda ningún paso.',
    stuck: 'Atascado en un cruce', whichCrossing: 'Qué cruce', crossingNumber: 'Número del cruce',
    numberUnknown: 'no está en el archivo de la ruta: leerlo en el letrero azul',
    call: 'Llamar',
    callUnknown: 'El número de teléfono no está en el archivo de la ruta. Está en el letrero azul del cruce.',
    noCrossing: 'Esta hoja no pasa ningún cruce de ferrocarril.', leave: 'Volver a la hoja',
    at: 'en', since: (distance, place) => `${distance} después de ${place}`, left: distance => `faltan ${distance}`,
    past: 'El teléfono ya pasó este lugar.', offRoute: 'El teléfono no está en la ruta.',
    position: 'Mostrar mi posición', positionStop: 'Sin posición', positionWait: 'Esperando una posición',
    positionRefused: 'Sin posición: el teléfono o el operador no la permite. La hoja no la necesita.',
    accuracy: distance => `± ${distance}`,
    night: 'Colores de noche', day: 'Colores de día', openFile: 'Abrir una hoja guardada', remove: 'Quitar',
    use: 'Usar esta hoja',
    none: 'No hay hojas guardadas en este teléfono. Hacer una en la página del planificador o abrir un archivo.',
    unreadable: 'Este archivo no es una hoja de ruta guardada.', full: 'El teléfono no tiene espacio para esta hoja.',
    kept: 'Guardada en este teléfono; funciona sin señal.',
    notKept: 'Funciona solo con señal: esta dirección no es segura.',
    barred: 'NO APTO PARA CONDUCIR: nada se puede marcar.',
    steps: {
      depart: 'salir', change: 'cambiar', raise: 'subir', passage: '', lower: 'bajar', arrive: 'llegar',
    },
    verdicts: {
      clear: 'libre', tight: 'justo', contact: 'contacto', 'not surveyed': 'sin levantamiento',
      'outside limits': 'fuera de límites', 'loads not known': 'cargas desconocidas',
    },
    blocked: verdict => `BLOQUEADO, ${verdict}`,
    translated: 'Traducido del inglés; nadie del oficio ha revisado las palabras. En caso de duda '
      + 'valen la hoja en inglés y el permiso.',
  },
};

export const wordsOf = kept => WORDS[kept?.language] ?? WORDS.en;
