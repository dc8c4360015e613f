export { type PrintOptions, printPdf } from './print.ts';
export { type Fonts, typefaceOf } from './typeface.ts';
