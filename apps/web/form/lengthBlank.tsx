import { type ReactNode, useState } from 'react';
import type { Edit } from '../../../src/editing/index.ts';
import {
  type Length,
  lengthOfTicks,
  type Marking,
  readLength,
  readMark,
  showLength,
  showLengthWithUnit,
} from '../../../src/measure/index.ts';
import { whereOnRuler, whyNotALength } from '../../../src/words/index.ts';
import { useMessages } from '../messages/messages.ts';
import { useNumbers } from '../messages/numbers.ts';
import { useLayoutIfOpen } from '../state/layoutContext.ts';
import { ClosedBlank, TypedBlank } from './blank.tsx';
import { type Filling, useFill } from './fill.ts';
import { RulerStrip } from './rulerStrip.tsx';
import { useOpening } from './sentence.tsx';

type LengthBlankProps = Filling<string> & {
  readonly name: string;
  readonly label: string;
  readonly value: Length;
  /** As it was typed, shown again when the blank opens; as the marking shows it when absent. */
  readonly typed?: string | undefined;
  /** What stands in the blank while it is closed; the length itself when absent. */
  readonly shown?: ReactNode;
  /** The marks of the trimmer it will be set at. */
  readonly marking: Marking;
  /** What it may be at least, in ticks: a size is more than nothing, a distance may be an overhang. */
  readonly least: number;
  /** What may stand there instead of a length, each said as what to do. */
  readonly instead?: readonly Instead[];
};

/** What may stand in place of a length: of the open layout an edit, else what is tried, with a sentence where refused. */
type Instead = { readonly says: string } & (
  | { readonly edit: () => Edit }
  | { readonly tries: () => string | null }
);

/** A blank for a length, which opens onto a ruler. */
export function LengthBlank(props: LengthBlankProps): ReactNode {
  const { open } = useOpening();
  const numbers = useNumbers();
  const { name, label, value, shown, marking } = props;
  return open === name ? (
    <OpenLength {...props} />
  ) : (
    <ClosedBlank name={name} label={label}>
      {shown ?? numbers.shown(showLength(value, marking.units, 'printed'))}
    </ClosedBlank>
  );
}

function OpenLength({
  name,
  label,
  value,
  typed,
  marking,
  least,
  instead = [],
  ...filling
}: LengthBlankProps): ReactNode {
  const { form } = useMessages();
  const numbers = useNumbers();
  const { setOpen } = useOpening();
  const store = useLayoutIfOpen();
  const fill = useFill(typed ?? showLengthWithUnit(value, marking.units), filling);
  const { units } = marking;
  const [text, setText] = useState(numbers.shown(typed ?? showLength(value, units)));
  const [length, setLength] = useState(value);
  const [wrong, setWrong] = useState<string | null>(null);

  const set = (now: string, to: Length) => {
    setLength(to);
    setWrong(fill.set(withUnits(now, units)));
  };
  const onText = (now: string) => {
    setText(now);
    const written = numbers.written(now);
    if (written === null) {
      setWrong(form.twoWays(now.trim()));
      return;
    }
    const reading = readLength(written, units);
    if (!reading.ok) setWrong(whyNotALength(reading, now));
    else if (reading.length < least) setWrong(form.tooShort(least > 0));
    else set(written, reading.length);
  };
  const onMark = (mark: Length) => {
    if (mark < least) return;
    const now = showLength(mark, units);
    setText(numbers.shown(now));
    set(now, mark);
  };
  const by = (step: 1 | -1) => {
    const { below, above, exact } = readMark(length, marking);
    const next = step > 0 ? (exact ? length + marking.step : above) : exact ? length - marking.step : below;
    onMark(lengthOfTicks(next));
  };
  return (
    <TypedBlank
      name={name}
      label={label}
      text={text}
      hint={form.lengthHint}
      wrong={wrong}
      onText={onText}
      onArrow={by}
      onClose={(how) => {
        if (how === 'taken back') fill.takeBack();
      }}
    >
      <RulerStrip length={length} marking={marking} onMark={onMark} />
      <p className="on-ruler" lang="en">
        {whereOnRuler(length, marking, 'printed')}
      </p>
      <div className="steps">
        <button type="button" className="say" onClick={() => by(-1)}>
          {form.markLess}
        </button>
        <button type="button" className="say" onClick={() => by(1)}>
          {form.markMore}
        </button>
      </div>
      {instead.map((other) => (
        <p key={other.says}>
          <button
            type="button"
            className="say"
            onClick={() => {
              fill.takeBack();
              if ('edit' in other) store?.make(other.edit());
              const problem = 'tries' in other ? other.tries() : null;
              setWrong(problem);
              if (problem === null) setOpen(null);
            }}
          >
            {other.says}
          </button>
        </p>
      ))}
    </TypedBlank>
  );
}

/** With its unit, so that it stays what it is when the units of the layout change; as typed where it has one. */
function withUnits(text: string, units: 'in' | 'mm'): string {
  return /[a-z"'″′”’]/iu.test(text) ? text.trim() : `${text.trim()} ${units}`;
}
