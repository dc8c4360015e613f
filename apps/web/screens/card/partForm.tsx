import { lazy, type ReactNode, Suspense } from 'react';
import {
  distanceAt,
  type Edit,
  type InHand,
  layingOf,
  layingsFor,
  type PieceAt,
  partLaidOn,
  pieceLaid,
  settingOf,
  together,
} from '../../../../src/editing/index.ts';
import { isList, type Json, type Path, valueAt } from '../../../../src/files/index.ts';
import { adhesiveFor } from '../../../../src/finished/index.ts';
import { type ArrangedPart, type Face, isFolded } from '../../../../src/layout/index.ts';
import {
  type Axis,
  type Edge,
  inches,
  type Length,
  type Marking,
  millimetres,
  showLengthWithUnit,
  zero,
} from '../../../../src/measure/index.ts';
import { layingWords, type PartLaying, partName } from '../../../../src/words/index.ts';
import { ChoiceBlank, choicesOf } from '../../form/choiceBlank.tsx';
import { CountBlank } from '../../form/countBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { PapersBlank } from '../../form/papersBlank.tsx';
import { Sentence, Words } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { type Messages, useMessages } from '../../messages/messages.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { asTyped } from './asTyped.ts';
import { BoughtForm } from './boughtForm.tsx';
import { EdgesBlanks } from './edgesBlanks.tsx';
import { ShapeForm } from './shapeForm.tsx';
import { ShownWords } from './shownWords.tsx';

/** Few parts are torn: what reckons with tears is loaded with the first that is. */
const TearForm = lazy(async () => ({ default: (await import('./tearForm.tsx')).TearForm }));

/** A part in words: sentences of a printed form, whose blanks are filled by hand. */
export function PartForm({ index }: { readonly index: number }): ReactNode {
  const inHand = useInHand();
  const { card } = useMessages();
  const arranged = inHand.arrangement.parts[index]!;
  const { part } = arranged;
  const isRectangle = part.shape.kind === 'rectangle';
  const folded = isFolded(part.shape);
  const says =
    part.extent.by === 'diameter'
      ? card.part.byDiameter
      : folded
        ? card.part.isFolded.bySize
        : card.part[isRectangle ? 'is' : 'isShaped'][saysOf(arranged)];
  const listed = isList(valueAt(inHand.file, ['parts', index, 'place'])) && part.places.length > 1;
  const paper = inHand.layout.papers.get(part.papers[0] ?? '');
  const marking = useMarking();
  const blanks = blanksOf(inHand, index, { card, marking });
  return (
    <div className="part-form">
      <Sentence says={says} blanks={blanks} />
      {listed
        ? part.places.map((_, piece) => (
            <Sentence
              // Pieces are told apart by their number alone.
              // biome-ignore lint/suspicious/noArrayIndexKey: see above
              key={piece}
              says={card.part.pieceLies}
              blanks={{ number: piece + 1, ...placeBlanks(inHand, { part: index, piece }, card) }}
            />
          ))
        : null}
      {Object.values(part.torn).some((depth) => depth > zero) ? (
        <Suspense>
          <TearForm index={index} />
        </Suspense>
      ) : null}
      <ShapeForm index={index} />
      {isRectangle ? <Sentence says={card.part.tuck} blanks={blanks} /> : null}
      {!folded && (part.dieCut || !isRectangle || part.margin > zero) ? (
        <Sentence says={card.part.margin} blanks={blanks} />
      ) : null}
      {part.adhere === 'raised' ? <Sentence says={card.part.foam} blanks={blanks} /> : null}
      {part.papers.length === 0 ? (
        <BoughtForm says={card.readyMade.part} path={['parts', index]} bought={part} />
      ) : null}
      <Sentence says={folded ? card.part.moreFolded : card.part.more} blanks={blanks} />
      {paper === undefined ? null : <Sentence says={card.part.from} blanks={blanks} />}
      {paper !== undefined && paper.up !== 'any' ? <Sentence says={card.part.print} blanks={blanks} /> : null}
      {paper?.back ? <Sentence says={card.part.side} blanks={blanks} /> : null}
      <ShownWords part={part.id} />
    </div>
  );
}

/** An inset part says where it lies only where its place is given besides. */
function saysOf({ part }: ArrangedPart): 'bySize' | 'byInset' | 'byInsetPlaced' {
  if (part.extent.by === 'size') return 'bySize';
  const placed = part.places.some(({ across, down }) =>
    [across.start, across.end, down.start, down.end].some((anchor) => anchor !== null),
  );
  return placed ? 'byInsetPlaced' : 'byInset';
}

interface Manner {
  readonly card: Messages['card'];
  /** The marks that lengths are set at. */
  readonly marking: Marking;
}

function blanksOf(inHand: InHand, index: number, manner: Manner): Readonly<Record<string, ReactNode>> {
  const { file, layout } = inHand;
  const { card } = manner;
  const { part } = inHand.arrangement.parts[index]!;
  const path = (...field: Path): Path => ['parts', index, ...field];
  const set = (field: Path) => (value: Json | undefined) => settingOf(file, path(...field), value);
  const { blanks } = card;
  const withoutFields = (edit: Edit, fields: readonly string[]) =>
    together(edit, ...fields.map((field) => set([field])(undefined)));
  return {
    name: <TextBlank name="name" label={blanks.name} value={part.name} editOf={set(['name'])} />,
    paper: (
      <PapersBlank
        name="paper"
        label={blanks.paper}
        layout={layout}
        papers={part.papers}
        // What is cut from paper is as thick and heavy as that.
        editOf={(paper) =>
          withoutFields(set(['paper'])(paper), paper === null ? ['from'] : ['thickness', 'grams'])
        }
      />
    ),
    on: <OnBlank inHand={inHand} index={index} />,
    ...sizeBlanks(inHand, index, manner),
    ...placeBlanks(inHand, { part: index, piece: 0 }, card),
    torn: <EdgesBlanks index={index} field="torn" />,
    tuck: <EdgesBlanks index={index} field="tuck" />,
    margin: <MarginBlank index={index} />,
    foam: <FoamBlank index={index} />,
    adhere: (
      <ChoiceBlank
        name="adhere"
        label={blanks.adhere}
        value={part.adhere}
        choices={choicesOf(card.adhere)}
        editOf={(adhere) => withoutFields(set(['adhere'])(adhere), adhere === 'raised' ? [] : ['foam'])}
      />
    ),
    count: (
      <CountBlank
        name="count"
        label={blanks.count}
        value={part.places.length}
        least={1}
        most={1000}
        editOf={(count) => countEdit(inHand, index, count)}
      />
    ),
    spare: (
      <CountBlank
        name="spare"
        label={blanks.spare}
        value={part.spare}
        least={0}
        most={100_000}
        editOf={set(['spare'])}
      />
    ),
    cut: (
      <ChoiceBlank
        name="cut"
        label={blanks.cut}
        value={part.dieCut ? 'die' : 'straight'}
        choices={choicesOf(part.shape.kind === 'rectangle' ? card.cut : card.cutShaped)}
        editOf={(cut) => set(['dieCut'])(cut === 'die' ? true : undefined)}
      />
    ),
    stamped: (
      <ChoiceBlank
        name="stamped"
        label={blanks.stamped}
        value={part.stamped ? 'yes' : 'no'}
        choices={choicesOf(card.stamped)}
        editOf={(stamped) => set(['stamped'])(stamped === 'yes' ? true : undefined)}
      />
    ),
    from: (
      <ChoiceBlank
        name="from"
        label={blanks.from}
        value={part.from ?? 'sheets'}
        choices={choicesOf(card.from)}
        editOf={(from) => set(['from'])(from === 'sheets' ? undefined : from)}
      />
    ),
    lies: (
      <ChoiceBlank
        name="lies"
        label={blanks.lies}
        value={part.lies}
        choices={choicesOf(card.lies)}
        editOf={set(['lies'])}
      />
    ),
    turn: (
      <ChoiceBlank
        name="turn"
        label={blanks.turn}
        value={part.turn ?? 'usual'}
        choices={choicesOf(card.turn)}
        editOf={(turn) => set(['turn'])(turn === 'usual' ? undefined : turn)}
      />
    ),
    side: (
      <ChoiceBlank
        name="side"
        label={blanks.side}
        value={part.side}
        choices={choicesOf(card.side)}
        editOf={set(['side'])}
      />
    ),
  };
}

/** The words of a small catalogue as what may stand in a blank. */
/** Pieces of a list of places come and go with the count; one place for all stays. */
function countEdit({ file }: InHand, index: number, count: number): Edit {
  const place = valueAt(file, ['parts', index, 'place']);
  const counted = settingOf(file, ['parts', index, 'count'], count === 1 ? undefined : count);
  if (!isList(place)) return counted;
  const last = place.at(-1)!;
  const places = Array.from({ length: count }, (_, piece) => place[piece] ?? last);
  return together(counted, settingOf(file, ['parts', index, 'place'], places));
}

// --- How large ---

function sizeBlanks(
  inHand: InHand,
  index: number,
  { card, marking }: Manner,
): Readonly<Record<'width' | 'height' | 'inset' | 'diameter', ReactNode>> {
  const { file, arrangement } = inHand;
  const { part, cut } = arrangement.parts[index]!;
  const field = (...rest: Path): Path => ['parts', index, ...rest];
  const typed = (path: Path) => {
    const text = valueAt(file, path);
    return typeof text === 'string' ? text : undefined;
  };
  const { extent } = part;
  const side = (axis: Axis): ReactNode => {
    if (extent.by !== 'size') return null;
    const path = field('size', axis === 'width' ? 0 : 1);
    const own = extent[axis];
    return (
      <LengthBlank
        name={axis}
        label={card.blanks[axis]}
        value={own ?? cut?.[axis] ?? marking.step}
        typed={own === null ? undefined : typed(path)}
        shown={own === null ? (axis === 'width' ? card.fillWidth : card.fillHeight) : undefined}
        marking={marking}
        least={1}
        editOf={(text) => settingOf(file, path, text)}
        instead={
          isFolded(part.shape)
            ? []
            : [
                ...(own === null
                  ? []
                  : [{ says: card.fillInstead, edit: () => fillingEdit(inHand, index, axis) }]),
                { says: card.insetInstead, edit: () => insetEdit(inHand, index, marking) },
              ]
        }
      />
    );
  };
  return {
    width: side('width'),
    height: side('height'),
    inset:
      extent.by !== 'inset' ? null : (
        <LengthBlank
          name="inset"
          label={card.blanks.inset}
          value={extent.inset}
          typed={typed(field('inset'))}
          marking={marking}
          least={1}
          editOf={(text) => settingOf(file, field('inset'), text)}
          instead={
            cut === null || part.shape.kind === 'circle'
              ? []
              : [{ says: card.sizeInstead, edit: () => ownSizeEdit(inHand, index) }]
          }
        />
      ),
    diameter:
      extent.by !== 'diameter' ? null : (
        <LengthBlank
          name="diameter"
          label={card.blanks.diameter}
          value={extent.diameter}
          typed={typed(field('diameter'))}
          marking={marking}
          least={1}
          editOf={(text) => settingOf(file, field('diameter'), text)}
        />
      ),
  };
}

/** Fills an axis from edge to edge as its borders are now, so that a gap or a border that was there stays. */
function fillingEdit({ file, layout, arrangement }: InHand, index: number, axis: Axis): Edit {
  const path: Path = ['parts', index, 'size', axis === 'width' ? 0 : 1];
  const filled = settingOf(file, path, 'fill');
  const { part, pieces } = arrangement.parts[index]!;
  const place = part.places[0]!;
  const span = axis === 'width' ? place.across : place.down;
  const borders = pieces[0]?.borders;
  if (span.start !== null && span.end !== null) return filled;
  if (!borders || part.places.length > 1) return filled;
  const at = (edge: Edge): Edit =>
    settingOf(file, ['parts', index, 'place', edge], showLengthWithUnit(borders[edge], layout.units));
  const [start, end] = axis === 'width' ? (['left', 'right'] as const) : (['top', 'bottom'] as const);
  const place0 = valueAt(file, ['parts', index, 'place']);
  if (place0 === undefined) {
    const both = { [start]: shown(borders[start]), [end]: shown(borders[end]) };
    return together(filled, settingOf(file, ['parts', index, 'place'], both));
  }
  return together(
    filled,
    ...(span.start === null ? [at(start)] : []),
    ...(span.end === null ? [at(end)] : []),
  );

  function shown(length: Length): string {
    return showLengthWithUnit(length, layout.units);
  }
}

/** A border all round instead of a size of its own: the smaller of those it has now, else one mark. */
function insetEdit({ file, layout, arrangement }: InHand, index: number, marking: Marking): Edit {
  const { pieces } = arrangement.parts[index]!;
  const borders = Object.values(pieces[0]?.borders ?? {}).filter((border) => border > zero);
  const border = borders.length === 0 ? marking.step : (Math.min(...borders) as Length);
  return together(
    settingOf(file, ['parts', index, 'inset'], showLengthWithUnit(border, layout.units)),
    settingOf(file, ['parts', index, 'size'], undefined),
    settingOf(file, ['parts', index, 'place'], undefined),
  );
}

/** The size that it has now as one of its own, laid in the middle. */
function ownSizeEdit({ file, layout, arrangement }: InHand, index: number): Edit {
  const { width, height } = arrangement.parts[index]!.cut!;
  const shown = (length: Length) => showLengthWithUnit(length, layout.units);
  return together(
    settingOf(file, ['parts', index, 'size'], [shown(width), shown(height)]),
    settingOf(file, ['parts', index, 'inset'], undefined),
  );
}

// --- Where it lies ---

function placeBlanks(
  inHand: InHand,
  at: PieceAt,
  card: Messages['card'],
): Readonly<Record<'across' | 'down', ReactNode>> {
  return {
    across: <LyingBlanks inHand={inHand} at={at} axis="width" words={card} />,
    down: <LyingBlanks inHand={inHand} at={at} axis="height" words={card} />,
  };
}

/** `⅛ from the left`, `in the middle down`, `⅛ from the left and ⅛ from the right`. */
function LyingBlanks({
  inHand,
  at,
  axis,
  words,
}: {
  readonly inHand: InHand;
  readonly at: PieceAt;
  readonly axis: Axis;
  readonly words: Messages['card'];
}): ReactNode {
  const { layout } = inHand;
  const marking = useMarking();
  const laying = layingOf(inHand, at, axis);
  const ways = layingsFor(inHand, at, axis);
  const key = axis === 'width' ? 'across' : 'down';
  const besideName = (each: PartLaying) => ('part' in each ? partName(layout, each.part) : '');
  const distance = (edge: Edge): ReactNode => {
    const found = distanceAt(inHand, at, edge);
    if (found === null) return null;
    return (
      <LengthBlank
        name={`${edge} ${at.piece}`}
        label={axis === 'width' ? words.blanks.distanceAcross : words.blanks.distanceDown}
        value={found.length}
        typed={found.typed}
        marking={marking}
        least={Number.MIN_SAFE_INTEGER}
        editOf={found.editOf}
      />
    );
  };
  const [start, end] = axis === 'width' ? (['left', 'right'] as const) : (['top', 'bottom'] as const);
  if (laying.how === 'between') {
    const [before = '', rest = ''] = words.between[key].split('{start}');
    const [middle = '', behind = ''] = rest.split('{end}');
    return (
      <>
        <Words>{before}</Words>
        {distance(start)}
        <Words>{middle}</Words>
        {distance(end)}
        <Words>{behind}</Words>
      </>
    );
  }
  return (
    <>
      {distance(start)}
      {distance(end)}
      {laying.how === 'middle' ? null : <Words> </Words>}
      <ChoiceBlank
        name={`${key} ${at.piece}`}
        label={words.blanks[key]}
        value={keyOf(laying)}
        choices={ways.map((way) => ({ value: keyOf(way), says: layingWords(way, axis, besideName(way)) }))}
        editOf={(value) => {
          const way = ways.find((each) => keyOf(each) === value) ?? laying;
          return pieceLaid(inHand, at, axis, way);
        }}
      />
    </>
  );
}

function keyOf(laying: PartLaying): string {
  return 'part' in laying ? `${laying.how} ${laying.part}` : laying.how;
}

/** What it lies on: a face of the card or a part that stands lower in the pile. */
function OnBlank({ inHand, index }: { readonly inHand: InHand; readonly index: number }): ReactNode {
  const { card } = useMessages();
  const { file, layout } = inHand;
  const part = layout.parts[index]!;
  const faces: readonly Face[] = layout.base.fold === 'none' ? ['base', 'back'] : ['base', 'inside', 'back'];
  const choices = [
    ...faces.map((face) => ({ value: face, says: card.faces[face] })),
    ...layout.parts.slice(0, index).map(({ id, name }) => ({ value: id, says: name, own: true })),
  ];
  return (
    <ChoiceBlank
      name="on"
      label={card.blanks.on}
      value={part.on}
      choices={choices}
      editOf={(on) => {
        const laid = partLaidOn(inHand, index, on);
        return 'edit' in laid ? laid.edit : settingOf(file, ['parts', index, 'on'], on);
      }}
    />
  );
}

// --- What is left round it, and what raises it ---

function MarginBlank({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const { file, layout } = useInHand();
  const marking = useMarking();
  const { margin } = layout.parts[index]!;
  const path = ['parts', index, 'margin'];
  return (
    <LengthBlank
      name="margin"
      label={card.blanks.margin}
      value={margin === zero ? usualMargin[layout.units] : margin}
      typed={asTyped(file, path)}
      shown={margin === zero ? card.noMargin : undefined}
      marking={marking}
      least={1}
      editOf={(text) => settingOf(file, path, text)}
      instead={
        margin === zero ? [] : [{ says: card.leaveNoMargin, edit: () => settingOf(file, path, undefined) }]
      }
    />
  );
}

function FoamBlank({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const { file, layout } = useInHand();
  const marking = useMarking();
  const { foam } = layout.parts[index]!;
  const path = ['parts', index, 'foam'];
  return (
    <LengthBlank
      name="foam"
      label={card.blanks.foam}
      value={foam ?? adhesiveFor(layout, 'raised').thickness}
      typed={asTyped(file, path)}
      shown={foam === null ? card.asUsual : undefined}
      marking={marking}
      least={1}
      editOf={(text) => settingOf(file, path, text)}
      instead={
        foam === null ? [] : [{ says: card.tear.asUsual, edit: () => settingOf(file, path, undefined) }]
      }
    />
  );
}

/** Where the blank opens until something is said (common practice, no source). */
const usualMargin = { in: inches(1, 8), mm: millimetres(3) } as const;
