const few = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** Numbers up to twelve are set in words, as printers do. */
export const inWords = (count: number) => few[count] ?? String(count);

export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
