/**
 * The notation that figures are written in now. It is the workshop's, and a process serves one workshop, so that the
 * server keeps what was read last; in the browser the page carries it on its root, where it is read each time.
 * The framework bundles pages, client components and routes apart, each with a copy of this module: what is kept stands
 * in one place of the process for all of them.
 */
import { DEFAULT_NOTATION, LOCALES, type Notation, UNIT_SYSTEMS } from "@/lib/domain/notation";

const process = globalThis as typeof globalThis & { stillroomNotation?: Notation };

/** What the pages that follow are written in; the server calls it as it reads the books. */
export function writeIn(notation: Notation): void {
  process.stillroomNotation = notation;
}

/** @rule SHOW-1 */
export function notation(): Notation {
  if (typeof document === "undefined") return process.stillroomNotation ?? DEFAULT_NOTATION;
  const { locale, units } = document.documentElement.dataset;
  return {
    locale: LOCALES.find((each) => each === locale) ?? DEFAULT_NOTATION.locale,
    units: UNIT_SYSTEMS.find((each) => each === units) ?? DEFAULT_NOTATION.units,
  };
}

interface Marks {
  /** Between the whole part and the decimals. */
  readonly decimal: string;
  readonly whole: Intl.NumberFormat;
  /** `Oct 9` and not `9 Oct`. */
  readonly monthFirst: boolean;
}

const marksByLocale = new Map<string, Marks>();

/** Asked for once of each locale: to make a format takes longer than all else in a figure. */
export function marks(): Marks {
  const { locale } = notation();
  const known = marksByLocale.get(locale);
  if (known) return known;
  const day = new Intl.DateTimeFormat(locale, { day: "numeric", month: "numeric" }).formatToParts(0);
  const made: Marks = {
    decimal: new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === "decimal")?.value ?? ".",
    whole: new Intl.NumberFormat(locale),
    monthFirst: day.find(({ type }) => type === "month" || type === "day")?.type === "month",
  };
  marksByLocale.set(locale, made);
  return made;
}

/** A plain decimal as a field shows it: with the decimal mark that is read back there. */
export const decimalTyped = (plain: string): string => plain.replace(/(\d)\.(\d)/g, `$1${marks().decimal}$2`);
