/** What one form of a whole product is made of: each record's form as it would have been sent, and where it was typed. */
import type { Workshop } from "@/lib/domain/workshop";
import type { RecordList } from "./form-fields";
import type { SentForm } from "./form-reading";

/** One record of what is to be made: its form as it would have been sent, and where each of its fields was typed. */
export interface Part {
  readonly list: Exclude<RecordList, "finished">;
  readonly fields: Readonly<Record<string, string>>;
  /** The name in this form of a field of that one, null for its record as a whole; null where it is told of no field. */
  readonly typedAt: (field: string | null) => string | null;
  /** False for what the workshop has by that name. */
  readonly isNew: boolean;
}

export const textIn = (form: SentForm, name: string): string => {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
};

export interface TypedRow {
  /** As it was sent: `lines.4`. */
  readonly at: string;
  readonly material: string;
  readonly percent: string;
  readonly pack: string;
  readonly price: string;
  readonly density: string;
}

/** The rows in which anything is written, in their order. */
export function typedRows(form: SentForm, list: "lines" | "packaging"): readonly TypedRow[] {
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
        pack: list === "packaging" ? ofPieces(text("pack")) : text("pack"),
        price: text("price"),
        density: text("density"),
      };
    })
    .filter(({ at: _, ...texts }) => Object.values(texts).some((text) => text.trim() !== ""));
}

/** In the order in which they can be put into the workshop: each names only what stands before it. */
export function partsOf(workshop: Workshop, form: SentForm): readonly Part[] {
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

/** What one is packed in is counted: a number alone is of pieces. */
const ofPieces = (pack: string): string => (/^\d+$/.test(pack.trim()) ? `${pack.trim()} each` : pack);

const keyOf = (name: string): string => name.normalize("NFC").trim().toLowerCase();

/** A field of the part stands under a name of its own in the form. */
const at =
  (names: Readonly<Record<string, string>>): Part["typedAt"] =>
  (field) =>
    field === null ? null : (names[field] ?? null);

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
  const typedAt: Part["typedAt"] = (field) => {
    // What is wrong with a formula as a whole is what its lines come to.
    if (field === null || field === "lines") return "lines";
    if (field === "name") return field;
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
  const typedAt: Part["typedAt"] = (field) => {
    if (field === null) return null;
    if (field === "name" || field === "fill" || field === "usualRun") return field;
    const [, number = ""] = /^packaging\.(\d+)/.exec(field) ?? [];
    const row = packaging[Number(number)];
    return number === "" || row === undefined ? null : `${row.at}.material`;
  };
  return { list: "products", fields, typedAt, isNew: true };
}
