import fc from 'fast-check';

/**
 * The seed of every random test: one that stands still, so that `npm test` tries the same things again on the same
 * commit. `npm run random` tries others.
 */
fc.configureGlobal({ seed: Number(process.env.CARDWRIGHT_SEED ?? 1) });
