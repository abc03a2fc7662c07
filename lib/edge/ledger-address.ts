/**
 * Pages of the ledger that other pages point to. An id may hold any character; `.` and `..` would be walked by the
 * browser, so each stands after a tilde.
 */
import { type Day, isoDate } from "@/lib/domain/calendar";
import type { LotName } from "@/lib/domain/ledger/posting";

const segment = (id: string): string => `~${encodeURIComponent(id)}`;

/** The id that an address names, or null where it is no text. */
export function idOfSegment(part: string): string | null {
  try {
    const id = decodeURIComponent(part);
    return id.startsWith("~") ? id.slice(1) : id;
  } catch {
    return null;
  }
}

export const makingAddress = (run: string): `/week/make/${string}` => `/week/make/${segment(run)}`;
export const finishedAddress = (lot: string): `/shelf/finished/${string}` => `/shelf/finished/${segment(lot)}`;
export const postingAddress = (id: string): `/book/history/${string}` => `/book/history/${segment(id)}`;
/** An order from its draft to its last delivery; `did` says what was done with it last. */
export const orderAddress = (order: string, did = ""): `/buying/orders/${string}` =>
  `/buying/orders/${segment(order)}${did === "" ? "" : `?${new URLSearchParams({ did }).toString()}`}`;
/** A supplier's part of the basket on Buying. */
export const orderAnchor = (supplier: string): string => `order-${encodeURIComponent(supplier)}`;
export const orderOfBasketAddress = (supplier: string): `/buying#${string}` => `/buying#${orderAnchor(supplier)}`;
/** The form that receives an order. */
export const receiveAddress = (order: string): `/shelf/receive?${string}` =>
  `/shelf/receive?${new URLSearchParams({ order }).toString()}`;
/** What was paid for a material over time. */
export const paidAddress = (material: string): `/buying/paid/${string}` => `/buying/paid/${segment(material)}`;
/** What may be kept and ordered of a material, by the textbook. */
export const suggestedAddress = (material: string): `/buying/suggested/${string}` =>
  `/buying/suggested/${segment(material)}`;
/** A lot of a material; `asked` opens one of its forms, or names the posting that was made last. */
export function lotAddress(lot: string, asked: Readonly<Record<string, string>> = {}): `/shelf/lots/${string}` {
  const query = new URLSearchParams(asked).toString();
  return `/shelf/lots/${segment(lot)}${query === "" ? "" : `?${query}`}`;
}

/** The page of a lot, of a material or of finished units. */
export const lotPageAddress = ({ of, id }: LotName): `/shelf/finished/${string}` | `/shelf/lots/${string}` =>
  of === "finished" ? finishedAddress(id) : lotAddress(id);
/** The recall drill of a lot: where all of it is. */
export const recallAddress = ({ of, id }: LotName): `/shelf/recall?${string}` =>
  `/shelf/recall?${new URLSearchParams({ lot: `${of}:${id}` }).toString()}`;
export const recallCsvAddress = ({ of, id }: LotName): `/shelf/recall/csv?${string}` =>
  `/shelf/recall/csv?${new URLSearchParams({ lot: `${of}:${id}` }).toString()}`;

/** The lot that a recall's address names, or null. */
export function lotNamedBy(asked: unknown): LotName | null {
  const [, of = "", id = ""] = typeof asked === "string" ? (/^(material|finished):(.+)$/s.exec(asked) ?? []) : [];
  return of === "material" || of === "finished" ? { of, id } : null;
}
export const historyAddress = (day: Day): `/book/history?${string}` => `/book/history?day=${isoDate(day)}`;
