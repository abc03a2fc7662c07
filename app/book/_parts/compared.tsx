import type { ReactNode } from "react";
import type { ComparedPart, FormulaComparison } from "@/lib/domain/formula-comparison";
import { type Fraction, minus, times, total as sumOf, whole } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import { WHOLE } from "@/lib/domain/quantity";
import type { Product } from "@/lib/domain/workshop";
import { amountShown, gramsShown, moneyShown, percentShown } from "@/lib/edge/figures";
import { moreOrLess } from "@/lib/edge/more-or-less";
import { Ledger } from "@/app/_ui/ledger";

interface Names {
  readonly first: string;
  readonly second: string;
}

/** What the second costs more or less than the first, in one unit. */
export function ComparedFinding({
  compared,
  first = "",
  second = "",
  product = "",
  currency,
}: { readonly [K in keyof Names]: string | undefined } & {
  readonly compared: FormulaComparison | null;
  readonly product?: string | undefined;
  readonly currency: CurrencyCode;
}): ReactNode {
  if (compared === null) return <>Choose two formulas and the product to fill with each.</>;
  if (compared.kind === "no density")
    return (
      <>
        {product} is filled by volume, and <b>{compared.formula.name} has no density</b>. Write it down in its formula
        first.
      </>
    );
  if (compared.kind === "out of range")
    return (
      <>
        With {compared.formula.name} the amounts of {product} are larger than can be kept.
      </>
    );
  const { dearerBy } = compared;
  if (dearerBy === null)
    return <>What one {product} costs is not known: a material of one of them has neither an offer nor a lot.</>;
  if (dearerBy.over === 0n) return <>One {product} costs the same with both.</>;
  const size = dearerBy.over < 0n ? { ...dearerBy, over: -dearerBy.over } : dearerBy;
  return (
    <>
      With {second}, one {product} costs{" "}
      <b>
        {moneyShown(size, currency)} {dearerBy.over < 0n ? "less" : "more"}
      </b>{" "}
      than with {first}.
    </>
  );
}

/** Every material of either, premixes opened: its percent, its grams and its cost in one unit, and the difference. */
export function ComparedLedger({
  compared,
  first,
  second,
  product,
  currency,
}: Names & {
  readonly compared: Compared;
  /** The product of which one unit is looked at. */
  readonly product: Product;
  readonly currency: CurrencyCode;
}): ReactNode {
  const columns = [
    { name: "Material", kind: "text" },
    { name: `In ${first}`, kind: "number" },
    { name: `In ${second}`, kind: "number" },
    { name: `Cost, ${first}`, kind: "number" },
    { name: `Cost, ${second}`, kind: "number" },
    { name: "Difference", kind: "number" },
  ] as const;
  const [all, rest] = [
    { first: ingredientsOf(compared, "first"), second: ingredientsOf(compared, "second") },
    { first: restOfCost(compared, "first"), second: restOfCost(compared, "second") },
  ];
  return (
    <>
      <Ledger caption="Two formulas side by side" columns={columns} className="book-ledger compared">
        {compared.rows.toSorted(byName).map((row) => (
          <MaterialRow key={row.material.id} row={row} currency={currency} />
        ))}
        <tr className="sum">
          <th scope="row">All that goes in</th>
          <Percents parts={[all.first, all.second]} />
          <Costs costs={[all.first.cost, all.second.cost]} currency={currency} />
        </tr>
        <tr>
          <th scope="row">Packaging, labour and overhead</th>
          <NoPercents />
          <Costs costs={[rest.first, rest.second]} currency={currency} />
        </tr>
        <tr className="total">
          <th scope="row">One unit</th>
          <NoPercents />
          <Costs costs={[compared.first.perUnit, compared.second.perUnit]} currency={currency} isTotal />
        </tr>
      </Ledger>
      <p className="label compared-foot">
        {gramsShown(all.second.quantity)} go in for a fill of {amountShown(product.fill.typed)}: overfill, heel and
        process loss are in it. Each figure is the exact one rounded once, so that a column may differ from its total in
        the last digit.
      </p>
    </>
  );
}

type Compared = Extract<FormulaComparison, { readonly kind: "compared" }>;
type Row = Compared["rows"][number];

const byName = ({ material: one }: Row, { material: other }: Row): number => one.name.localeCompare(other.name, "en");

const NOTHING: Fraction = whole(0n);

const MaterialRow = ({ row, currency }: { readonly row: Row; readonly currency: CurrencyCode }): ReactNode => {
  const { material, first, second } = row;
  return (
    <tr>
      <th scope="row">{material.name}</th>
      <Percents parts={[first, second]} isMarked={differs(row)} />
      <Costs
        costs={[first === null ? NOTHING : first.cost, second === null ? NOTHING : second.cost]}
        isAbsent={[first === null, second === null]}
        currency={currency}
      />
    </tr>
  );
};

/** What it is of each, the second heavier where it is otherwise. */
const Percents = ({
  parts: [first, second],
  isMarked = false,
}: {
  readonly parts: readonly [ComparedPart | null, ComparedPart | null];
  readonly isMarked?: boolean;
}): ReactNode => (
  <>
    <td className="number">
      <PercentOf part={first} />
    </td>
    <td className="number">
      {isMarked ? (
        <b>
          <PercentOf part={second} />
        </b>
      ) : (
        <PercentOf part={second} />
      )}
    </td>
  </>
);

const NoPercents = (): ReactNode => (
  <>
    <td className="number" />
    <td className="number" />
  </>
);

/** What each costs, and how much more the second; a cost that is null is not known. */
const Costs = ({
  costs: [first, second],
  isAbsent = [false, false],
  isTotal = false,
  currency,
}: {
  readonly costs: readonly [Fraction | null, Fraction | null];
  readonly isAbsent?: readonly [boolean, boolean];
  readonly isTotal?: boolean;
  readonly currency: CurrencyCode;
}): ReactNode => {
  const further = isTotal ? 0 : 2;
  const shown = (cost: Fraction | null): string => (cost === null ? "not known" : moneyShown(cost, currency, further));
  return (
    <>
      <td className="number" data-of="Cost">
        {isAbsent[0] ? "–" : shown(first)}
      </td>
      <td className="number" data-of="Cost">
        {isAbsent[1] ? "–" : shown(second)}
      </td>
      <td className="number difference" data-of="Difference">
        {first === null || second === null ? "not known" : moreOrLess(minus(second, first), currency, further)}
      </td>
    </>
  );
};

/** All that the formula asks for in one unit, added up exactly. */
function ingredientsOf({ rows }: Compared, which: "first" | "second"): ComparedPart {
  const parts = rows.flatMap((row) => row[which] ?? []);
  const known = parts.flatMap(({ cost }) => cost ?? []);
  return {
    fraction: sumOf(parts.map(({ fraction }) => fraction)),
    quantity: sumOf(parts.map(({ quantity }) => quantity)),
    cost: known.length < parts.length ? null : sumOf(known),
  };
}

/** What one unit costs beside what its formula asks for; not known where the price of a line is not. */
function restOfCost(compared: Compared, which: "first" | "second"): Fraction | null {
  const { cost } = ingredientsOf(compared, which);
  const { perUnit } = compared[which];
  return perUnit === null || cost === null ? null : minus(perUnit, cost);
}

const differs = ({ first, second }: Row): boolean =>
  first === null || second === null
    ? first !== second
    : first.fraction.over * second.fraction.under !== second.fraction.over * first.fraction.under;

/** Its percent, and what that is in one unit with all that is lost. */
const PercentOf = ({ part }: { readonly part: ComparedPart | null }): ReactNode =>
  part === null ? (
    "–"
  ) : (
    <>
      {percentShown(times(part.fraction, whole(WHOLE)))}
      <small>{gramsShown(part.quantity)}</small>
    </>
  );
