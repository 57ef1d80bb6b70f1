// Files whose names hold a digest of their content, which the bundler puts in (tools/bundle_pitchside.mjs).

declare const kEngineWorkerFile: string;
declare const kDoorFile: string;

export const engineWorker = kEngineWorkerFile; // '/worker-3f9a2c1d0b.js'; empty in a bundle without the engine
export const door = kDoorFile; // '/lanework-3f9a2c1d0b.wasm'
export const serviceWorker = "/service-worker.js";
