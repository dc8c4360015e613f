/** The number below which `share` of them lie: the median at 0.5, the greatest at 1. */
export function quantile(numbers: readonly number[], share: number): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;
}

export function percent(part: number, whole: number): string {
  return whole === 0 ? 'none tried' : `${((100 * part) / whole).toFixed(part === whole ? 0 : 1)} %`;
}

/** Three figures: `0.0123`, `4.56`, `123`, `4568`. */
export function three(number: number): string {
  if (number === 0 || !Number.isFinite(number)) return String(number);
  const places = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(number))));
  return number.toFixed(Math.min(places, 6));
}

/** `median, 95 % under, longest` of times in milliseconds. */
export function spread(milliseconds: readonly number[]): string {
  const [half, most, all] = [0.5, 0.95, 1].map((share) => three(quantile(milliseconds, share)));
  return `median ${half} ms, 95 % under ${most} ms, longest ${all} ms`;
}

/**
 * What `run` gives, and how long it takes: the lesser of the time gone by and the processor's time for this process,
 * so that whatever else runs on the machine counts for little.
 */
export function timed<T>(run: () => T): { readonly value: T; readonly milliseconds: number } {
  const cpuBegan = process.cpuUsage();
  const began = performance.now();
  const value = run();
  const gone = performance.now() - began;
  const { user, system } = process.cpuUsage(cpuBegan);
  return { value, milliseconds: Math.min(gone, (user + system) / 1000) };
}

/** Columns set flush: the first left, the others right. */
export function table(rows: readonly (readonly string[])[]): string {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, column) => (column === 0 ? cell.padEnd(widths[0]!) : cell.padStart(widths[column]!)))
        .join('  '),
    )
    .join('\n');
}

export function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
