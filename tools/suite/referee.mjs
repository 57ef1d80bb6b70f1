export const referee = { name: "referee", run: async () => [] };
