import type { ReactNode } from 'react';
import type { Json, JsonObject } from '../../../../src/files/index.ts';
import {
  inches,
  type Length,
  type Marking,
  millimetres,
  readLength,
  showLengthWithUnit,
  type Units,
  usualMarkings,
} from '../../../../src/measure/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import { stemOf } from '../../exchange/fileName.ts';
import { saveFile } from '../../exchange/saveFile.ts';
import { type Choice, ChoiceBlank, choicesOf } from '../../form/choiceBlank.tsx';
import { CountBlank } from '../../form/countBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { useCutting } from '../../state/useCutting.ts';
import { useWorld } from '../../world.ts';
import { CutsBlank } from './cutsBlank.tsx';
import { OpenTrimmer } from './openTrimmer.tsx';
import { newTrimmer, type TrimmerField, textIn, trimmerText, withField } from './trimmerText.ts';

/** What the person's trimmer can do, as a printed form, once she wants to say it; from a file and to one. */
export function TrimmerForm(): ReactNode {
  const { trimming } = useMessages();
  const { cutting } = useWorld();
  const { trimmer, file } = useCutting();
  const units = useOpenLayout(({ history }) => history.layout.units);
  const words = trimming.trimmer;
  return (
    <>
      {trimmer !== null && file !== null ? (
        <SaidTrimmer trimmer={trimmer} file={file} />
      ) : (
        <>
          <p>{file === null ? words.none : words.aside}</p>
          <p className="deeds">
            <button type="button" className="say" onClick={() => cutting.say(file ?? newTrimmer(units))}>
              {file === null ? words.say : words.takeUp}
            </button>
          </p>
        </>
      )}
      <OpenTrimmer />
    </>
  );
}

/** A trimmer that is said, with how its fields are said otherwise. */
interface Said {
  readonly trimmer: Trimmer;
  readonly file: JsonObject;
  readonly units: Units;
  /** Says it with a field set, or with `undefined` taken away; a sentence where that may not be. */
  readonly tries: (path: TrimmerField, value: Json | undefined) => string | null;
}

function SaidTrimmer({ trimmer, file }: { readonly trimmer: Trimmer; readonly file: JsonObject }): ReactNode {
  const { trimming } = useMessages();
  const { cutting } = useWorld();
  const words = trimming.trimmer;
  const said: Said = {
    trimmer,
    file,
    units: file.units === 'mm' ? 'mm' : 'in',
    tries(path, value) {
      // What was said in the same moment counts already.
      const now = cutting.getState().file ?? file;
      const problems = cutting.say(withField(now, path, value));
      return problems === null ? null : problems.map(fileProblemSentence).join(' ');
    },
  };
  return (
    <>
      <Marked {...said} />
      <Limits {...said} />
      <Measured {...said} />
      <Work {...said} />
      <TestCut {...said} />
      <p className="deeds">
        <button
          type="button"
          className="say"
          onClick={() =>
            saveFile(`${stemOf(trimmer.name || words.fileName)}.trimmer.json`, trimmerText(file))
          }
        >
          {words.save}
        </button>
        <button type="button" className="say" onClick={() => cutting.layAside()}>
          {words.layAside}
        </button>
      </p>
    </>
  );
}

/** Marks that trimmers have, and the whole steps that suit sore eyes. */
const marksOffered = {
  in: ['1/4 in', '1/8 in', '1/16 in', '1/32 in'],
  mm: ['0.5 mm', '1 mm', '2 mm', '5 mm', '10 mm'],
} as const satisfies Record<Units, readonly string[]>;

function Marked({ trimmer, file, units, tries }: Said): ReactNode {
  const { trimmer: words } = useMessages().trimming;
  const shown = useShown(units);
  const own = textIn(file, ['marks']);
  const texts = [...new Set([...marksOffered[units], ...(own === null ? [] : [own])])];
  const choices = texts.flatMap((text): Choice<string>[] => {
    const reading = readLength(text, units);
    return reading.ok ? [{ value: text, says: words.marked(shown(reading.length)), own: false }] : [];
  });
  return (
    <Sentence
      says={words.named}
      blanks={{
        name: (
          <TextBlank
            name="name"
            label={words.labels.name}
            value={trimmer.name}
            tries={(text) => tries(['name'], text.trim() === '' ? undefined : text)}
          />
        ),
        units: (
          <ChoiceBlank
            name="units"
            label={words.labels.units}
            value={units}
            choices={choicesOf(words.units)}
            tries={(value) => tries(['units'], value)}
          />
        ),
        marks: (
          <ChoiceBlank
            name="marks"
            label={words.labels.marks}
            value={own ?? ''}
            choices={[...choices, { value: '', says: words.unmarked, own: false }]}
            tries={(text) => tries(['marks'], text === '' ? undefined : text)}
          />
        ),
      }}
    />
  );
}

/** What stands on the ruler when a blank is opened in which no length stands yet. */
const begun = {
  in: { long: inches(12), narrow: inches(1) },
  mm: { long: millimetres(300), narrow: millimetres(25) },
} as const satisfies Record<Units, Record<'long' | 'narrow', Length>>;

function Limits(said: Said): ReactNode {
  const { trimmer: words } = useMessages().trimming;
  const { trimmer, units } = said;
  return (
    <Sentence
      says={words.limits}
      blanks={{
        longest: (
          <LimitBlank
            said={said}
            path={['longest']}
            label={words.labels.longest}
            length={trimmer.longest}
            begin={begun[units].long}
            words={words.longest}
          />
        ),
        narrowest: (
          <LimitBlank
            said={said}
            path={['narrowest']}
            label={words.labels.narrowest}
            length={trimmer.narrowest}
            begin={begun[units].narrow}
            words={words.narrowest}
          />
        ),
      }}
    />
  );
}

function Measured(said: Said): ReactNode {
  const { trimmer: words } = useMessages().trimming;
  const { trimmer, units, tries } = said;
  return (
    <Sentence
      says={words.measured}
      blanks={{
        edge: (
          <ChoiceBlank
            name="edge"
            label={words.labels.edge}
            value={trimmer.measuringEdge}
            choices={choicesOf(words.sides)}
            tries={(value) => tries(['measuringEdge'], value)}
          />
        ),
        reach: (
          <LimitBlank
            said={said}
            path={['reach', 'measuringSide']}
            label={words.labels.reach}
            length={trimmer.reach.measuringSide}
            begin={begun[units].long}
            words={words.reach}
          />
        ),
        other: (
          <LimitBlank
            said={said}
            path={['reach', 'otherSide']}
            label={words.labels.other}
            length={trimmer.reach.otherSide}
            begin={begun[units].long}
            words={words.other}
          />
        ),
        hand: (
          <ChoiceBlank
            name="hand"
            label={words.labels.hand}
            value={trimmer.hand}
            choices={choicesOf(words.sides)}
            tries={(value) => tries(['hand'], value)}
          />
        ),
      }}
    />
  );
}

function Work({ trimmer, tries }: Said): ReactNode {
  const { trimmer: words } = useMessages().trimming;
  return (
    <Sentence
      says={words.work}
      blanks={{
        sheets: (
          <CountBlank
            name="sheets"
            label={words.labels.sheets}
            value={trimmer.sheetsAtOnce}
            least={1}
            most={100}
            shown={words.sheets(trimmer.sheetsAtOnce)}
            tries={(count) => tries(['sheetsAtOnce'], count)}
          />
        ),
        cuts: (
          <CutsBlank
            name="cuts"
            label={words.labels.cuts}
            value={trimmer.cutsPerSitting}
            tries={(count) => tries(['cutsPerSitting'], count ?? undefined)}
          />
        ),
      }}
    />
  );
}

/** What a test cut is set to where nothing else is said: usual, and long enough to be measured well. */
const testCutOf = { in: '4 in', mm: '100 mm' } as const satisfies Record<Units, string>;

/** How to find out whether the ruler is true, and what was found. */
function TestCut(said: Said): ReactNode {
  const { test } = useMessages().trimming.trimmer;
  const { file, units, tries } = said;
  const isSaid = file.testCut !== undefined && file.testCut !== null;
  const set = testCutOf[units];
  return (
    <>
      <h3>{test.heading}</h3>
      <p>{test.how[units]}</p>
      {isSaid ? (
        <Sentence
          says={test.says}
          blanks={{
            set: <TestLength said={said} field="set" label={test.set} />,
            measured: <TestLength said={said} field="measured" label={test.measured} />,
          }}
        />
      ) : null}
      <p className="deeds">
        <button
          type="button"
          className="say"
          onClick={() => tries(['testCut'], isSaid ? undefined : { set, measured: set })}
        >
          {isSaid ? test.none : test.say}
        </button>
      </p>
    </>
  );
}

/** As fine as a test cut can be read off a good rule. */
const readTo = {
  in: usualMarkings['1/32 in'],
  mm: usualMarkings['0.5 mm'],
} as const satisfies Record<Units, Marking>;

function TestLength({
  said: { file, units, tries },
  field,
  label,
}: {
  readonly said: Said;
  readonly field: 'set' | 'measured';
  readonly label: string;
}): ReactNode {
  const shown = useShown(units);
  const text = textIn(file, ['testCut', field]) ?? testCutOf[units];
  const reading = readLength(text, units);
  if (!reading.ok) return null;
  return (
    <LengthBlank
      name={field}
      label={label}
      value={reading.length}
      typed={text}
      shown={shown(reading.length)}
      marking={readTo[units]}
      least={1}
      tries={(typed) => tries(['testCut', field], typed)}
    />
  );
}

/** By how much the arrow keys change a limit. */
const countedBy = {
  in: usualMarkings['1/16 in'],
  mm: usualMarkings['1 mm'],
} as const satisfies Record<Units, Marking>;

/** A blank for a length that the trimmer may or may not be limited to. */
function LimitBlank({
  said: { file, units, tries },
  path,
  label,
  length,
  begin,
  words,
}: {
  readonly said: Said;
  readonly path: TrimmerField;
  readonly label: string;
  /** `null`: no limit. */
  readonly length: Length | null;
  /** Where the ruler begins when there is no limit yet. */
  readonly begin: Length;
  readonly words: {
    readonly none: string;
    /** What makes it so. */
    readonly toNone: string;
    readonly limited: (length: string) => string;
  };
}): ReactNode {
  const shown = useShown(units);
  return (
    <LengthBlank
      name={path.join('.')}
      label={label}
      value={length ?? begin}
      typed={textIn(file, path) ?? ''}
      shown={length === null ? words.none : words.limited(shown(length))}
      marking={countedBy[units]}
      least={1}
      // No text is what stands there before a first limit is typed, and after that was taken back.
      tries={(text) => tries(path, text === '' ? undefined : text)}
      instead={length === null ? [] : [{ says: words.toNone, tries: () => tries(path, undefined) }]}
    />
  );
}

function useShown(units: Units): (length: Length) => string {
  const numbers = useNumbers();
  return (length) => numbers.shown(showLengthWithUnit(length, units, 'printed'));
}
