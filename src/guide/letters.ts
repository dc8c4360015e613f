/** The letter by which plates and lists name the `index`th thing: A to Z, then AA, AB … */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last;
}
