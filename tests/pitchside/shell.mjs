export const shell = [];
