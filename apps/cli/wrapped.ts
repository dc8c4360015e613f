/**
 * A line broken at spaces so that none is wider than `width`, what follows the first indented by `hang` spaces
 * more than the line itself begins with; a longer word stands alone.
 */
export function wrapped(line: string, { width = 96, hang = 2 } = {}): readonly string[] {
  const indent = /^ */.exec(line)![0];
  const lines: string[] = [];
  let current = indent;
  for (const word of line.slice(indent.length).split(' ')) {
    const isEmpty = current.trim() === '';
    if (!isEmpty && current.length + 1 + word.length > width) {
      lines.push(current);
      current = `${indent}${' '.repeat(hang)}${word}`;
    } else {
      current += isEmpty ? word : ` ${word}`;
    }
  }
  return [...lines, current];
}
