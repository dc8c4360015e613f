import type { Answer, Request } from './messages.ts';
import { serve } from './serving.ts';

/** The little of a browser's worker that is used here. */
declare const self: {
  postMessage(answer: Answer): void;
  addEventListener(type: 'message', heard: (event: { readonly data: Request }) => void): void;
};

// Runs in a module worker of a browser.
serve({
  post: (answer) => self.postMessage(answer),
  onRequest: (heard) => self.addEventListener('message', ({ data }) => heard(data)),
});
