import type { ReactNode } from 'react';
import { settingOf } from '../../../../src/editing/index.ts';
import type { Path } from '../../../../src/files/index.ts';
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
}: {
  readonly says: string;
  readonly path: Path;
  readonly bought: Bought;
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
            writtenAs={(text) => {
              const written = numbers.written(text.replace(/\s*g$/iu, '')) ?? text;
              return /^\d+(?:\.\d+)?$/u.test(written) ? Number(written) : text;
            }}
            editOf={(value) => settingOf(file, field('grams'), value)}
          />
        ),
      }}
    />
  );
}

/** Where the blank opens until she measures it: card of usual thickness. */
const usualThickness = millimetres(0.3);
