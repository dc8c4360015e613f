export const guide = {};
