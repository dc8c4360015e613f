import { type ReactNode, useRef, useState } from 'react';
import {
  changed,
  type InHand,
  outlineSet,
  type PlainShape,
  settingOf,
  shapeSet,
} from '../../../../src/editing/index.ts';
import { type Length, lengthOfTicks } from '../../../../src/measure/index.ts';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { FileChoice } from '../../form/fileChoice.tsx';
import { FileRefused, type RefusedFile } from '../../form/fileRefused.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence, Words } from '../../form/sentence.tsx';
import { type Messages, useMessages } from '../../messages/messages.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';
import { asTyped } from './asTyped.ts';
import { edges } from './edgesBlanks.tsx';
import { FoldLengthBlank, GapBlank, LoopsBlank, SlantBlank } from './foldBlanks.tsx';

/** The shape of a part in a sentence, with what more is said of it, and below it the way to a drawing of one's own. */
export function ShapeForm({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const { layout } = useInHand();
  const { kind } = layout.parts[index]!.shape;
  const says = kind in card.shape.says ? card.shape.says[kind as Said] : card.shape.says.alone;
  return (
    <>
      <Sentence
        says={says}
        blanks={{
          shape: <ShapeBlank index={index} />,
          corner: <CornerBlank index={index} />,
          ends: <EndsBlanks index={index} />,
          depth: <DepthBlank index={index} />,
          template: <FoldLengthBlank index={index} field="template" />,
          slant: <SlantBlank index={index} />,
          gap: <GapBlank index={index} />,
          loops: <LoopsBlank index={index} />,
          overlap: <FoldLengthBlank index={index} field="overlap" />,
        }}
      />
      <OutlineFromFile index={index} />
    </>
  );
}

/** The shapes of which more is said. */
type Said = keyof Messages['card']['shape']['says'];

function ShapeBlank({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const inHand = useInHand();
  const { shape } = inHand.layout.parts[index]!;
  // Shapes are tried one after another, also by the arrow keys: each is made from what the part was before.
  const tried = useRef<{ readonly from: InHand; readonly to: string } | null>(null);
  const plain: readonly PlainShape[] = [
    'rectangle',
    'rounded',
    'oval',
    'circle',
    'banner',
    'ribbon',
    'loops',
    'knot',
  ];
  return (
    <ChoiceBlank
      name="shape"
      label={card.shape.label}
      value={shape.kind}
      choices={[
        ...plain.map((kind) => ({ value: kind, says: card.shape.kinds[kind] })),
        ...(shape.kind === 'outline' ? [{ value: 'outline' as const, says: card.shape.kinds.outline }] : []),
      ]}
      editOf={(kind) => {
        if (kind === 'outline') return null;
        const { current } = tried;
        const from = current?.to === JSON.stringify(inHand.file) ? current.from : inHand;
        const edit = shapeSet(inHand, index, kind, from);
        tried.current = { from, to: JSON.stringify(changed(inHand.file, edit.changes).file) };
        return edit;
      }}
    />
  );
}

function CornerBlank({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const { file, layout } = useInHand();
  const marking = useMarking();
  const { shape } = layout.parts[index]!;
  if (shape.kind !== 'rounded') return null;
  const path = ['parts', index, 'corner'];
  return (
    <LengthBlank
      name="corner"
      label={card.shape.corner}
      value={shape.corner}
      typed={asTyped(file, path)}
      marking={marking}
      least={1}
      editOf={(text) => settingOf(file, path, text)}
    />
  );
}

/** `left edge straight, right edge notched, …` */
function EndsBlanks({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const inHand = useInHand();
  const { file, layout } = inHand;
  const { shape } = layout.parts[index]!;
  if (shape.kind !== 'banner') return null;
  const ways = ['straight', 'notched', 'pointed', 'slanted'] as const;
  return edges.map((edge, at) => (
    <span key={edge}>
      <Words>{card.shape.end(card.torn.edges[edge])}</Words>
      <ChoiceBlank
        name={`end ${edge}`}
        label={card.shape.endLabel(card.torn.edges[edge])}
        value={shape.ends[edge] ?? 'straight'}
        choices={ways.map((way) => ({ value: way, says: card.shape.ends[way] }))}
        editOf={(way) => {
          if (way !== 'straight') return settingOf(file, ['parts', index, 'ends', edge], way);
          // With its last end straight it is a banner no more.
          return Object.keys(shape.ends).some((other) => other !== edge)
            ? settingOf(file, ['parts', index, 'ends', edge], undefined)
            : shapeSet(inHand, index, 'rectangle', inHand);
        }}
      />
      {at + 1 < edges.length ? <Words>{', '}</Words> : null}
    </span>
  ));
}

function DepthBlank({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const { file, layout, arrangement } = useInHand();
  const marking = useMarking();
  const { shape } = layout.parts[index]!;
  if (shape.kind !== 'banner') return null;
  const { depth } = shape;
  const path = ['parts', index, 'endDepth'];
  const seen = arrangement.parts[index]!.seen;
  const half: Length =
    seen === null
      ? marking.step
      : lengthOfTicks(Math.max(1, Math.floor(Math.min(seen.width, seen.height) / 2)));
  return (
    <LengthBlank
      name="depth"
      label={card.shape.depth}
      value={depth ?? half}
      typed={asTyped(file, path)}
      shown={depth === null ? card.shape.halfDeep : undefined}
      marking={marking}
      least={1}
      editOf={(text) => settingOf(file, path, text)}
      instead={
        depth === null ? [] : [{ says: card.shape.halfInstead, edit: () => settingOf(file, path, undefined) }]
      }
    />
  );
}

/** Takes the outline from a drawing; what is wrong with the drawing is told, and the part stays as it was. */
function OutlineFromFile({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const store = useOpenLayoutStore();
  const { layout } = useInHand();
  const part = layout.parts[index]!;
  const [refused, setRefused] = useState<RefusedFile | null>(null);

  const take = async (chosen: File) => {
    // Few will: what reads drawings is loaded with the first.
    const [{ outlineFile }, bytes] = await Promise.all([
      import('./outlineFile.ts'),
      chosen.arrayBuffer().catch(() => null),
    ]);
    const read = bytes === null ? null : outlineFile(new Uint8Array(bytes));
    if (read === null || 'refused' in read) {
      setRefused({ name: chosen.name, sentences: read?.refused ?? null });
      return;
    }
    // What was done while it was read stays.
    const { history, arrangement } = store.getState();
    const at = history.layout.parts.findIndex(({ id }) => id === part.id);
    if (at < 0) return;
    const inHand = { file: history.file, layout: history.layout, arrangement };
    const problems = store.make(outlineSet(inHand, at, read));
    setRefused(
      problems === null ? null : { name: chosen.name, sentences: problems.map(fileProblemSentence) },
    );
  };

  return (
    <div className="from-drawing">
      <p className="deeds">
        <FileChoice
          says={part.shape.kind === 'outline' ? card.shape.fromAnother : card.shape.fromFile}
          accept=".svg,image/svg+xml"
          onChosen={([chosen]) => void take(chosen)}
        />
      </p>
      <FileRefused refused={refused} says={card.shape.refused} noText={card.shape.noText} />
    </div>
  );
}
