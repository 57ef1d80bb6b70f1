// Files whose names hold a digest of their content, which the bundler puts in (tools/bundle_pitchside.mjs).

declare const kEngineWorkerFile: string;
declare const kDoorFile: string;
declare const kSpanishDrillsFile: string;

export const engineWorker = kEngineWorkerFile; // '/worker-3f9a2c1d0b.js'; empty in a bundle without the engine
export const door = kDoorFile; // '/lanework-3f9a2c1d0b.wasm'
export const spanishDrills = kSpanishDrillsFile; // '/drills-es-3f9a2c1d0b.json': fetched where Spanish is set
export const serviceWorker = "/service-worker.js";
