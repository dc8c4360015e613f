import { bench } from './bench.ts';
import { card } from './card.ts';
import { form } from './form.ts';
import { general } from './general.ts';
import { guide } from './guide.ts';
import { kit } from './kit.ts';
import { papers } from './papers.ts';
import { recast } from './recast.ts';
import { shelf } from './shelf.ts';
import { trimming } from './trimming.ts';

/** The catalogue in English: what the app itself says, by screen. Braces are the blanks of a sentence. */
export const english = { general, form, shelf, card, papers, recast, trimming, bench, guide, kit };
