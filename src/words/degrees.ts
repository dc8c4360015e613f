/** An angle to a tenth of a degree: `20°`, `80.5°`. */
export function shownDegrees(degrees: number): string {
  return `${Math.round(degrees * 10) / 10}°`;
}
