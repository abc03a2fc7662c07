/** One lot of a material as its page shows it. */
import type { Day } from "@/lib/domain/calendar";
import { type HistoryLine, history } from "@/lib/domain/ledger/history";
import { type LotName, lotKey, type PlaceKind } from "@/lib/domain/ledger/posting";
import type { Balance } from "@/lib/domain/ledger/standing";
import type { TraceForward } from "@/lib/domain/ledger/trace";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Lot, Material } from "@/lib/domain/workshop";
import { stockInFull, stockShown } from "@/lib/edge/figures";
import { ofUnknownMeasure } from "@/lib/edge/lot-words";

export interface LotView {
  readonly lot: Pick<Lot, "id" | "received" | "expires">;
  /** Null where it was taken out of the Book. */
  readonly material: Pick<Material, "id" | "name" | "measure"> | null;
  /** Whether the Book's list has it, so that something can be done with it. */
  readonly isListed: boolean;
  readonly today: Day;
  readonly currency: CurrencyCode;
  readonly onShelf: Balance;
  readonly onHold: Balance;
  /** On the shelf and on hold together. */
  readonly lines: readonly HistoryLine[];
  readonly trace: TraceForward;
  /** A run by what it makes and when. */
  readonly runCalled: (run: string) => string;
}

/** So much of the lot, in its measure: rounded as `how` says, or in full. */
export function muchOf({ material }: LotView, quantity: bigint, how: "there" | "nearest" | "in full"): string {
  if (material === null) return ofUnknownMeasure(quantity);
  return how === "in full" ? stockInFull(quantity, material.measure) : stockShown(quantity, material.measure, how);
}

/** The history of a lot in some places alone. */
export function inPlaces(
  lines: readonly HistoryLine[],
  lot: LotName,
  places: readonly PlaceKind[],
): readonly HistoryLine[] {
  return history(
    lines.map(({ posting }) => posting),
    (entry) => lotKey(entry.lot) === lotKey(lot) && places.includes(entry.place.kind),
  );
}
