export const shelf = {};
