import type { ReactNode } from 'react';
import { settingOf, together } from '../../../../src/editing/index.ts';
import type { JsonObject, Path } from '../../../../src/files/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import { envelopeSizes } from '../../../../src/making/index.ts';
import { inches, millimetres, showLengthWithUnit, sum } from '../../../../src/measure/index.ts';
import { ChoiceBlank, choicesOf } from '../../form/choiceBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { WrittenBlank } from '../../form/writtenBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { asTyped } from './asTyped.ts';
import { BoughtForm, numberIn } from './boughtForm.tsx';

/** The envelope the cards go in and the post that takes them, in a sentence. */
export function SendingForm(): ReactNode {
  const { card, form } = useMessages();
  const { sending } = card;
  const { file, layout } = useInHand();
  const marking = useMarking();
  const { envelope } = layout;
  const side = (axis: 'width' | 'height'): ReactNode => {
    if (envelope === null) return null;
    const path: Path = ['envelope', 'size', axis === 'width' ? 0 : 1];
    return (
      <LengthBlank
        name={`envelope ${axis}`}
        label={sending[axis]}
        value={envelope.size[axis]}
        typed={asTyped(file, path)}
        marking={marking}
        least={1}
        // Of another size it is not what is sold by that name.
        editOf={(text) =>
          text === asTyped(file, path) || !isSold(envelope.name)
            ? settingOf(file, path, text)
            : together(settingOf(file, path, text), settingOf(file, ['envelope', 'name'], undefined))
        }
      />
    );
  };
  return (
    <>
      <Sentence
        says={envelope === null ? sending.bare : sending.enveloped}
        blanks={{
          envelope: (
            <ChoiceBlank
              name="envelope"
              label={sending.envelope}
              value={envelope === null ? 'none' : 'own'}
              choices={choicesOf(sending.envelopes)}
              editOf={(is) =>
                settingOf(file, ['envelope'], is === 'none' ? undefined : usualEnvelope(layout))
              }
            />
          ),
          name: (
            <WrittenBlank
              name="envelope name"
              label={sending.name}
              text={envelope?.name ?? ''}
              shown={envelope === null || envelope.name === '' ? sending.nameless : envelope.name}
              own={envelope !== null && envelope.name !== ''}
              hint={form.textHint}
              writtenAs={(text) => text}
              editOf={(name) => settingOf(file, ['envelope', 'name'], name)}
            />
          ),
          width: side('width'),
          height: side('height'),
          post: (
            <ChoiceBlank
              name="post"
              label={sending.post}
              value={layout.post ?? 'none'}
              choices={choicesOf(sending.posts)}
              editOf={(post) => settingOf(file, ['post'], post === 'none' ? undefined : post)}
            />
          ),
        }}
      />
      {envelope === null ? null : (
        <BoughtForm
          says={sending.empty}
          path={['envelope']}
          bought={envelope}
          more={{ gsm: <EnvelopePaper gsm={envelope.gsm} /> }}
        />
      )}
    </>
  );
}

/** The grammage of its paper. */
function EnvelopePaper({ gsm }: { readonly gsm: number | null }): ReactNode {
  const { card } = useMessages();
  const { file } = useInHand();
  const numbers = useNumbers();
  const written = gsm === null ? '' : numbers.shown(String(gsm));
  return (
    <WrittenBlank
      name="envelope gsm"
      label={card.sending.gsm}
      text={written}
      shown={gsm === null ? card.asUsual : card.sending.gsmShown(written)}
      hint={card.sending.gsmHint}
      writtenAs={(text) => numberIn(text, numbers)}
      editOf={(value) => settingOf(file, ['envelope', 'gsm'], value)}
    />
  );
}

function isSold(name: string): boolean {
  return Object.values(envelopeSizes).some((sizes) => sizes.some((size) => size.name === name));
}

/**
 * The smallest of those usually sold that has a little more than the closed card in each direction, as the card lies;
 * else one that is so much larger. The room is common practice, no source.
 */
function usualEnvelope({ base, units }: Layout): JsonObject {
  const more = { in: inches(1, 4), mm: millimetres(6) }[units];
  const [width, height] = [sum(base.size.width, more), sum(base.size.height, more)];
  const lies = width >= height;
  const [long, short] = lies ? [width, height] : [height, width];
  const sold = envelopeSizes[units].find((size) => size.length >= long && size.height >= short);
  const [length, across] = sold === undefined ? [long, short] : [sold.length, sold.height];
  const shown = (lies ? [length, across] : [across, length]).map((side) => showLengthWithUnit(side, units));
  return sold === undefined ? { size: shown } : { name: sold.name, size: shown };
}
