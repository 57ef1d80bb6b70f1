// The door in its worker, one for the page: it holds the catalogue, and whoever asks of it again need not send it.
import { openEngine, type Engine } from "../../shared/engine/engine.ts";
import { door, engineWorker } from "../shell/places.ts";

let engine: Engine | undefined;

export function eveningEngine(): Engine {
  engine ??= openEngine({ worker: engineWorker, door });
  return engine;
}
