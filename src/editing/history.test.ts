import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type JsonObject, readLayoutFile, type SavedLayout, writeLayoutFile } from '../files/index.ts';
import { randomFile } from '../files/testing/randomFile.ts';
import { arrange, checkLayout } from '../layout/index.ts';
import { lengthOfTicks, millimetres } from '../measure/index.ts';
import { editSentence } from '../words/index.ts';
import { changed } from './change.ts';
import { partDuplicated } from './duplicate.ts';
import {
  type Edit,
  paperAdded,
  paperTaken,
  partAdded,
  partMoved,
  partTaken,
  settingOf,
  together,
} from './edit.ts';
import { type History, joined, opened, replayed, type Step, stepped } from './history.ts';
import type { InHand } from './inHand.ts';
import { distanceAt, layingsFor, pieceLaid } from './laying.ts';
import { partLaidOn } from './layingOn.ts';
import { mendsOf } from './mends.ts';
import { newPart } from './newPart.ts';
import { pieceMoved, pieceNudged } from './placing.ts';
import {
  marginSet,
  newPaper,
  paperReplaced,
  sheetCutInto,
  sheetsAdded,
  sheetsPriced,
  sheetsTaken,
} from './stash.ts';

const text = JSON.stringify({
  cardwright: 1,
  units: 'in',
  cards: 10,
  base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: 'ivory' },
  papers: {
    ivory: { name: 'Ivory cardstock', sheets: [{ size: ['8 1/2', '11'], count: null }] },
    meadow: { 'x-shelf': 3, sheets: [{ size: ['12', '12'], count: 2 }] },
  },
  parts: [
    { id: 'mat', name: 'Mat', inset: '1/8', paper: 'ivory' },
    { id: 'panel', on: 'mat', size: ['3 3/4', '3'], place: { top: '1/8' }, paper: 'meadow' },
    { id: 'band', on: 'mat', size: ['3 3/4', '1'], place: { below: 'panel', gap: '1/8' }, paper: 'ivory' },
    { id: 'tag', on: 'panel', size: ['1', '1'], paper: 'ivory' },
  ],
});

function fileOf(layout: string): SavedLayout {
  const read = readLayoutFile(layout);
  if (!('file' in read)) throw new Error(JSON.stringify(read.problems));
  return read.file;
}

function begun(): History {
  const history = opened(fileOf(text));
  if ('problems' in history) throw new Error('the file is sound');
  return history;
}

function having(history: History, edit: Edit, joins: string | null = null): History {
  const next = stepped(history, { kind: 'edit', edit, joins });
  if ('problems' in next) throw new Error(JSON.stringify(next.problems));
  return next;
}

function undone(history: History): History {
  return sound(stepped(history, { kind: 'undo' }));
}

function redone(history: History): History {
  return sound(stepped(history, { kind: 'redo' }));
}

function sound(next: ReturnType<typeof stepped>): History {
  if ('problems' in next) throw new Error(JSON.stringify(next.problems));
  return next;
}

const written = ({ file }: History) => writeLayoutFile(file);

describe('an edit', () => {
  const told = (edit: (file: SavedLayout) => Edit) => editSentence(edit(fileOf(text)).told);

  it('is told in a sentence', () => {
    expect(told((file) => settingOf(file, ['parts', 1, 'size', 0], '3 1/2'))).toBe(
      'Panel: width 3 1/2 instead of 3 3/4.',
    );
    expect(told((file) => settingOf(file, ['cards'], 12))).toBe('The set: cards 12 instead of 10.');
    expect(told((file) => settingOf(file, ['base', 'fold'], 'top'))).toBe(
      'The base: fold at the top instead of at the side.',
    );
    expect(told((file) => settingOf(file, ['parts', 1, 'torn', 'right'], '1/2'))).toBe(
      'Panel: torn on the right 1/2.',
    );
    expect(told((file) => settingOf(file, ['papers', 'ivory', 'name'], undefined))).toBe(
      'Ivory cardstock: name left out (it was Ivory cardstock).',
    );
    expect(told((file) => partTaken(file, 0))).toBe('Mat taken off the pile.');
    expect(told((file) => partMoved(file, 3, 2))).toBe('Tag moved down the pile.');
    expect(told((file) => paperAdded(file, 'bark', { sheets: [] }))).toBe('Bark put into the stash.');
    expect(told((file) => paperTaken(file, 'meadow'))).toBe('Meadow taken out of the stash.');
    expect(told(() => partAdded(4, { id: 'dot', size: ['1', '1'], paper: null }))).toBe(
      'Dot laid on the pile.',
    );
  });

  it('makes the objects on the way to a field that is not there yet', () => {
    const history = having(begun(), settingOf(begun().file, ['parts', 1, 'torn', 'right'], '1/2'));
    expect(history.layout.parts[1]!.torn.right).toBe(20_320);
    expect(written(undone(history))).toBe(written(begun()));
  });

  it('that takes a part leaves what lay on it on what it lay on, and what was laid to it loose', () => {
    const { layout } = having(begun(), partTaken(begun().file, 1));
    expect(layout.parts.map(({ id, on }) => [id, on])).toEqual([
      ['mat', 'base'],
      ['band', 'mat'],
      ['tag', 'mat'],
    ]);
    expect(layout.parts[1]!.places[0]!.down).toEqual({ start: null, end: null });
  });

  it('that would leave the file unsound is not made, and what is wrong is told', () => {
    const history = begun();
    const refused = (edit: Edit) => {
      const next = stepped(history, { kind: 'edit', edit, joins: null });
      return 'problems' in next ? next.problems.map(({ code }) => code) : [];
    };
    expect(refused(paperTaken(history.file, 'meadow'))).toEqual(['paperUnknown']);
    expect(refused(partMoved(history.file, 1, 3))).toEqual(['onLater', 'onLater']);
    expect(refused(settingOf(history.file, ['parts', 1, 'size', 0], 'wide'))).toEqual(['lengthUnreadable']);
    expect(refused(settingOf(history.file, ['cards'], 0))).toEqual(['numberRange']);
  });

  it('is made to the file it was made for, else our own code is wrong', () => {
    expect(() => changed(fileOf(text), [{ kind: 'put', path: ['colour'], value: 1 }])).toThrow(
      'file it was made for',
    );
    expect(() => changed(fileOf(text), [{ kind: 'add', path: ['cards'], at: 0, value: 1 }])).toThrow(
      'made for',
    );
    expect(() => changed(fileOf(text), [{ kind: 'take', path: ['parts', 9] }])).toThrow('made for');
  });
});

describe('a history', () => {
  it('undoes and does again, and forgets what was undone when something else is done', () => {
    const start = begun();
    const one = having(start, settingOf(start.file, ['cards'], 12));
    const two = having(one, partTaken(one.file, 3));
    expect(written(undone(two))).toBe(written(one));
    expect(written(redone(undone(two)))).toBe(written(two));
    const other = having(undone(two), settingOf(one.file, ['title'], 'Notes'));
    expect(redone(other)).toBe(other);
    expect(undone(start)).toBe(start);
  });

  it('counts edits of one name that follow one another as one', () => {
    const start = begun();
    const steps = ['3 5/8', '3 1/2', '3 3/8'].reduce(
      (history, width) => having(history, settingOf(history.file, ['parts', 1, 'size', 0], width), 'drag 1'),
      start,
    );
    expect(steps.done).toHaveLength(1);
    expect(editSentence(steps.done[0]!.edit.told)).toBe('Panel: width 3 3/8 instead of 3 3/4.');
    expect(written(undone(steps))).toBe(written(start));
    expect(written(redone(undone(steps)))).toBe(written(steps));
    const next = having(steps, settingOf(steps.file, ['parts', 1, 'size', 0], '3'), 'drag 2');
    expect(next.done).toHaveLength(2);
  });

  it('is the same, whichever steps of one name were made one before', () => {
    const edits: readonly ((file: SavedLayout) => Edit)[] = [
      (file) => settingOf(file, ['parts', 0, 'inset'], '1/4'),
      (file) => settingOf(file, ['parts', 0, 'inset'], '3/8'),
      (file) => settingOf(file, ['cards'], file.cards === 10 ? 12 : 10),
      (file) => partMoved(file, 3, 2),
      (file) => partMoved(file, 2, 3),
    ];
    const anyStep = fc.oneof(
      {
        weight: 8,
        arbitrary: fc.record({
          edit: fc.nat({ max: 4 }),
          joins: fc.constantFrom('drag', 'drag', 'drag', 'word', null),
          isMadeOne: fc.boolean(),
        }),
      },
      { weight: 1, arbitrary: fc.constantFrom<Step>({ kind: 'undo' }, { kind: 'redo' }) },
    );
    let joins = 0;
    fc.assert(
      fc.property(fc.array(anyStep, { minLength: 4, maxLength: 20 }), (choices) => {
        let history = begun();
        const steps: Step[] = [];
        for (const choice of choices) {
          const step: Step =
            'kind' in choice
              ? choice
              : { kind: 'edit', edit: edits[choice.edit]!(history.file), joins: choice.joins };
          const next = stepped(history, step);
          if ('problems' in next) continue;
          history = next;
          const before = steps.at(-1);
          const both = before && 'isMadeOne' in choice && choice.isMadeOne ? joined(before, step) : null;
          if (both === null) steps.push(step);
          else {
            steps[steps.length - 1] = both;
            joins += 1;
          }
        }
        expect(replayed(begun(), steps)).toEqual(history);
      }),
    );
    expect(joins).toBeGreaterThan(50);
  });

  it('of random edits leads back to the byte and forth again, also when they were saved in between', () => {
    /** An edit of the file as it is then, by chance; some leave it unsound. */
    const tried = new Set<number>();
    let all = 0;
    const anyEdit = fc.tuple(fc.nat(), fc.nat(), fc.nat(), fc.constantFrom('1 in', '7 mm', '2 1/2', '0.3'));
    const editOf = (
      { file, layout }: History,
      [kind, first, second, length]: [number, number, number, string],
    ): Edit | null => {
      const inHand: InHand = { file, layout, arrangement: arrange(layout) };
      const pieces = inHand.arrangement.parts.flatMap((arranged, index) =>
        arranged.pieces.map((_, piece) => ({ part: index, piece })),
      );
      const at = pieces.length === 0 ? null : pieces[first % pieces.length]!;
      const axis = second % 2 === 0 ? 'width' : 'height';
      const sheets = [...layout.papers.values()].flatMap(({ id, sheets: all }) =>
        all.map((sheet, index) => ({ id, index, sheet })),
      );
      const stock = sheets.length === 0 ? null : sheets[first % sheets.length]!;
      const mendable = checkLayout(layout, inHand.arrangement);
      const parts = file.parts as readonly JsonObject[];
      const papers = Object.keys(file.papers as JsonObject);
      const part = parts.length === 0 ? null : first % parts.length;
      const makers: readonly (() => Edit | null)[] = [
        () => settingOf(file, ['cards'], 1 + (first % 50)),
        () => settingOf(file, ['base', 'size', first % 2], length),
        () => settingOf(file, ['title'], first % 2 === 0 ? undefined : 'Another'),
        () =>
          partAdded(second % (parts.length + 1), { id: `new-${first}`, size: [length, '1 in'], paper: null }),
        () => (part === null ? null : partTaken(file, part)),
        () => (part === null ? null : partMoved(file, part, second % parts.length)),
        () =>
          part === null
            ? null
            : settingOf(file, ['parts', part, 'torn', 'left'], second % 3 === 0 ? undefined : length),
        () => (part === null ? null : settingOf(file, ['parts', part, 'spare'], second % 9)),
        () => paperAdded(file, `paper-${first}`, { sheets: [{ size: [length, length], count: 1 }] }),
        () => (papers.length === 0 ? null : paperTaken(file, papers[first % papers.length]!)),
        () => together(settingOf(file, ['cards'], 3), settingOf(file, ['smallestScrap'], length)),
        () => {
          const by = { across: lengthOfTicks((first % 9) * 127), down: lengthOfTicks(-(second % 9) * 635) };
          return at && pieceMoved(inHand, at, by).edit;
        },
        () => at && pieceNudged(inHand, at, second % 2 === 0 ? 'left' : 'bottom', millimetres(1)).edit,
        () => {
          if (at === null) return null;
          const ways = layingsFor(inHand, at, axis);
          return pieceLaid(inHand, at, axis, ways[second % ways.length]!);
        },
        () => at && (distanceAt(inHand, at, second % 2 === 0 ? 'left' : 'top')?.editOf(length) ?? null),
        () => {
          const bed = second % 3 === 0 ? 'back' : layout.parts[second % Math.max(1, parts.length)]?.id;
          if (part === null || bed === undefined) return null;
          const laid = partLaidOn(inHand, part, bed);
          return 'edit' in laid ? laid.edit : null;
        },
        () => (part === null ? null : partDuplicated(inHand, part)),
        () => {
          const kinds = ['mat', 'panel', 'strip', 'circle', 'sentiment'] as const;
          const on = part === null ? 'base' : layout.parts[part]!.id;
          return newPart(inHand, { name: 'Tag', on, paper: papers[0] ?? null, kind: kinds[second % 5]! });
        },
        () => {
          const mends = mendable.flatMap((problem) => mendsOf(inHand, problem, millimetres(1)).slice(0, 1));
          return mends[0] ?? null;
        },
        () =>
          newPaper(file, layout, { name: 'Moss', kind: 'cardstock', size: [length, length], count: null }),
        () => {
          const [one, other] = [papers[first % papers.length], papers[second % papers.length]];
          return one === undefined || other === undefined || one === other
            ? null
            : paperReplaced(file, one, other);
        },
        () => stock && sheetsAdded(file, stock.id, [length, length]),
        () => stock && sheetsTaken(file, stock.id, stock.index),
        () => (stock === null || stock.sheet.count === 0 ? null : sheetCutInto(file, stock.id, stock.index)),
        () => stock && sheetsPriced(file, stock.id, stock.index, second % 2 === 0 ? '0.35' : undefined),
        () => stock && marginSet(file, stock.id, stock.index, { edge: 'left', margin: '2 mm' }),
      ];
      tried.add(kind % makers.length);
      all = makers.length;
      return makers[kind % makers.length]!();
    };
    let made = 0;
    fc.assert(
      fc.property(randomFile(), fc.array(anyEdit, { maxLength: 30 }), (random, choices) => {
        const start = opened(fileOf(JSON.stringify(random)));
        if ('problems' in start) throw new Error('a random file is sound');
        let history: History = start;
        for (const choice of choices) {
          const edit = editOf(history, choice);
          const next = edit && stepped(history, { kind: 'edit', edit, joins: null });
          if (next !== null && !('problems' in next)) history = next;
        }
        made += history.done.length;

        let back = history;
        while (back.done.length > 0) back = undone(back);
        expect(written(back)).toBe(written(start));
        let forth = back;
        while (forth.undone.length > 0) forth = redone(forth);
        expect(written(forth)).toBe(written(history));
        const steps: Step[] = history.done.map(({ edit, joins }) => ({ kind: 'edit', edit, joins }));
        const saved = JSON.parse(JSON.stringify([...steps, { kind: 'undo' }, { kind: 'redo' }])) as Step[];
        const again = replayed({ file: start.file, done: [], undone: [] }, saved);
        expect(written(again)).toBe(written(history));
        expect(again.done).toEqual(JSON.parse(JSON.stringify(history.done)));
      }),
      { numRuns: 60 },
    );
    expect(made).toBeGreaterThan(100);
    expect(tried.size).toBe(all);
  });
});
