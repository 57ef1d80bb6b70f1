// A radio between phone and server: bytes of all connections share one rate each way and arrive later by half the round
// trip. It stands below HTTP, so that workers, the service worker and preconnects all go by it, as they do on a phone.
import net from "node:net";

// The profile that Lighthouse calls 'mobile slow 4G' and WebPageTest 'fast 3G': 150 ms, 1.6 Mbit/s down, 750 kbit/s up
// (GoogleChrome/lighthouse, core/config/constants.js).
export const kFast3G = { roundTripMilliseconds: 150, downBitsPerSecond: 1.6 * 1024 * 1000, upBitsPerSecond: 750 * 1000 };
const kOpeningTrips = 2; // before the first byte: TCP's handshake and that of TLS 1.3, which the test's server does without

class Lane {
  constructor() {
    this.free = 0;
    this.bytes = 0;
  }

  // When these bytes are there, by the clock of performance.now().
  arrival(size, bitsPerSecond, lateMilliseconds) {
    this.bytes += size;
    const now = performance.now();
    this.free = Math.max(this.free, now) + (size * 8000) / bitsPerSecond;
    return this.free + lateMilliseconds;
  }
}

export class Radio {
  static async open(port) {
    const radio = new Radio();
    radio.port = port;
    radio.profile = undefined; // as fast as it goes
    radio.off = false;
    radio.sockets = new Set();
    radio.begin();
    radio.server = net.createServer({ noDelay: true, allowHalfOpen: true }, (phone) => radio.connect(phone));
    await new Promise((ready) => radio.server.listen(0, "127.0.0.1", ready));
    radio.url = `http://127.0.0.1:${radio.server.address().port}`;
    return radio;
  }

  // Counts anew.
  begin() {
    this.down = new Lane();
    this.up = new Lane();
    this.connections = 0;
  }

  set(profile) {
    this.profile = profile;
    this.off = false;
  }

  cut() {
    this.off = true;
    for (const socket of this.sockets) socket.destroy();
  }

  connect(phone) {
    if (this.off) return phone.destroy();
    this.connections += 1;
    const house = net.connect({ host: "127.0.0.1", port: this.port, noDelay: true, allowHalfOpen: true });
    const opened = performance.now() + (this.profile ? kOpeningTrips * this.profile.roundTripMilliseconds : 0);
    for (const socket of [phone, house]) {
      this.sockets.add(socket);
      socket.on("error", () => socket.destroy());
      socket.on("close", () => this.sockets.delete(socket));
    }
    phone.on("close", () => house.destroy());
    this.carry(phone, house, "up", opened);
    this.carry(house, phone, "down", opened);
  }

  carry(from, to, way, opened) {
    const parts = [];
    let timer;
    const deliver = () => {
      timer = undefined;
      while (parts.length > 0 && parts[0].at <= performance.now()) {
        const { bytes } = parts.shift();
        if (to.destroyed) continue;
        if (bytes) to.write(bytes);
        else to.end();
      }
      if (parts.length > 0) timer = setTimeout(deliver, Math.max(0, parts[0].at - performance.now()));
    };
    const later = (bytes) => {
      const { profile } = this;
      const rate = way === "down" ? profile?.downBitsPerSecond : profile?.upBitsPerSecond;
      const lane = this[way];
      const at = lane.arrival(bytes?.length ?? 0, rate ?? Infinity, (profile?.roundTripMilliseconds ?? 0) / 2);
      parts.push({ bytes, at: Math.max(at, opened) });
      if (timer === undefined) deliver();
    };
    // In pieces of a packet's order, so that two answers share the rate as they do on the air.
    from.on("data", (bytes) => {
      for (let at = 0; at < bytes.length; at += 1400) later(bytes.subarray(at, at + 1400));
    });
    from.on("end", () => later(undefined));
    from.on("close", () => to.destroyed || later(undefined));
  }

  close() {
    for (const socket of this.sockets) socket.destroy();
    this.server.close();
  }
}
