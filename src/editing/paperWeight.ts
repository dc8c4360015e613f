import { type Json, type JsonObject, type SavedLayout, valueAt } from '../files/index.ts';
import { type Edit, settingOf, together } from './edit.ts';

/**
 * The weight of a paper as a person types it: `216` or `216 gsm` is grams per square metre, `80 lb cover` pounds of a
 * kind; `undefined`: it is not known. A paper has one of the two, so the other goes.
 *
 * What is neither, or pounds without their kind, is written as it stands, for the file itself refuses it and says what
 * may stand there.
 */
export function weightSet(file: SavedLayout, paper: string, text: string | undefined): Edit {
  const read = text === undefined ? null : weightIn(text);
  const [field, other] = read?.field === 'lb' ? (['lb', 'gsm'] as const) : (['gsm', 'lb'] as const);
  const at = (name: string) => ['papers', paper, name];
  const has = (name: string) => valueAt(file, at(name)) !== undefined;
  if (read === null && has('lb')) return settingOf(file, at('lb'), undefined);
  const set = settingOf(file, at(field), read?.value);
  return has(other) ? together(set, settingOf(file, at(other), undefined)) : set;
}

interface Weight {
  readonly field: 'gsm' | 'lb';
  readonly value: Json;
}

function weightIn(text: string): Weight {
  const read = /^(\d+(?:[.,]\d+)?)\s*(.*)$/u.exec(text.trim());
  if (read === null) return { field: 'gsm', value: text };
  const number = Number(read[1]!.replace(',', '.'));
  const unit = read[2]!.toLowerCase();
  if (/^(?:|g|gsm|g\/m2|g\/m²|g\/qm)$/u.test(unit)) return { field: 'gsm', value: number };
  const pounds = /^(?:lbs?\.?|pounds?|#)\s*(.*)$/u.exec(unit);
  if (pounds === null) return { field: 'gsm', value: text };
  const kind = pounds[1]!;
  const value: JsonObject = kind === '' ? { pounds: number } : { pounds: number, of: alias[kind] ?? kind };
  return { field: 'lb', value };
}

/** What else papers are called that are weighed by the same basis sheet (printers' manuals). */
const alias: Readonly<Record<string, string>> = {
  writing: 'bond',
  ledger: 'bond',
  book: 'text',
  offset: 'text',
  newsprint: 'tag',
};
