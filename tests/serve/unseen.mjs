// What the page describes and no test was answered: only this, each with the reason.
const kReasons = [
  [/^ready 503 not-ready$/, "the door is closed before the server says that it leaves, and a store that cannot be opened is 'store-busy'"],
  [/^anything 500 fault$/, "whatever would lead there is a mistake of ours"],
  [/^(me|sessions|accounts|devices|pairings|squads|week|week-of-squads|injuries|season|export-season|house|club-documents|change-club-documents|season-turn|roster|evenings|catalogue|card|slip|cards-of-week|clinic-pack|calendar|calendar-links|coaches|players|consents|reads|reads-of-player|quarantine|planning|plan|plan-of-device|evenings-of-device|releases|release|preview-release) 507 store-full$/, "that a session or a device was there is written down once a minute, so a full disk shows only to who comes back after one"],
  [/^(second-factor-begin|end-other-sessions) 507 store-full$/, "the same; where nothing is to be ended nothing is written"],
];
const kNoSmallDisk = [/ 507 store-full$/, "no small disk can be mounted here"];

export function unseen(contract) {
  const reasons = contract.noSmallDisk ? [...kReasons, kNoSmallDisk] : kReasons;
  const missing = contract.described().filter((one) => !contract.seen.has(one));
  const unexplained = missing.filter((one) => !reasons.some(([pattern]) => pattern.test(one)));
  const idle = reasons.filter(([pattern]) => !missing.some((one) => pattern.test(one))).map(([pattern, reason]) => `${pattern}: ${reason}`);
  return [
    { name: `serve: every described answer was given (${contract.described().length - missing.length}), or it is known why not (${missing.length})`, passed: unexplained.length === 0, detail: unexplained.join("\n") },
    { name: "serve: every reason is needed", passed: idle.length === 0, detail: idle.join("\n") },
  ];
}
