/** A moment as the clock on the computer's wall shows it. */
import { notation } from "./notation";

const TIME = { hour: "2-digit", minute: "2-digit" } as const;

/** `09:12`; of another day than `now`, `24 Nov, 09:12`. */
export const clockShown = (at: Date, now: Date): string =>
  new Intl.DateTimeFormat(
    inEnglish(notation().locale),
    at.toDateString() === now.toDateString() ? TIME : { day: "numeric", month: "short", ...TIME },
  ).format(at);

/** Months are words, and the screens' words are English. */
const inEnglish = (locale: string): string => (locale.startsWith("en-") ? locale : "en-GB");
