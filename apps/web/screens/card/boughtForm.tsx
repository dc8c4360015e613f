import type { ReactNode } from 'react';
import { settingOf } from '../../../../src/editing/index.ts';
import type { Json, Path } from '../../../../src/files/index.ts';
import type { Bought } from '../../../../src/layout/index.ts';
import { millimetres } from '../../../../src/measure/index.ts';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { WrittenBlank } from '../../form/writtenBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { asTyped } from './asTyped.ts';

/** How thick a thing is that is bought, and how much it weighs, in a sentence; `path` is where it stands in the file. */
export function BoughtForm({
  says,
  path,
  bought,
  more = {},
}: {
  readonly says: string;
  readonly path: Path;
  readonly bought: Bought;
  /** Blanks of the sentence that only some of what is bought has. */
  readonly more?: Readonly<Record<string, ReactNode>>;
}): ReactNode {
  const { card } = useMessages();
  const { file } = useInHand();
  const marking = useMarking();
  const numbers = useNumbers();
  const { thickness, grams } = bought;
  const field = (name: 'thickness' | 'grams'): Path => [...path, name];
  return (
    <Sentence
      says={says}
      blanks={{
        ...more,
        thickness: (
          <LengthBlank
            name="thickness"
            label={card.readyMade.thickness}
            value={thickness ?? usualThickness}
            typed={asTyped(file, field('thickness'))}
            shown={thickness === null ? card.asUsual : undefined}
            marking={marking}
            least={1}
            editOf={(text) => settingOf(file, field('thickness'), text)}
            instead={
              thickness === null
                ? []
                : [
                    {
                      says: card.tear.asUsual,
                      edit: () => settingOf(file, field('thickness'), undefined),
                    },
                  ]
            }
          />
        ),
        grams: (
          <WrittenBlank
            name="grams"
            label={card.readyMade.grams}
            text={grams === null ? '' : numbers.shown(String(grams))}
            shown={grams === null ? card.asUsual : card.readyMade.gramsShown(numbers.shown(String(grams)))}
            hint={card.readyMade.gramsHint}
            writtenAs={(text) => numberIn(text, numbers)}
            editOf={(value) => settingOf(file, field('grams'), value)}
          />
        ),
      }}
    />
  );
}

/** The number that grams or g/m² are written as; the text as it is where it is none. */
export function numberIn(text: string, numbers: Pick<ReturnType<typeof useNumbers>, 'written'>): Json {
  const bare = text.replace(/\s*g(?:\/m[²2])?$/iu, '');
  // As with lengths, a comma stands before decimals too, unless it may stand between thousands.
  const written = numbers.written(bare)?.replace(/^(\d+),(\d{1,2}|\d{4,})$/u, '$1.$2') ?? text;
  return /^\d+(?:\.\d+)?$/u.test(written) ? Number(written) : text;
}

/** Where the blank opens until she measures it: card of usual thickness. */
const usualThickness = millimetres(0.3);
