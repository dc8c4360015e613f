import regular from '../../../assets/fonts/SourceSans3_400Regular.ttf?url';
import semibold from '../../../assets/fonts/SourceSans3_600SemiBold.ttf?url';
import type { Fonts } from '../../../src/printing/index.ts';
import { laidGuide, madeGuide } from './madeGuide.ts';
import type { GuideAnswer, GuideRequest } from './messages.ts';

/** The little of a browser's worker that is used here. */
declare const self: {
  readonly location: { readonly href: string };
  postMessage(answer: GuideAnswer, transferred: readonly Transferable[]): void;
  addEventListener(type: 'message', heard: (event: { readonly data: GuideRequest }) => void): void;
};

// Runs in a module worker of a browser, which makes one guide and is ended.
self.addEventListener('message', ({ data: { kind, of } }) => {
  const making: Promise<GuideAnswer> = kind === 'print' ? madeGuide(of, fonts) : laidGuide(of, fonts);
  void making.then((answer) => self.postMessage(answer, answer.kind === 'made' ? [answer.pdf.buffer] : []));
});

async function fonts(): Promise<Fonts> {
  return { regular: await fetched(regular), semibold: await fetched(semibold) };
}

async function fetched(address: string): Promise<Uint8Array> {
  const response = await fetch(new URL(address, self.location.href));
  if (!response.ok) throw new Error(`the type could not be fetched (${response.status})`);
  return new Uint8Array(await response.arrayBuffer());
}
