import { type ReactNode, useState } from 'react';
import { kitLengthSet } from '../../../../src/editing/index.ts';
import { layoutName } from '../../../../src/kits/index.ts';
import { lengthNames } from '../../../../src/layout/index.ts';
import { readLength } from '../../../../src/measure/index.ts';
import { fileProblemSentence, kitProblemSentence, whyNotALength } from '../../../../src/words/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useKit, useOpenKit, useShowing } from './kitContext.ts';

/** Another length in one of the layouts, refused with the reason where the layout would have new errors. */
export function OtherLength(): ReactNode {
  const { kit: says } = useMessages();
  const kit = useOpenKit(({ history }) => history.kit);
  const file = useOpenKit(({ history }) => history.file);
  const showing = useShowing();
  const numbers = useNumbers();
  const store = useKit();
  const [chosen, setChosen] = useState({ layout: '', part: '', length: '' });
  const one = kit.layouts.find(({ id }) => id === chosen.layout) ?? kit.layouts[0]!;
  const parts = [
    { value: 'base', says: says.base, own: false },
    ...one.layout.parts.map(({ id, name }) => ({ value: id, says: name, own: true })),
  ];
  const part = parts.find(({ value }) => value === chosen.part) ?? parts[1] ?? parts[0]!;
  const names = lengthNames(one.layout, part.value).filter((name) => says.lengthNames[name] !== undefined);
  const length = names.find((name) => name === chosen.length) ?? names[0] ?? 'width';
  const tried = (text: string): string | null => {
    const written = numbers.written(text) ?? text;
    const reading = readLength(written, one.layout.units);
    if (!reading.ok) return whyNotALength(reading, written);
    const wanted = { layout: one.id, part: part.value, name: length, length: reading.length };
    const edit = kitLengthSet(file, kit, wanted);
    if (!('refused' in edit)) {
      const problems = store.make(edit);
      return problems === null ? null : problems.map(fileProblemSentence).join(' ');
    }
    const { refused } = edit;
    switch (refused.why) {
      case 'none':
        return says.noSuchLength;
      case 'file':
        return refused.problems.map(fileProblemSentence).join(' ');
      case 'worse': {
        const about = { kit: refused.kit, planned: null };
        return refused.problems.map((problem) => kitProblemSentence(problem, about, showing)).join(' ');
      }
    }
  };
  return (
    <section aria-labelledby="kit-length">
      <h2 id="kit-length">{says.headings.lengths}</h2>
      <Sentence
        says={says.lengthSays}
        blanks={{
          layout: (
            <ChoiceBlank
              name="layout"
              label={says.labels.layout}
              value={one.id}
              choices={kit.layouts.map((each) => ({ value: each.id, says: layoutName(each), own: true }))}
              onSet={(layout) => setChosen({ layout, part: '', length: '' })}
            />
          ),
          part: (
            <ChoiceBlank
              name="part"
              label={says.labels.part}
              value={part.value}
              choices={parts}
              onSet={(to) => setChosen({ ...chosen, layout: one.id, part: to, length: '' })}
            />
          ),
          length: (
            <ChoiceBlank
              name="length"
              label={says.labels.length}
              value={length}
              choices={names.map((name) => ({
                value: name,
                says: says.lengthNames[name] ?? name,
                own: false,
              }))}
              onSet={(to) => setChosen({ layout: one.id, part: part.value, length: to })}
            />
          ),
          to: <LengthTyped label={says.labels.to} tried={tried} />,
        }}
      />
    </section>
  );
}

/** Tried when it is done, not while it is typed: a length half typed is another one. */
function LengthTyped({
  label,
  tried,
}: {
  readonly label: string;
  readonly tried: (text: string) => string | null;
}): ReactNode {
  const { kit: says } = useMessages();
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  return (
    <>
      <TextBlank
        name="to"
        label={label}
        value={text === '' ? says.unset : text}
        onSet={(typed) => {
          setText(typed);
          setWrong(null);
        }}
      />{' '}
      <button type="button" className="say" disabled={text === ''} onClick={() => setWrong(tried(text))}>
        {says.set}
      </button>
      <span className="wrong" role="alert" lang="en">
        {wrong === null ? '' : ` ${wrong}`}
      </span>
    </>
  );
}
