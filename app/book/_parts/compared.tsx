import type { ReactNode } from "react";
import type { ComparedPart, FormulaComparison } from "@/lib/domain/formula-comparison";
import { type Fraction, minus, times, total as sumOf, whole } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import { WHOLE } from "@/lib/domain/quantity";
import { gramsShown, moneyShown, percentShown } from "@/lib/edge/figures";
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
        {moneyShown(size, currency, 2)} {dearerBy.over < 0n ? "less" : "more"}
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
  currency,
}: Names & {
  readonly compared: Extract<FormulaComparison, { readonly kind: "compared" }>;
  readonly currency: CurrencyCode;
}): ReactNode {
  const columns = [
    { name: "Material", kind: "text" },
    { name: `Percent, grams, ${first}`, kind: "number" },
    { name: `Percent, grams, ${second}`, kind: "number" },
    { name: `Cost, ${first}`, kind: "number" },
    { name: `Cost, ${second}`, kind: "number" },
  ] as const;
  const total = (perUnit: Fraction | null): string =>
    perUnit === null ? "not known" : moneyShown(perUnit, currency, 2);
  return (
    <Ledger caption="Two formulas side by side" columns={columns} className="book-ledger compared">
      {compared.rows.map((row) => (
        <tr key={row.material.id}>
          <th scope="row">{row.material.name}</th>
          {cellsOf(row, currency).map((cell, at) => (
            <td key={columns[at + 1]?.name} className="number">
              {at === 1 && differs(row) ? <b>{cell}</b> : cell}
            </td>
          ))}
        </tr>
      ))}
      <tr>
        <th scope="row">Packaging, labour and overhead</th>
        <td className="number" />
        <td className="number" />
        <td className="number">{total(restOfCost(compared, "first"))}</td>
        <td className="number">{total(restOfCost(compared, "second"))}</td>
      </tr>
      <tr className="total">
        <th scope="row">One unit</th>
        <td className="number" />
        <td className="number" />
        <td className="number">{total(compared.first.perUnit)}</td>
        <td className="number">{total(compared.second.perUnit)}</td>
      </tr>
    </Ledger>
  );
}

/** What one unit costs beside what its formula asks for; not known where the price of a line is not. */
function restOfCost(
  { rows, ...units }: Extract<FormulaComparison, { readonly kind: "compared" }>,
  which: "first" | "second",
): Fraction | null {
  const costs = rows.flatMap((row) => (row[which] === null ? [] : [row[which].cost]));
  const known = costs.filter((cost) => cost !== null);
  const { perUnit } = units[which];
  return perUnit === null || known.length < costs.length ? null : minus(perUnit, sumOf(known));
}

type Row = Extract<FormulaComparison, { readonly kind: "compared" }>["rows"][number];

const differs = ({ first, second }: Row): boolean =>
  first === null || second === null
    ? first !== second
    : first.fraction.over * second.fraction.under !== second.fraction.over * first.fraction.under;

const cellsOf = ({ first, second }: Row, currency: CurrencyCode): readonly ReactNode[] => [
  <PercentOf key="first" part={first} />,
  <PercentOf key="second" part={second} />,
  costOf(first, currency),
  costOf(second, currency),
];

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

function costOf(part: ComparedPart | null, currency: CurrencyCode): string {
  if (part === null) return "–";
  return part.cost === null ? "not known" : moneyShown(part.cost, currency, 2);
}
