/** Records as they are chosen from: by name, and two of one name by what a maker knows of each. */
import type { Offer, Workshop } from "@/lib/domain/workshop";
import { inARow } from "./counted";
import { amountShown, densityShown, daysShown, priceShown } from "./figures";

export interface NamedChoice {
  readonly value: string;
  readonly label: string;
  /** What tells it from another of the same name. */
  readonly detail?: string | undefined;
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** What can be said of a record; null where there is nothing to say. */
type Facet = (id: string) => string | null;

const IN_ORDER = new Intl.Collator("en-GB", { numeric: true, sensitivity: "base" });

export type ChosenFrom = "materials" | "suppliers" | "formulas" | "products";

/** Those of a list, by name. */
export const namedChoices = (workshop: Workshop, list: ChosenFrom, records: readonly Named[]): readonly NamedChoice[] =>
  toldApart(records, FACETS[list](workshop));

/** Offers by what they are of, the pack and who offers it; two that are the same in all of these by their price. */
export function offerChoices(workshop: Workshop, offers: readonly Offer[]): readonly NamedChoice[] {
  const { materials, suppliers, settings } = workshop;
  const materialOf = new Map(namedChoices(workshop, "materials", materials).map((choice) => [choice.value, choice]));
  const supplierOf = nameOf(suppliers);
  const offerOf = new Map(offers.map((offer) => [offer.id, offer]));
  const named = offers.map(({ id, material, supplier, pack }) => {
    const { label = "", detail } = materialOf.get(material) ?? {};
    const called = detail === undefined ? label : `${label} (${detail})`;
    return { id, name: `${called}, ${amountShown(pack.typed)}, ${supplierOf(supplier)}` };
  });
  return toldApart(named, [(id) => priceShown(offerOf.get(id)?.price ?? 0n, settings.currency)]);
}

function toldApart(records: readonly Named[], facets: readonly Facet[]): readonly NamedChoice[] {
  const namesakes = new Map<string, Named[]>();
  for (const record of records) {
    const name = record.name.toLowerCase();
    namesakes.set(name, [...(namesakes.get(name) ?? []), record]);
  }
  return [...namesakes.values()]
    .flatMap((same) => (same.length === 1 ? same.map(plain) : apart(same, facets)))
    .sort((a, b) => IN_ORDER.compare(a.label, b.label) || IN_ORDER.compare(a.detail ?? "", b.detail ?? ""));
}

const plain = ({ id, name }: Named): NamedChoice => ({ value: id, label: name });

/** Facets are said until no two are the same; those of which nothing else is known by which was entered first. */
function apart(same: readonly Named[], facets: readonly Facet[]): readonly NamedChoice[] {
  let said = same.map((): readonly string[] => []);
  for (const facet of facets) {
    const words = same.map(({ id }) => facet(id));
    if (new Set(words).size === 1) continue;
    said = said.map((each, at) => [...each, ...(words[at] == null ? [] : [words[at]])]);
    if (new Set(said.map((each) => each.join())).size === same.length) break;
  }
  const details = said.map((each) => each.join(", "));
  return same.map((record, at) => {
    const detail = details[at] ?? "";
    const isAlone = detail !== "" && details.filter((other) => other === detail).length === 1;
    const entered = `entered ${ordinal(at + 1)}`;
    return { ...plain(record), detail: isAlone ? detail : detail === "" ? entered : `${detail}, ${entered}` };
  });
}

const ORDINALS = ["first", "second", "third", "fourth", "fifth"];
const ordinal = (place: number): string => ORDINALS[place - 1] ?? `as number ${String(place)}`;

const nameOf = (records: readonly Named[]): ((id: string) => string) => {
  const names = new Map(records.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? "";
};

const inWords = (words: readonly string[], before: string): string | null =>
  words.length === 0 ? null : `${before}${inARow([...new Set(words)])}`;

const FACETS: Readonly<Record<ChosenFrom, (workshop: Workshop) => readonly Facet[]>> = {
  materials: ({ materials, offers, suppliers, lots, formulas }) => {
    const of = new Map(materials.map((material) => [material.id, material]));
    const supplierOf = nameOf(suppliers);
    const offersOf = (id: string) => offers.filter(({ material }) => material === id);
    return [
      (id) => of.get(id)?.kind ?? null,
      (id) =>
        inWords(
          offersOf(id).map((offer) => supplierOf(offer.supplier)),
          "from ",
        ),
      (id) =>
        inWords(
          offersOf(id).map((offer) => amountShown(offer.pack.typed)),
          "in ",
        ),
      (id) => of.get(id)?.measure ?? null,
      (id) => {
        const density = of.get(id)?.density ?? null;
        return density === null ? null : densityShown(density);
      },
      (id) =>
        inWords(
          lots.filter(({ material }) => material === id).map((lot) => lot.id),
          "lot ",
        ),
      (id) =>
        inWords(
          formulas.filter(({ lines }) => lines.some((line) => line.of.id === id)).map(({ name }) => name),
          "in ",
        ),
    ];
  },
  suppliers: ({ suppliers, offers, materials }) => {
    const materialOf = nameOf(materials);
    const of = new Map(suppliers.map((supplier) => [supplier.id, supplier]));
    return [
      (id) =>
        inWords(
          offers.filter(({ supplier }) => supplier === id).map(({ material }) => materialOf(material)),
          "offers ",
        ),
      (id) => {
        const days = of.get(id)?.leadDays;
        return days === undefined ? null : `comes in ${daysShown(days)}`;
      },
    ];
  },
  formulas: ({ formulas, products, materials }) => {
    const of = new Map(formulas.map((formula) => [formula.id, formula]));
    const calledOf = nameOf([...materials, ...formulas]);
    return [
      (id) =>
        inWords(
          products.filter(({ formula }) => formula === id).map(({ name }) => name),
          "fills ",
        ),
      (id) =>
        inWords(
          (of.get(id)?.lines ?? []).map((line) => calledOf(line.of.id)),
          "of ",
        ),
    ];
  },
  products: ({ products, formulas }) => {
    const of = new Map(products.map((product) => [product.id, product]));
    const formulaOf = nameOf(formulas);
    return [
      (id) => {
        const product = of.get(id);
        return product === undefined ? null : amountShown(product.fill.typed);
      },
      (id) => {
        const product = of.get(id);
        return product === undefined ? null : `of ${formulaOf(product.formula)}`;
      },
    ];
  },
};
