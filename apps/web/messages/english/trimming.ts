export const trimming = {};
