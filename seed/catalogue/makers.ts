/** The invented makers of the demo world. */
export const QUELLBROOK = { slug: 'quellbrook', name: 'Quellbrook' };
export const ORMADIC = { slug: 'ormadic', name: 'Ormadic' };
export const TESSALY = { slug: 'tessaly', name: 'Tessaly' };
export const BRAMFIELD = { slug: 'bramfield', name: 'Bramfield' };
