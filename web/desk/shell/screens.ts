// The screens that there are, in the order of the navigation, and who sees them there. Each is a piece of its own that is
// loaded when it is first opened.
import type { ComponentType } from "preact";
import type { Role } from "../../shared/api.ts";
import type { RouteOf, ScreenName } from "./route.ts";

export interface ScreenProps<Name extends ScreenName> {
  route: RouteOf<Name>;
}
interface ScreenPiece<Name extends ScreenName> {
  Screen: ComponentType<ScreenProps<Name>>;
}
interface ScreenEntry<Name extends ScreenName> {
  load(): Promise<ScreenPiece<Name>>;
  roles: readonly Role[];
}

export const kScreens: { readonly [Name in ScreenName]?: ScreenEntry<Name> } = {
  week: { load: () => import("../week/week_screen.tsx"), roles: ["lead"] },
  squad: { load: () => import("../squad/squad_screen.tsx"), roles: ["lead"] },
  coaches: { load: () => import("../coaches/coaches_screen.tsx"), roles: ["lead"] },
  injuries: { load: () => import("../injuries/injuries_screen.tsx"), roles: ["lead"] },
  drills: { load: () => import("../drills/drills_screen.tsx"), roles: ["lead"] },
  people: { load: () => import("../people/people_screen.tsx"), roles: ["lead"] },
  evidence: { load: () => import("../evidence/evidence_screen.tsx"), roles: ["lead"] },
  releases: { load: () => import("../releases/releases_screen.tsx"), roles: ["lead", "board"] },
  "set-up": { load: () => import("../set_up/set_up_screen.tsx"), roles: ["lead"] },
  account: { load: () => import("./account_screen.tsx"), roles: ["lead", "coach", "recorder", "board", "operator"] },
};

export function screensOf(role: Role): ScreenName[] {
  return (Object.keys(kScreens) as ScreenName[]).filter((name) => kScreens[name]?.roles.includes(role));
}

// The piece of a screen comes into the browser's modules; one that cannot be had is missed when it is shown.
export function fetchAhead(name: ScreenName | undefined): void {
  if (name) kScreens[name]?.load().catch(() => undefined);
}
