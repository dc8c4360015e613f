import type { PostChange, Posting } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { type Length, showLengthWithUnit, showSize } from '../measure/index.ts';
import { aboutThick } from './aboutThick.ts';
import { countryName } from './closedProblem.ts';
import { listed } from './count.ts';
import { partName } from './partName.ts';
import { gramsWords, postFaultWords } from './postFault.ts';
import type { Showing } from './showing.ts';

/** How a post takes the cards, why not as something smaller, what would bring them down a class, and by what limits. */
export function postSentences(posting: Posting, layout: Layout, showing: Showing): readonly string[] {
  const { table, posted, piece, envelope, rigid, changes } = posting;
  const country = countryName(table.country);
  const size = showSize({ width: piece.length, height: piece.height }, showing.units, showing.glyphs);
  const named = envelope.name === '' ? `an envelope of ${size}` : `the envelope ${envelope.name}, ${size},`;
  return [
    `In ${named} it is about ${aboutThick(piece.thickness, showing)} thick and weighs about ${gramsWords(piece.grams, showing)}.`,
    posted.as === null
      ? `The post of ${country} takes it as no letter.`
      : `The post of ${country} takes it as “${posted.as.name}”.`,
    ...posted.not.map(
      ({ class: of, faults }) =>
        `It is no “${of.name}”, for ${faults.map((fault) => postFaultWords(fault, showing)).join('; and ')}.`,
    ),
    ...bestChanges(changes, posting).map((change) => changeSentence(change, layout, showing)),
    ...(rigid.length === 0
      ? []
      : [
          `Try whether ${listed(rigid.map((id) => partName(layout, id)))} can be bent with the card: a post may refuse as a letter what is stiff.`,
        ]),
    `Limits of size and weight as they were in ${table.asOf} (${table.source}), no prices; the local post office decides.`,
  ];
}

/** For each class that can be reached the slightest change. */
function bestChanges(changes: readonly PostChange[], { table }: Posting): readonly PostChange[] {
  return table.classes.flatMap((one) => changes.find(({ as }) => as.name === one.name) ?? []);
}

/** `Without the foam it is “letter”.` */
function changeSentence(change: PostChange, layout: Layout, showing: Showing): string {
  const length = (of: Length) => showLengthWithUnit(of, showing.units, showing.glyphs);
  const how = () => {
    switch (change.kind) {
      case 'thinnerFoam':
        return `With foam of ${length(change.foam)}`;
      case 'flatPart':
        return `With ${partName(layout, change.part)} laid flat`;
      case 'withoutFoam':
        return 'Without the foam';
      case 'withoutPart':
        return `Without ${partName(layout, change.part)}`;
      case 'lighterEnvelope':
        return `In an envelope of ${change.gsm} g/m² paper`;
      case 'otherEnvelope':
        return `In an envelope ${change.envelope.name}`;
      case 'smallerCard':
        return `As a card of ${showSize({ width: change.card.length, height: change.card.height }, showing.units, showing.glyphs)} in an envelope ${change.envelope.name}`;
    }
  };
  return `${how()} it is “${change.as.name}”.`;
}
