/**
 * What the maker has just done, as the address of the page after it carries it: enough to say it, to take it back and
 * to work out the plan as it was before. An address that no longer fits the books says nothing.
 */
import type { BenchMinutes } from "@/lib/domain/bench-hours";
import { type Day, dayOf, isoDate, mondayOf } from "@/lib/domain/calendar";
import { quantity, type Units } from "@/lib/domain/quantity";
import { carriedHours, hoursCarried } from "@/lib/edge/forms/week-forms";

export type Deed =
  /** `said` is the weight that was typed, where one was. */
  | { readonly kind: "planned"; readonly about: string; readonly said: string }
  /** It stood on that day, before that run or last. */
  | { readonly kind: "moved"; readonly about: string; readonly was: Day; readonly before: string | null }
  | { readonly kind: "resized"; readonly about: string; readonly was: Units; readonly said: string }
  | {
      readonly kind: "deleted";
      readonly about: string;
      readonly product: string;
      readonly was: Day;
      readonly units: Units;
      readonly before: string | null;
    }
  | { readonly kind: "hours"; readonly hours: BenchMinutes | null }
  /** Not done, because of what somebody did meanwhile. */
  | {
      readonly kind: "changed meanwhile" | "gone meanwhile" | "made meanwhile" | "at the bench";
      readonly about: string;
    }
  | { readonly kind: "hours changed meanwhile" };

export type Parameters = Readonly<Record<string, string | readonly string[] | undefined>>;

export const textOf = (parameters: Parameters, name: string): string => {
  const value = parameters[name];
  return typeof value === "string" ? value : "";
};

/** Where the maker was when she did it. */
export interface Whereabouts {
  /** A day of the week that is shown. */
  readonly of: Day;
  /** The run that stands open. */
  readonly open: string;
}

/** The week with what was done in its address. */
export function addressOfDeed({ of, open }: Whereabouts, deed: Deed | null): `/week?${string}` {
  const query = new URLSearchParams({ of: isoDate(mondayOf(of)), ...(open && { run: open }), ...fieldsOf(deed) });
  return `/week?${query.toString()}`;
}

function fieldsOf(deed: Deed | null): Record<string, string> {
  if (deed === null) return {};
  const did = deed.kind;
  switch (deed.kind) {
    case "planned":
      return { did, about: deed.about, ...(deed.said && { said: deed.said }) };
    case "moved":
      return { did, about: deed.about, was: isoDate(deed.was), ...placed(deed.before) };
    case "resized":
      return { did, about: deed.about, was: deed.was.toString(), ...(deed.said && { said: deed.said }) };
    case "deleted": {
      const { about, product, was, units, before } = deed;
      return { did, about, product, was: isoDate(was), units: units.toString(), ...placed(before) };
    }
    case "hours":
      return { did, was: hoursCarried(deed.hours) };
    case "changed meanwhile":
    case "gone meanwhile":
    case "made meanwhile":
    case "at the bench":
      return { did, about: deed.about };
    case "hours changed meanwhile":
      return { did };
  }
}

const placed = (before: string | null): Record<string, string> => (before === null ? {} : { before });

/** What the address says was done; null where it says nothing that can be understood. */
export function deedFrom(parameters: Parameters): Deed | null {
  const [about, was, said] = ["about", "was", "said"].map((name) => textOf(parameters, name)) as [
    string,
    string,
    string,
  ];
  const before = textOf(parameters, "before") || null;
  const [day, units] = [dayOf(was), unitsIn(was)];
  const kind = textOf(parameters, "did");
  switch (kind) {
    case "planned":
      return { kind, about, said: said.slice(0, MOST_SAID) };
    case "moved":
      return day === null ? null : { kind, about, was: day, before };
    case "resized":
      return units === null ? null : { kind, about, was: units, said: said.slice(0, MOST_SAID) };
    case "deleted": {
      const made = unitsIn(textOf(parameters, "units"));
      if (day === null || made === null) return null;
      return { kind, about, product: textOf(parameters, "product"), was: day, units: made, before };
    }
    case "hours": {
      const hours = carriedHours(was);
      return hours === undefined ? null : { kind, hours };
    }
    case "changed meanwhile":
    case "gone meanwhile":
    case "made meanwhile":
    case "at the bench":
      return { kind, about };
    case "hours changed meanwhile":
      return { kind };
    // Anything else that an address may hold.
    default:
      return null;
  }
}

const MOST_SAID = 100;

const unitsIn = (text: string): Units | null => (/^[1-9]\d{0,15}$/.test(text) ? quantity<Units>(BigInt(text)) : null);
