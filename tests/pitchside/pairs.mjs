export const pairs = [];
