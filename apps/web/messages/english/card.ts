export const card = {};
