import { type Packs, quantity, type Stock } from "@/lib/domain/quantity";
import type { Offer, PriceBreak } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { day, dayCount, id, orElse, packs, reference, yesOrNo } from "@/lib/edge/fields";
import { amount, price } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import { called, complete, type Entry, indexById, readEntries, records, referredTo } from "@/lib/edge/record-reading";
import { quoted } from "@/lib/edge/shown-value";
import { measured } from "./amounts";
import { material, type MaterialIndex, materialNamed, subjectOf } from "./materials";
import type { SuppliersReading } from "./suppliers";

export const ONE_PACK = quantity<Packs>(1n);

const OFFER = {
  id,
  material,
  supplier: reference("supplier"),
  pack: amount,
  price,
  breaks: orElse(records, []),
  minPacks: orElse(packs(1), ONE_PACK),
  preferred: orElse(yesOrNo, false),
  shelfLifeDays: orElse(dayCount, null),
  confirmedOn: orElse(day, null),
};

const BREAK = { packs: packs(2), price };

type OfferEntry = Entry<typeof OFFER>;

/** The offers: packs read by their material, and at most one preferred for each. @rule PLAN-7, QTY-1 */
export function readOffers(
  list: readonly Json[] | undefined,
  suppliers: SuppliersReading["index"],
  materials: MaterialIndex,
  faults: FaultList,
): readonly Offer[] {
  const entries = readEntries(list, OFFER, "offers", faults);
  indexById(list, entries, faults);
  const preferredByMaterial = new Map<string, OfferEntry>();
  return entries.flatMap((entry) => {
    const { path, fields } = entry;
    const offered = materialNamed(materials, fields.material, path, faults);
    referredTo(suppliers, "supplier", fields.supplier, `${path}.supplier`, faults);
    const pack = measured<Stock>(fields.pack, subjectOf(offered), 1n, `${path}.pack`, faults);
    const breaks = fields.breaks && readBreaks(fields.breaks, `${path}.breaks`, faults);
    if (fields.preferred === true && offered !== undefined) {
      const id = fields.material ?? "";
      const first = preferredByMaterial.get(id);
      if (first === undefined) preferredByMaterial.set(id, entry);
      else faults.tell(`${path}.preferred`, bothPreferred(first, entry, called("material", offered)));
    }
    return complete({ ...fields, pack, breaks }) ?? [];
  });
}

const bothPreferred = (first: OfferEntry, second: OfferEntry, forMaterial: string): string =>
  `offers ${quoted(first.fields.id ?? first.path)} and ${quoted(second.fields.id ?? second.path)} are both preferred ` +
  `for ${forMaterial}; at most one may be`;

function readBreaks(list: readonly Json[], path: string, faults: FaultList): readonly PriceBreak[] {
  const firstAt = new Map<bigint, string>();
  return readEntries(list, BREAK, path, faults).flatMap(({ path, fields }) => {
    const first = fields.packs && firstAt.get(fields.packs);
    if (first !== undefined)
      faults.tell(`${path}.packs`, `${String(fields.packs)} packs again; ${first} is for as many`);
    else if (fields.packs !== undefined) firstAt.set(fields.packs, path);
    return complete(fields) ?? [];
  });
}
