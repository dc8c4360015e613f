import { type ReactNode, useRef } from 'react';
import { changed, foldSet, settingOf } from '../../../../src/editing/index.ts';
import type { SavedLayout } from '../../../../src/files/index.ts';
import { foldedBase } from '../../../../src/layout/index.ts';
import { opensEitherWay, takesAllowance } from '../../../../src/making/index.ts';
import { ChoiceBlank, choicesOf } from '../../form/choiceBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { asTyped } from './asTyped.ts';

/** How the base is folded. */
export function FoldBlank(): ReactNode {
  const { card } = useMessages();
  const { file, layout } = useInHand();
  // Folds are tried one after another, also by the arrow keys: each is made from what the base was before.
  const tried = useRef<{ readonly from: SavedLayout; readonly to: string } | null>(null);
  return (
    <ChoiceBlank
      name="fold"
      label={card.blanks.fold}
      value={layout.base.fold}
      choices={choicesOf(card.folds)}
      editOf={(fold) => {
        const { current } = tried;
        const from = current?.to === JSON.stringify(file) ? current.from : file;
        const edit = foldSet(file, fold, from);
        tried.current = { from, to: JSON.stringify(changed(file, edit.changes).file) };
        return edit;
      }}
    />
  );
}

/** Which way a base of several panels opens, and how much narrower those within are; nothing for other folds. */
export function FoldingForm(): ReactNode {
  const { card } = useMessages();
  const { file, layout } = useInHand();
  const marking = useMarking();
  const { fold, opens, allowance } = layout.base;
  if (!opensEitherWay(fold)) return null;
  const { folding } = card;
  return (
    <Sentence
      says={takesAllowance(fold) ? folding.opensAndWithin : folding.opens}
      blanks={{
        opens: (
          <ChoiceBlank
            name="opens"
            label={folding.way}
            value={opens}
            choices={choicesOf(folding.ways)}
            editOf={(way) => settingOf(file, ['base', 'opens'], way === 'sideways' ? undefined : way)}
          />
        ),
        allowance: (
          <LengthBlank
            name="allowance"
            label={folding.allowance}
            value={foldedBase(layout).allowance}
            typed={asTyped(file, ['base', 'allowance'])}
            shown={allowance === null ? card.asUsual : undefined}
            marking={marking}
            least={1}
            editOf={(text) => settingOf(file, ['base', 'allowance'], text)}
            instead={
              allowance === null
                ? []
                : [
                    {
                      says: card.tear.asUsual,
                      edit: () => settingOf(file, ['base', 'allowance'], undefined),
                    },
                  ]
            }
          />
        ),
      }}
    />
  );
}
