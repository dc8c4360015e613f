/**
 * A darker tone of a ground for what is drawn on it, or a lighter one where the ground is dark: the nearest whose
 * contrast to the ground is 3:1, what WCAG 2.2 asks of graphics that must be seen (success criterion 1.4.11).
 *
 * Both are `#rrggbb`. Darker tones keep the hue; lighter ones go towards white.
 */
export function toneOn(ground: string): string {
  const from = channelsOf(ground);
  // Black and white are equally far from a luminance of 0.179; each reaches 3:1 well beyond it.
  const end = luminanceOf(from) > 0.179 ? 0 : 255;
  const toneAt = (step: number) =>
    from.map((channel) => Math.round(channel + ((end - channel) * step) / steps));
  // The contrast grows with every step, so the first that is enough is found by halving: pages draw many hatches.
  let [tooNear, enough] = [0, steps];
  while (enough - tooNear > 1) {
    const step = (tooNear + enough) >> 1;
    if (contrastBetween(toneAt(step), from) >= leastContrast) enough = step;
    else tooNear = step;
  }
  return written(toneAt(enough));
}

/** From the ground to black or white. */
const steps = 64;
const leastContrast = 3;

function channelsOf(colour: string): readonly number[] {
  return [1, 3, 5].map((place) => Number.parseInt(colour.slice(place, place + 2), 16));
}

function written(channels: readonly number[]): string {
  return `#${channels.map((channel) => channel.toString(16).padStart(2, '0')).join('')}`;
}

/** WCAG 2.2's contrast ratio. */
function contrastBetween(one: readonly number[], other: readonly number[]): number {
  const [low, high] = [luminanceOf(one), luminanceOf(other)].sort((a, b) => a - b);
  return (high! + 0.05) / (low! + 0.05);
}

/** WCAG 2.2's relative luminance, of channels from 0 to 255. */
function luminanceOf(channels: readonly number[]): number {
  const [red, green, blue] = channels.map((channel) => {
    const share = channel / 255;
    return share <= 0.040_45 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}
