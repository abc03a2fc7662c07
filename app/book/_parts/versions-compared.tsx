import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import { checksOf } from "@/lib/domain/formula-book/checks";
import { notAmong } from "@/lib/domain/formula-book/swap";
import type { VersionOfFormula } from "@/lib/domain/formula-book/versions";
import { compareBesides } from "@/lib/domain/formula-comparison";
import type { Product, Workshop } from "@/lib/domain/workshop";
import { versionsPath } from "./addresses";
import { checkedFrom } from "./checked-from";
import { ComparedFinding, ComparedLedger } from "./compared";
import { countedFindings, FindingsList } from "@/app/_ui/findings-list";
import { nameOfLine } from "@/app/_ui/name-of-line";

interface Asked {
  readonly formula: string;
  readonly numbers: readonly number[];
  readonly products: readonly Product[];
  readonly asked: { readonly first: number; readonly second: number; readonly product: string };
}

/** Which two versions, in which product; asked by address, so that it needs no script. */
export const CompareVersions = ({ formula, numbers, products, asked }: Asked): ReactNode => (
  <form action={versionsPath(formula)} method="get" className="batch-form">
    {(["first", "second"] as const).map((which) => (
      <div className="field" key={which}>
        <label htmlFor={`version-${which}`}>{which === "first" ? "Version" : "beside version"}</label>
        <select id={`version-${which}`} name={which} defaultValue={String(asked[which])}>
          {numbers.map((number) => (
            <option key={number} value={String(number)}>
              {number}
            </option>
          ))}
        </select>
      </div>
    ))}
    {products.length > 1 && (
      <div className="field">
        <label htmlFor="version-product">in</label>
        <select id="version-product" name="product" defaultValue={asked.product}>
          {products.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
    )}
    <button className="button">Show</button>
  </form>
);

interface Two {
  readonly workshop: Workshop;
  readonly today: Day;
  /** Null where no product is filled with the formula. */
  readonly product: Product | null;
  readonly first: VersionOfFormula;
  readonly second: VersionOfFormula;
}

/** Nothing refers to it: what holds the formula holds the one that stands, and an earlier one may hold what now holds it. */
const BESIDE = "\u0000";
type Found = ReturnType<typeof checksOf>;

/** Two versions in percent, in grams and in what a unit costs, and what the checks find of each. @rule BOOK-5 */
export function VersionsCompared({ workshop, today, product, first, second }: Two): ReactNode {
  const names = { first: `version ${String(first.number)}`, second: `version ${String(second.number)}` };
  const { currency } = workshop.settings;
  const compared = product && compareBesides(workshop, today, [first.as, second.as], { product, basis: "replacement" });
  const checked = checkedFrom(workshop, today, first.formula);
  const [found, after] = [first, second].map(({ as }) => checksOf({ ...as, id: BESIDE }, checked)) as [Found, Found];
  const about = { today, nameOf: nameOfLine(workshop) };
  return (
    <>
      {compared === null ? (
        <p>No product is filled with this formula yet, so that there is no cost to compare.</p>
      ) : (
        <p>
          <ComparedFinding compared={compared} {...names} product={product?.name} currency={currency} />
        </p>
      )}
      {product && compared?.kind === "compared" && (
        <ComparedLedger compared={compared} {...names} product={product} currency={currency} />
      )}
      <h3>
        Found in {names.second} and not in {names.first}: {countedFindings(notAmong(after, found), "nothing")}
      </h3>
      <FindingsList findings={notAmong(after, found)} about={about} />
      <h3>
        Found in {names.first} and no longer in {names.second}: {countedFindings(notAmong(found, after), "nothing")}
      </h3>
      <FindingsList findings={notAmong(found, after)} about={about} />
    </>
  );
}
