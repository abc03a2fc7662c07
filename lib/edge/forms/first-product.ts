/**
 * A product in one go: what goes in and what it is packed in, each with the pack it is bought in, so that a jar has a
 * price after one form. It makes the same records as the forms of each would, and they are held to the same checks.
 */
import type { Day } from "@/lib/domain/calendar";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Workshop } from "@/lib/domain/workshop";
import { putRecord } from "./change-record";
import {
  AMOUNT,
  type FormField,
  MONEY,
  needed,
  NUMBER,
  optional,
  type RecordList,
  rows,
  TEXT,
  WHOLE_NUMBER,
} from "./form-fields";
import { readForm, sentName, type SentForm, type TypedRecord } from "./form-reading";

const PACK = { hint: "As 1 kg or 500 mL." };

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
      optional("pack", "Bought in packs of", AMOUNT, { hint: "As 100 each." }),
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

/** One record of what is to be made: its form as it would have been sent, and where each of its fields was typed. */
interface Part {
  readonly list: Exclude<RecordList, "finished">;
  readonly fields: Readonly<Record<string, string>>;
  /** The name in this form of a field of that one; a field that is in neither is told of the whole. */
  readonly typedAt: (field: string) => string | null;
  /** False for what the workshop has by that name. */
  readonly isNew: boolean;
}

/** Puts everything that the form names into the workshop, or says what is wrong with it; all or nothing. */
export function putFirstProduct(workshop: Workshop, form: SentForm, realToday: Day): FirstProduct {
  const faults: SentFault[] = [...inHalves(form)];
  const breaks: string[] = [];
  let changed = workshop;
  for (const part of partsOf(workshop, form)) {
    if (!part.isNew) continue;
    const { record, typed, nameOf } = readPart(part, workshop.settings.currency);
    const put = putRecord(changed, part.list, null, record, realToday, typed);
    if (put.kind !== "refused") {
      changed = put.workshop;
      continue;
    }
    // What is made of something faulty misses it; that is told where it is wrong.
    const own = put.faults.filter(({ message }) => faults.length === 0 || !/^there is no such /.test(message));
    faults.push(...own.map(({ field, message }) => ({ name: field === null ? null : nameOf(field), message })));
    breaks.push(...put.breaks);
  }
  if (faults.length + breaks.length > 0) return { kind: "refused", faults: onceEach(faults), breaks };
  return { kind: "changed", workshop: changed, product: textIn(form, "id") };
}

const onceEach = (faults: readonly SentFault[]): readonly SentFault[] =>
  faults.filter(
    ({ name, message }, at) =>
      at === faults.findIndex((one) => one.name === name && (name !== null || one.message === message)),
  );

const textIn = (form: SentForm, name: string): string => {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
};

interface TypedRow {
  /** As it was sent: `lines.4`. */
  readonly at: string;
  readonly material: string;
  readonly percent: string;
  readonly pack: string;
  readonly price: string;
  readonly density: string;
}

/** The rows in which anything is written, in their order. */
function typedRows(form: SentForm, list: "lines" | "packaging"): readonly TypedRow[] {
  const numbers = new Set<number>();
  for (const key of form.keys()) {
    const [, number] = new RegExp(`^${list}\\.(\\d{1,9})\\.`).exec(key) ?? [];
    if (number !== undefined) numbers.add(Number(number));
  }
  return [...numbers]
    .sort((a, b) => a - b)
    .map((number) => {
      const at = `${list}.${String(number)}`;
      const text = (field: string): string => textIn(form, `${at}.${field}`);
      return {
        at,
        material: text("material").trim(),
        percent: text("percent"),
        pack: text("pack"),
        price: text("price"),
        density: text("density"),
      };
    })
    .filter(({ at: _, ...texts }) => Object.values(texts).some((text) => text.trim() !== ""));
}

/** A pack without a price, or a price without a pack, is no offer. */
const inHalves = (form: SentForm): readonly SentFault[] =>
  [...typedRows(form, "lines"), ...typedRows(form, "packaging")].flatMap(({ at, pack, price }) => {
    if ((pack.trim() === "") === (price.trim() === "")) return [];
    return pack.trim() === ""
      ? [{ name: `${at}.pack`, message: "is needed for the price; write the pack, as 1 kg" }]
      : [{ name: `${at}.price`, message: "is needed for the pack; write its price, as 8.40" }];
  });

function partsOf(workshop: Workshop, form: SentForm): readonly Part[] {
  const id = textIn(form, "id");
  const known = new Map(workshop.materials.map(({ id, name }) => [keyOf(name), id]));
  const supplierName = textIn(form, "supplier");
  const supplierKnown = workshop.suppliers.find(({ name }) => keyOf(name) === keyOf(supplierName));
  const supplier = supplierKnown?.id ?? `${id}-s`;
  const [lines, packaging] = [typedRows(form, "lines"), typedRows(form, "packaging")];
  const idByName = new Map(known);
  const materials = [
    ...lines.map((row) => ({ row, kind: "ingredient" })),
    ...packaging.map((row) => ({ row, kind: "packaging" })),
  ];
  const ofMaterials = materials.flatMap(({ row, kind }, at): readonly Part[] => {
    const isNew = !idByName.has(keyOf(row.material));
    if (isNew) idByName.set(keyOf(row.material), `${id}-m${String(at + 1)}`);
    const material = idByName.get(keyOf(row.material)) ?? "";
    return [
      materialPart(row, kind, material, isNew),
      ...offerPart(row, `${id}-o${String(at + 1)}`, material, supplier),
    ];
  });
  const materialOf = (row: TypedRow): string => idByName.get(keyOf(row.material)) ?? "";
  return [
    supplierPart(form, supplier, supplierKnown === undefined),
    ...ofMaterials,
    formulaPart(form, `${id}-f`, lines, materialOf),
    productPart(form, id, packaging, materialOf),
  ];
}

const keyOf = (name: string): string => name.normalize("NFC").trim().toLowerCase();

/** A field of the part stands under a name of its own in the form. */
const at =
  (names: Readonly<Record<string, string>>): Part["typedAt"] =>
  (field) =>
    names[field] ?? null;

const supplierPart = (form: SentForm, id: string, isNew: boolean): Part => ({
  list: "suppliers",
  fields: { id, name: textIn(form, "supplier"), leadDays: textIn(form, "leadDays"), leadCounts: "working" },
  typedAt: at({ name: "supplier", leadDays: "leadDays" }),
  isNew,
});

function materialPart(row: TypedRow, kind: string, id: string, isNew: boolean): Part {
  const isCounted = kind === "packaging";
  return {
    list: "materials",
    fields: { id, name: row.material, kind, measure: isCounted ? "count" : "mass", density: row.density },
    typedAt: at({ name: `${row.at}.material`, density: `${row.at}.density` }),
    isNew,
  };
}

function offerPart(row: TypedRow, id: string, material: string, supplier: string): readonly Part[] {
  if (row.pack.trim() === "" || row.price.trim() === "") return [];
  const { pack, price } = row;
  return [
    {
      list: "offers",
      fields: { id, material, supplier, pack, price },
      typedAt: at({ pack: `${row.at}.pack`, price: `${row.at}.price` }),
      isNew: true,
    },
  ];
}

function formulaPart(
  form: SentForm,
  id: string,
  lines: readonly TypedRow[],
  materialOf: (row: TypedRow) => string,
): Part {
  const fields: Record<string, string> = { id, name: textIn(form, "name") };
  lines.forEach((row, number) => {
    fields[`lines.${String(number)}.material`] = materialOf(row);
    fields[`lines.${String(number)}.percent`] = row.percent;
  });
  const typedAt = (field: string): string | null => {
    if (field === "lines") return "lines";
    const [, number = "", inner = ""] = /^lines\.(\d+)(?:\.(\w+))?$/.exec(field) ?? [];
    const row = lines[Number(number)];
    return number === "" || row === undefined ? null : `${row.at}.${inner === "percent" ? inner : "material"}`;
  };
  return { list: "formulas", fields, typedAt, isNew: true };
}

function productPart(
  form: SentForm,
  id: string,
  packaging: readonly TypedRow[],
  materialOf: (row: TypedRow) => string,
): Part {
  const fields: Record<string, string> = {
    id,
    name: textIn(form, "name"),
    formula: `${id}-f`,
    fill: textIn(form, "fill"),
    usualRun: textIn(form, "usualRun"),
  };
  packaging.forEach((row, number) => {
    fields[`packaging.${String(number)}.material`] = materialOf(row);
    fields[`packaging.${String(number)}.amount`] = "1 each";
  });
  const typedAt = (field: string): string | null => {
    if (field === "name" || field === "fill" || field === "usualRun") return field;
    const [, number = ""] = /^packaging\.(\d+)/.exec(field) ?? [];
    const row = packaging[Number(number)];
    return number === "" || row === undefined ? null : `${row.at}.material`;
  };
  return { list: "products", fields, typedAt, isNew: true };
}

function readPart({ list, fields, typedAt }: Part, currency: CurrencyCode) {
  const form: SentForm = {
    get: (name) => fields[name] ?? null,
    getAll: (name) => (fields[name] === undefined ? [] : [fields[name]]),
    keys: () => Object.keys(fields),
  };
  const reading = readForm(list, form, currency);
  const record: TypedRecord = reading.record;
  return { record, typed: reading.faults, nameOf: (field: string) => typedAt(sentName(reading, field)) };
}
