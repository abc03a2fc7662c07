/** A moment as the clock on the computer's wall shows it. */
import { LOCALE } from "./shown-digits";

const TIME = { hour: "2-digit", minute: "2-digit" } as const;

/** `09:12`; of another day than `now`, `24 Nov, 09:12`. */
export const clockShown = (at: Date, now: Date): string =>
  at.toDateString() === now.toDateString()
    ? new Intl.DateTimeFormat(LOCALE, TIME).format(at)
    : new Intl.DateTimeFormat(LOCALE, { day: "numeric", month: "short", ...TIME }).format(at);
