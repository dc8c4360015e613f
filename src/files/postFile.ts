import stringify from 'json-stringify-pretty-compact';
import * as z from 'zod/mini';
import type { PostClass, PostSizes, PostTable } from '../making/index.ts';
import { type Length, readLength, type Units } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { excerpt } from './excerpt.ts';
import { expecting } from './expectation.ts';
import { fields, inUnits, lengthIn, lengthText, oneOf, shownText } from './field.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import { readFileText, tellable } from './fileText.ts';
import { withoutForeignFields } from './foreignField.ts';
import { isList, isObject, type Json, type JsonObject, valueAt } from './json.ts';
import { type Path, pathText } from './path.ts';
import { shapeProblems } from './shapeProblems.ts';
import { writtenLength } from './writtenLength.ts';

/** The version of the post file that this program reads and writes. */
export const postVersion = 1;

/**
 * The table of a post in the text of a `*.post.json` file, or everything that is wrong with the file, in its order.
 *
 * Only the version, `units`, `country`, `asOf`, `source` and `classes`, each with its `name`, are needed. What is not said
 * is no limit, and a class takes what is uneven and what is stiff unless it says that it does not.
 */
export function readPostFile(text: string): { table: PostTable } | { problems: FileProblem[] } {
  const read = readFileText(text, 'cardwright_post', postVersion);
  if ('problems' in read) return read;
  const { file, repeated } = read;
  const own = withoutForeignFields(file);
  const units = own.units === 'mm' ? 'mm' : 'in';
  const parsed = postShape(units).safeParse(own);
  const problems = [
    ...repeated,
    ...(parsed.success ? [] : shapeProblems(parsed.error, own)),
    ...orderProblems(own, units),
  ];
  if (problems.length > 0) return { problems: tellable(problems, file) };
  assert(parsed.success, 'A file without problems is in shape');
  return { table: tableOf(parsed.data) };
}

/** The text of a post file with that table, which is read as the same table again. */
export function writePostFile(table: PostTable, units: Units): string {
  const length = (of: Length | null) => (of === null ? {} : writtenLength(of, units, false));
  const sizes = (of: PostSizes): JsonObject =>
    withoutEmpty({ length: length(of.length), height: length(of.height), thickness: length(of.thickness) });
  const range = ({
    least,
    most,
  }: {
    readonly least: number | null;
    readonly most: number | null;
  }): JsonObject => withoutEmpty({ least: least ?? {}, most: most ?? {} });
  const ratio = (of: readonly [number, number] | null) => (of === null ? null : of[0] / of[1]);
  const file: JsonObject = {
    cardwright_post: postVersion,
    units,
    country: table.country,
    asOf: table.asOf,
    source: table.source,
    classes: table.classes.map((one) => ({
      name: one.name,
      ...withoutEmpty({
        least: sizes(one.least),
        most: sizes(one.most),
        stiffer: one.stiffer === null ? {} : sizes(one.stiffer),
        ratio: range({ least: ratio(one.ratio.least), most: ratio(one.ratio.most) }),
        grams: range(one.grams),
      }),
      ...(one.takesUneven ? {} : { uneven: false }),
      ...(one.takesRigid ? {} : { rigid: false }),
    })),
  };
  return `${stringify(file, { indent: 2, maxLength: 100 })}\n`;
}

function withoutEmpty(object: JsonObject): JsonObject {
  return Object.fromEntries(
    Object.entries(object).filter(([, value]) => !isObject(value) || Object.keys(value).length > 0),
  );
}

/** More kinds of mail than any post has. */
const mostClasses = 40;

function shapeIn(units: Units) {
  const sizes = z.optional(
    fields('post-sizes', {
      length: z.optional(lengthText(units, 'positive')),
      height: z.optional(lengthText(units, 'positive')),
      thickness: z.optional(lengthText(units, 'positive')),
    }),
  );
  const limit = (low: number, high: number) =>
    z.optional(
      z
        .number({ error: expecting('number', { low, high }) })
        .check(
          z.minimum(low, { error: expecting('number', { low, high }) }),
          z.maximum(high, { error: expecting('number', { low, high }) }),
        ),
    );
  const range = (low: number, high: number) =>
    z.optional(fields('post-range', { least: limit(low, high), most: limit(low, high) }));
  const flag = z.optional(z.boolean({ error: expecting('flag') }));
  const postClass = fields('post-class', {
    name: shownText(),
    least: sizes,
    most: sizes,
    stiffer: z.optional(
      fields('post-stiffer', {
        length: lengthText(units, 'positive'),
        height: lengthText(units, 'positive'),
        thickness: lengthText(units, 'positive'),
      }),
    ),
    ratio: range(1, 100),
    grams: range(0, 100_000),
    uneven: flag,
    rigid: flag,
  });
  return fields('file', {
    $schema: z.optional(z.string({ error: expecting('text') })),
    cardwright_post: z.literal(1, { error: expecting('version') }),
    units: oneOf(['in', 'mm']),
    country: shownText(),
    asOf: shownText(),
    source: shownText(),
    classes: z
      .array(postClass, { error: expecting('post-classes', classes) })
      .check(
        z.minLength(classes.low, { error: expecting('post-classes', classes) }),
        z.maxLength(classes.high, { error: expecting('post-classes', classes) }),
      ),
  });
}

const classes = { low: 1, high: mostClasses };

const postShape = inUnits(shapeIn);

type PostShape = z.infer<ReturnType<typeof shapeIn>>;
type ClassShape = PostShape['classes'][number];

/** Least limits above the most, so that nothing could be of the class. */
function orderProblems(file: JsonObject, units: Units): FileProblem[] {
  const list = isList(file.classes) ? file.classes.slice(0, mostClasses) : [];
  return list.flatMap((one, index) => {
    if (!isObject(one)) return [];
    const at: Path = ['classes', index];
    return [
      ...(['length', 'height', 'thickness'] as const).flatMap((side) =>
        inOrder(one, [...at], ['least', side], ['most', side], (value) => lengthIn(value, units)),
      ),
      ...(['ratio', 'grams'] as const).flatMap((field) =>
        inOrder(one, [...at], [field, 'least'], [field, 'most'], (value) =>
          typeof value === 'number' ? value : null,
        ),
      ),
    ];
  });
}

function inOrder(
  one: JsonObject,
  at: Path,
  least: Path,
  most: Path,
  measure: (value: Json | undefined) => number | null,
): FileProblem[] {
  const [low, high] = [valueAt(one, least), valueAt(one, most)];
  const [from, to] = [measure(low), measure(high)];
  if (from === null || to === null || from <= to) return [];
  const names = { found: excerpt(low!), most: excerpt(high!), limit: pathText([...at, ...most]) };
  return [fileProblem('limitOrder', [...at, ...least], names)];
}

function tableOf(shape: PostShape): PostTable {
  const { units, country, asOf, source } = shape;
  return { id: '', country, asOf, source, classes: shape.classes.map((one) => classOf(one, units)) };
}

function classOf(shape: ClassShape, units: Units): PostClass {
  const length = (text: string | undefined): Length | null => {
    if (text === undefined) return null;
    const reading = readLength(text, units);
    assert(reading.ok, 'A length in a file that is in shape can be read', { text });
    return reading.length;
  };
  const sizes = (of: ClassShape['least']): PostSizes => ({
    length: length(of?.length),
    height: length(of?.height),
    thickness: length(of?.thickness),
  });
  const { stiffer, ratio, grams } = shape;
  return {
    name: shape.name,
    least: sizes(shape.least),
    most: sizes(shape.most),
    stiffer:
      stiffer === undefined
        ? null
        : {
            length: length(stiffer.length)!,
            height: length(stiffer.height)!,
            thickness: length(stiffer.thickness)!,
          },
    ratio: { least: ratioOf(ratio?.least), most: ratioOf(ratio?.most) },
    grams: { least: grams?.least ?? null, most: grams?.most ?? null },
    takesUneven: shape.uneven ?? true,
    takesRigid: shape.rigid ?? true,
  };
}

/** `1.3` as 13 over 10, so that what is just the limit is within. */
function ratioOf(number: number | undefined): readonly [number, number] | null {
  if (number === undefined) return null;
  const decimals = /\.(\d+)$/.exec(String(number))?.[1]?.length ?? 0;
  // More would pass what multiplies lengths exactly; nobody gives a ratio so finely.
  const scale = 10 ** Math.min(decimals, 4);
  return [Math.round(number * scale), scale];
}
