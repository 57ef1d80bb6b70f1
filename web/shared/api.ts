// Made from schema/openapi.yaml by `node tools/generate/api_types.mjs`; change the page, not this file.
export interface paths {
    "/health": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Is the server there? */
        get: operations["health"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/ready": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Does the store answer, and is the server staying? */
        get: operations["ready"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/metrics": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Counters, in the Prometheus text format 0.0.4. For callers on the server's own machine. */
        get: operations["metrics"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/sign-in": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Begin a session by name and password, and the second factor's code where there is one.
         * @description Without a code the session is half way in until the code was shown (step-up). An older session in the same cookie ends.
         */
        post: operations["sign-in"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/activate": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Choose a password, with a link that the lead gave; the link is good once. */
        post: operations["activate"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/me": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Whose session it is, and until when. Open also before the second factor was shown. */
        get: operations["me"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/sign-out": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** End the session; the browser is told to forget what it kept. */
        post: operations["sign-out"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/second-factor/begin": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** A new secret for an authenticator; nothing is kept of it yet. */
        post: operations["second-factor-begin"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/second-factor": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Keep the secret, once a code of it is shown. All other sessions end. */
        post: operations["second-factor"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/step-up": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Show the second factor, or a recovery code. Good for five minutes for what changes who sees what. */
        post: operations["step-up"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/password": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Another password; the one before must be shown. All other sessions end. */
        post: operations["password"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/sessions": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One's own sessions. */
        get: operations["sessions"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/sessions/end-others": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** End one's own sessions elsewhere. */
        post: operations["end-other-sessions"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/accounts": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Who may come in. */
        get: operations["accounts"];
        put?: never;
        /** Another account, with a link to choose its password. */
        post: operations["add-account"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/accounts/{account}/charges": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                account: components["parameters"]["Account"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** What the account is charged with, in place of what it was. */
        post: operations["charge-account"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/accounts/{account}/link": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                account: components["parameters"]["Account"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Another link to choose a password, for somebody who lost it. Good once, for a day. */
        post: operations["account-link"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/accounts/{account}/end": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                account: components["parameters"]["Account"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** End the account with its sessions and devices, at once. */
        post: operations["end-account"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/accounts/{account}/reopen": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                account: components["parameters"]["Account"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Take back the end of an account. Its password and second factor hold again; devices and sessions stay ended. */
        post: operations["reopen-account"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/devices": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Every device that was ever paired. */
        get: operations["devices"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/devices/{device}/revoke": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                device: components["parameters"]["Device"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** The device gets nothing any more, at once. What it still hands in is kept aside. */
        post: operations["revoke-device"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pairings": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Links that were opened, and how far each has come. */
        get: operations["pairings"];
        put?: never;
        /** A link that pairs one device with an account, good once and for ten minutes. */
        post: operations["open-pairing"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pairings/claim": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** By the device. It gets its secret, good once somebody confirmed the code that both screens show. */
        post: operations["claim-pairing"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pairings/claimed": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** By the device, again and again until somebody has compared the codes. */
        post: operations["claimed-pairing"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pairings/{pairing}/confirm": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                pairing: components["parameters"]["Pairing"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** The codes on both screens are the same. */
        post: operations["confirm-pairing"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/sync": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Hand in what the device has, get what it may see. docs/formats/sync.md. */
        post: operations["sync"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The squads that one is charged with today. */
        get: operations["squads"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads/{squad}": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        /** Who is of the squad, and who joins in tonight. Goes into the book of reads. */
        get: operations["squad"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/device/squads": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The same as squads, for a device. */
        get: operations["squads-of-device"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/device/squads/{squad}": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        /** The same as squad, for a device. Goes into the book of reads. */
        get: operations["squad-of-device"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/week/{monday}": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the week's Monday */
                monday: components["parameters"]["Monday"];
            };
            cookie?: never;
        };
        /** What was entered about the evenings of a week, Monday to Sunday. */
        get: operations["week"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/week/{monday}/squads": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the week's Monday */
                monday: components["parameters"]["Monday"];
            };
            cookie?: never;
        };
        /** A week by squads, of what was planned, what fell out, how many join in tonight, and whom to visit first. Counts, no names. */
        get: operations["week-of-squads"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/entries": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Enters what is entered at the desk. Entries as in docs/formats/ledger.md, without sequence and device_time; sent again they are known. */
        post: operations["enter"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/injuries": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Injuries, the latest first, with the days lost so far. Goes into the book of reads. */
        get: operations["injuries"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/plans": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Asks for the blocks of some squads, or of all; a worker plans them. One that waits already is not asked for twice. */
        post: operations["ask-for-plans"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/planning": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What was asked for, the latest first, and what became of it. */
        get: operations["planning"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads/{squad}/plan": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        /** The squad's block as it was planned last. */
        get: operations["plan"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/device/squads/{squad}/plan": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        /** The same as plan, for a device. */
        get: operations["plan-of-device"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/device/squads/{squad}/evenings": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        /** All that a phone needs to plan, run and record the squad's coming evenings with no signal. Goes into the book of reads. */
        get: operations["evenings-of-device"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads/{squad}/evenings": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        /** The same as evenings-of-device, for the desk, as far as the block goes, without emergency contacts. Goes into the book of reads. */
        get: operations["evenings"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads/{squad}/card/{evening}": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
                /** @description its day and start: 2026-12-01-1815 */
                evening: components["parameters"]["Evening"];
            };
            cookie?: never;
        };
        /** The printed card of an evening, without names. */
        get: operations["card"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads/{squad}/slip/{evening}": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
                /** @description its day and start: 2026-12-01-1815 */
                evening: components["parameters"]["Evening"];
            };
            cookie?: never;
        };
        /** The page with names for the coach's pocket. Goes into the book of reads. */
        get: operations["slip"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads/{squad}/cards/{monday}": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
                /** @description the week's Monday */
                monday: components["parameters"]["Monday"];
            };
            cookie?: never;
        };
        /** The cards of all evenings of a week, as one document. */
        get: operations["cards-of-week"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads/{squad}/clinic-pack": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        /** Two pages for a coach's first evening with the squad. */
        get: operations["clinic-pack"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads/{squad}/calendar": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        /** The squad's sessions of the block as iCalendar (RFC 5545), without names. */
        get: operations["calendar"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/calendar-links": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The addresses by which calendars follow a squad's evenings, by squad, the latest first, also those that were taken back; without the addresses, which nobody can be told again. */
        get: operations["calendar-links"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads/{squad}/calendar-link": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** An address by which a calendar follows the squad's evenings, told this once. The one before it ends. */
        post: operations["make-calendar-link"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/squads/{squad}/calendar-link/take-back": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** The squad's address gives nothing any more, at once. */
        post: operations["take-back-calendar-link"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/calendar/{link}": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the secret that make-calendar-link told, and .ics */
                link: components["parameters"]["CalendarLink"];
            };
            cookie?: never;
        };
        /** The squad's evenings for a calendar that follows them (RFC 5545, RFC 7986): place, time, squad, and whether a match comes after. Whoever has the address reads it. */
        get: operations["followed-calendar"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/planning/{number}/withdraw": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description as ask-for-plans gave it */
                number: components["parameters"]["PlanningNumber"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** What waits for a worker is withdrawn; it has failed, and says so. */
        post: operations["withdraw-planning"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/catalogue": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The club's drills, families, limits, gaits and sources, as the door takes them. docs/formats/door.md. */
        get: operations["catalogue"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/season/{from}/{to}": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the season's first day */
                from: components["schemas"]["Day"];
                /** @description its last */
                to: components["schemas"]["Day"];
            };
            cookie?: never;
        };
        /** The season's report to the lead, from the ledger as it is now, as data to lay out. docs/formats/report.md. */
        get: operations["season"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/season/{from}/{to}/export": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the season's first day */
                from: components["schemas"]["Day"];
                /** @description its last */
                to: components["schemas"]["Day"];
            };
            cookie?: never;
        };
        /** The season's sheets as CSV with a Frictionless datapackage.json, in one ZIP. Goes into the book of reads. docs/formats/ledger.md. */
        get: operations["export-season"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/injuries/{injury}/incident": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the entry that opened it */
                injury: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** The report of the incident as PDF, for the family and the clinician. Goes into the book of reads. */
        post: operations["incident-report"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/injuries/{injury}/referral": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the entry that opened it */
                injury: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** The letter to a clinician as PDF. Goes into the book of reads. */
        post: operations["referral-letter"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/house": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What is done about the club's data - the last backup, what goes by its time next, how long the key is in use. */
        get: operations["house"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/club/documents": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What the lead wrote of the club, each document with a digest. docs/formats/club.md. */
        get: operations["club-documents"];
        put?: never;
        /** Changes some of them, all or none. The club is read with the change in it first; whoever comes second is told what is there. */
        post: operations["change-club-documents"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/club/turn": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What the club would be next season, as changes to look over. Nothing is written. Goes into the book of reads. */
        get: operations["season-turn"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/club/rosters/{roster}": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description its file: roster.csv */
                roster: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        /** A roster beside club.toml as it stands, to amend. Goes into the book of reads. */
        get: operations["roster"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/quarantine": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What was handed in and kept aside, each with the reason. Goes into the book of reads. */
        get: operations["quarantine"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/quarantine/{number}/take-in": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                number: components["parameters"]["KeptNumber"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Make what was kept aside part of the books, as its sender's. Goes into the book of reads. */
        post: operations["take-in-kept"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/quarantine/{number}/drop": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                number: components["parameters"]["KeptNumber"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Let what was kept aside go, for good. */
        post: operations["drop-kept"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/releases": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What was given out so far. */
        get: operations["releases"];
        put?: never;
        /** Give out a season or a half, from what the ledger holds now. It stands as it is from then on. */
        post: operations["make-release"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/release-preview": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** What make-release would give out, and what could be worked out of it. Nothing is kept. */
        post: operations["preview-release"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/releases/{release}": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description its number */
                release: components["parameters"]["Release"];
            };
            cookie?: never;
        };
        /** One release, byte for byte as it was given out. */
        get: operations["release"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/coaches": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Coaches, what they were taught, when they were visited, and which drills they asked help with. */
        get: operations["coaches"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/players": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Everybody who plays, by name. Goes into the book of reads. */
        get: operations["players"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/consents": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What families and players agreed to, by player. Goes into the book of reads. */
        get: operations["consents"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/players/{player}/timeline": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                player: components["parameters"]["Player"];
            };
            cookie?: never;
        };
        /** Everything entered about a player, and who read it. Goes into the book of reads. */
        get: operations["timeline"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/players/{player}/export": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                player: components["parameters"]["Player"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** A copy of all of it for the guardian, as a file. Goes into the book of reads. */
        post: operations["export-player"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/players/{player}/erase": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                player: components["parameters"]["Player"];
            };
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Make everything about a player unreadable, for good. */
        post: operations["erase-player"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/players/{player}/reads": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                player: components["parameters"]["Player"];
            };
            cookie?: never;
        };
        /** Who read what about a player, the latest 1000. */
        get: operations["reads-of-player"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/reads": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Who read what, the latest 500. */
        get: operations["reads"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
}
export type webhooks = Record<string, never>;
export interface components {
    schemas: {
        Id: string;
        /** @example 2026-11-26 */
        Day: string;
        /**
         * @description with the server's offset
         * @example 2026-11-26T18:05:00+01:00
         */
        Time: string;
        /** @enum {string} */
        Role: "lead" | "coach" | "recorder" | "board" | "operator";
        /** @description Nothing of it is read: `{}` will do. */
        Anything: Record<string, never>;
        Nothing: Record<string, never>;
        SignIn: {
            /** @description the name as it is typed; case and spaces around it do not count */
            sign_in: string;
            password: string;
            /** @description six digits of the authenticator, or a recovery code */
            code?: string;
        };
        Activate: {
            link: string;
            /** @description at least 8 characters; 15 for lead, board and operator */
            password: string;
        };
        SecondFactor: {
            /** @description as it was given */
            secret: string;
            code: string;
        };
        Code: {
            code: string;
        };
        Secret: {
            secret: string;
        };
        NewPassword: {
            old: string;
            new: string;
        };
        NewCharge: {
            squad: components["schemas"]["Id"];
            /** @description today if not stated */
            from?: components["schemas"]["Day"];
            /** @description the last day; a substitute must have one */
            until?: components["schemas"]["Day"];
            substitute?: boolean;
        };
        NewAccount: {
            /** @description 1 to 64 letters, digits, '.', '-', '_' or '@' */
            sign_in: string;
            /** @description as others see it; at most 120 bytes */
            name: string;
            role: components["schemas"]["Role"];
            charges?: components["schemas"]["NewCharge"][];
        };
        ReleasePeriod: {
            /** @description the first day */
            from: components["schemas"]["Day"];
            /** @description the last day; it is over */
            until: components["schemas"]["Day"];
            /** @description of the board, in the lead's own words; one line of at most 2400 bytes, and no player's name or id */
            asked?: string;
        };
        Charges: {
            charges?: components["schemas"]["NewCharge"][];
            /** @description the charges as they were shown: where they are others by now nothing is done */
            before?: components["schemas"]["Charge"][];
        };
        AskForPlans: {
            /** @description all squads if not stated */
            squads?: components["schemas"]["Id"][];
        };
        OpenPairing: {
            /** @description one's own if not stated */
            account?: components["schemas"]["Id"];
        };
        ClaimPairing: {
            link: string;
            /** @description what the device calls itself; at most 60 bytes */
            label: string;
        };
        ExportPlayer: {
            /** @description how it was made sure that it is the guardian; at most 200 bytes */
            verified: string;
        };
        DropKept: {
            /** @enum {string} */
            why: "entered-anew" | "mistake" | "not-ours";
        };
        ErasePlayer: {
            /** @description the id once more: this cannot be undone */
            player: string;
        };
        Sync: {
            /** @description the version of what the device sends and understands */
            client: number;
            /** @description the ledger that 'after' is a number of */
            ledger?: string;
            /** @description the last number that the device has; 0 if not stated */
            after?: number;
            /** @description entries to get back; 500 if not stated */
            most?: number;
            entries?: components["schemas"]["Entry"][];
        } & {
            [key: string]: unknown;
        };
        /** @description docs/formats/ledger.md; further keys as its kind has them. */
        Entry: {
            id: components["schemas"]["EntryId"];
            sequence: number;
            device_time: string;
            kind: string;
            corrects?: components["schemas"]["EntryId"];
        } & {
            [key: string]: unknown;
        };
        /** @description a UUID of version 7 */
        EntryId: string;
        Fault: {
            /** @description a key of docs/errors.md */
            fault: string;
            field: string;
            found: string;
            expected: string;
        };
        FaultsOrRefusal: {
            /** @enum {string} */
            error: "not-understood";
            what: string;
            faults?: components["schemas"]["Fault"][];
        };
        Session: {
            account: components["schemas"]["Id"];
            role: components["schemas"]["Role"];
            /** @enum {string} */
            next: "in" | "set-up-second-factor" | "show-second-factor";
        };
        Activated: {
            sign_in: string;
        };
        Charge: {
            squad: components["schemas"]["Id"];
            from: components["schemas"]["Day"];
            until?: components["schemas"]["Day"];
            /** @constant */
            substitute?: true;
        };
        Account: {
            account: components["schemas"]["Id"];
            sign_in: string;
            name: string;
            role: components["schemas"]["Role"];
            ended: boolean;
            has_password: boolean;
            has_second_factor: boolean;
            charges: components["schemas"]["Charge"][];
        };
        Accounts: {
            accounts: components["schemas"]["Account"][];
        };
        AddedAccount: {
            account: components["schemas"]["Id"];
            sign_in: string;
            name: string;
            role: components["schemas"]["Role"];
            /** @constant */
            ended: false;
            /** @constant */
            has_password: false;
            /** @constant */
            has_second_factor: false;
            charges: components["schemas"]["Charge"][];
            /** @description good once, for a day; whoever has it chooses the password */
            link: string;
        };
        Me: {
            account: components["schemas"]["Id"];
            sign_in: string;
            name: string;
            role: components["schemas"]["Role"];
            /** @constant */
            ended: false;
            /** @constant */
            has_password: true;
            has_second_factor: boolean;
            charges: components["schemas"]["Charge"][];
            second_factor_needed: boolean;
            second_factor_shown: boolean;
            ends_at: components["schemas"]["Time"];
            ends_without_a_request_after_seconds: number;
        };
        NewSecondFactor: {
            secret: string;
            /** @description for an authenticator */
            link: string;
        };
        RecoveryCodes: {
            recovery_codes: string[];
        };
        Ended: {
            ended: number;
        };
        Sessions: {
            sessions: {
                began: components["schemas"]["Time"];
                seen: components["schemas"]["Time"];
                this_one: boolean;
            }[];
        };
        ChargesOf: {
            charges: components["schemas"]["Charge"][];
        };
        Link: {
            link: string;
            until: components["schemas"]["Time"];
        };
        Device: {
            device: components["schemas"]["Id"];
            account: components["schemas"]["Id"];
            label: string;
            paired: components["schemas"]["Time"];
            seen?: components["schemas"]["Time"];
            /** @description the highest that it handed in */
            sequence: number;
            revoked: boolean;
        };
        Devices: {
            devices: components["schemas"]["Device"][];
        };
        CalendarLinks: {
            links: {
                squad: components["schemas"]["Id"];
                /**
                 * @description at most one of a squad is open or too late
                 * @enum {string}
                 */
                state: "open" | "taken-back" | "too-late";
                made: components["schemas"]["Time"];
                /** @description a name */
                made_by: string;
                /** @description it answers no longer than this */
                until: components["schemas"]["Time"];
                /** @description a calendar asked on that day last; not there: none did yet */
                asked?: components["schemas"]["Day"];
                taken_back?: components["schemas"]["Time"];
                /** @description a name */
                taken_back_by?: string;
                /** @description names: they had the squad while the address was there, and have it no more */
                left?: string[];
            }[];
        };
        CalendarLinkMade: {
            /** @description behind the address of the server; a secret */
            path: string;
            until: components["schemas"]["Time"];
        };
        Pairings: {
            pairings: {
                pairing: components["schemas"]["Id"];
                account: components["schemas"]["Id"];
                name: string;
                /** @enum {string} */
                state: "open" | "claimed" | "confirmed" | "suspended" | "too-late";
                label?: string;
                until: components["schemas"]["Time"];
            }[];
        };
        OpenedPairing: {
            pairing: components["schemas"]["Id"];
            link: string;
            until: components["schemas"]["Time"];
        };
        ClaimedPairing: {
            /** @description the device keeps it; the server has a digest of it */
            secret: string;
            code: string;
        };
        PairingState: {
            /** @enum {string} */
            state: "claimed" | "confirmed" | "suspended";
            device?: components["schemas"]["Id"];
        };
        Verdict: {
            /** @description not where the entry could not be read */
            id?: components["schemas"]["EntryId"];
            /** @enum {string} */
            verdict: "stored" | "known" | "other-content" | "kept-aside" | "dropped" | "no-consent";
            /** @description the ledger's number */
            receipt?: number;
            why?: string;
        };
        /** @description An entry's keys that the device's owner may see. */
        SeenEntry: {
            id: components["schemas"]["EntryId"];
            kind: string;
            receipt: number;
            received: string;
        } & {
            [key: string]: unknown;
        };
        Synchronised: {
            /**
             * @description the server's version
             * @constant
             */
            client: 1;
            ledger: string;
            now: components["schemas"]["Time"];
            /** @description one for each entry that was sent, in its order */
            verdicts?: components["schemas"]["Verdict"][];
            /**
             * @description it is another ledger than the device knew: it forgets what it was given and sends everything again
             * @constant
             */
            begin_anew?: true;
            entries: components["schemas"]["SeenEntry"][];
            /** @description to send next time */
            after: number;
            /** @description ask again at once */
            more: boolean;
        };
        LastWords: {
            /** @enum {string} */
            error: "sign-in-needed" | "revoked";
            what: string;
            /** @constant */
            client?: 1;
            ledger?: string;
            now?: components["schemas"]["Time"];
            verdicts?: components["schemas"]["Verdict"][];
        };
        SquadRow: {
            id: components["schemas"]["Id"];
            name: string;
            /** @enum {string} */
            relation: "own" | "substitute";
        };
        Squads: {
            club: string;
            squads: components["schemas"]["SquadRow"][];
        };
        Releases: {
            releases: {
                release: number;
                from: components["schemas"]["Day"];
                until: components["schemas"]["Day"];
                made: components["schemas"]["Time"];
            }[];
        };
        /** @description per 1000 hours, with its exact 95 % limits */
        ReleaseRate: {
            rate: number;
            low: number;
            high: number;
        };
        /** @description a count, or hidden */
        ReleaseRow: {
            key: string;
            name: string;
            count?: number;
            /** @constant */
            hidden?: true;
            per_1000_hours?: components["schemas"]["ReleaseRate"];
        };
        /** @description sessions by what was told of them; hours of players where somebody confirmed them */
        ReleaseDone: {
            /** @description the squad */
            key?: string;
            name?: string;
            held: number;
            cut_short: number;
            missed: number;
            most: number;
            half: number;
            few: number;
            confirmed: number;
            hours: number;
            most_did_it_percent?: number;
            /** @description evenings of the club's calendar; not there: it had none, or days that were given out without it */
            planned?: number;
            /** @description of those planned, with nothing entered about them at all */
            untold?: number;
        };
        Release: {
            release: number;
            club: string;
            from: components["schemas"]["Day"];
            until: components["schemas"]["Day"];
            made: components["schemas"]["Time"];
            sessions: {
                all: components["schemas"]["ReleaseDone"];
                squads: components["schemas"]["ReleaseDone"][];
            };
            injuries: {
                /** @description nothing is said of injuries */
                silent: boolean;
                all?: number;
                per_1000_hours?: components["schemas"]["ReleaseRate"];
                compared?: components["schemas"]["ReleaseCompared"];
                squads?: components["schemas"]["ReleaseRow"][];
                settings?: components["schemas"]["ReleaseRow"][];
                regions?: components["schemas"]["ReleaseRow"][];
            };
            /** @description of the board, in the lead's own words */
            asked?: string;
            hidden_means: string;
            remarks: string[];
        };
        /** @description the club's rate by that of an earlier release of other days, from what both give out */
        ReleaseCompared: {
            release: number;
            from: components["schemas"]["Day"];
            until: components["schemas"]["Day"];
            ratio: number;
            low: number;
            high: number;
        };
        /** @description what is given out; and for the lead alone, what else was hidden and what can be worked out of all releases */
        ReleaseForLead: {
            release: components["schemas"]["Release"];
            tried: string[];
            not_given: {
                from: components["schemas"]["Day"];
                until: components["schemas"]["Day"];
                /** @enum {string} */
                days: "all" | "not-released-before";
                /** @enum {string} */
                table: "all" | "squads" | "settings" | "regions";
                key: string;
                least: number;
                most: number;
            }[];
        };
        SquadTonight: {
            squad: components["schemas"]["SquadRow"];
            roster: {
                player: components["schemas"]["Id"];
                name: string;
                age_group: string;
            }[];
            /** @description empty rows for a recorder, who is not told */
            standing: {
                player?: components["schemas"]["Id"];
                word?: components["schemas"]["StandingWord"];
                instructions?: string[];
                until?: components["schemas"]["Day"];
                /** @description for the lead */
                reasons?: string[];
            }[];
            /** @description when the latest entry about one of them came in */
            known_at?: string;
            ask: string;
        };
        /** @enum {string} */
        StandingWord: "joins in" | "joins in with swaps" | "sits out, see a clinician";
        PlansAskedFor: {
            jobs: {
                number: number;
                squad: components["schemas"]["Id"];
            }[];
        };
        Planning: {
            jobs: {
                number: number;
                squad: components["schemas"]["Id"];
                asked: components["schemas"]["Time"];
                /** @enum {string} */
                state: "waiting" | "taken" | "done" | "failed";
                ended?: components["schemas"]["Time"];
                /** @description of one that failed */
                why?: string;
            }[];
        };
        PocketPlayer: {
            id: components["schemas"]["Id"];
            name: string;
            shirt?: string;
            /** @description in years */
            age?: number;
            squads?: string[];
            /** @description shoulder contact and partner holds are fine */
            contact_ok: boolean;
            row: number;
        };
        /** @description the squad tonight, and what docs/formats/pocket.md says */
        Evenings: {
            /** @constant */
            version: 1;
            club: string;
            squad: components["schemas"]["SquadRow"];
            roster: components["schemas"]["SquadTonight"]["roster"];
            standing: components["schemas"]["SquadTonight"]["standing"];
            known_at?: components["schemas"]["SquadTonight"]["known_at"];
            ask: components["schemas"]["SquadTonight"]["ask"];
            made: components["schemas"]["Time"];
            lease_until: components["schemas"]["Time"];
            evenings: {
                day: components["schemas"]["Day"];
                start: string;
                minutes: number;
                days_to_match?: number;
                match_day: boolean;
                /** @description an away match; the strip is a stand-in */
                elsewhere: boolean;
                strip: string;
                /** @description the parts of a request to the door but its catalogue (docs/formats/door.md) */
                documents: {
                    routine: Record<string, never>;
                    strip: Record<string, never>;
                    squad: Record<string, never>;
                    /** @description as docs/formats/permissions.md says */
                    permissions: Record<string, never>;
                    roster: components["schemas"]["PocketPlayer"][];
                };
            }[];
            /** @description of the door; empty where no evening is to come */
            catalogue: Record<string, never>;
            action_plans: {
                strip: string;
                /** @description as docs/formats/venue.md says */
                venue: Record<string, never>;
            }[];
            /** @description on a phone alone, of those whose family agreed to it there; in the family's own words */
            emergency?: {
                player: components["schemas"]["Id"];
                guardian: string;
                phone: string;
                allergy?: string;
                inhaler?: string;
                other?: string;
            }[];
        };
        Catalogue: {
            /** @constant */
            version: 1;
            /** @description drills of the club's own folder */
            own: components["schemas"]["Id"][];
            /** @description the shipped house routines (docs/formats/routine.md) */
            routines: ({
                id: components["schemas"]["Id"];
                name: string;
            } & {
                [key: string]: unknown;
            })[];
            /** @description as a request of the door has it (docs/formats/door.md) */
            catalogue: {
                drills: Record<string, never>[];
                families: Record<string, never>;
                limits: Record<string, never>;
                gaits: Record<string, never>;
                sources: Record<string, never>;
            };
        };
        /** @description Only the squad where nothing was planned yet. */
        Plan: {
            squad: components["schemas"]["Id"];
            made?: components["schemas"]["Time"];
            /** @description the last entry of the ledger that the plan knew of */
            as_of?: number;
            /** @description as docs/formats/block.md says, with this squad alone */
            plan?: Record<string, never>;
        };
        Week: {
            from: components["schemas"]["Day"];
            to: components["schemas"]["Day"];
            evenings: {
                squad: components["schemas"]["Id"];
                day: components["schemas"]["Day"];
                start: string;
                started: boolean;
                /** @enum {string} */
                happened?: "held" | "cut-short" | "missed";
                /** @enum {string} */
                did_it?: "most" | "half" | "few" | "nobody";
                minutes?: number;
                note?: string;
                there?: number;
                drills_that_need_help: string[];
                visits: number;
                /** @constant */
                wrapped_up_by_two?: true;
            }[];
        };
        ReportTable: {
            /** @constant */
            kind: "table";
            caption: string;
            columns: {
                heading: string;
                numeric: boolean;
            }[];
            rows: string[][];
        };
        ReportBlock: {
            /** @enum {string} */
            kind: "paragraph" | "list" | "notice" | "table" | "chart";
            /** @description of a paragraph or a notice */
            text?: string;
            /** @description of a list */
            items?: string[];
            /** @description of a notice, bold */
            lead?: string;
            /** @description of a table, as its columns and rows */
            caption?: string;
            columns?: {
                heading: string;
                numeric: boolean;
            }[];
            rows?: string[][];
            /** @description of a chart, as what follows */
            id?: string;
            title?: string;
            /** @description one sentence: what the drawing shows */
            says?: string;
            /** @description as web/charts/data.ts draws it */
            data?: {
                [key: string]: unknown;
            };
            table?: components["schemas"]["ReportTable"];
            /**
             * @description of a chart whose numbers stand in a table at the end too: on paper they need not be here
             * @constant
             */
            numbers_at_the_end?: true;
        };
        Season: {
            /** @constant */
            version: 1;
            /**
             * @description there where neither hours nor injuries are on record
             * @constant
             */
            nothing?: true;
            title: string;
            club: string;
            season: string;
            as_of: string;
            /** @enum {string} */
            language: "en" | "es";
            sections: {
                heading: string;
                level: number;
                blocks: components["schemas"]["ReportBlock"][];
            }[];
        };
        /** @description What was seen and done, as docs/formats/incident.md has it; what is absent becomes lines to write on. Player and day are the ledger's. */
        Incident: {
            /** @example 18:12 */
            time?: string;
            /** @description where on the ground */
            place?: string;
            /** @description in the reporter's words */
            what_happened?: string;
            signs?: string[];
            done?: string[];
            told?: {
                who: string;
                by?: string;
                /** @example 18:25 */
                at?: string;
            }[];
            reported_by?: string;
            /**
             * @description a day, not before the injury
             * @example 2026-11-26
             */
            reported_on?: string;
            /** @description with what stood of the player when it happened, for the clinician; true if absent */
            known_before?: boolean;
            /**
             * @description a4 if absent
             * @enum {string}
             */
            paper?: "a4" | "letter";
        };
        House: {
            /** @description As far as somebody noted it on the server's machine; a key that is absent was not noted. */
            backup: {
                last?: components["schemas"]["Time"];
                /** @description the name of its file, without the folder */
                where?: string;
                checked?: components["schemas"]["Time"];
                /** @description when the one that was checked was written */
                checked_one?: components["schemas"]["Time"];
            };
            retention: {
                /** @enum {string} */
                class: "evenings" | "people-who-left" | "kept-aside" | "plans" | "book-of-reads";
                keeps_days: number;
                /** @description the day on which the oldest goes; absent: nothing is there */
                next_day?: components["schemas"]["Day"];
                /** @description how much goes on that day */
                would_go: number;
            }[];
            /** @description the first use of the key that is known; absent: none */
            key_since?: components["schemas"]["Time"];
        };
        ClubDocument: {
            /** @description squads/u13-kestrels.toml */
            path: string;
            digest?: string;
            /** @description of a document in TOML; absent of a roster */
            content?: Record<string, never>;
        };
        ClubDocuments: {
            documents: components["schemas"]["ClubDocument"][];
        };
        ChangeClubDocuments: {
            changes: {
                path: string;
                /** @description the digest of what is there; absent where nothing is */
                instead_of?: string;
                /** @description to be written as TOML */
                content?: Record<string, never>;
                /** @description to be written as it is; without either, the document goes */
                text?: string;
            }[];
        };
        ClubNotSound: {
            /** @enum {string} */
            error: "club-not-sound";
            what: string;
            faults: {
                fault: string;
                file: string;
                line?: number;
                field: string;
                found: string;
                expected: string;
                sentence: string;
            }[];
        };
        WeekOfSquads: {
            from: components["schemas"]["Day"];
            to: components["schemas"]["Day"];
            /** @description of the latest entry about anybody; absent where there is none */
            known_at?: string;
            squads: {
                squad: components["schemas"]["Id"];
                name: string;
                has_plan: boolean;
                planned: {
                    day: components["schemas"]["Day"];
                    start: string;
                    minutes?: number;
                    match_day?: boolean;
                }[];
                fell_out: {
                    day: components["schemas"]["Day"];
                    start: string;
                    why: string;
                    /** @description Of why: a code and its values (docs/formats/block.md); not of a plan from before they were told. */
                    because?: {
                        code: string;
                        name?: string;
                        strip?: string;
                    };
                }[];
                tonight: {
                    joins_in: number;
                    with_swaps: number;
                    sits_out: number;
                    /** @description players whose restrictions are to be looked at again within seven days, or were to be */
                    reviews: number;
                    earliest_review?: components["schemas"]["Day"];
                    /** @description players of whom a hurt or soreness came in within seven days and still holds them back */
                    reported?: {
                        hurt: number;
                        sore: number;
                        latest: components["schemas"]["Day"];
                    };
                };
            }[];
            /** @description docs/model/visits.md */
            visits: {
                squad: components["schemas"]["Id"];
                causes: {
                    /** @enum {string} */
                    reason: "not-run" | "nothing-heard" | "few-did-it" | "asked-help" | "cut-short" | "not-seen";
                    count?: number;
                    latest?: components["schemas"]["Day"];
                }[];
            }[];
        };
        Enter: {
            entries: ({
                id: components["schemas"]["EntryId"];
                kind: string;
            } & {
                [key: string]: unknown;
            })[];
        };
        Entered: {
            verdicts: components["schemas"]["Verdict"][];
        };
        Roster: {
            path: string;
            /** @description for instead_of of a change */
            digest: string;
            text: string;
        };
        /** @description docs/model/season_turn.md */
        SeasonTurn: {
            season: {
                from: components["schemas"]["Day"];
                to: components["schemas"]["Day"];
            };
            /** @description of the next block */
            first_monday: components["schemas"]["Day"];
            squads: {
                squad: components["schemas"]["Id"];
                name: string;
                /** @description what the roster's column Squad says */
                label: string;
                /** @description whose players are in it, those of most first */
                was: components["schemas"]["Id"][];
            }[];
            /** @description squads that no squad goes on from */
            ends: {
                squad: components["schemas"]["Id"];
                name: string;
            }[];
            players: {
                player: components["schemas"]["Id"];
                name: string;
                /** @description on the new season's first day */
                age?: number;
                from: components["schemas"]["Id"][];
                /** @description none: no squad is for that age */
                to: components["schemas"]["Id"][];
            }[];
            /** @description what is done; players by id */
            told: {
                /** @enum {string} */
                code: "squad-ends" | "squad-becomes" | "squad-stays" | "no-youngest" | "too-old" | "goes-from" | "no-squad-left" | "squad-empty" | "taught-to-nobody" | "taught-to" | "emphasis" | "season" | "calendar-left-out" | "reported-goes-along" | "takes-routine" | "takes-match-routine" | "keeps-routine" | "restrictions-left-out" | "restrictions-go-along" | "no-squad-to-coach";
                sentence: string;
                values: {
                    [key: string]: string;
                };
            }[];
            /** @description for POST /api/club/documents, as they are or amended */
            changes: {
                path: string;
                instead_of?: string;
                text?: string;
            }[];
            /** @description what the same documents held; without a text there was none */
            back: {
                path: string;
                text?: string;
            }[];
        };
        Coaches: {
            /** @description since when visits and asked help are told */
            from: components["schemas"]["Day"];
            coaches: {
                account: components["schemas"]["Id"];
                name: string;
                squads: components["schemas"]["Id"][];
                taught: {
                    day: components["schemas"]["Day"];
                    what: string;
                    by?: components["schemas"]["Id"];
                    entry: components["schemas"]["EntryId"];
                }[];
                /** @description what they answered when a season was over */
                asked: {
                    day: components["schemas"]["Day"];
                    form: string;
                    answers?: string[];
                    note?: string;
                    by?: components["schemas"]["Id"];
                    entry: components["schemas"]["EntryId"];
                }[];
                visits: {
                    day: components["schemas"]["Day"];
                    squad: components["schemas"]["Id"];
                    by?: components["schemas"]["Id"];
                }[];
                help: {
                    day: components["schemas"]["Day"];
                    squad: components["schemas"]["Id"];
                    drill: components["schemas"]["Id"];
                }[];
                /** @description when something of theirs about those days came in last */
                sent?: string;
            }[];
        };
        Players: {
            players: {
                player: components["schemas"]["Id"];
                name: string;
                age_group: string;
                squads: components["schemas"]["Id"][];
            }[];
        };
        Consents: {
            players: {
                player: components["schemas"]["Id"];
                name: string;
                age_group: string;
                squads: components["schemas"]["Id"][];
                stands: {
                    /** @enum {string} */
                    training: "never-asked" | "given" | "withheld";
                    /** @enum {string} */
                    "injury-record": "never-asked" | "given" | "withheld";
                    /** @enum {string} */
                    statistics: "never-asked" | "given" | "withheld";
                };
                consents: {
                    /** @enum {string} */
                    purpose: "training" | "injury-record" | "statistics";
                    /** @enum {string} */
                    by: "guardian" | "player";
                    /** @enum {string} */
                    guardian?: "first" | "second";
                    /** @enum {string} */
                    answer: "given" | "refused" | "withdrawn";
                    day: components["schemas"]["Day"];
                }[];
            }[];
        };
        Injuries: {
            /** @description kept, and not shown */
            without_consent: number;
            injuries: {
                injury: components["schemas"]["EntryId"];
                player: components["schemas"]["Id"];
                squad: components["schemas"]["Id"];
                day: components["schemas"]["Day"];
                /** @description terms of catalogue/record_terms.toml: region knee */
                what: string[];
                note?: string;
                loss_began?: components["schemas"]["Day"];
                /** @description of an open one: the first day on which something that holds the player back is to be looked at again */
                review?: components["schemas"]["Day"];
                returned?: components["schemas"]["Day"];
                days_lost?: number;
                /** @description no return is known */
                open?: boolean;
            }[];
        };
        LookedAt: {
            number: number;
            /** @description under which it is part of the books; not where it was dropped */
            receipt?: number;
        };
        KeptAside: {
            /** @description the latest 100 decisions */
            looked_at: {
                number: number;
                /** @enum {string} */
                what: "taken-in" | "entered-anew" | "mistake" | "not-ours";
                receipt?: number;
                by: components["schemas"]["Id"];
                when: components["schemas"]["Time"];
            }[];
            kept_aside: {
                number: number;
                received: string;
                device: string;
                author: string;
                why: string;
                /**
                 * @description of why
                 * @enum {string}
                 */
                key: "revoked" | "other-content" | "clock-ahead" | "too-old" | "day-to-come" | "nobody-listed" | "not-their-squad" | "not-their-role" | "not-an-entry";
                /** @description as it was handed in */
                content: string;
            }[];
        };
        /** @enum {string} */
        Consent: "never-asked" | "given" | "withheld";
        Timeline: {
            player: components["schemas"]["Id"];
            name: string;
            age_group: string;
            squads: components["schemas"]["Id"][];
            now: components["schemas"]["Time"];
            word: components["schemas"]["StandingWord"];
            /** @description by purpose */
            consents: {
                training: components["schemas"]["Consent"];
                "injury-record": components["schemas"]["Consent"];
                statistics: components["schemas"]["Consent"];
            };
            /** @description each with its author and the author's role */
            entries: components["schemas"]["SeenEntry"][];
            /** @description entries that are not shown for want of consent; 0 in the family's own copy */
            closed: number;
            read_by: components["schemas"]["ReadNote"][];
        };
        ReadNote: {
            number: number;
            when: components["schemas"]["Time"];
            account: components["schemas"]["Id"];
            device?: components["schemas"]["Id"];
            /** @description the route's name */
            what: string;
            squad?: components["schemas"]["Id"];
            people: number;
        };
        Reads: {
            reads: components["schemas"]["ReadNote"][];
        };
        Erased: {
            erased: components["schemas"]["Id"];
            remains: string;
        };
    };
    responses: {
        /** @description It is. */
        Here: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @constant */
                    status: "here";
                };
            };
        };
        /** @description It does. */
        Ready: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @constant */
                    status: "ready";
                };
            };
        };
        /** @description It is done. */
        Done: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Nothing"];
            };
        };
        /** @description A session, with a new cookie. `next` says what is still to be shown. */
        SessionBegun: {
            headers: {
                "Set-Cookie": components["headers"]["SetCookie"];
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Session"];
            };
        };
        /** @description The password is kept; sign in with it. */
        Activated: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Activated"];
            };
        };
        /** @description Whose session it is. */
        Me: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Me"];
            };
        };
        /** @description The session has ended. */
        SignedOut: {
            headers: {
                "Set-Cookie": components["headers"]["SetCookie"];
                "Clear-Site-Data": components["headers"]["ClearSiteData"];
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Nothing"];
            };
        };
        /** @description The secret. */
        SecondFactorBegun: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["NewSecondFactor"];
            };
        };
        /** @description It is kept. Ten codes for the day the phone is lost, each good once; they are never shown again. */
        SecondFactorKept: {
            headers: {
                "Set-Cookie": components["headers"]["SetCookie"];
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["RecoveryCodes"];
            };
        };
        /** @description How many sessions ended. */
        SessionsEnded: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Ended"];
            };
        };
        /** @description One's own sessions. */
        Sessions: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Sessions"];
            };
        };
        /** @description All accounts. */
        Accounts: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Accounts"];
            };
        };
        /** @description The account */
        AccountAdded: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["AddedAccount"];
            };
        };
        /** @description The account as it is again. */
        Reopened: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Account"];
            };
        };
        /** @description What it is charged with now. */
        Charged: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["ChargesOf"];
            };
        };
        /** @description The link. */
        LinkMade: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Link"];
            };
        };
        /** @description All devices. */
        Devices: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Devices"];
            };
        };
        /** @description All links to pair a device. */
        Pairings: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Pairings"];
            };
        };
        /** @description The link. */
        PairingOpened: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["OpenedPairing"];
            };
        };
        /** @description The device's secret and the code. */
        PairingClaimed: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["ClaimedPairing"];
            };
        };
        /** @description How far it has come. */
        PairingState: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["PairingState"];
            };
        };
        /** @description The device. */
        Paired: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Device"];
            };
        };
        /** @description A verdict on each entry, and what is new. */
        Synchronised: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Synchronised"];
            };
        };
        /** @description The club and one's squads. */
        Squads: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Squads"];
            };
        };
        /** @description The squad tonight. */
        Squad: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["SquadTonight"];
            };
        };
        /** @description They wait. */
        PlansAskedFor: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["PlansAskedFor"];
            };
        };
        /** @description What was asked for. */
        Planning: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Planning"];
            };
        };
        /** @description The plan. */
        Plan: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Plan"];
            };
        };
        /** @description The documents, or those that were changed. */
        ClubDocuments: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["ClubDocuments"];
            };
        };
        /** @description Somebody else was first; nothing was done. What is there now; without a digest it is not there. */
        ChangedMeanwhile: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "changed-meanwhile";
                    what: string;
                    documents: components["schemas"]["ClubDocument"][];
                };
            };
        };
        /** @description With the change the club would have faults; nothing was done. */
        ClubNotSound: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["ClubNotSound"];
            };
        };
        /** @description The report. */
        Season: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Season"];
            };
        };
        /** @description sessions.csv, hours.csv, injuries.csv, squads.csv and datapackage.json. */
        SeasonAsFiles: {
            headers: {
                "Content-Disposition": components["headers"]["SeasonFile"];
                [name: string]: unknown;
            };
            content: {
                "application/zip": string;
            };
        };
        /** @description The paper. */
        InjuryPaper: {
            headers: {
                "Content-Disposition": components["headers"]["OnePage"];
                [name: string]: unknown;
            };
            content: {
                "application/pdf": string;
            };
        };
        /** @description What is done about the data. */
        House: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["House"];
            };
        };
        /** @description The week by squads. */
        WeekOfSquads: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["WeekOfSquads"];
            };
        };
        /** @description A verdict for each entry, in its order. */
        Entered: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Entered"];
            };
        };
        /** @description The injuries. */
        Injuries: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Injuries"];
            };
        };
        /** @description The club's catalogue. */
        Catalogue: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Catalogue"];
            };
        };
        /** @description The pages, on A4. */
        Pdf: {
            headers: {
                "Content-Disposition": components["headers"]["OnePage"];
                [name: string]: unknown;
            };
            content: {
                "application/pdf": string;
            };
        };
        /** @description The calendar, in floating local times. */
        Calendar: {
            headers: {
                "Content-Disposition": components["headers"]["CalendarFile"];
                [name: string]: unknown;
            };
            content: {
                "text/calendar": string;
            };
        };
        /** @description The evenings, in floating local times. */
        FollowedCalendar: {
            headers: {
                "Cache-Control": components["headers"]["AskedAnew"];
                ETag: components["headers"]["Tag"];
                "X-Robots-Tag": components["headers"]["NotListed"];
                [name: string]: unknown;
            };
            content: {
                "text/calendar": string;
            };
        };
        /** @description It is as it was. */
        NotChanged: {
            headers: {
                "Cache-Control": components["headers"]["AskedAnew"];
                ETag: components["headers"]["Tag"];
                [name: string]: unknown;
            };
            content?: never;
        };
        /** @description The addresses. */
        CalendarLinks: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["CalendarLinks"];
            };
        };
        /** @description It answers from now on. */
        CalendarLinkMade: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["CalendarLinkMade"];
            };
        };
        /** @description The club a year on. */
        SeasonTurn: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["SeasonTurn"];
            };
        };
        /** @description The roster. */
        Roster: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Roster"];
            };
        };
        /** @description The coaches. */
        Coaches: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Coaches"];
            };
        };
        /** @description Everybody who plays. */
        Players: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Players"];
            };
        };
        /** @description What was agreed to. */
        Consents: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Consents"];
            };
        };
        /** @description The squad's sheet of tonight, and its coming evenings. */
        Evenings: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Evenings"];
            };
        };
        /** @description The week. */
        Week: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Week"];
            };
        };
        /** @description All releases by number. */
        Releases: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Releases"];
            };
        };
        /** @description The release. */
        Release: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Release"];
            };
        };
        /** @description What it would be. */
        ReleaseDrawn: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["ReleaseForLead"];
            };
        };
        /** @description It is given out. */
        ReleaseMade: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["ReleaseForLead"];
            };
        };
        /** @description What was kept aside. */
        KeptAside: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["KeptAside"];
            };
        };
        /** @description Everything about the player. */
        Timeline: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Timeline"];
            };
        };
        /** @description Everything about the player, to keep. */
        TimelineAsFile: {
            headers: {
                "Content-Disposition": components["headers"]["OneFile"];
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Timeline"];
            };
        };
        /** @description It is gone; and what remains. */
        Erased: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Erased"];
            };
        };
        /** @description Who read what. */
        Reads: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["Reads"];
            };
        };
        /** @description The request is not as it should be; faults say where. */
        NotUnderstood: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["FaultsOrRefusal"];
            };
        };
        /** @description No session. */
        SignInNeeded: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "sign-in-needed";
                    what: string;
                };
            };
        };
        /** @description Name and password or the code are not right. */
        SignInFailed: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "sign-in-failed" | "second-factor-wrong";
                    what: string;
                };
            };
        };
        /** @description No session, or the code is not right or was used before. */
        CodeWrong: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "sign-in-needed" | "second-factor-wrong";
                    what: string;
                };
            };
        };
        /** @description No device, or one that was revoked. */
        NoSuchDevice: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "sign-in-needed" | "revoked";
                    what: string;
                };
            };
        };
        /** @description No device; or one that was revoked: what it handed in was kept aside, nothing is given. */
        LastWords: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["LastWords"];
            };
        };
        /** @description It did not come from a page or a program of this club's. */
        NotFromHere: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-from-here";
                    what: string;
                };
            };
        };
        /** @description Not from here, or the second factor that there is was not shown just now. */
        NotYetSecond: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-from-here" | "step-up-needed";
                    what: string;
                };
            };
        };
        /** @description Not from here, the second factor was not shown, or the old password is wrong. */
        OldPasswordWrong: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-from-here" | "second-factor-needed" | "old-password-wrong";
                    what: string;
                };
            };
        };
        /** @description The second factor was not shown. */
        SecondNeeded: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "second-factor-needed";
                    what: string;
                };
            };
        };
        /** @description Not from here, or the second factor was not shown. */
        SecondNeededToSend: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-from-here" | "second-factor-needed";
                    what: string;
                };
            };
        };
        /** @description Not from here, or the second factor was not shown in the last five minutes. */
        SecondNeededJustNow: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-from-here" | "second-factor-needed" | "step-up-needed";
                    what: string;
                };
            };
        };
        /** @description The role or the session is not enough. */
        MayNotRead: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "second-factor-needed" | "not-your-role";
                    what: string;
                };
            };
        };
        /** @description Not from here, or the role or the session is not enough. */
        MayNotSend: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-from-here" | "second-factor-needed" | "not-your-role";
                    what: string;
                };
            };
        };
        /** @description Not from here, or the role or the session is not enough; the second factor must have been shown in the last five minutes. */
        MayNotChange: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-from-here" | "second-factor-needed" | "step-up-needed" | "not-your-role";
                    what: string;
                };
            };
        };
        /** @description The role is not one for this. */
        DeviceMayNotRead: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-your-role";
                    what: string;
                };
            };
        };
        /** @description Not from here, or the role is not one for this. */
        DeviceMayNotSend: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-from-here" | "not-your-role";
                    what: string;
                };
            };
        };
        /** @description Nothing fits; the words say why. */
        NothingFits: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "nothing-fits";
                    what: string;
                };
            };
        };
        /** @description A worker has it, or it is over. */
        UnderWay: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "under-way";
                    what: string;
                };
            };
        };
        /** @description There is nothing here for you. */
        NotFound: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-found";
                    what: string;
                };
            };
        };
        /** @description It stays aside; why. */
        CannotBeTakenIn: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "cannot-be-taken-in";
                    what: string;
                    /** @enum {string} */
                    key: "not-an-entry" | "newer-kind" | "not-their-role" | "erased" | "no-consent" | "other-content";
                };
            };
        };
        /** @description It is no longer kept aside. */
        LookedAt: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": components["schemas"]["LookedAt"];
            };
        };
        /** @description Somebody has that name. */
        SignInTaken: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "sign-in-taken";
                    what: string;
                };
            };
        };
        /** @description The period may not be given out, a number would come out, or another release was made meanwhile; which, says `what`. */
        NotReleased: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-released";
                    what: string;
                    /** @enum {string} */
                    key: "ends-before-it-begins" | "no-season-or-half" | "not-over" | "released-already" | "overlaps-a-release" | "holds-an-older-release" | "too-few-new-days" | "days-that-went" | "names-a-player" | "gives-a-number-away" | "made-meanwhile";
                };
            };
        };
        /** @description It was not ended. */
        NotEnded: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-ended";
                    what: string;
                };
            };
        };
        /** @description Somebody else has changed them meanwhile; what they are now. */
        ChargesChanged: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "changed-meanwhile";
                    what: string;
                    charges: components["schemas"]["Charge"][];
                };
            };
        };
        /** @description The account was ended. */
        AccountEnded: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "account-ended";
                    what: string;
                };
            };
        };
        /** @description Nobody ends their own account. */
        YourOwn: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "your-own";
                    what: string;
                };
            };
        };
        /** @description There is none to show. */
        NoSecondFactor: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "no-second-factor";
                    what: string;
                };
            };
        };
        /** @description The code is another, the link was used twice, or it is too late. */
        NotConfirmed: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-confirmed";
                    what: string;
                };
            };
        };
        /** @description The link was used before, is too old, or is none. */
        LinkUsed: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "link-used";
                    what: string;
                };
            };
        };
        /** @description It is not JSON. */
        NotJson: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-json";
                    what: string;
                };
            };
        };
        /** @description Too short, too long, or one that is tried first. */
        PasswordNotTaken: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "password-not-taken";
                    what: string;
                };
            };
        };
        /** @description The code is not of this secret. */
        NotOfThisSecret: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "second-factor-wrong";
                    what: string;
                };
            };
        };
        /** @description The id in the body is another one than in the path. */
        NotTheSame: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-the-same";
                    what: string;
                };
            };
        };
        /** @description The app is too old or too new. It keeps what it has. */
        UpdateFirst: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "update-first";
                    what: string;
                };
            };
        };
        /** @description Wait first. */
        TooManyTries: {
            headers: {
                "Retry-After": components["headers"]["RetryAfter"];
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "too-many-tries";
                    what: string;
                };
            };
        };
        /** @description One account or device asked more than 240 times in a minute. */
        TooFast: {
            headers: {
                "Retry-After": components["headers"]["RetryAfter"];
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "too-fast";
                    what: string;
                };
            };
        };
        /** @description The store cannot be reached, or the club's folder has a fault. What the calendar has stays. */
        NoCalendarNow: {
            headers: {
                "Retry-After": components["headers"]["RetryAfter"];
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "store-busy" | "no-calendar-now";
                    what: string;
                };
            };
        };
        /** @description The store cannot be reached. Nothing was taken in. */
        StoreBusy: {
            headers: {
                "Retry-After": components["headers"]["RetryAfter"];
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "store-busy";
                    what: string;
                };
            };
        };
        /** @description The disk is full. Nothing was taken in. */
        StoreFull: {
            headers: {
                "Retry-After": components["headers"]["RetryAfter"];
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "store-full";
                    what: string;
                };
            };
        };
        /** @description The store cannot be reached, or the server is leaving. */
        NotReady: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-ready" | "store-busy";
                    what: string;
                };
            };
        };
        /** @description It is no request of HTTP, or a header stands there twice. The connection may be closed. */
        NotRead: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-understood";
                    what: string;
                };
            };
        };
        /** @description Not asked for in this way. */
        NoSuchMethod: {
            headers: {
                Allow: components["headers"]["Allow"];
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "no-such-method";
                    what: string;
                };
            };
        };
        /** @description More than 1 MiB. The connection is closed. */
        TooLarge: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-understood";
                    what: string;
                };
            };
        };
        /** @description More than 16 KiB of headers. The connection is closed. */
        HeadersTooLarge: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "not-understood";
                    what: string;
                };
            };
        };
        /** @description Something went wrong here. Nothing was half done. */
        Fault: {
            headers: {
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "fault";
                    what: string;
                };
            };
        };
        /** @description The server has its hands full, or many sign in at this moment. */
        Busy: {
            headers: {
                "Retry-After": components["headers"]["RetryAfter"];
                [name: string]: unknown;
            };
            content: {
                "application/json": {
                    /** @enum {string} */
                    error: "busy";
                    what: string;
                };
            };
        };
    };
    parameters: {
        /** @description Says that a program of the club's own sent it. */
        LaneworkRequest: "1";
        Account: components["schemas"]["Id"];
        KeptNumber: components["schemas"]["Id"];
        /** @description its day and start: 2026-12-01-1815 */
        Evening: components["schemas"]["Id"];
        /** @description as ask-for-plans gave it */
        PlanningNumber: components["schemas"]["Id"];
        /** @description the secret that make-calendar-link told, and .ics */
        CalendarLink: components["schemas"]["Id"];
        Device: components["schemas"]["Id"];
        /** @description the week's Monday */
        Monday: components["schemas"]["Day"];
        Pairing: components["schemas"]["Id"];
        Player: components["schemas"]["Id"];
        /** @description its number */
        Release: components["schemas"]["Id"];
        Squad: components["schemas"]["Id"];
    };
    requestBodies: never;
    headers: {
        /** @description the session: `__Host-`, Secure, HttpOnly, SameSite=Strict */
        SetCookie: string;
        /** @description seconds */
        RetryAfter: number;
        /** @description the methods that there are */
        Allow: string;
        /** @description what the browser forgets */
        ClearSiteData: "\"cache\", \"storage\"";
        /** @description a file to keep */
        CalendarFile: string;
        /** @description changes when the calendar does */
        Tag: string;
        /** @description kept by whoever asked, and asked about each time */
        AskedAnew: "private, no-cache";
        /** @description no search engine lists it */
        NotListed: "noindex, nofollow";
        /** @description a document to show */
        OnePage: string;
        /** @description a file to keep */
        SeasonFile: string;
        /** @description a file to keep */
        OneFile: "attachment; filename=\"one-player.json\"";
    };
    pathItems: never;
}
export type Id = components['schemas']['Id'];
export type Day = components['schemas']['Day'];
export type Time = components['schemas']['Time'];
export type Role = components['schemas']['Role'];
export type Anything = components['schemas']['Anything'];
export type Nothing = components['schemas']['Nothing'];
export type SignIn = components['schemas']['SignIn'];
export type Activate = components['schemas']['Activate'];
export type SecondFactor = components['schemas']['SecondFactor'];
export type Code = components['schemas']['Code'];
export type Secret = components['schemas']['Secret'];
export type NewPassword = components['schemas']['NewPassword'];
export type NewCharge = components['schemas']['NewCharge'];
export type NewAccount = components['schemas']['NewAccount'];
export type ReleasePeriod = components['schemas']['ReleasePeriod'];
export type Charges = components['schemas']['Charges'];
export type AskForPlans = components['schemas']['AskForPlans'];
export type OpenPairing = components['schemas']['OpenPairing'];
export type ClaimPairing = components['schemas']['ClaimPairing'];
export type ExportPlayer = components['schemas']['ExportPlayer'];
export type DropKept = components['schemas']['DropKept'];
export type ErasePlayer = components['schemas']['ErasePlayer'];
export type Sync = components['schemas']['Sync'];
export type Entry = components['schemas']['Entry'];
export type EntryId = components['schemas']['EntryId'];
export type Fault = components['schemas']['Fault'];
export type FaultsOrRefusal = components['schemas']['FaultsOrRefusal'];
export type Session = components['schemas']['Session'];
export type Activated = components['schemas']['Activated'];
export type Charge = components['schemas']['Charge'];
export type Account = components['schemas']['Account'];
export type Accounts = components['schemas']['Accounts'];
export type AddedAccount = components['schemas']['AddedAccount'];
export type Me = components['schemas']['Me'];
export type NewSecondFactor = components['schemas']['NewSecondFactor'];
export type RecoveryCodes = components['schemas']['RecoveryCodes'];
export type Ended = components['schemas']['Ended'];
export type Sessions = components['schemas']['Sessions'];
export type ChargesOf = components['schemas']['ChargesOf'];
export type Link = components['schemas']['Link'];
export type Device = components['schemas']['Device'];
export type Devices = components['schemas']['Devices'];
export type CalendarLinks = components['schemas']['CalendarLinks'];
export type CalendarLinkMade = components['schemas']['CalendarLinkMade'];
export type Pairings = components['schemas']['Pairings'];
export type OpenedPairing = components['schemas']['OpenedPairing'];
export type ClaimedPairing = components['schemas']['ClaimedPairing'];
export type PairingState = components['schemas']['PairingState'];
export type Verdict = components['schemas']['Verdict'];
export type SeenEntry = components['schemas']['SeenEntry'];
export type Synchronised = components['schemas']['Synchronised'];
export type LastWords = components['schemas']['LastWords'];
export type SquadRow = components['schemas']['SquadRow'];
export type Squads = components['schemas']['Squads'];
export type Releases = components['schemas']['Releases'];
export type ReleaseRate = components['schemas']['ReleaseRate'];
export type ReleaseRow = components['schemas']['ReleaseRow'];
export type ReleaseDone = components['schemas']['ReleaseDone'];
export type Release = components['schemas']['Release'];
export type ReleaseCompared = components['schemas']['ReleaseCompared'];
export type ReleaseForLead = components['schemas']['ReleaseForLead'];
export type SquadTonight = components['schemas']['SquadTonight'];
export type StandingWord = components['schemas']['StandingWord'];
export type PlansAskedFor = components['schemas']['PlansAskedFor'];
export type Planning = components['schemas']['Planning'];
export type PocketPlayer = components['schemas']['PocketPlayer'];
export type Evenings = components['schemas']['Evenings'];
export type Catalogue = components['schemas']['Catalogue'];
export type Plan = components['schemas']['Plan'];
export type Week = components['schemas']['Week'];
export type ReportTable = components['schemas']['ReportTable'];
export type ReportBlock = components['schemas']['ReportBlock'];
export type Season = components['schemas']['Season'];
export type Incident = components['schemas']['Incident'];
export type House = components['schemas']['House'];
export type ClubDocument = components['schemas']['ClubDocument'];
export type ClubDocuments = components['schemas']['ClubDocuments'];
export type ChangeClubDocuments = components['schemas']['ChangeClubDocuments'];
export type ClubNotSound = components['schemas']['ClubNotSound'];
export type WeekOfSquads = components['schemas']['WeekOfSquads'];
export type Enter = components['schemas']['Enter'];
export type Entered = components['schemas']['Entered'];
export type Roster = components['schemas']['Roster'];
export type SeasonTurn = components['schemas']['SeasonTurn'];
export type Coaches = components['schemas']['Coaches'];
export type Players = components['schemas']['Players'];
export type Consents = components['schemas']['Consents'];
export type Injuries = components['schemas']['Injuries'];
export type LookedAt = components['schemas']['LookedAt'];
export type KeptAside = components['schemas']['KeptAside'];
export type Consent = components['schemas']['Consent'];
export type Timeline = components['schemas']['Timeline'];
export type ReadNote = components['schemas']['ReadNote'];
export type Reads = components['schemas']['Reads'];
export type Erased = components['schemas']['Erased'];
export type ResponseHere = components['responses']['Here'];
export type ResponseReady = components['responses']['Ready'];
export type ResponseDone = components['responses']['Done'];
export type ResponseSessionBegun = components['responses']['SessionBegun'];
export type ResponseActivated = components['responses']['Activated'];
export type ResponseMe = components['responses']['Me'];
export type ResponseSignedOut = components['responses']['SignedOut'];
export type ResponseSecondFactorBegun = components['responses']['SecondFactorBegun'];
export type ResponseSecondFactorKept = components['responses']['SecondFactorKept'];
export type ResponseSessionsEnded = components['responses']['SessionsEnded'];
export type ResponseSessions = components['responses']['Sessions'];
export type ResponseAccounts = components['responses']['Accounts'];
export type ResponseAccountAdded = components['responses']['AccountAdded'];
export type ResponseReopened = components['responses']['Reopened'];
export type ResponseCharged = components['responses']['Charged'];
export type ResponseLinkMade = components['responses']['LinkMade'];
export type ResponseDevices = components['responses']['Devices'];
export type ResponsePairings = components['responses']['Pairings'];
export type ResponsePairingOpened = components['responses']['PairingOpened'];
export type ResponsePairingClaimed = components['responses']['PairingClaimed'];
export type ResponsePairingState = components['responses']['PairingState'];
export type ResponsePaired = components['responses']['Paired'];
export type ResponseSynchronised = components['responses']['Synchronised'];
export type ResponseSquads = components['responses']['Squads'];
export type ResponseSquad = components['responses']['Squad'];
export type ResponsePlansAskedFor = components['responses']['PlansAskedFor'];
export type ResponsePlanning = components['responses']['Planning'];
export type ResponsePlan = components['responses']['Plan'];
export type ResponseClubDocuments = components['responses']['ClubDocuments'];
export type ResponseChangedMeanwhile = components['responses']['ChangedMeanwhile'];
export type ResponseClubNotSound = components['responses']['ClubNotSound'];
export type ResponseSeason = components['responses']['Season'];
export type ResponseSeasonAsFiles = components['responses']['SeasonAsFiles'];
export type ResponseInjuryPaper = components['responses']['InjuryPaper'];
export type ResponseHouse = components['responses']['House'];
export type ResponseWeekOfSquads = components['responses']['WeekOfSquads'];
export type ResponseEntered = components['responses']['Entered'];
export type ResponseInjuries = components['responses']['Injuries'];
export type ResponseCatalogue = components['responses']['Catalogue'];
export type ResponsePdf = components['responses']['Pdf'];
export type ResponseCalendar = components['responses']['Calendar'];
export type ResponseFollowedCalendar = components['responses']['FollowedCalendar'];
export type ResponseNotChanged = components['responses']['NotChanged'];
export type ResponseCalendarLinks = components['responses']['CalendarLinks'];
export type ResponseCalendarLinkMade = components['responses']['CalendarLinkMade'];
export type ResponseSeasonTurn = components['responses']['SeasonTurn'];
export type ResponseRoster = components['responses']['Roster'];
export type ResponseCoaches = components['responses']['Coaches'];
export type ResponsePlayers = components['responses']['Players'];
export type ResponseConsents = components['responses']['Consents'];
export type ResponseEvenings = components['responses']['Evenings'];
export type ResponseWeek = components['responses']['Week'];
export type ResponseReleases = components['responses']['Releases'];
export type ResponseRelease = components['responses']['Release'];
export type ResponseReleaseDrawn = components['responses']['ReleaseDrawn'];
export type ResponseReleaseMade = components['responses']['ReleaseMade'];
export type ResponseKeptAside = components['responses']['KeptAside'];
export type ResponseTimeline = components['responses']['Timeline'];
export type ResponseTimelineAsFile = components['responses']['TimelineAsFile'];
export type ResponseErased = components['responses']['Erased'];
export type ResponseReads = components['responses']['Reads'];
export type ResponseNotUnderstood = components['responses']['NotUnderstood'];
export type ResponseSignInNeeded = components['responses']['SignInNeeded'];
export type ResponseSignInFailed = components['responses']['SignInFailed'];
export type ResponseCodeWrong = components['responses']['CodeWrong'];
export type ResponseNoSuchDevice = components['responses']['NoSuchDevice'];
export type ResponseLastWords = components['responses']['LastWords'];
export type ResponseNotFromHere = components['responses']['NotFromHere'];
export type ResponseNotYetSecond = components['responses']['NotYetSecond'];
export type ResponseOldPasswordWrong = components['responses']['OldPasswordWrong'];
export type ResponseSecondNeeded = components['responses']['SecondNeeded'];
export type ResponseSecondNeededToSend = components['responses']['SecondNeededToSend'];
export type ResponseSecondNeededJustNow = components['responses']['SecondNeededJustNow'];
export type ResponseMayNotRead = components['responses']['MayNotRead'];
export type ResponseMayNotSend = components['responses']['MayNotSend'];
export type ResponseMayNotChange = components['responses']['MayNotChange'];
export type ResponseDeviceMayNotRead = components['responses']['DeviceMayNotRead'];
export type ResponseDeviceMayNotSend = components['responses']['DeviceMayNotSend'];
export type ResponseNothingFits = components['responses']['NothingFits'];
export type ResponseUnderWay = components['responses']['UnderWay'];
export type ResponseNotFound = components['responses']['NotFound'];
export type ResponseCannotBeTakenIn = components['responses']['CannotBeTakenIn'];
export type ResponseLookedAt = components['responses']['LookedAt'];
export type ResponseSignInTaken = components['responses']['SignInTaken'];
export type ResponseNotReleased = components['responses']['NotReleased'];
export type ResponseNotEnded = components['responses']['NotEnded'];
export type ResponseChargesChanged = components['responses']['ChargesChanged'];
export type ResponseAccountEnded = components['responses']['AccountEnded'];
export type ResponseYourOwn = components['responses']['YourOwn'];
export type ResponseNoSecondFactor = components['responses']['NoSecondFactor'];
export type ResponseNotConfirmed = components['responses']['NotConfirmed'];
export type ResponseLinkUsed = components['responses']['LinkUsed'];
export type ResponseNotJson = components['responses']['NotJson'];
export type ResponsePasswordNotTaken = components['responses']['PasswordNotTaken'];
export type ResponseNotOfThisSecret = components['responses']['NotOfThisSecret'];
export type ResponseNotTheSame = components['responses']['NotTheSame'];
export type ResponseUpdateFirst = components['responses']['UpdateFirst'];
export type ResponseTooManyTries = components['responses']['TooManyTries'];
export type ResponseTooFast = components['responses']['TooFast'];
export type ResponseNoCalendarNow = components['responses']['NoCalendarNow'];
export type ResponseStoreBusy = components['responses']['StoreBusy'];
export type ResponseStoreFull = components['responses']['StoreFull'];
export type ResponseNotReady = components['responses']['NotReady'];
export type ResponseNotRead = components['responses']['NotRead'];
export type ResponseNoSuchMethod = components['responses']['NoSuchMethod'];
export type ResponseTooLarge = components['responses']['TooLarge'];
export type ResponseHeadersTooLarge = components['responses']['HeadersTooLarge'];
export type ResponseFault = components['responses']['Fault'];
export type ResponseBusy = components['responses']['Busy'];
export type ParameterLaneworkRequest = components['parameters']['LaneworkRequest'];
export type ParameterAccount = components['parameters']['Account'];
export type ParameterKeptNumber = components['parameters']['KeptNumber'];
export type ParameterEvening = components['parameters']['Evening'];
export type ParameterPlanningNumber = components['parameters']['PlanningNumber'];
export type ParameterCalendarLink = components['parameters']['CalendarLink'];
export type ParameterDevice = components['parameters']['Device'];
export type ParameterMonday = components['parameters']['Monday'];
export type ParameterPairing = components['parameters']['Pairing'];
export type ParameterPlayer = components['parameters']['Player'];
export type ParameterRelease = components['parameters']['Release'];
export type ParameterSquad = components['parameters']['Squad'];
export type HeaderSetCookie = components['headers']['SetCookie'];
export type HeaderRetryAfter = components['headers']['RetryAfter'];
export type HeaderAllow = components['headers']['Allow'];
export type HeaderClearSiteData = components['headers']['ClearSiteData'];
export type HeaderCalendarFile = components['headers']['CalendarFile'];
export type HeaderTag = components['headers']['Tag'];
export type HeaderAskedAnew = components['headers']['AskedAnew'];
export type HeaderNotListed = components['headers']['NotListed'];
export type HeaderOnePage = components['headers']['OnePage'];
export type HeaderSeasonFile = components['headers']['SeasonFile'];
export type HeaderOneFile = components['headers']['OneFile'];
export type $defs = Record<string, never>;
export interface operations {
    health: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Here"];
        };
    };
    ready: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Ready"];
            503: components["responses"]["NotReady"];
        };
    };
    metrics: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Counters by route, class of answer and verdict. No person, squad or device. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "text/plain": string;
                };
            };
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
        };
    };
    "sign-in": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["SignIn"];
            };
        };
        responses: {
            200: components["responses"]["SessionBegun"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInFailed"];
            403: components["responses"]["NotFromHere"];
            415: components["responses"]["NotJson"];
            429: components["responses"]["TooManyTries"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    activate: {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Activate"];
            };
        };
        responses: {
            200: components["responses"]["Activated"];
            400: components["responses"]["NotUnderstood"];
            403: components["responses"]["NotFromHere"];
            410: components["responses"]["LinkUsed"];
            415: components["responses"]["NotJson"];
            422: components["responses"]["PasswordNotTaken"];
            429: components["responses"]["TooManyTries"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    me: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Me"];
            401: components["responses"]["SignInNeeded"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "sign-out": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Anything"];
            };
        };
        responses: {
            200: components["responses"]["SignedOut"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["NotFromHere"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "second-factor-begin": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Nothing"];
            };
        };
        responses: {
            200: components["responses"]["SecondFactorBegun"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["NotYetSecond"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "second-factor": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["SecondFactor"];
            };
        };
        responses: {
            200: components["responses"]["SecondFactorKept"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["NotYetSecond"];
            415: components["responses"]["NotJson"];
            422: components["responses"]["NotOfThisSecret"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "step-up": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Code"];
            };
        };
        responses: {
            200: components["responses"]["SessionBegun"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["CodeWrong"];
            403: components["responses"]["NotFromHere"];
            409: components["responses"]["NoSecondFactor"];
            415: components["responses"]["NotJson"];
            429: components["responses"]["TooManyTries"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    password: {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewPassword"];
            };
        };
        responses: {
            200: components["responses"]["SessionsEnded"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["OldPasswordWrong"];
            415: components["responses"]["NotJson"];
            422: components["responses"]["PasswordNotTaken"];
            429: components["responses"]["TooManyTries"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    sessions: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Sessions"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeeded"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "end-other-sessions": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Anything"];
            };
        };
        responses: {
            200: components["responses"]["SessionsEnded"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeededToSend"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    accounts: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Accounts"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "add-account": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewAccount"];
            };
        };
        responses: {
            201: components["responses"]["AccountAdded"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotChange"];
            409: components["responses"]["SignInTaken"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "charge-account": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                account: components["parameters"]["Account"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Charges"];
            };
        };
        responses: {
            200: components["responses"]["Charged"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotChange"];
            404: components["responses"]["NotFound"];
            409: components["responses"]["ChargesChanged"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "account-link": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                account: components["parameters"]["Account"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Anything"];
            };
        };
        responses: {
            201: components["responses"]["LinkMade"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotChange"];
            404: components["responses"]["NotFound"];
            409: components["responses"]["AccountEnded"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "end-account": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                account: components["parameters"]["Account"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Anything"];
            };
        };
        responses: {
            200: components["responses"]["Done"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotChange"];
            404: components["responses"]["NotFound"];
            409: components["responses"]["YourOwn"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "reopen-account": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                account: components["parameters"]["Account"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Nothing"];
            };
        };
        responses: {
            200: components["responses"]["Reopened"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotChange"];
            404: components["responses"]["NotFound"];
            409: components["responses"]["NotEnded"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    devices: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Devices"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "revoke-device": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                device: components["parameters"]["Device"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Anything"];
            };
        };
        responses: {
            200: components["responses"]["Done"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotSend"];
            404: components["responses"]["NotFound"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    pairings: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Pairings"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "open-pairing": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["OpenPairing"];
            };
        };
        responses: {
            201: components["responses"]["PairingOpened"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotSend"];
            404: components["responses"]["NotFound"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "claim-pairing": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ClaimPairing"];
            };
        };
        responses: {
            201: components["responses"]["PairingClaimed"];
            400: components["responses"]["NotUnderstood"];
            403: components["responses"]["NotFromHere"];
            410: components["responses"]["LinkUsed"];
            415: components["responses"]["NotJson"];
            429: components["responses"]["TooManyTries"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "claimed-pairing": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Secret"];
            };
        };
        responses: {
            200: components["responses"]["PairingState"];
            400: components["responses"]["NotUnderstood"];
            403: components["responses"]["NotFromHere"];
            404: components["responses"]["NotFound"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
        };
    };
    "confirm-pairing": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                pairing: components["parameters"]["Pairing"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Code"];
            };
        };
        responses: {
            201: components["responses"]["Paired"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotSend"];
            409: components["responses"]["NotConfirmed"];
            415: components["responses"]["NotJson"];
            429: components["responses"]["TooManyTries"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    sync: {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Sync"];
            };
        };
        responses: {
            200: components["responses"]["Synchronised"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["LastWords"];
            403: components["responses"]["DeviceMayNotSend"];
            415: components["responses"]["NotJson"];
            426: components["responses"]["UpdateFirst"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    squads: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Squads"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    squad: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Squad"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeeded"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "squads-of-device": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Squads"];
            401: components["responses"]["NoSuchDevice"];
            403: components["responses"]["DeviceMayNotRead"];
            503: components["responses"]["StoreBusy"];
        };
    };
    "squad-of-device": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Squad"];
            401: components["responses"]["NoSuchDevice"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    week: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the week's Monday */
                monday: components["parameters"]["Monday"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Week"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "week-of-squads": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the week's Monday */
                monday: components["parameters"]["Monday"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["WeekOfSquads"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    enter: {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Enter"];
            };
        };
        responses: {
            200: components["responses"]["Entered"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotSend"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    injuries: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Injuries"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "ask-for-plans": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["AskForPlans"];
            };
        };
        responses: {
            202: components["responses"]["PlansAskedFor"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotSend"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    planning: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Planning"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    plan: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Plan"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeeded"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "plan-of-device": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Plan"];
            401: components["responses"]["NoSuchDevice"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "evenings-of-device": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Evenings"];
            401: components["responses"]["NoSuchDevice"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    evenings: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Evenings"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeeded"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    card: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
                /** @description its day and start: 2026-12-01-1815 */
                evening: components["parameters"]["Evening"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Pdf"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeeded"];
            404: components["responses"]["NotFound"];
            409: components["responses"]["NothingFits"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    slip: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
                /** @description its day and start: 2026-12-01-1815 */
                evening: components["parameters"]["Evening"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Pdf"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeeded"];
            404: components["responses"]["NotFound"];
            409: components["responses"]["NothingFits"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "cards-of-week": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
                /** @description the week's Monday */
                monday: components["parameters"]["Monday"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Pdf"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeeded"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "clinic-pack": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Pdf"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeeded"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    calendar: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Calendar"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeeded"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "calendar-links": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["CalendarLinks"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "make-calendar-link": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Nothing"];
            };
        };
        responses: {
            201: components["responses"]["CalendarLinkMade"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeededJustNow"];
            404: components["responses"]["NotFound"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "take-back-calendar-link": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                squad: components["parameters"]["Squad"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Nothing"];
            };
        };
        responses: {
            200: components["responses"]["Done"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["SecondNeededToSend"];
            404: components["responses"]["NotFound"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "followed-calendar": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the secret that make-calendar-link told, and .ics */
                link: components["parameters"]["CalendarLink"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["FollowedCalendar"];
            304: components["responses"]["NotChanged"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["NoCalendarNow"];
        };
    };
    "withdraw-planning": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                /** @description as ask-for-plans gave it */
                number: components["parameters"]["PlanningNumber"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Nothing"];
            };
        };
        responses: {
            200: components["responses"]["Done"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotSend"];
            404: components["responses"]["NotFound"];
            409: components["responses"]["UnderWay"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    catalogue: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Catalogue"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    season: {
        parameters: {
            query?: {
                /** @description of its words; English where it is not said */
                language?: "en" | "es";
            };
            header?: never;
            path: {
                /** @description the season's first day */
                from: components["schemas"]["Day"];
                /** @description its last */
                to: components["schemas"]["Day"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Season"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "export-season": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description the season's first day */
                from: components["schemas"]["Day"];
                /** @description its last */
                to: components["schemas"]["Day"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["SeasonAsFiles"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "incident-report": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                /** @description the entry that opened it */
                injury: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Incident"];
            };
        };
        responses: {
            200: components["responses"]["InjuryPaper"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotSend"];
            404: components["responses"]["NotFound"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "referral-letter": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                /** @description the entry that opened it */
                injury: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Incident"];
            };
        };
        responses: {
            200: components["responses"]["InjuryPaper"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotSend"];
            404: components["responses"]["NotFound"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    house: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["House"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "club-documents": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["ClubDocuments"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "change-club-documents": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ChangeClubDocuments"];
            };
        };
        responses: {
            200: components["responses"]["ClubDocuments"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotSend"];
            404: components["responses"]["NotFound"];
            409: components["responses"]["ChangedMeanwhile"];
            415: components["responses"]["NotJson"];
            422: components["responses"]["ClubNotSound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "season-turn": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["SeasonTurn"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    roster: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description its file: roster.csv */
                roster: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Roster"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    quarantine: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["KeptAside"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "take-in-kept": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                number: components["parameters"]["KeptNumber"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Nothing"];
            };
        };
        responses: {
            200: components["responses"]["LookedAt"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotChange"];
            404: components["responses"]["NotFound"];
            409: components["responses"]["CannotBeTakenIn"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "drop-kept": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                number: components["parameters"]["KeptNumber"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["DropKept"];
            };
        };
        responses: {
            200: components["responses"]["LookedAt"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotChange"];
            404: components["responses"]["NotFound"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    releases: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Releases"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "make-release": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ReleasePeriod"];
            };
        };
        responses: {
            201: components["responses"]["ReleaseMade"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotChange"];
            409: components["responses"]["NotReleased"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "preview-release": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ReleasePeriod"];
            };
        };
        responses: {
            200: components["responses"]["ReleaseDrawn"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotSend"];
            409: components["responses"]["NotReleased"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    release: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description its number */
                release: components["parameters"]["Release"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Release"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    coaches: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Coaches"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    players: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Players"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    consents: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Consents"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    timeline: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                player: components["parameters"]["Player"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Timeline"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            404: components["responses"]["NotFound"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "export-player": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                player: components["parameters"]["Player"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ExportPlayer"];
            };
        };
        responses: {
            200: components["responses"]["TimelineAsFile"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotChange"];
            404: components["responses"]["NotFound"];
            415: components["responses"]["NotJson"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "erase-player": {
        parameters: {
            query?: never;
            header: {
                /** @description Says that a program of the club's own sent it. */
                "Lanework-Request": components["parameters"]["LaneworkRequest"];
            };
            path: {
                player: components["parameters"]["Player"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ErasePlayer"];
            };
        };
        responses: {
            200: components["responses"]["Erased"];
            400: components["responses"]["NotUnderstood"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotChange"];
            404: components["responses"]["NotFound"];
            415: components["responses"]["NotJson"];
            422: components["responses"]["NotTheSame"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    "reads-of-player": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                player: components["parameters"]["Player"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Reads"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
    reads: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: components["responses"]["Reads"];
            401: components["responses"]["SignInNeeded"];
            403: components["responses"]["MayNotRead"];
            503: components["responses"]["StoreBusy"];
            507: components["responses"]["StoreFull"];
        };
    };
}
