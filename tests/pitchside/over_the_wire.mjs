// How many bytes the server sends of a file to a browser that takes what Chromium takes.
import http from "node:http";

const kAccepts = "gzip, deflate, br, zstd"; // as Chromium says it

export function overTheWire(port, path) {
  return new Promise((told, failed) => {
    http.get({ host: "127.0.0.1", port, path, headers: { "accept-encoding": kAccepts } }, (answer) => {
      let size = 0;
      answer.on("data", (part) => (size += part.length));
      answer.on("end", () => (answer.statusCode === 200 ? told({ path, size, coding: answer.headers["content-encoding"] ?? "as it is" }) : failed(new Error(`${path}: ${answer.statusCode}`))));
    }).on("error", failed);
  });
}
