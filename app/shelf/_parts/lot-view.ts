/** One lot of a material as its page shows it. */
import type { Day } from "@/lib/domain/calendar";
import { type HistoryLine, history } from "@/lib/domain/ledger/history";
import { type LotName, lotKey, type PlaceKind } from "@/lib/domain/ledger/posting";
import type { Balance } from "@/lib/domain/ledger/standing";
import type { TraceForward } from "@/lib/domain/ledger/trace";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Lot, Material } from "@/lib/domain/workshop";

export interface LotView {
  readonly lot: Lot;
  readonly material: Material;
  readonly today: Day;
  readonly currency: CurrencyCode;
  readonly onShelf: Balance;
  readonly onHold: Balance;
  /** On the shelf and on hold together. */
  readonly lines: readonly HistoryLine[];
  readonly trace: TraceForward;
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
