import { parentPort } from 'node:worker_threads';
import { assert } from '../../src/problem/index.ts';
import { serve } from './serving.ts';

// Runs in a worker thread of Node.
const parent = parentPort;
assert(parent !== null, 'This file is run by a worker thread');
serve({
  post: (answer) => parent.postMessage(answer),
  onRequest: (heard) => void parent.on('message', heard),
});
