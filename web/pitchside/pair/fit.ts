// May this browser window keep an evening? A private window forgets everything when it is closed, so pairing one is
// refused as far as browsers let on: some give no files of their own there, no service worker, or little room.

export type Unfit = "no-storage" | "private-window" | "insecure";

const kLeastRoomBytes = 200e6; // a private window of Chromium has a share of the memory, the others a share of the disk

async function opens(): Promise<boolean> {
  return new Promise((resolve) => {
    try {
      const request = indexedDB.open("lanework-trial", 1);
      request.onsuccess = () => {
        request.result.close();
        indexedDB.deleteDatabase("lanework-trial");
        resolve(true);
      };
      request.onerror = () => resolve(false);
      request.onblocked = () => resolve(false);
    } catch {
      resolve(false);
    }
  });
}

async function isPrivate(): Promise<boolean> {
  if (!("serviceWorker" in navigator)) return true;
  try {
    await navigator.storage.getDirectory();
  } catch (error) {
    if (error instanceof DOMException && error.name === "SecurityError") return true;
  }
  const { quota } = await navigator.storage.estimate();
  return quota !== undefined && quota < kLeastRoomBytes;
}

// Empty: it may.
export async function unfit(): Promise<Unfit | undefined> {
  if (!window.isSecureContext) return "insecure";
  if (!("indexedDB" in window) || !("locks" in navigator) || !(await opens())) return "no-storage";
  return (await isPrivate()) ? "private-window" : undefined;
}
