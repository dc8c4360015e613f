interface Line {
  readonly name: string;
  /** One for each count, to the first. */
  readonly ratios: readonly number[];
}

/** An SVG of how something grows with a count: both on logarithmic scales, beside growth in proportion. */
export function growthPlot(counts: readonly number[], lines: readonly Line[]): string {
  const [left, top, side, right] = [56, 24, 300, 214];
  const decades = Math.log10(counts.at(-1)! / counts[0]!);
  const x = (count: number) => left + (side * Math.log10(count / counts[0]!)) / decades;
  // A decade below 1 too: memory may shrink a little.
  const y = (ratio: number) => top + side - (side * (Math.log10(ratio) + 0.5)) / (decades + 0.5);
  const label = (value: number) => value.toLocaleString('en-US').replaceAll(',', '\u2009');
  const text = (atX: number, atY: number, words: string, anchor = 'start') =>
    `<text x="${atX.toFixed(1)}" y="${atY.toFixed(1)}" text-anchor="${anchor}">${words}</text>`;
  const polyline = (points: readonly (readonly [number, number])[], style: string) =>
    `<polyline fill="none" ${style} points="${points.map((point) => point.map((at) => at.toFixed(1)).join(',')).join(' ')}"/>`;
  const dashes = ['', 'stroke-dasharray="7 3"', 'stroke-dasharray="2 3"'];

  const marks: string[] = [];
  const ratios = Array.from({ length: Math.round(decades) + 1 }, (_, decade) => 10 ** decade);
  for (const count of counts) {
    marks.push(
      polyline(
        [
          [x(count), top + side],
          [x(count), top + side + 6],
        ],
        'stroke="black"',
      ),
    );
    marks.push(text(x(count), top + side + 20, label(count), 'middle'));
  }
  for (const ratio of ratios) {
    marks.push(
      polyline(
        [
          [left - 6, y(ratio)],
          [left, y(ratio)],
        ],
        'stroke="black"',
      ),
    );
    marks.push(text(left - 10, y(ratio) + 4, `${label(ratio)} \u00d7`, 'end'));
  }
  marks.push(
    polyline(
      [
        [left, top],
        [left, top + side],
        [left + side, top + side],
      ],
      'stroke="black"',
    ),
  );
  marks.push(text(left + side / 2, top + side + 38, 'cards', 'middle'));
  const ends = counts.map((count) => [x(count), y(count / counts[0]!)] as const);
  marks.push(polyline(ends, 'stroke="#a52a1a" stroke-width="0.8"'));
  // Names stand at the ends of their lines, a line of text apart.
  const names = [
    { at: ends.at(-1)![1], words: 'in proportion' },
    ...lines.map(({ name, ratios: own }) => ({
      at: y(own.at(-1)!),
      words: `${name}: ${own.at(-1)!.toFixed(1)} \u00d7`,
    })),
  ].sort((a, b) => a.at - b.at);
  let free = top;
  for (const { at, words } of names) {
    const line = Math.max(free, at + 4);
    marks.push(text(left + side + 8, line, words));
    free = line + 15;
  }
  lines.forEach(({ ratios: own }, index) => {
    const points = own.map((ratio, at) => [x(counts[at]!), y(ratio)] as const);
    marks.push(polyline(points, `stroke="black" stroke-width="1.4" ${dashes[index % dashes.length]}`));
  });
  const [width, height] = [left + side + right, top + side + 50];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="serif" font-size="12">`,
    '<title>Time and memory against the number of cards of one layout, as ratios to the smallest number</title>',
    `<rect width="${width}" height="${height}" fill="#fbf6e9"/>`,
    ...marks,
    '</svg>',
    '',
  ].join('\n');
}
