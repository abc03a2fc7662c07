/**
 * A product in one go: what goes in and what it is packed in, each with the pack it is bought in, so that a jar has a
 * price after one form. It makes the same records as the forms of each would, and they are held to the same checks.
 */
import { decimalTyped } from "@/lib/edge/notation";
import type { Day } from "@/lib/domain/calendar";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Workshop } from "@/lib/domain/workshop";
import { quoted } from "@/lib/edge/shown-value";
import { putRecord } from "./change-record";
import { type Part, partsOf, textIn, typedRows } from "./first-product-parts";
import { AMOUNT, type FormField, MONEY, needed, NUMBER, optional, rows, TEXT, WHOLE_NUMBER } from "./form-fields";
import { readForm, sentName, type SentForm, type TypedRecord } from "./form-reading";
import { sameRecord } from "./staleness";
import { writtenRecord } from "./written-record";

const PACK = { hint: "A pack is written as 1 kg or 500 mL." };

export const FIRST_PRODUCT_FORM: readonly FormField[] = [
  needed("id", "Id", { kind: "hidden" }),
  needed("name", "Product", TEXT, { hint: "As you would name it on an order." }),
  needed("fill", "Fill of one", AMOUNT, { hint: "What one jar, tin or bottle holds, as 200 g." }),
  needed(
    "lines",
    "What goes in",
    rows(
      1,
      needed("material", "Material", TEXT),
      needed("percent", "Percent by weight", { kind: "percent or rest" }, { unit: "%" }),
      optional("pack", "Bought in packs of", AMOUNT, PACK),
      optional("price", "Price of a pack", MONEY),
      optional("density", "Density", NUMBER, { unit: "g/mL" }),
    ),
  ),
  optional(
    "packaging",
    "What one is packed in",
    rows(
      0,
      needed("material", "Jar, lid, label", TEXT),
      optional("pack", "Bought in packs of", AMOUNT, { hint: "A pack of 100 pieces is written as 100." }),
      optional("price", "Price of a pack", MONEY),
    ),
  ),
  needed("usualRun", "Usual run", WHOLE_NUMBER, { unit: "units", hint: "The cost of one is worked out for so many." }),
  needed("supplier", "Supplier", TEXT, { hint: "Of all packs above; each offer can be given another later." }),
  needed("leadDays", "Lead time", WHOLE_NUMBER, { unit: "working days", hint: "From the order to the day it comes." }),
];

export interface SentFault {
  /** The name under which the field was sent; null for the whole. */
  readonly name: string | null;
  readonly message: string;
}

export type FirstProduct =
  | { readonly kind: "changed"; readonly workshop: Workshop; readonly product: string }
  | { readonly kind: "refused"; readonly faults: readonly SentFault[]; readonly breaks: readonly string[] };

/** Puts everything that the form names into the workshop, or says what is wrong with it; all or nothing. */
export function putFirstProduct(workshop: Workshop, form: SentForm, realToday: Day): FirstProduct {
  const faults: SentFault[] = [...inHalves(form)];
  const breaks: string[] = [];
  let changed = workshop;
  for (const part of partsOf(workshop, form)) {
    if (!part.isNew) {
      faults.push(...unlikeTheBook(changed, part));
      continue;
    }
    const { record, typed, nameOf } = readPart(part, workshop.settings.currency);
    const put = putRecord(changed, part.list, null, record, realToday, typed);
    if (put.kind !== "refused") {
      changed = put.workshop;
      continue;
    }
    // What is made of something faulty misses it; that is told where it is wrong.
    const own = put.faults.filter(({ message }) => faults.length === 0 || !/^there is no such /.test(message));
    faults.push(...own.map(({ field, message }) => ({ name: nameOf(field), message })));
    breaks.push(...put.breaks);
  }
  if (faults.length + breaks.length > 0) return { kind: "refused", faults: onceEach(faults), breaks };
  return { kind: "changed", workshop: changed, product: textIn(form, "id") };
}

/** What a form says of a record that the workshop may have by that name already. */
const SAID_AGAIN: Partial<Readonly<Record<Part["list"], readonly string[]>>> = {
  suppliers: ["leadDays"],
  materials: ["density"],
};

/** What is used as it stands must not be dropped unsaid where something else was typed: the price would be wrong. */
function unlikeTheBook(workshop: Workshop, part: Part): readonly SentFault[] {
  const stored = writtenRecord(workshop, part.list, part.fields.id ?? "");
  const said = (SAID_AGAIN[part.list] ?? []).filter((field) => (part.fields[field] ?? "").trim() !== "");
  if (stored === null || said.length === 0) return [];
  const { record, typed, nameOf } = readPart(part, workshop.settings.currency);
  return said.flatMap((field) => {
    const unread = typed.filter((fault) => fault.field === field);
    if (unread.length > 0) return unread.map(({ message }) => ({ name: nameOf(field), message }));
    if (sameRecord({ [field]: record[field] }, { [field]: stored[field] })) return [];
    const kept = stored[field];
    const other = typeof kept === "string" || typeof kept === "number" ? `with ${String(kept)}` : "without one";
    return [
      {
        name: nameOf(field),
        message: `there is ${quoted(part.fields.name ?? "")} already, ${other}; write the same here, or change that first`,
      },
    ];
  });
}

const onceEach = (faults: readonly SentFault[]): readonly SentFault[] =>
  faults.filter(
    ({ name, message }, at) =>
      at === faults.findIndex((one) => one.name === name && (name !== null || one.message === message)),
  );

/** A pack without a price, or a price without a pack, is no offer. */
const inHalves = (form: SentForm): readonly SentFault[] =>
  [...typedRows(form, "lines"), ...typedRows(form, "packaging")].flatMap(({ at, pack, price }) => {
    if ((pack.trim() === "") === (price.trim() === "")) return [];
    return pack.trim() === ""
      ? [{ name: `${at}.pack`, message: "is needed for the price; write the pack, as 1 kg" }]
      : [{ name: `${at}.price`, message: decimalTyped("is needed for the pack; write its price, as 8.40") }];
  });

function readPart({ list, fields, typedAt }: Part, currency: CurrencyCode) {
  const form: SentForm = {
    get: (name) => fields[name] ?? null,
    getAll: (name) => (fields[name] === undefined ? [] : [fields[name]]),
    keys: () => Object.keys(fields),
  };
  const reading = readForm(list, form, currency);
  const record: TypedRecord = reading.record;
  return {
    record,
    typed: reading.faults,
    nameOf: (field: string | null) => typedAt(field === null ? null : sentName(reading, field)),
  };
}
