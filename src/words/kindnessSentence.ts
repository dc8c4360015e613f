import { type KindnessGoal, kindnessGoals } from '../planning/index.ts';

/**
 * By what the plan was chosen among those of equal cost: `Of the plans that take so few sheets this one has the fewest
 * settings; then, in this order, …`
 */
export function kindnessSentence(prefer: readonly KindnessGoal[] = []): string {
  const [first, ...others] = kindnessGoals(prefer).map((goal) => goalWords[goal]);
  const exchange = prefer.includes('passes')
    ? ''
    : ' Where a single sheet is begun, a pass more is made for every fiftieth of it that is kept whole.';
  return `Of plans at this cost the kindest to cut was looked for: ${first} first, then ${others.join(', then ')}.${exchange}`;
}

const goalWords = {
  settings: 'fewest settings',
  passes: 'fewest passes',
  turns: 'fewest quarter turns',
  alike: 'sheets cut alike',
  leftover: 'the largest leftover whole',
  paper: 'scraps and small sheets before large ones',
} as const satisfies Record<KindnessGoal, string>;
