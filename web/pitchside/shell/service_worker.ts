// Holds the shell, and nothing else: the files that the bundle was made of, by a list made with it. Data lies in
// IndexedDB (../keep), and answers of the server are never cached. A new worker waits until the app says that it may
// take over (renewal.ts), so that nothing changes under an evening that runs.

declare const kShellFiles: string[]; // by the bundler: '/index.html', '/main-3f9a2c1d0b.js'
declare const kLaterFiles: string[]; // fetched where they are wanted, and held from then on: '/drills-es-…json'
declare const kShellName: string; // 'shell-' and a digest of the list

interface Waited extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetched extends Waited {
  request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface WorkerScope {
  addEventListener(name: "install" | "activate", work: (event: Waited) => void): void;
  addEventListener(name: "fetch", work: (event: Fetched) => void): void;
  addEventListener(name: "message", work: (event: MessageEvent<unknown>) => void): void;
  skipWaiting(): Promise<void>;
  clients: { claim(): Promise<void> };
  location: Location;
}
const worker = self as unknown as WorkerScope;
const kPage = "/index.html";

// Past the browser's own cache, where a file of a name without a digest may be an old one.
async function install(): Promise<void> {
  const shell = await caches.open(kShellName);
  const files = (await holdsLater()) ? [...kShellFiles, ...kLaterFiles] : kShellFiles;
  await shell.addAll(files.map((path) => new Request(path, { cache: /-[0-9a-f]{8,}\./.test(path) ? "default" : "reload" })));
}

// Who had them before a renewal has them after it, also where there is no signal then.
async function holdsLater(): Promise<boolean> {
  for (const name of await caches.keys()) {
    for (const { url } of await (await caches.open(name)).keys()) if (/\/drills-[a-z]+-/.test(url)) return true;
  }
  return false;
}

async function laterFile(path: string, request: Request): Promise<Response> {
  const shell = await caches.open(kShellName);
  const held = await shell.match(path);
  if (held) return held;
  const answer = await fetch(request);
  if (answer.ok) await shell.put(path, answer.clone());
  return answer;
}

async function activate(): Promise<void> {
  for (const name of await caches.keys()) {
    if (name !== kShellName) await caches.delete(name);
  }
  await worker.clients.claim();
}

async function shellFile(path: string, request: Request): Promise<Response> {
  const shell = await caches.open(kShellName);
  return (await shell.match(path)) ?? fetch(request);
}

worker.addEventListener("install", (event) => event.waitUntil(install()));
worker.addEventListener("activate", (event) => event.waitUntil(activate()));
worker.addEventListener("message", (event) => {
  if (event.data === "take-over") void worker.skipWaiting();
});
worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== worker.location.origin) return;
  if (/^\/(api|desk)\//.test(url.pathname)) return; // the lead's app may be open in the same browser
  if (request.mode === "navigate") event.respondWith(shellFile(kPage, request));
  else if (kLaterFiles.includes(url.pathname)) event.respondWith(laterFile(url.pathname, request));
  else if (kShellFiles.includes(url.pathname)) event.respondWith(shellFile(url.pathname, request));
});
