/** Opens the browser's own way of printing for a PDF, without leaving the page. */
export function printFile(pdf: Uint8Array<ArrayBuffer>): void {
  document.querySelector('iframe.to-print')?.remove();
  const address = URL.createObjectURL(new Blob([pdf], { type: 'application/pdf' }));
  const frame = document.createElement('iframe');
  frame.className = 'to-print';
  frame.tabIndex = -1;
  frame.ariaHidden = 'true';
  frame.addEventListener('load', () => {
    try {
      frame.contentWindow?.focus();
      frame.contentWindow?.print();
    } catch {
      // Some browsers show a PDF where a page may not reach it; there it is printed from a window of its own.
      window.open(address);
    }
  });
  frame.src = address;
  document.body.append(frame);
}
