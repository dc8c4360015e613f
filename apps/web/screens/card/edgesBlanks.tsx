import { Fragment, type ReactNode } from 'react';
import { type Edit, settingOf, together } from '../../../../src/editing/index.ts';
import { type Edge, zero } from '../../../../src/measure/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Words } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { asTyped } from './asTyped.ts';

/** The edges of a rectangle, in the order that they are told. */
export const edges: readonly Edge[] = ['left', 'right', 'top', 'bottom'];

/** What of a part is torn off, or goes behind, at its edges: `right edge torn ½`, and a blank for another edge. */
export function EdgesBlanks({
  index,
  field,
}: {
  readonly index: number;
  readonly field: 'torn' | 'tuck';
}): ReactNode {
  const { card } = useMessages();
  const { file, layout } = useInHand();
  const part = layout.parts[index]!;
  const marking = useMarking();
  const words = card[field];
  const said = edges.filter((edge) => part[field][edge] > zero);
  const others = edges.filter((edge) => part[field][edge] === zero);
  return (
    <>
      {said.map((edge) => (
        <Fragment key={edge}>
          <Words>{words.edge(card.torn.edges[edge])}</Words>
          <LengthBlank
            name={`${field} ${edge}`}
            label={card.blanks[field](card.torn.edges[edge])}
            value={part[field][edge]}
            typed={asTyped(file, ['parts', index, field, edge])}
            marking={marking}
            least={1}
            editOf={(text) => settingOf(file, ['parts', index, field, edge], text)}
            instead={[{ says: words.leave, edit: () => left(edge) }]}
          />
          <Words>{', '}</Words>
        </Fragment>
      ))}
      <ChoiceBlank
        name={field}
        label={card.blanks[`${field}More`]}
        value="no"
        choices={[
          { value: 'no', says: said.length === 0 ? words.none : words.more },
          ...others.map((edge) => ({ value: edge, says: card.torn.edges[edge] })),
        ]}
        editOf={(edge) =>
          edge === 'no' ? null : settingOf(file, ['parts', index, field, edge], usual[field][layout.units])
        }
      />
    </>
  );

  function left(edge: Edge): Edit {
    return said.length === 1
      ? together(
          settingOf(file, ['parts', index, field], undefined),
          // Where nothing is torn any more nothing can be said of tears.
          ...(field === 'tuck' || part.tear === null
            ? []
            : [settingOf(file, ['parts', index, 'tear'], undefined)]),
        )
      : settingOf(file, ['parts', index, field, edge], undefined);
  }
}

/** What is torn off, and what goes behind, until she says otherwise (common practice, no source). */
const usual = {
  torn: { in: '1/4 in', mm: '6 mm' },
  tuck: { in: '1/2 in', mm: '12 mm' },
} as const;
