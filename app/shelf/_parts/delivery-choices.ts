/** What can be chosen in the form of a delivery: what is retired is not offered. */
import type { Choice } from "@/app/_ui/form-control";
import { type Desk, forNewWork } from "@/lib/domain/desk";
import { byId } from "@/lib/domain/index-by-id";
import type { Workshop } from "@/lib/domain/workshop";
import { amountShown } from "@/lib/edge/figures";

const IN_ORDER = new Intl.Collator("en-GB", { numeric: true, sensitivity: "base" });

const inOrder = (choices: readonly Choice[]): readonly Choice[] =>
  choices.toSorted((a, b) => IN_ORDER.compare(a.label, b.label));

export function deliveryChoices(
  { offers, materials, suppliers }: Workshop,
  desk: Desk,
): Readonly<Record<string, readonly Choice[]>> {
  const [materialOf, supplierOf] = [byId("material", materials), byId("supplier", suppliers)];
  const named = ({ id, name }: { readonly id: string; readonly name: string }): Choice => ({ value: id, label: name });
  return {
    offers: inOrder(
      forNewWork(desk, "offers", offers).map(({ id, material, supplier, pack }) => ({
        value: id,
        label: `${materialOf(material).name}, ${amountShown(pack.typed)}, ${supplierOf(supplier).name}`,
      })),
    ),
    materials: inOrder(forNewWork(desk, "materials", materials).map(named)),
    suppliers: inOrder(forNewWork(desk, "suppliers", suppliers).map(named)),
  };
}
