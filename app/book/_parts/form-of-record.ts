/** What the form of a record is drawn with: its values, what can be chosen, what stays as it is. */
import { type Day, isoDate } from "@/lib/domain/calendar";
import { type Books, forNewWork, RETIRABLE, type RetirableList } from "@/lib/domain/desk";
import { currencySign } from "@/lib/edge/figures";
import { formFromRecord, type TypedRecord } from "@/lib/edge/forms/form-reading";
import { type FormKind, RECORD_FORMS } from "@/lib/edge/forms/record-forms";
import { namedChoices, offerChoices } from "@/lib/edge/record-choices";
import type { FormField } from "@/lib/edge/forms/form-fields";
import type { Choice } from "@/app/_ui/choice-filter";
import type { FormValues } from "@/app/_ui/form-values";
import { joined } from "@/app/_ui/either";

export interface FormOfRecord {
  readonly fields: readonly FormField[];
  readonly values: FormValues;
  readonly choices: Readonly<Record<string, readonly Choice[]>>;
  readonly money: string;
  readonly fixed: readonly string[];
}

/** The form of a record that is kept, or of one to come, drawn from what it is likely to be. */
export function formOf(books: Books, kind: FormKind, record: TypedRecord, isNew: boolean): FormOfRecord {
  const fields = RECORD_FORMS[kind];
  const values = formFromRecord(kind, record);
  const hasOwnId = fields.some(({ name, control }) => name === "id" && control.kind === "text");
  return {
    fields,
    values: joined(values, fields),
    choices: choicesOf(books, kind, new Set(Object.values(values)), isNew ? null : record.id),
    money: currencySign(books.workshop.settings.currency),
    fixed: hasOwnId && !isNew ? ["id"] : [],
  };
}

/** What most makers would write first: seen in the fields, and changed there. */
export function likely(kind: FormKind, books: Books, today: Day): TypedRecord {
  const { suppliers } = books.workshop;
  const [only, ...others] = forNewWork(books.desk, "suppliers", suppliers);
  const supplier = others.length === 0 ? only?.id : undefined;
  switch (kind) {
    case "suppliers":
      return { leadDays: 3, leadCounts: "working" };
    case "materials":
      return { kind: "ingredient", measure: "mass" };
    case "offers":
      return { supplier };
    case "products":
      return { usualRun: 10 };
    case "lots":
      return { received: isoDate(today) };
    case "orders":
      return { supplier, placed: isoDate(today) };
    case "labels":
      return likelyLabel(books);
    case "papers":
      return { page: "A4" };
    case "formulas":
    case "runs":
    case "settings":
      return {};
  }
}

/** Who answers for one product mostly answers for all: as the label that was kept last says it. */
function likelyLabel({ workshop: { labels } }: Books): TypedRecord {
  const { market, responsible, address, contact } = labels.at(-1) ?? {};
  const said = Object.entries({ market, responsible, address, contact });
  return { ...Object.fromEntries(said.filter(([, value]) => typeof value === "string")), showsMade: true };
}

const CHOSEN_FROM = ["materials", "suppliers", "formulas", "products"] as const;

/** What is not retired, and what this record names all the same. What is counted cannot be in a formula. */
function choicesOf(
  { workshop, desk }: Books,
  kind: FormKind,
  named: ReadonlySet<string>,
  own: unknown,
): Readonly<Record<string, readonly Choice[]>> {
  const choices = CHOSEN_FROM.map((list) => {
    const all: readonly { readonly id: string; readonly name: string }[] =
      list === "materials" && kind === "formulas"
        ? workshop.materials.filter(({ measure }) => measure === "mass")
        : workshop[list];
    const hidden = isRetirable(list) ? new Set(desk.retired[list]) : new Set<string>();
    // A formula cannot hold itself.
    const isItself = (id: string): boolean => list === "formulas" && kind === "formulas" && id === own;
    const offered = all.filter(({ id }) => (!hidden.has(id) || named.has(id)) && !isItself(id));
    return [list, namedChoices(workshop, list, offered)] as const;
  });
  return {
    ...Object.fromEntries(choices),
    ...(kind === "orders" && { offers: offerChoices(workshop, workshop.offers) }),
  };
}

const isRetirable = (list: string): list is RetirableList => RETIRABLE.some((retirable) => retirable === list);
