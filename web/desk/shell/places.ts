// Files whose names hold a digest of their content, which the bundler puts in (tools/bundle_desk.mjs). Fetched where they
// are wanted, and not before.

declare const kEngineWorkerFile: string;
declare const kDoorFile: string;
declare const kSpanishDrillsFile: string;

export const engineWorker = kEngineWorkerFile;
export const door = kDoorFile; // empty in a bundle without the engine
export const spanishDrills = kSpanishDrillsFile;
