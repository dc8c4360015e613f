export const papers = {};
