import type { ReactNode } from "react";
import { type Fraction, times, total, whole } from "@/lib/domain/fraction";
import type { CostLine, CostUse } from "@/lib/domain/plan-figures";
import type { IngredientInUnit } from "@/lib/domain/unit-breakdown";
import {
  amountShown,
  countShown,
  gramsShown,
  massInFull,
  moneyShown,
  percentShown,
  pricePerGramShown,
  rateShown,
} from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import type { PackagingItem } from "@/lib/domain/workshop";
import { Ledger, OpeningRow } from "@/app/_ui/ledger";
import { Was } from "@/app/_ui/was";
import { Working } from "@/app/_ui/working";
import type { CostView } from "./cost-view";
import { PlainRow, TimeRow } from "./plain-rows";
import { boughtAs, type Opened } from "./price-working";
import { ingredientWorking, inWorking, lossesWorking, packagingWorking, perRunWorking } from "./row-working";

const COLUMNS = [
  { name: "Material" },
  { name: "Formula", kind: "number" },
  { name: "In one unit", kind: "number" },
  { name: "Bought as", className: "wide-gap" },
  { name: "One gram or piece", kind: "number" },
  { name: "Cost", kind: "number" },
] as const;

/** How the cost of one unit is made up, row by row; each row opens to its arithmetic. */
export function MadeUp({ view, before }: { readonly view: CostView; readonly before: Fraction | null }): ReactNode {
  const { cost, breakdown, ingredients, settings, product } = view;
  return (
    <Ledger caption={`How the cost of one ${product.name} is made up`} columns={COLUMNS} opens>
      {ingredients.map((ingredient, at) => (
        <IngredientRow
          key={ingredient.line.material.id}
          ingredient={ingredient}
          id={`ingredient-${String(at)}`}
          view={view}
        />
      ))}
      <IngredientsSum view={view} />
      {breakdown.losses && (
        <PlainRow
          id="losses"
          name={breakdown.losses.overfill.over > 0n ? "Overfill and losses" : "Losses"}
          says={`${gramsShown(breakdown.made)} made for each, ${massInFull(product.fill.quantity)} filled`}
          cost={breakdown.losses.cost}
          opened={lossesWorking(breakdown.losses, view)}
          view={view}
        />
      )}
      {breakdown.packaging.map(({ item, line, use }, at) => (
        <ItemRow
          key={item.material}
          id={`packaging-${String(at)}`}
          line={line}
          use={use}
          amount={withSpoilt(item)}
          opened={packagingWorking(item, line, use, view)}
          view={view}
        />
      ))}
      {breakdown.perRun.map(({ item, line, use }, at) => (
        <ItemRow
          key={item.material}
          id={`per-run-${String(at)}`}
          line={line}
          use={use}
          further=", for the run"
          amount={`${inShort(item.amount)} for ${unitsInWords(product.usualRun)}`}
          opened={perRunWorking(item, line, use, view)}
          view={view}
        />
      ))}
      <TimeRow id="labour" name="Labour" cost={cost.labour} perHour={settings.labourPerHour} view={view} />
      <TimeRow id="overhead" name="Overhead" cost={cost.overhead} perHour={settings.overheadPerHour} view={view} />
      <TotalRow view={view} before={before} />
    </Ledger>
  );
}

function IngredientRow({
  ingredient,
  id,
  view,
}: {
  readonly ingredient: IngredientInUnit;
  readonly id: string;
  readonly view: CostView;
}): ReactNode {
  const { line, fraction, quantity, cost } = ingredient;
  const percent = percentShown(times(fraction, whole(1_000_000n)));
  const grams = gramsShown(quantity);
  const cells = (
    <>
      <td className="number not-on-phone">{percent}</td>
      <td className="number not-on-phone">{grams}</td>
      <MaterialCells line={line} cost={cost} onPhone={`${percent}, ${grams}, `} view={view} />
    </>
  );
  return (
    <OpeningRow id={id} name={line.material.name} cells={cells} across={COLUMNS.length}>
      <Working {...ingredientWorking(ingredient, view)} />
    </OpeningRow>
  );
}

/** What it is bought as, what one gram or piece costs, and what it comes to. */
function MaterialCells({
  line: { material, price },
  cost,
  onPhone,
  view,
}: {
  readonly line: CostLine;
  readonly cost: Fraction | null;
  readonly onPhone: string;
  readonly view: CostView;
}): ReactNode {
  return (
    <>
      <td className="wide-gap second-line">
        <span className="phone-only">{price ? `${onPhone}from ` : onPhone}</span>
        <span className={price ? undefined : "warn"}>{boughtAs(price, view)}</span>
      </td>
      <td className="number not-on-phone">
        {price ? pricePerGramShown(price.each, material.measure, view.currency) : "not known"}
      </td>
      <td className="number end">{inWorking(cost, view)}</td>
    </>
  );
}

/** Pieces without their word, which there is no room for. */
const inShort = ({ typed }: PackagingItem["amount"]): string =>
  typed.unit === "each" ? countShown(BigInt(typed.number)) : amountShown(typed);

/** `1 and 2 % spoilt` */
const withSpoilt = ({ amount, spoilage }: PackagingItem): string =>
  spoilage > 0n ? `${inShort(amount)} and ${rateShown(spoilage)} spoilt` : amountShown(amount.typed);

function ItemRow({
  id,
  line,
  use,
  further = "",
  amount,
  opened,
  view,
}: {
  readonly id: string;
  readonly line: CostLine;
  readonly use: CostUse;
  readonly further?: string;
  /** As it is written down: a share of a piece is in no jar. */
  readonly amount: string;
  readonly opened: Opened;
  readonly view: CostView;
}): ReactNode {
  const cells = (
    <>
      <td className="not-on-phone" />
      <td className="number not-on-phone">{amount}</td>
      <MaterialCells line={line} cost={use.cost} onPhone={`${amount}, `} view={view} />
    </>
  );
  return (
    <OpeningRow id={id} name={`${line.material.name}${further}`} cells={cells} across={COLUMNS.length}>
      <Working {...opened} />
    </OpeningRow>
  );
}

function IngredientsSum({ view }: { readonly view: CostView }): ReactNode {
  const { ingredients, product } = view;
  const costs = ingredients.map(({ cost }) => cost).filter((cost) => cost !== null);
  const known = costs.length === ingredients.length;
  return (
    <tr className="sum">
      <th scope="row">Ingredients</th>
      <td className="number not-on-phone">{percentShown(whole(1_000_000n))}</td>
      <td className="number not-on-phone">{gramsShown(product.fill.quantity)}</td>
      <td className="not-on-phone" />
      <td className="not-on-phone" />
      <td className="number end">{known ? moneyShown(total(costs), view.currency) : "not known"}</td>
    </tr>
  );
}

function TotalRow({ view, before }: { readonly view: CostView; readonly before: Fraction | null }): ReactNode {
  const { perUnit } = view.cost;
  const shown = (cost: Fraction | null): string => (cost ? moneyShown(cost, view.currency) : "not known");
  return (
    <tr className="total">
      <th scope="row">One unit</th>
      <td colSpan={4} className="label wide-gap not-on-phone">
        {perUnit && `${moneyShown(perUnit, view.currency, 2)} before rounding to the coin`}
      </td>
      <td className="number end">
        {before && <Was now={shown(perUnit)} before={shown(before)} />} {shown(perUnit)}
      </td>
    </tr>
  );
}
