// Bytes of the module in, a function from request text to answer text out.
export function loadDoor(moduleBytes: BufferSource): Promise<(request: string) => string>;
