import type { Fonts } from '../../src/printing/index.ts';
import type { World } from './world.ts';

/** The type that guides and drawings are set in, which comes with the program. */
export async function openFonts(world: World): Promise<Fonts> {
  return {
    regular: await world.asset('fonts/SourceSans3_400Regular.ttf'),
    semibold: await world.asset('fonts/SourceSans3_600SemiBold.ttf'),
  };
}
