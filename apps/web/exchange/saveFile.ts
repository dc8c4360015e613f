/** Hands a file to the person, to be saved where her browser saves files. */
export function saveFile(
  name: string,
  content: string | Uint8Array<ArrayBuffer>,
  type = 'application/json',
): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken what it needs when the click is over; a moment more does no harm.
  window.setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
