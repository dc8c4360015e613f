import { isObject, type Json } from '../../../../src/files/index.ts';
import { usePreference } from '../../state/preference.ts';

/** How the bench is shown to this person. */
export type BenchManner = {
  readonly type: 'usual' | 'large' | 'larger';
  readonly voice: 'silent' | 'aloud';
};

const usual: BenchManner = { type: 'usual', voice: 'silent' };

/** How the bench is shown, for every layout: it goes by the person's eyes and ears. */
export function useBenchManner(): readonly [BenchManner, (change: Partial<BenchManner>) => void] {
  const [chosen, prefer] = usePreference<BenchManner>('bench', knownManner);
  const manner = chosen ?? usual;
  return [manner, (change) => prefer({ ...manner, ...change })];
}

function knownManner(kept: Json): BenchManner | null {
  if (!isObject(kept)) return null;
  const { type, voice } = kept;
  return {
    type: type === 'large' || type === 'larger' ? type : usual.type,
    voice: voice === 'aloud' ? voice : usual.voice,
  };
}
